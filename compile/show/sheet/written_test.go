package sheet

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/ask/bands"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/chart"
	"newmake/compile/show/markup"
	"newmake/compile/show/markup/precompile"
	"newmake/lang/check"
	"newmake/lang/testflag"
)

func templates(t testing.TB) precompile.Set {
	sources := precompile.Files(t, "*.tmpl")
	css := precompile.Files(t, "*.css")
	sources["style"] = "<style>" + strings.Replace(css["sheet.css"], `{{template "short.css" .}}`, css["short.css"], 1) + "\n" + chart.Style + "</style>"
	return precompile.Set{
		Package: "sheet", Sources: sources, Funcs: says{}, Roots: map[string]any{"sheet": &view{}, "style": &view{}},
		Elsewhere: map[string]precompile.Call{"chart": {Sources: precompile.Files(t, "../chart/chart.tmpl"), Import: "newmake/compile/show/chart", Func: "chart.Draw"}},
	}
}

// TestWritten: written.go is what the templates make.
func TestWritten(t *testing.T) { templates(t).Keep(t, "written.go") }

// TestSameAsTemplates: sheets of the examples are those that html/template makes, in both
// systems of units, with their bands and without, and with text that would do harm if it
// were obeyed.
func TestSameAsTemplates(t *testing.T) {
	set := templates(t)
	try := func(p *plan.Plan, o Options) {
		v, f := viewOf(p, o)
		var style, page markup.Page
		writeStyle(&style, f, v)
		set.Same(t, "style", f, v, style.String())
		writeSheet(&page, f, v)
		set.Same(t, "sheet", f, v, page.String())
	}
	try(&plan.Plan{}, Options{})
	for _, house := range []string{"lantern-hollow", "herring-stair"} {
		h, err := check.Load(filepath.Join("../../../examples", house), check.Options{})
		require.NoError(t, err)
		for i, name := range h.Batches() {
			if i%testflag.Every(8) != 0 {
				continue
			}
			b, list := h.Batch(name)
			require.NotNil(t, b, list.Error())
			p, computed := compile.Compile(b)
			require.NotNil(t, p, computed.Error())
			try(p, Options{Units: measure.UnitsOf(b.Units), Stale: i%8 == 0})
			bands.Put(p, b)
			try(p, Options{Units: measure.SI})
			evil := p.Strings(func(s string) string { return s })
			for i := range evil.Bill.Lines {
				evil.Bill.Lines[i].Name = `<script>alert("1+1")</script>'&`
			}
			evil.Batch.Name, evil.Plant.Name = `</style><img src=x onerror=alert(1)>`, `"}</style>`
			try(evil, Options{Stale: true})
			try(p, Options{Short: true})
			try(evil, Options{Short: true, Stale: true})
		}
	}
}
