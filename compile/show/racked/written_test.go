package racked

import (
	"testing"

	"newmake/compile/show/chart"
	"newmake/compile/show/markup"
	"newmake/compile/show/markup/precompile"
)

func templates(t testing.TB) precompile.Set {
	return precompile.Set{
		Package: "racked", Sources: map[string]string{"page": precompile.Files(t, "page.html")["page.html"]}, Roots: map[string]any{"page": &view{}},
		Elsewhere: map[string]precompile.Call{"chart": {Sources: precompile.Files(t, "../chart/chart.tmpl"), Import: "newmake/compile/show/chart", Func: "chart.Draw"}},
	}
}

// TestWritten: written.go is what the templates make.
func TestWritten(t *testing.T) { templates(t).Keep(t, "written.go") }

// TestSameAsTemplates: every part of a page, and text that would do harm if it were obeyed.
func TestSameAsTemplates(t *testing.T) {
	const evil = `</title><script>alert("1+1")</script>'&`
	full := &view{
		Look: markup.Look{Style: "<style>p{}</style>", Policy: evil}, On: evil, Title: evil, Alcohol: evil, Attention: []wanted{{evil, evil}, {}},
		Chart: chart.Chart{ID: evil, Marks: []chart.Mark{{Shape: "text", Text: evil}}}, Key: evil,
		Rows: []row{{Serial: evil, Place: evil, Of: evil, Filled: evil, Last: evil, Lawful: evil, LawfulOf: evil, Over: evil, OverOf: evil, Then: evil, Leak: true}, {}}, Totals: [][]string{{evil, "", evil, evil, evil}}, Kinds: [][]string{{evil, evil, "", evil, evil}}, Notes: []string{evil, ""}, Lots: []string{evil},
	}
	for _, v := range []*view{{}, full} {
		var out markup.Page
		writePage(&out, v)
		templates(t).Same(t, "page", nil, v, out.String())
	}
}
