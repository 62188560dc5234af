package chart

import (
	"testing"

	"newmake/compile/show/markup"
	"newmake/compile/show/markup/precompile"
)

func templates(t testing.TB) precompile.Set {
	return precompile.Set{Package: "chart", Sources: precompile.Files(t, "chart.tmpl"), Roots: map[string]any{"chart": &Chart{}}}
}

// TestWritten: written.go is what the templates make.
func TestWritten(t *testing.T) { templates(t).Keep(t, "written.go") }

// TestSameAsTemplates: every kind of mark, and text that would do harm if it were obeyed.
func TestSameAsTemplates(t *testing.T) {
	const evil = `</title><script>alert("1+1")</script>'&` + "\x00"
	c := &Chart{ID: evil, Title: evil, Desc: evil, W: 700, H: -3}
	for _, shape := range []string{"path", "dot", "text"} {
		for _, turn := range []bool{false, true} {
			c.Marks = append(c.Marks, Mark{Shape: shape, Class: evil, D: evil, X: "1.0", Y: evil, Anchor: evil, Turn: turn, Text: evil}, Mark{Shape: shape, Fill: evil})
		}
	}
	both := &Chart{ID: "wide", Narrow: c}
	for _, one := range []*Chart{{}, c, both} {
		var page markup.Page
		Draw(&page, one)
		templates(t).Same(t, "chart", nil, one, page.String())
	}
}
