package still

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

func logMean(a, b float64) float64 {
	if math.Abs(a-b) < 1e-6 {
		return (a + b) / 2
	}
	return (a - b) / math.Log(a/b)
}

// washFor is a wash, and the pot ale of a charge of it.
func washFor(tempC float64) (wash, ale stream.Stream) {
	wash = stream.Stream{WaterKg: 1300, EthanolKg: 98, DextrinKg: 20, InsolublesKg: 60, TempC: tempC}
	ale = stream.Stream{WaterKg: 950, EthanolKg: 2, DextrinKg: 20, InsolublesKg: 60, TempC: 99}
	return wash, ale
}

// The heat that the pot ale loses is that which the wash gains, the streams never
// cross, and the log mean temperature difference gives the same heat.
func TestPreheatBalances(t *testing.T) {
	for _, area := range []float64{0.5, 2, 8, 1000} {
		wash, ale := washFor(28)
		in := PreheatInput{Wash: wash, PotAle: ale, Preheater: recipe.Preheater{AreaM2: area, WashC: 98}, LastsS: 1800}
		p := Preheated(in)
		gained := heatCapacity(wash, 28, 99) * (p.ToC - 28)
		lost := heatCapacity(ale, 28, 99) * (99 - p.LeavesC)
		assert.InEpsilon(t, gained, lost, 1e-9)
		assert.InEpsilon(t, p.HeatJ, gained, 1e-9)
		assert.Less(t, p.ToC, 99.0)
		assert.Greater(t, p.LeavesC, 28-1e-9)
		a, b := 99-p.ToC, p.LeavesC-28
		if area < 100 {
			assert.InEpsilon(t, p.HeatJ/1800, preheaterWM2K*area*logMean(a, b), 1e-6, "%g m2", area)
		} else {
			assert.InDelta(t, 28, p.LeavesC, 0.1, "all that the pot ale has")
		}
	}
}

// Common practice: wash that comes at 25 to 30 C goes in at 60 to 65. The pot ale of a
// third less than the charge can do that and no more than some 75.
func TestPreheatOfPractice(t *testing.T) {
	wash, ale := washFor(28)
	at := func(p recipe.Preheater, ale stream.Stream) float64 {
		return Preheated(PreheatInput{Wash: wash, PotAle: ale, Preheater: p, LastsS: 1800}).ToC
	}
	assert.InDelta(t, 65, at(recipe.Preheater{AreaM2: 8}, ale), 1e-9, "no more than practice, unsaid")
	assert.InDelta(t, 50, at(recipe.Preheater{AreaM2: 8, WashC: 50}, ale), 1e-9)
	most := at(recipe.Preheater{AreaM2: 1000, WashC: 85}, ale)
	assert.Greater(t, most, 65.0)
	assert.Less(t, most, 80.0)
	assert.Greater(t, at(recipe.Preheater{AreaM2: 1, WM2K: 1600}, ale), at(recipe.Preheater{AreaM2: 1}, ale))
	ale.TempC = 27.9
	assert.Equal(t, 28.0, at(recipe.Preheater{AreaM2: 8}, ale), "cold pot ale warms nothing")
}

// A charge that goes in warm takes the less heat by what its warming took, and the
// shorter by that at full heat; with a jacket nothing else of the run changes.
func TestAWarmChargeSavesItsHeat(t *testing.T) {
	in := washRun(t)
	cold, err := Strip(in)
	require.NoError(t, err)
	fromC := in.Wash.TempC
	warm := in
	warm.Wash.TempC, warm.WarmedK = 60, 60-fromC
	hot, err := Strip(warm)
	require.NoError(t, err)
	needs := heatCapacity(in.Wash, fromC, 60) * (60 - fromC)
	lost := cold.LossJ - hot.LossJ
	assert.InEpsilon(t, needs+lost, cold.HeatJ-hot.HeatJ, 1e-6)
	assert.InEpsilon(t, (cold.HeatJ-hot.HeatJ)/in.heatW(), cold.HeatUpS-hot.HeatUpS, 1e-9)
	assert.InEpsilon(t, cold.Fraction(LowWines).EthanolKg, hot.Fraction(LowWines).EthanolKg, 1e-9)
}

// A heat-up in a time, by a rate or with a heat is kept as far as the still's heat
// gives it, and the account of the heat holds.
func TestHeatUp(t *testing.T) {
	in := washRun(t)
	run := func(h recipe.HeatUp) Run {
		in.HeatUp = h
		r, err := Strip(in)
		require.NoError(t, err)
		assert.InDelta(t, r.HeatJ, r.HeatUpJ+r.Fraction(LowWines).HeatJ, 1e-6*r.HeatJ)
		return r
	}
	full := run(recipe.HeatUp{})
	assert.InEpsilon(t, in.heatW()*full.HeatUpS, full.HeatUpJ, 1e-9)
	slow := run(recipe.HeatUp{OverS: 2 * full.HeatUpS})
	assert.InEpsilon(t, 2*full.HeatUpS, slow.HeatUpS, 1e-9)
	assert.Less(t, slow.HeatUpJ/slow.HeatUpS, 0.6*in.heatW())
	assert.Greater(t, slow.HeatUpJ, full.HeatUpJ, "the longer it takes the more is lost")
	assert.InEpsilon(t, full.Fraction(LowWines).EthanolKg, slow.Fraction(LowWines).EthanolKg, 1e-9)

	rises := slow.Curve[0].PotC - in.Wash.TempC
	assert.InEpsilon(t, 3*full.HeatUpS, run(recipe.HeatUp{RateKS: rises / (3 * full.HeatUpS)}).HeatUpS, 1e-6)
	half := run(recipe.HeatUp{PowerW: in.heatW() / 2})
	assert.InEpsilon(t, half.HeatUpS*in.heatW()/2, half.HeatUpJ, 1e-9)
	assert.Zero(t, half.HeatUpAskedS)

	fast := run(recipe.HeatUp{OverS: full.HeatUpS / 2})
	assert.InEpsilon(t, full.HeatUpS, fast.HeatUpS, 1e-9, "no more than the heat gives")
	assert.InEpsilon(t, full.HeatUpS/2, fast.HeatUpAskedS, 1e-9)
	assert.InEpsilon(t, full.HeatUpS, run(recipe.HeatUp{PowerW: 2 * in.heatW()}).HeatUpS, 1e-9)

	in.HeatUp = recipe.HeatUp{PowerW: 100}
	_, err := Strip(in)
	assert.ErrorContains(t, err, "never boils")
}
