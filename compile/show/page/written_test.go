package page

import (
	"testing"

	"newmake/compile/show/markup/precompile"
)

// templates are what the page is made of. Every page that a test here makes is held
// against them too.
func templates(t testing.TB) precompile.Set {
	return precompile.Set{
		Package: "page", Sources: precompile.Files(t, "page.tmpl"), Funcs: says{}, Roots: map[string]any{"page": &shown{}},
		Elsewhere: map[string]precompile.Call{"chart": {Sources: precompile.Files(t, "../chart/chart.tmpl"), Import: "newmake/compile/show/chart", Func: "chart.Draw"}},
	}
}

// TestWritten: written.go is what the templates make.
func TestWritten(t *testing.T) { templates(t).Keep(t, "written.go") }
