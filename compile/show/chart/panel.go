package chart

import (
	"math"
	"strings"

	"newmake/compile/measure"
	"newmake/lang/quantity"
)

// scale takes values to places on paper.
type scale struct {
	from, to   float64 // values
	start, end float64 // places
}

func (s scale) at(v float64) float64 {
	if s.to == s.from {
		return s.start
	}
	return s.start + (v-s.from)/(s.to-s.from)*(s.end-s.start)
}

func (s scale) holds(v float64) bool { return v >= s.from-1e-9 && v <= s.to+1e-9 }

// step is the distance of round ticks: 1, 2 or 5 times a power of ten, so that
// about want of them fit.
func step(from, to float64, want int) float64 {
	if rough := (to - from) / float64(want); rough > 0 {
		return quantity.RoundUp(rough * 0.999)
	}
	return 1
}

// round widens a range to whole steps.
func round(from, to, step float64) (float64, float64) {
	a, b := math.Floor(from/step+1e-9)*step, math.Ceil(to/step-1e-9)*step
	if a == b {
		b += step
	}
	return a, b
}

// ticks are the whole steps of a range.
func ticks(from, to, step float64) []float64 {
	var out []float64
	for i := math.Ceil(from/step - 1e-9); i*step <= to+1e-9*step; i++ {
		out = append(out, i*step)
	}
	return out
}

// places is how many decimals a tick needs.
func places(step float64) int {
	n := 0
	for step < 0.999 && n < 4 {
		step, n = step*10, n+1
	}
	return n
}

// panel is one pair of axes of a chart.
type panel struct {
	c    *Chart
	x, y scale
}

func (p panel) left() float64   { return p.x.start }
func (p panel) right() float64  { return p.x.end }
func (p panel) top() float64    { return p.y.end }
func (p panel) bottom() float64 { return p.y.start }

// panel makes axes in a box of paper. The y range is widened to round ticks.
func (c *Chart) panel(left, top, right, bottom, xFrom, xTo, yFrom, yTo float64, yTicks int) (panel, float64) {
	by := step(yFrom, yTo, yTicks)
	yFrom, yTo = round(yFrom, yTo, by)
	return panel{c, scale{xFrom, xTo, left, right}, scale{yFrom, yTo, bottom, top}}, by
}

// yAxis draws the ruled lines of the values and says what they are.
func (p panel) yAxis(by float64, label string) {
	p.ruled(by)
	p.c.axisName(p.left()-plotLeft, (p.top()+p.bottom())/2, label)
}

// ruled draws the lines of the values.
func (p panel) ruled(by float64) {
	for _, v := range ticks(p.y.from, p.y.to, by) {
		y := p.y.at(v)
		p.c.stroke("rule", p.left(), y, p.right(), y)
		p.c.text("tick", "end", p.left()-6, y+4.5, measure.Number(v, places(by)))
	}
}

// axisName writes what an axis is, upwards, its unit in a line of its own.
func (c *Chart) axisName(left, y float64, label string) {
	name, unit, _ := strings.Cut(label, ", ")
	c.turned("axis", left+11, y, name)
	c.turned("tick", left+24, y, unit)
}

// frame draws the panel's edge.
func (p panel) frame() {
	p.c.area("frame", "", p.left(), p.top(), p.right()-p.left(), p.bottom()-p.top())
}

// curve draws points as one line. Points off the panel are left out.
func (p panel) curve(class string, n int, at func(i int) (x, y float64)) {
	var d pen
	down := false
	for i := range n {
		x, y := at(i)
		if !p.x.holds(x) || !p.y.holds(y) {
			down = false
			continue
		}
		if down {
			d.line(p.x.at(x), p.y.at(y))
		} else {
			d.move(p.x.at(x), p.y.at(y))
		}
		down = true
	}
	if s := d.String(); s != "" {
		p.c.path(class, s)
	}
}

// band draws what a curve may be, grey, kept inside the panel. It is drawn before all
// that is read on it. Nothing is drawn where there is no band.
func (p panel) band(n int, at func(i int) (x, low, high float64)) {
	if n < 2 {
		return
	}
	within := func(y float64) float64 { return p.y.at(min(max(y, p.y.from), p.y.to)) }
	var d pen
	for i := range n {
		x, _, high := at(i)
		if i == 0 {
			d.move(p.x.at(x), within(high))
		} else {
			d.line(p.x.at(x), within(high))
		}
	}
	for i := n - 1; i >= 0; i-- {
		x, low, _ := at(i)
		d.line(p.x.at(x), within(low))
	}
	p.c.path("band", d.String()+"Z")
}

// bracket draws one at x over a range of values, open to the left.
func (p panel) bracket(x, low, high float64) {
	var d pen
	d.move(x-3, p.y.at(high))
	d.line(x+1, p.y.at(high))
	d.line(x+1, p.y.at(low))
	d.line(x-3, p.y.at(low))
	p.c.path("bracket", d.String())
}

// between reads a curve at x, on the line between its points: where a mark on
// the picture is to touch it.
func between(n int, x float64, at func(i int) (x, y float64)) float64 {
	if n == 0 {
		return 0
	}
	x0, y0 := at(0)
	for i := 1; i < n; i++ {
		x1, y1 := at(i)
		if x <= x1 && x1 > x0 {
			return y0 + (max(x, x0)-x0)/(x1-x0)*(y1-y0)
		}
		x0, y0 = x1, y1
	}
	return y0
}

// span is the range of a curve.
func span(n int, at func(i int) float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for i := range n {
		low, high = min(low, at(i)), max(high, at(i))
	}
	return low, high
}
