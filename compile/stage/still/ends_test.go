package still

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/recipe"
)

// A run is followed for a week and no longer, however slowly it is told to come.
func TestARunEndsInAWeek(t *testing.T) {
	in := secondRun(t)
	lasts := func(flowM3S float64) (Run, error) {
		in.Pace = recipe.Pace{Hearts: recipe.FractionPace{FlowM3S: flowM3S}}
		return SpiritRun(in)
	}
	slow, fast := 1e-8, 1e-3 // what a pace may be, to what is full heat
	for range 60 {
		if mid := math.Sqrt(slow * fast); mid > slow && mid < fast {
			if _, err := lasts(mid); err != nil {
				slow = mid
			} else {
				fast = mid
			}
		}
	}
	r, err := lasts(fast)
	require.NoError(t, err)
	assert.InEpsilon(t, longestRunS, r.DurationS, 1e-6)
	_, err = lasts(slow)
	require.ErrorContains(t, err, "it takes 168 h, and a run is followed for a week")

	strip := washRun(t)
	strip.Pace = recipe.FractionPace{FlowM3S: 1e-9}
	_, err = Strip(strip)
	require.ErrorContains(t, err, "a run is followed for a week")
}

// Heat that only makes up the losses brings nothing over.
func TestAPaceMakesUpTheLosses(t *testing.T) {
	in := secondRun(t)
	r, err := runSpirit(in, in.boil(), true)
	require.NoError(t, err)
	lossW := r.p.lossW
	for _, c := range []struct {
		heatW float64
		err   string
	}{
		{1, "the hearts have 0.001 kW, which does not make up the still's losses"},
		{lossW, "does not make up"},
		{lossW + 1, "a run is followed for a week"},
	} {
		in.Pace = recipe.Pace{Hearts: recipe.FractionPace{PowerW: c.heatW}}
		_, err := SpiritRun(in)
		require.ErrorContains(t, err, c.err)
	}
	in.Pace.Hearts.PowerW = 3 * lossW
	_, err = SpiritRun(in)
	require.NoError(t, err)
}
