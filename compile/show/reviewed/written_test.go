package reviewed

import (
	"testing"

	"newmake/compile/show/chart"
	"newmake/compile/show/markup"
	"newmake/compile/show/markup/precompile"
)

func templates(t testing.TB) precompile.Set {
	return precompile.Set{
		Package: "reviewed", Sources: map[string]string{"page": precompile.Files(t, "page.html")["page.html"]}, Roots: map[string]any{"page": &view{}},
		Elsewhere: map[string]precompile.Call{"chart": {Sources: precompile.Files(t, "../chart/chart.tmpl"), Import: "newmake/compile/show/chart", Func: "chart.Draw"}},
	}
}

// TestWritten: written.go is what the templates make.
func TestWritten(t *testing.T) { templates(t).Keep(t, "written.go") }

// TestSameAsTemplates: every part of a page, and text that would do harm if it were obeyed.
func TestSameAsTemplates(t *testing.T) {
	const evil = `</title><script>alert("1+1")</script>'&`
	rows := [][]string{{evil, "", evil, evil, evil}, {evil, evil, evil, "", evil}}
	lines := []line{{evil, rows[0], true}, {Cells: rows[1]}}
	full := &view{
		markup.Look{Style: "<style>p{}</style>", Policy: evil}, evil, evil, evil, evil, evil, []string{evil}, true, rows, evil, []breakRow{{evil, evil, rows[0]}, {}}, evil, rows, &otherwise{rows[0], rows}, evil,
		[]part{{evil, evil, chart.Chart{ID: evil, Marks: []chart.Mark{{Shape: "text", Text: evil}}}, lines, evil}, {}}, evil, []string{evil}, []lacks{{evil, []string{evil}}, {}},
	}
	other := *full
	other.Small, other.Right = evil, false
	for _, v := range []*view{{}, full, &other} {
		var page markup.Page
		writePage(&page, v)
		templates(t).Same(t, "page", nil, v, page.String())
	}
}
