package learn

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A constant goes as far as the readings tell it, and no farther: of the way to what they would
// have by themselves it goes the part that was not known before, as the column "known" says. So a
// reading that tells little moves little, at two runs as at one, and one that tells much moves
// much, which is no fault: a reflux is told by each strength at the spout.
func TestShrinkage(t *testing.T) {
	const alone = 1.2 // where the readings by themselves have the heat of the cooker, of what the library has
	for _, c := range []struct {
		name  string
		sdMin float64 // how badly the minutes of the heat are read
		runs  int
		moved [2]float64 // of the way, between
	}{
		{"read badly, one run", 40, 1, [2]float64{0, .12}},
		{"read badly, two runs", 40, 2, [2]float64{.08, .2}},
		{"read badly, ten runs", 40, 10, [2]float64{.3, .6}},
		{"read well, one run", 2.5, 1, [2]float64{.9, 1}},
		{"read well, two runs", 2.5, 2, [2]float64{.95, 1}},
	} {
		t.Run(c.name, func(t *testing.T) {
			tr := newTrial(rand.New(rand.NewPCG(3, 1)), c.runs)
			at := slices.IndexFunc(tr.runs[0].Readings, func(r Reading) bool { return r.Words == "minutes to 190 F" })
			require.GreaterOrEqual(t, at, 0)
			for k := range tr.runs {
				tr.runs[k].Readings[at].Said, tr.runs[k].Readings[at].SD = 80/alone, c.sdMin
			}
			l, err := From(tr.runs, reducedInstruments(), Options{})
			require.NoError(t, err)
			i := slices.IndexFunc(l.Found, func(f Found) bool { return f.ID == "cooker-heat" })
			require.GreaterOrEqual(t, i, 0)
			f := l.Found[i]
			part := f.Z / f.Prior.Z(alone)
			assert.InDelta(t, 1-f.priorPart(), part, .03, "of the way")
			assert.GreaterOrEqual(t, part, c.moved[0])
			assert.LessOrEqual(t, part, c.moved[1])
		})
	}
}
