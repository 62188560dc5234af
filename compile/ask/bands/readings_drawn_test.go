package bands

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/constants"
	"newmake/compile/plan"
	"newmake/lang/parallel"
	"newmake/lang/testflag"
)

// How near a band is held to the 5 and 95 % quantiles of 400 draws of all constants
// together: its width as a share of theirs, and the plan's place as a share of their
// width from their middle. The quantiles of so many draws are themselves good to a tenth
// of the width.
const (
	narrowest, widest = 0.8, 1.25
	offMiddle         = 0.12
	drawn             = 400
)

// AsDrawn holds a band against draws.
func AsDrawn(t *testing.T, what string, low, planned, high, drawnLow, middle, drawnHigh float64) {
	t.Helper()
	width := drawnHigh - drawnLow
	if !assert.Positive(t, width, what) {
		return
	}
	wide := (high - low) / width
	assert.True(t, wide > narrowest && wide < widest, "%s: %.4g to %.4g, drawn %.4g to %.4g: %.2f of it", what, low, high, drawnLow, drawnHigh, wide)
	off := (planned - middle) / width
	assert.True(t, off > -offMiddle && off < offMiddle, "%s: planned %.4g, drawn %.4g: off by %.2f of the width", what, planned, middle, off)
}

// loose are readings of which the band is no more than about what the draws have, half to
// twice as wide, and why.
var loose = map[string]string{
	"strip.collect.receiver.2": "the run may be over by then, and no more comes",
	"fill.cask.net":            "a cask is full, or a little short: it bends",
	"fill.cask.gross":          "the same",
}

// TestReadingsAsDrawn: of one example, what the constants do to each reading and what
// the draws do is the same, where it is not small beside what no constant moves.
func TestReadingsAsDrawn(t *testing.T) {
	b := batch(t, "Ferry Landing")
	k := newBench(b)
	require.NotNil(t, k)
	d := constants.Drawn(k.of, drawn/testflag.Every(2), b.Learned)
	plans := make([]*plan.Plan, len(d.X))
	memo := new(compile.Memo)
	parallel.Each(len(plans), func(i int) { plans[i], _ = memo.Compile(constants.Set(b, d.Of, d.X[i])) })
	book := readBook{}
	held := 0
	for i := range k.middle.Schedule.Steps {
		s := &k.middle.Schedule.Steps[i]
		for n := range s.Read {
			r := &s.Read[n]
			of := k.foretold(s, r, book)
			middle, by := k.around(of)
			if by.down+by.up < r.Besides/2 {
				continue
			}
			var x []float64
			for _, p := range plans {
				if p != nil {
					if v := of(p); v == v {
						x = append(x, v)
					}
				}
			}
			require.Greater(t, len(x), len(plans)*3/4, r.ID)
			slices.Sort(x)
			at := func(p float64) float64 { return x[int(p*float64(len(x)-1))] }
			if loose[r.ID] != "" {
				wide := (by.down + by.up) / (at(0.95) - at(0.05))
				assert.True(t, wide > 0.5 && wide < 2, "%s: %.2f", r.ID, wide)
				continue
			}
			held++
			AsDrawn(t, r.ID, middle-by.down, middle, middle+by.up, at(0.05), at(0.5), at(0.95))
		}
	}
	assert.Greater(t, held, 30)
}
