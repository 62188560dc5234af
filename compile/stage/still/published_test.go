package still

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/accuracy/published"
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/monotone"
)

// measuredVapour is the model with its vapour moved to a published set of
// measurements: the difference in ln volatility, joined by a monotone curve
// through the points, held below the first and let run out at the azeotrope.
type measuredVapour struct {
	pressurePa float64
	differs    monotone.Curve
	low        float64
}

func (m measuredVapour) bubble(x float64) (tempC, y float64) {
	t, y := fluid.BubblePointC(x, m.pressurePa)
	at := m.differs.At(math.Min(math.Max(x, m.low), 0.894))
	return t, 1 / (1 + math.Exp(-(logit(y) + at)))
}

func measured(t testing.TB, file string, lowKPa, highKPa float64) measuredVapour {
	t.Helper()
	rows, err := published.Read(file)
	require.NoError(t, err)
	var xs, ds []float64
	for _, r := range rows {
		num := func(c string) float64 {
			v, err := r.Num(c)
			require.NoError(t, err)
			return v
		}
		x, y, kPa := num("x_ethanol"), num("y_ethanol"), num("P_kPa")
		if kPa < lowKPa || kPa > highKPa || x <= 0 || x >= 0.85 || len(xs) > 0 && x <= xs[len(xs)-1]+1e-6 {
			continue
		}
		_, model := fluid.BubblePointC(x, 1000*kPa)
		xs, ds = append(xs, x), append(ds, logit(y)-logit(model))
	}
	xs, ds = append(xs, 0.894), append(ds, 0)
	c, err := monotone.Fit(xs, ds)
	require.NoError(t, err)
	return measuredVapour{fluid.StandardPressurePa, c, xs[0]}
}

// underVapour is a setting whose vapour is another than the model's.
func (s Setting) underVapour(m equilibrium) Setting {
	s.Boils = &Boils{made: map[boilKey]*boil{{s.PressurePa, s.Still.Reflux}: newBoil(m, s.Still.Reflux)}}
	return s
}

// moved is by how much the runs change when the vapour is a published set's: each
// the largest of many runs, volumes in shares of themselves, strengths in points.
func moved(t testing.TB) map[string]float64 {
	t.Helper()
	worst := map[string]float64{}
	share := func(name string, a, b float64) { worst[name] = math.Max(worst[name], math.Abs(a/b-1)) }
	points := func(name string, a, b float64) { worst[name] = math.Max(worst[name], 100*math.Abs(a-b)) }
	for _, m := range []equilibrium{
		measured(t, "fluid/vle_ethanol_water_carey_lewis_1932.csv", 100, 110),
		measured(t, "fluid/vle_ethanol_water_kirschbaum_1939.csv", 90, 100),
	} {
		for _, reflux := range []float64{0, 0.2} {
			for _, stop := range []float64{0.01, 0.02, 0.05} {
				for _, strength := range []float64{0.06, 0.10} {
					wash := washRun(t)
					wash.Still.Reflux, wash.Wash, wash.Stop = reflux, spirits(t, 3, strength), abv(stop)
					model, err := Strip(wash)
					require.NoError(t, err)
					wash.Setting = wash.underVapour(m)
					other, err := Strip(wash)
					require.NoError(t, err)
					a, b := other.Fraction(LowWines), model.Fraction(LowWines)
					share("volume of low wines", a.VolumeM3, b.VolumeM3)
					share("strength of low wines", a.ABV, b.ABV)
					share("hours", other.DurationS, model.DurationS)
				}
				for _, to := range []float64{0.70, 0.55} {
					in := secondRun(t)
					in.Still.Reflux, in.HeartsTo, in.Stop = reflux, byABV(to), abv(stop)
					model, _, err := Steady(in)
					require.NoError(t, err)
					in.Setting = in.underVapour(m)
					other, _, err := Steady(in)
					require.NoError(t, err)
					require.Empty(t, append(model.Problems, other.Problems...))
					a, b := other.Fraction(Hearts), model.Fraction(Hearts)
					share("volume of hearts", a.VolumeM3, b.VolumeM3)
					points("strength of hearts", a.ABV, b.ABV)
					fa, fb := other.Feints(), model.Feints()
					share("volume of feints or tails", fa.VolumeAtM3(20), fb.VolumeAtM3(20))
					points("strength of feints", fa.ABV(), fb.ABV())
					share("hours", other.DurationS, model.DurationS)
				}
			}
		}
	}
	return worst
}

// What the model's equilibrium may be off is what two published sets of
// measurements make of the same runs. The tolerances of a plan (package work) have
// these figures: each covers what is found here, and is not wider than it by more
// than half.
func TestPublishedVapourMovesARun(t *testing.T) {
	found := moved(t)
	for name, part := range map[string]float64{
		"volume of low wines": 0.04, "strength of low wines": 0.04,
		"volume of hearts": 0.012, "strength of hearts": 0.7,
		"volume of feints or tails": 0.08, "strength of feints": 1,
		"hours": 0.055,
	} {
		got, ok := found[name]
		require.True(t, ok, name)
		t.Logf("%s: %.4f of %g", name, got, part)
		assert.LessOrEqual(t, got, part, "%s moves more than its tolerance allows", name)
		assert.Greater(t, got, part/1.5, "%s: the tolerance is wider than its reason", name)
	}
}
