package measure

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/plan"
	"newmake/lang/quantity"
)

// Factors are exact by definition: NIST SP 811 (2008), appendix B.8.
func TestBothSystems(t *testing.T) {
	proof := plan.Of(57.06, plan.AbvPct)
	proof.Proof = 114
	hearts := plan.Of(151.2, plan.Litre)
	hearts.Gallons = 39.8
	for _, c := range []struct {
		q      plan.Quantity
		us, si string
	}{
		{plan.Of(3785.411784, plan.Litre), "1,000 gal", "3,785 L"},
		{plan.Of(45.359237, plan.Kilogram), "100.0 lb", "45.4 kg"},
		{plan.Of(0.162, plan.Kilogram), "5.7 oz", "162 g"},
		{plan.Of(87.8, plan.Celsius), "190 F", "87.8 C"},
		{plan.Of(5, plan.CelsiusDiff), "9 deg F", "5.0 deg C"}, // a distance, not 41 F
		{plan.Of(1.06244, plan.SG), "1.062 SG", "1.062 SG"},
		{proof, "114.0 proof (57.0 % abv)", "57.1 % vol"},
		{hearts, "39.8 gal", "151 L"}, // the US gauge counts at 60 F: not a factor of the litres
		{plan.Of(8.94, plan.AbvPct), "8.9 % abv", "8.9 % vol"},
		{plan.Quantity{Value: 77.82, Unit: plan.AbvPct, Abv60F: 77.75}, "77.8 % abv", "77.8 % vol"},
		{plan.Quantity{Value: 40.1, Unit: plan.AbvPct, Abv60F: 40}, "40.0 % abv", "40.1 % vol"},
		{plan.Of(2.8, plan.AbvDiff), "2.8 % abv", "2.8 % vol"},
		{plan.Of(45, plan.Minute), "45 min", "45 min"},
		{plan.Of(312, plan.Minute), "5 h 12 min", "5 h 12 min"},
		{plan.Of(5.24, plan.PH), "pH 5.2", "pH 5.2"},
		{plan.Of(56.633693, plan.CubicMetre), "2,000 cu ft", "57 m3"},
		{plan.Of(2.4046, plan.CubicMetre), "85 cu ft", "2.4 m3"},
	} {
		assert.Equal(t, c.us, US.Quantity(c.q))
		assert.Equal(t, c.si, SI.Quantity(c.q))
	}
}

func TestNumber(t *testing.T) {
	assert.Equal(t, "1,234,567", Number(1234567.4, 0))
	assert.Equal(t, "-1,234.5", Number(-1234.5, 1))
	assert.Equal(t, "0.0", Number(-0.01, 1), "no negative zero")
	assert.Equal(t, "999", Number(999, 0))
}

// What is said of a number before the plan is rounded is what the plan shows.
func TestSaidOnce(t *testing.T) {
	raw := plan.Quantity{Value: 197.7768, Unit: plan.Litre, Gallons: 52.249987}
	assert.Equal(t, US.Quantity(raw), US.Quantity(raw.Rounded()))
	assert.Equal(t, SI.Quantity(raw), SI.Quantity(raw.Rounded()))
}

func TestDuration(t *testing.T) {
	for said, minutes := range map[string]float64{
		"29 s": 29.0 / 60, "30 s": 0.4999, "1 min": 0.5, "59 min": 59.49, "1 h": 59.5, "1 h 1 min": 61, "4 h 20 min": 260,
		"47 h 59 min": 48*60 - 1, "48 h": 48 * 60, "91 h": 91 * 60, "240 h": 240 * 60, "10 days": 240*60 + 1,
		"90 days": 90 * 24 * 60, "3 months": 90*24*60 + 1, "2.3 years": 2.3 * 365.25 * 24 * 60, "1 year": 365.25 * 24 * 60, "18 months": 1.5 * 365.25 * 24 * 60, "4 years": 4 * 365.25 * 24 * 60,
	} {
		assert.Equal(t, said, Duration(minutes))
	}
}

func TestTolerance(t *testing.T) {
	assert.Equal(t, "+/- 2 F", US.Tolerance(plan.Of(1, plan.CelsiusDiff)))
	assert.Equal(t, "+/- 1 C", SI.Tolerance(plan.Of(1, plan.CelsiusDiff)))
	assert.Equal(t, "+/- 2.0 % abv", US.Tolerance(plan.Of(2, plan.AbvDiff)), "points, not a share")
	assert.Equal(t, "+/- 2.0 % vol", SI.Tolerance(plan.Of(2, plan.AbvDiff)))
	assert.Equal(t, "+/- 0.003", US.Tolerance(plan.Of(0.003, plan.SGDiff)))
	proof := plan.Of(0.7, plan.AbvDiff)
	proof.Proof = 1.4
	assert.Equal(t, "+/- 1.4", US.Tolerance(proof), "proof, as the value beside it")
	assert.Equal(t, "+/- 0.001 gal", US.Tolerance(plan.Of(0.0038, plan.Litre)), "a tolerance is never shown as none")
	assert.Equal(t, "+/- 0.02 L", SI.Tolerance(plan.Of(0.02, plan.Litre)))
	assert.Equal(t, "+/- 0.005 L", SI.Tolerance(plan.Of(0.0049, plan.Litre)))
	assert.Equal(t, "+/- 0 L", SI.Tolerance(plan.Of(0, plan.Litre)), "unless it is none")
}

func TestPhrase(t *testing.T) {
	p := plan.Say("Run in {} of water at {}.", plan.Of(1249.2, plan.Litre), plan.Of(14.4, plan.Celsius))
	assert.Equal(t, "Run in 330 gal of water at 58 F.", US.Phrase(p))
	assert.Equal(t, "Run in 1,249 L of water at 14.4 C.", SI.Phrase(p))
}

func TestLiquorToGrist(t *testing.T) {
	// 22 US gal per 56 lb is 3.279 L/kg.
	assert.Equal(t, "22.0 gal/56 lb", US.LiquorToGrist(22*3.785411784/(56*0.45359237)))
}

// One proof stands beside one percentage, whether it was rounded before or is
// rounded here.
func TestOneProofOnePercentage(t *testing.T) {
	for _, proof := range []float64{142.46, 142.5, 142.5401} {
		assert.Equal(t, "142.5 proof (71.3 % abv)", US.Strength(plan.Strength{Proof: proof, AbvPct: 71.3}))
		assert.Equal(t, "71.3 % abv", US.LotAbv(plan.Lot{Proof: proof}))
	}
	assert.Equal(t, "92.0 proof (46.0 % abv)", US.Strength(plan.Strength{Proof: 92, AbvPct: 46.05}))
}

// A flow has the figures that a jug and a watch give, and its tolerance one.
func TestFlow(t *testing.T) {
	for _, c := range []struct {
		litrePerH, tolerance float64
		us, si, usTol, siTol string
	}{
		{67.8, 7.1, "18 gal/h", "68 L/h", "+/- 2 gal/h", "+/- 7 L/h"},
		{7.6, 0.8, "2.0 gal/h", "7.6 L/h", "+/- 0.2 gal/h", "+/- 0.8 L/h"},
		{545, 57, "140 gal/h", "550 L/h", "+/- 20 gal/h", "+/- 60 L/h"},
		{0.996, 0.1, "0.26 gal/h", "1.0 L/h", "+/- 0.03 gal/h", "+/- 0.1 L/h"},
		{0, 0, "0 gal/h", "0 L/h", "+/- 0 gal/h", "+/- 0 L/h"},
	} {
		q, tol := plan.Of(c.litrePerH, plan.LitrePerH), plan.Of(c.tolerance, plan.LitrePerH)
		assert.Equal(t, c.us, US.Quantity(q))
		assert.Equal(t, c.si, SI.Quantity(q))
		assert.Equal(t, c.usTol, US.Tolerance(tol))
		assert.Equal(t, c.siTol, SI.Tolerance(tol))
	}
}

// A jug is read in quarts, or in millilitres below a litre.
func TestJug(t *testing.T) {
	for _, of := range []struct {
		litres float64
		us, si string
	}{{0.99, "1 qt", "990 mL"}, {1, "1.1 qt", "1.00 L"}, {10, "10.6 qt", "10.0 L"}} {
		q := plan.Of(of.litres, plan.Litre)
		assert.Equal(t, of.us, US.Jug(q))
		assert.Equal(t, of.si, SI.Jug(q))
	}
}

// Counted at 60 F a volume is smaller than at 20 C: of water by 0.08 % (998.2 and 999.0
// kg/m3), of spirit by about 0.1 % a degree (common practice).
func TestCounted(t *testing.T) {
	litres := 1000 * quantity.USGallonM3
	for abv, want := range map[float64]string{0: "99.9 gal", 0.7: "99.6 gal"} {
		assert.Equal(t, want, US.Counted(100*litres, abv), "%g", abv)
		assert.Equal(t, "379 L", SI.Counted(100*litres, abv))
	}
}
