package check

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// A figure of the library or of a vessel may say how sure it is: a range in which it
// lies, in its own unit.
func TestHowSureAFigureIs(t *testing.T) {
	read := func(lines string) (recipe.Library, diag.List) {
		h, err := LoadFS(bench(t, map[string]string{"library.batch": "grain corn {\n" + lines + "\n}\nmodel mash {\n  gel-rate 11.5 /h, 8..15 /h\n  reference 65 C, 64..66 C\n}\nenzyme alpha-amylase {\n  half-life 60 min at 95 C, 0.5..2 h\n}\n"}), "", Options{})
		require.NoError(t, err)
		return h.Library(), h.Check()
	}
	lib, list := read("  starch 70 %, 68..72 %\n  moisture 12 %\n  gelatinizes 62..75 C, 140..170 F")
	require.Empty(t, list)
	g := lib.Grains["corn"]
	assert.InDelta(t, 0.68, g.Within["starch"].Low, 1e-12)
	assert.InDelta(t, 0.72, g.Within["starch"].High, 1e-12)
	assert.InDelta(t, 60, g.Within["gelatinizes"].Low, 1e-9, "in another unit of its kind")
	assert.Zero(t, g.Within["moisture"], "and a house that gives a figure anew does not keep the range of the old one")
	assert.InDelta(t, 8.0/3600, lib.Models["mash"].Within["gel-rate"].Low, 1e-12)
	assert.InDelta(t, 66, lib.Models["mash"].Within["reference"].High, 1e-9)
	assert.InDelta(t, 7200, lib.Enzymes["alpha-amylase"].Within["half-life"].High, 1e-9)

	for lines, want := range map[string]diag.Code{ // "": not the shape of a line
		"  starch 70 %, 71..72 %":           diag.CodeOutOfRange,
		"  starch 70 %, 60..69 %":           diag.CodeOutOfRange,
		"  starch 70 %, 70..70 %":           diag.CodeOutOfRange,
		"  starch 70 %, 72..68 %":           diag.CodeRangeTurned,
		"  starch 70 %, 68..200 %":          diag.CodeOutOfRange,
		"  gelatinizes 62..75 C, 63..80 C":  diag.CodeOutOfRange,
		"  starch 70 %, 68..72 C":           diag.CodeWrongKind,
		"  starch 70 %, 72 %":               "",
		"  starch 70 %, 68..72 %, 60..80 %": "",
	} {
		_, list := read(lines)
		if assert.NotEmpty(t, list, lines) {
			assert.True(t, want == "" || want == list[0].Code, "%s: %s", lines, list.Error())
		}
	}
}

// The range of a variant's or a house's line goes with the line: at the figure itself
// both ends may stand.
func TestSureToTheEnd(t *testing.T) {
	h, err := LoadFS(bench(t, map[string]string{"library.batch": "grain corn {\n  starch 70 %, 70..72 %\n}\n"}), "", Options{})
	require.NoError(t, err)
	require.Empty(t, h.Check())
}
