package work

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/plan"
	"newmake/lang/record"
)

// What is allowed besides the constants is at least the instrument's part, and each
// other part of it has its reason.
func TestBesidesHaveReasons(t *testing.T) {
	seen := map[string]bool{}
	for _, b := range AllBesides() {
		assert.False(t, seen[b.Of], b.Of)
		seen[b.Of] = true
		assert.Positive(t, b.Instrument(100), b.Of)
		assert.NotEmpty(t, b.InstrumentWhy(), b.Of)
		assert.GreaterOrEqual(t, b.At(100), b.Instrument(100), b.Of)
		for _, p := range b.Parts {
			assert.NotEmpty(t, p.Why, b.Of)
			assert.Positive(t, p.Abs+p.Share, b.Of)
			assert.Greater(t, b.At(100), p.Abs+100*p.Share, b.Of)
		}
	}
}

// Independent errors add as squares: 3 and 4 make 5. No instrument weighs light.
func TestBesidesAddSquares(t *testing.T) {
	b := Besides{Unit: plan.Each, Parts: []Part{{Abs: 3}, {Share: 0.04}}}
	assert.InDelta(t, 5, b.At(100), 1e-9)
	assert.InDelta(t, 3, b.At(0), 1e-9)
}

// TestInstrument: by hand, from what a review allows the same readings. A thermometer
// that nobody has checked, of 0.5 C divisions: 0.5/(2 sqrt 3) and 0.3 of reading it, 0.4
// that it is always off by; a spirit hydrometer: 0.2 % and 0.1 of reading, 0.3 off.
func TestInstrument(t *testing.T) {
	half := math.Sqrt(3) * 2
	assert.InDelta(t, 1.6449*math.Sqrt(0.25/half/half+0.09+0.16), MashC.Instrument(60), 1e-4)
	assert.InDelta(t, 1.6449*math.Sqrt(0.04/half/half+0.01+0.09), HeartsStrength.Instrument(70), 1e-4)
	assert.InDelta(t, 1.6449*math.Hypot(1, 1.5), SetVolume.Instrument(100), 1e-3)
	assert.Equal(t, record.PH, PH.Kind)
}

// Feints hang on the equilibrium most, and what is measured out least.
func TestFeintsCoverTheModel(t *testing.T) {
	assert.Greater(t, FeintsVolume.At(100), 8.0)
	assert.Less(t, FeintsVolume.At(100), 10.0)
	assert.Less(t, SetVolume.At(100), 4.0)
}

// A small can of foreshots, 150 mL, is still read no better than its jug.
func TestSmallMeasure(t *testing.T) {
	assert.Greater(t, SetVolume.At(0.15), 0.01)
	assert.Less(t, SetVolume.At(0.15), 0.02)
}
