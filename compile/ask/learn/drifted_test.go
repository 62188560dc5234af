package learn

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestDriftedIsNotGross: what does not stay is said to have changed, and the readings since
// are not called wrong; where one reading alone is off, or all but one, it is that reading.
// Times are standard deviations of a reading: at three of them a drift is seldom sure.
func TestDriftedIsNotGross(t *testing.T) {
	const runs, houses = 6, 10
	for _, c := range []struct {
		name   string
		hits   func(Reading) bool
		times  float64
		since  int
		drifts [2]int // least and most houses in which the drift is said, since its run
		gross  [2]int // readings called wrong in all houses, likewise
	}{
		{"nothing", func(Reading) bool { return false }, 0, 3, [2]int{0, 0}, [2]int{0, 2}},
		{"a hydrometer, a little", readBy("hydrometer"), 3, 3, [2]int{2, 8}, [2]int{0, 4}},
		{"a hydrometer", readBy("hydrometer"), 6, 3, [2]int{10, 10}, [2]int{0, 2}},
		{"a hydrometer, in the first run alone", readBy("hydrometer"), 12, 1, [2]int{10, 10}, [2]int{0, 2}},
		{"a hydrometer, in the last run alone", readBy("hydrometer"), 12, 5, [2]int{10, 10}, [2]int{0, 2}},
		{"the heat of a still, one reading a run", called("minutes of the run"), 12, 3, [2]int{10, 10}, [2]int{0, 2}},
		{"one reading", called("minutes of the run"), 12, 5, [2]int{0, 0}, [2]int{10, 12}},
		{"all readings but one", called("minutes of the run"), 12, 1, [2]int{0, 1}, [2]int{9, 12}},
		{"one gravity", called("gravity at 24 h"), 12, 5, [2]int{0, 0}, [2]int{10, 13}},
	} {
		t.Run(c.name, func(t *testing.T) {
			drifts, gross := 0, 0
			for seed := range uint64(houses) {
				tr := newTrial(rand.New(rand.NewPCG(77, seed)), runs)
				for k := c.since; k < runs; k++ {
					for i := range tr.runs[k].Readings {
						if rd := &tr.runs[k].Readings[i]; c.hits(*rd) {
							rd.Said += c.times * rd.SD
						}
					}
				}
				l, err := From(tr.runs, reducedInstruments(), Options{})
				require.NoError(t, err)
				require.True(t, l.Converged)
				gross += len(l.Gross)
				for _, d := range l.Drifts {
					if id := l.Found[d.Constant].ID; d.Since == c.since && (id == "hydrometer" || id == "still-heat") {
						drifts++
					}
				}
			}
			assert.GreaterOrEqual(t, drifts, c.drifts[0])
			assert.LessOrEqual(t, drifts, c.drifts[1])
			assert.GreaterOrEqual(t, gross, c.gross[0])
			assert.LessOrEqual(t, gross, c.gross[1])
			t.Logf("drift in %d houses of %d, %d readings called wrong", drifts, houses, gross)
		})
	}
}

func readBy(instrument string) func(Reading) bool {
	return func(r Reading) bool { return r.Instrument == instrument }
}

func called(w string) func(Reading) bool { return func(r Reading) bool { return r.Words == w } }
