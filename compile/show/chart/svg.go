package chart

import (
	_ "embed"
	"slices"
	"strconv"
	"strings"

	"newmake/compile/show/markup"
)

// Chart is a picture ready to be drawn.
type Chart struct {
	ID    string // of the element; unique on a page
	Title string
	Desc  string // what the picture shows, in words
	W, H  int
	Marks []Mark
	Touch []Touch // what its curves say, for a page on which they can be touched
	// Narrow is the same for a screen as narrow as a phone's, in letters of the same size;
	// nil in it itself.
	Narrow *Chart
}

// both draws a picture for paper and for a narrow screen.
func both(draw func(width float64) Chart) Chart {
	c := draw(width)
	if c.ID == "" {
		return c
	}
	narrow := draw(narrowWidth)
	narrow.ID += "-narrow"
	c.Narrow = &narrow
	return c
}

// Kind is the class that says on which screens a picture is drawn, after a space; empty for
// one that is drawn on all.
func (c Chart) Kind() string {
	switch {
	case c.Narrow != nil:
		return " wide"
	case c.W == narrowWidth:
		return " narrow"
	}
	return ""
}

// right is where panels end.
func (c *Chart) right() float64 { return float64(c.W) - 8 }

// narrow reports whether it is drawn for a narrow screen.
func (c *Chart) narrow() bool { return c.W < width }

// Banded reports whether it shows how far off a reading may be.
func (c Chart) Banded() bool {
	return slices.ContainsFunc(c.Marks, func(m Mark) bool { return m.Class == "band" })
}

// Mark is one thing drawn. Its class says how, in the page's style sheet.
type Mark struct {
	Shape  string // path, text, dot
	Class  string
	D      string // path: its data
	Fill   string // path: a hatch, by the name of its pattern
	X, Y   string
	Anchor string // text: start, middle, end
	Turn   bool   // text: reads upwards
	Text   string
}

// Style is how the marks look, in CSS, black on white.
//
//go:embed chart.css
var Style string

// Draw writes the picture.
func Draw(w *markup.Page, c *Chart) { writeChart(w, c) }

// num writes a coordinate, to a tenth of a pixel.
func num(x float64) string { return strconv.FormatFloat(x, 'f', 1, 64) }

// pen writes path data.
type pen struct{ b strings.Builder }

func (p *pen) move(x, y float64) { p.at('M', x, y) }
func (p *pen) line(x, y float64) { p.at('L', x, y) }
func (p *pen) at(c byte, x, y float64) {
	p.b.WriteByte(c)
	p.b.WriteString(num(x) + " " + num(y))
}
func (p *pen) close()         { p.b.WriteByte('Z') }
func (p *pen) String() string { return p.b.String() }

func (c *Chart) path(class, d string) {
	c.Marks = append(c.Marks, Mark{Shape: "path", Class: class, D: d})
}

// stroke draws a straight line.
func (c *Chart) stroke(class string, x1, y1, x2, y2 float64) {
	var p pen
	p.move(x1, y1)
	p.line(x2, y2)
	c.path(class, p.String())
}

// area draws a box, filled with a hatch; none if its name is empty.
func (c *Chart) area(class, hatch string, x, y, w, h float64) {
	var p pen
	p.move(x, y)
	p.line(x+w, y)
	p.line(x+w, y+h)
	p.line(x, y+h)
	p.close()
	c.Marks = append(c.Marks, Mark{Shape: "path", Class: class, D: p.String(), Fill: hatch})
}

func (c *Chart) dot(x, y float64) {
	c.Marks = append(c.Marks, Mark{Shape: "dot", Class: "dot", X: num(x), Y: num(y)})
}

// text writes at a point: anchor is start, middle or end.
func (c *Chart) text(class, anchor string, x, y float64, s string) {
	c.Marks = append(c.Marks, Mark{Shape: "text", Class: class, Anchor: anchor, X: num(x), Y: num(y), Text: s})
}

// under writes a mark of an axis about its place, moved in where it would run
// off the paper.
func (c *Chart) under(x, y float64, s string) {
	half := wide(s) / 2
	x = min(max(x, half+1), float64(c.W)-half-1)
	c.text("tick", "middle", x, y, s)
}

// turned writes upwards, about a point in its middle.
func (c *Chart) turned(class string, x, y float64, s string) {
	c.Marks = append(c.Marks, Mark{Shape: "text", Class: class, Anchor: "middle", X: num(x), Y: num(y), Text: s, Turn: true})
}
