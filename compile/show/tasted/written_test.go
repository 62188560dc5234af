package tasted

import (
	"testing"

	"newmake/compile/book/taste"
	"newmake/compile/show/markup"
	"newmake/compile/show/markup/precompile"
)

func templates(t testing.TB) precompile.Set {
	return precompile.Set{Package: "tasted", Sources: map[string]string{"sheets": precompile.Files(t, "sheets.html")["sheets.html"], "found": precompile.Files(t, "found.html")["found.html"]}, Funcs: says{}, Roots: map[string]any{"sheets": &view{}, "found": &foundView{}}}
}

// TestWritten: written.go is what the templates make.
func TestWritten(t *testing.T) { templates(t).Keep(t, "written.go") }

// TestSameAsTemplates: every part of the pages, and text that would do harm if it were
// obeyed.
func TestSameAsTemplates(t *testing.T) {
	const evil = `</title><script>alert("1+1")</script>'&`
	sets := []taste.Set{{Right: 1, Cups: []taste.Cup{{Code: evil, Sample: 1, Named: true}, {Code: "", Sample: 0}}}, {Right: -1, Cups: []taste.Cup{{Code: evil}}}}
	look := markup.Look{Style: "<style>p{}</style>", Policy: evil}
	full := &view{look, &taste.Judged{Trial: evil, On: evil, Nosed: evil, Samples: []string{evil, evil}}, []page{{evil, sets}, {"", sets}}, evil, []string{evil}, evil}
	for _, v := range []*view{{Judged: &taste.Judged{}}, full} {
		var out markup.Page
		writeSheets(&out, says{}, v)
		templates(t).Same(t, "sheets", says{}, v, out.String())
	}
	table := foundTable{evil, []string{evil, ""}, [][]foundCell{{{evil, evil}, {evil, evil}}, {}}, []string{evil}}
	for _, v := range []*foundView{{}, {look, evil, []foundTable{table, {}, {Caption: evil, Says: []string{evil}}}, []string{evil}}} {
		var out markup.Page
		writeFound(&out, says{}, v)
		templates(t).Same(t, "found", says{}, v, out.String())
	}
}
