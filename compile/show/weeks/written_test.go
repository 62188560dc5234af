package weeks

import (
	"testing"

	"newmake/compile/show/markup"
	"newmake/compile/show/markup/precompile"
)

func templates(t testing.TB) precompile.Set {
	sources := precompile.Files(t, "*.html")
	return precompile.Set{Package: "weeks", Sources: map[string]string{"season": sources["season.html"], "week": sources["week.html"]}, Roots: map[string]any{"season": &view{}, "week": &weekView{}}}
}

// TestWritten: written.go is what the templates make.
func TestWritten(t *testing.T) { templates(t).Keep(t, "written.go") }

// TestSameAsTemplates: a page with nothing on it, and numbers of every size. Pages with
// all on them are tried where what they hold is.
func TestSameAsTemplates(t *testing.T) {
	for _, v := range []*view{{}, {Pictures: []picture{{Width: 1e22, Height: -0.1, Left: 1e-7, Rows: []row{{Y: 3, Line: "M0 0", HasLimit: true}}}}}} {
		var out markup.Page
		writeSeason(&out, v)
		templates(t).Same(t, "season", nil, v, out.String())
	}
}
