package work

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/stage/ferment"
	"newmake/compile/stage/still"
)

// Every tolerance has a part of the model and one of the instrument, each with
// its reason, and is at least the larger of them.
func TestTolerancesHaveReasons(t *testing.T) {
	seen := map[string]bool{}
	for _, tol := range Tolerances() {
		assert.False(t, seen[tol.Of], tol.Of)
		seen[tol.Of] = true
		assert.GreaterOrEqual(t, len(tol.Parts), 2, tol.Of)
		for _, p := range tol.Parts {
			assert.NotEmpty(t, p.Why, tol.Of)
			assert.Positive(t, p.Abs+p.Share, tol.Of)
			assert.GreaterOrEqual(t, tol.At(100), p.Abs+100*p.Share, tol.Of)
		}
	}
}

// Independent errors add as squares: 3 and 4 make 5.
func TestToleranceAddsSquares(t *testing.T) {
	tol := Tolerance{Parts: []Part{{Abs: 3}, {Share: 0.04}}}
	assert.InDelta(t, 5, tol.At(100), 1e-12)
	assert.InDelta(t, 13, tol.of(100, 12), 1e-12)
	assert.InDelta(t, 3, tol.At(0), 1e-12)
}

// A flat 3 % of the feints was less than a published equilibrium moves them.
func TestFeintsToleranceCoversTheModel(t *testing.T) {
	assert.Greater(t, tolFeintsVolume.At(100), 8.0)
	assert.Less(t, tolFeintsVolume.At(100), 10.0)
	assert.Less(t, tolSetVolume.At(100), 3.0, "what is measured out is not so wide")
}

// A small can of foreshots, 150 mL, is still read no better than its jug.
func TestSmallMeasureHasATolerance(t *testing.T) {
	assert.InDelta(t, 0.01, tolSetVolume.At(0.15), 0.001)
	assert.InEpsilon(t, math.Hypot(0.02, 0.01), tolSetVolume.At(200)/200, 1e-3, "and a cask as before")
}

// While a reading stands still a clock that is off moves nothing; while it falls,
// as much as it falls in that time.
func TestDrift(t *testing.T) {
	flat := []ferment.Point{{TimeS: 0, SG: 1.05}, {TimeS: 100, SG: 1.05}}
	assert.Zero(t, fermentDrift(flat, 50, func(p ferment.Point) float64 { return p.SG }))
	falls := []ferment.Point{{TimeS: 0, SG: 1.10}, {TimeS: 100, SG: 1.00}}
	assert.InDelta(t, 0.0125, fermentDrift(falls, 50, func(p ferment.Point) float64 { return p.SG }), 1e-12)

	run := still.Run{HeatUpS: 1000, Curve: []still.Point{{TimeS: 1000, ABV: 0.8}, {TimeS: 2000, ABV: 0.3, OverM3: 0.1}}}
	assert.InDelta(t, 0.5*0.5*RunPace, runDrift(run, 1500, func(p still.Point) float64 { return p.ABV }), 1e-12)
	assert.Zero(t, runDrift(run, 1000, func(p still.Point) float64 { return p.ABV }), "at the first drop there is none")
	assert.InDelta(t, 2, cutShiftL(run, 0.55), 1e-9, "1 point of 50 while 100 L come over")
	assert.InDelta(t, 1, cutShiftL(run, 0.3), 1e-9, "at the end there is one side alone")
}
