package made_test

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/ask/learn/learntest"
	"newmake/compile/made"
	"newmake/compile/matter/fluid"
	"newmake/compile/numbers"
	"newmake/lang/check"
)

// house is the invented house with a text more.
func house(t *testing.T, text string) *check.House {
	dir := "../../examples/lantern-hollow"
	h, err := check.Load(filepath.FromSlash(dir), check.Options{Overlay: map[string][]byte{filepath.Join(dir, "runs.batch"): []byte(text)}})
	require.NoError(t, err)
	return h
}

// What is written down of a run comes back as what the stages said of it, to what is lost in
// reading and writing it.
func TestWrittenRunReadsBack(t *testing.T) {
	b, list := house(t, "").Batch("Ferry Landing")
	require.NotNil(t, b, list)
	inv := learntest.Invent(b, 3)
	for id := range inv.Off {
		inv.Off[id] = 0
	}
	inv.Off["dip"] = 1
	n, err := compile.Numbers(inv.Recipe, &numbers.Memo{}, compile.Calculated)
	require.NoError(t, err)
	text := inv.Text("26-01", time.Date(2026, 3, 3, 7, 0, 0, 0, time.UTC), n)
	if os.Getenv("SHOW") != "" {
		t.Log(text)
	}
	h := house(t, text)
	r, list := h.Run("26-01")
	require.NotNil(t, r, list)
	require.False(t, list.HasErrors(), list.Error())

	as := made.Recipe(b, r)
	again, err := compile.Numbers(as, &numbers.Memo{}, compile.Calculated)
	require.NoError(t, err)
	readings := made.Readings(as, r, h.Instrument)
	assert.Greater(t, len(readings), 30)
	var far int
	for i := range readings {
		rd := &readings[i]
		says, ok := rd.Of(again)
		require.True(t, ok, rd.Words)
		z := (rd.Said - says) / rd.Sure(again)
		t.Logf("%-50s said %10.5g model %10.5g sd %8.3g z %.1f", rd.Words, rd.Said, says, rd.SD, z)
		if z > 2.5 || z < -2.5 {
			far++
		}
	}
	assert.LessOrEqual(t, far, 2)
}

// The tails run onto the heads: what the feints tank says while they run counts the
// heads, which are not counted again.
func TestTailsAreReadWithTheHeads(t *testing.T) {
	h := house(t, `run "26-90" of "Ferry Landing" on 2026-03-10 {
  spirit in "Spirit still" {
    2026-03-10 07:00 charge
    07:17 fire
    08:31 first-drop
    08:46 to heads 0.5 gal
    08:57 to hearts 3.5 gal
    09:31 75.9 % abv at 68 F, 10 gal
    11:27 to tails 44 gal
    12:31 33.4 % abv at 68 F, 25.5 gal
    13:46 off
  }
}
`)
	r, list := h.Run("26-90")
	require.NotNil(t, r, list)
	require.False(t, list.HasErrors(), list.Error())
	b, list := h.Batch("Ferry Landing")
	require.NotNil(t, b, list)
	var over []float64
	for _, rd := range made.Readings(b, r, h.Instrument) {
		if rd.Spot.OverM3 > 0 {
			over = append(over, rd.Spot.OverM3/fluid.USGallonM3)
		}
	}
	require.Len(t, over, 2)
	assert.InDelta(t, 0.5+3.5+10, over[0], 0.05, "hearts")
	assert.InDelta(t, 0.5+44+25.5, over[1], 0.1, "tails")
}

// Two lots of a fraction are the fraction together, whichever stage gauged them; what was gauged
// in the still house and again at the fill is one lot, read twice.
func TestLotsOfAFraction(t *testing.T) {
	read := func(lines string) map[string]made.Reading {
		h := house(t, `run "26-90" of "Ferry Landing" on 2026-03-10 {
`+lines+`
}
`)
		r, list := h.Run("26-90")
		require.NotNil(t, r, list)
		require.False(t, list.HasErrors(), list.Error())
		b, list := h.Batch("Ferry Landing")
		require.NotNil(t, b, list)
		out := map[string]made.Reading{}
		for _, rd := range made.Readings(b, r, h.Instrument) {
			_, twice := out[rd.Words]
			assert.False(t, twice && rd.Words != "volume of the hearts" && rd.Words != "strength of the hearts", rd.Words)
			out[rd.Words] = rd
		}
		return out
	}
	strip := func(lines string) string {
		return "  strip in \"Wash still\" {\n    2026-03-10 07:00 charge\n" + lines + "\n  }"
	}

	one := read(strip("    low-wines 124 gal at 60 F, 28 % abv at 60 F"))
	two := read(strip("    low-wines 31 gal at 60 F, 40 % abv at 60 F\n    low-wines 93 gal at 60 F, 24 % abv at 60 F"))
	assert.InDelta(t, one["volume of the low wines"].Said, two["volume of the low wines, 2 lines"].Said, 1e-4)
	assert.InDelta(t, one["strength of the low wines"].Said, two["strength of the low wines, 2 lines"].Said, 1e-3)
	assert.Less(t, two["volume of the low wines, 2 lines"].SD, one["volume of the low wines"].SD, "what is read of each errs by itself")
	assert.Len(t, two, len(one))

	// How much on one line and how strong on another is one lot; a lot whose strength nobody read
	// leaves that of the whole unknown.
	apart := read(strip("    low-wines 124 gal at 60 F\n    low-wines 28 % abv at 60 F"))
	assert.Equal(t, one["strength of the low wines"].Said, apart["strength of the low wines"].Said)
	assert.Contains(t, apart, "volume of the low wines")
	half := read(strip("    low-wines 31 gal at 60 F, 40 % abv at 60 F\n    low-wines 93 gal at 60 F"))
	assert.Contains(t, half, "volume of the low wines, 2 lines")
	assert.NotContains(t, half, "strength of the low wines, 2 lines")

	again := read("  spirit in \"Spirit still\" {\n    2026-03-10 07:00 charge\n    hearts 44 gal at 60 F, 72 % abv at 60 F\n  }\n  fill {\n    2026-03-11 hearts 43.8 gal at 60 F, 72.1 % abv at 60 F\n  }")
	assert.Contains(t, again, "volume of the hearts")
	assert.NotContains(t, again, "volume of the hearts, 2 lines")
}
