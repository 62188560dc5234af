package chart

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"newmake/compile/measure"
	"newmake/compile/plan"
)

// width of every chart, in pixels of CSS: that of a page's text.
const width = 700

const (
	plotLeft  = 66
	plotRight = width - 8
	nameRoom  = 182 // right of the mash, for the enzymes' names
	rowH      = 17  // a row of labels
)

// step finds a step of the schedule.
func find(p *plan.Plan, id string) (plan.Step, bool) {
	for _, s := range p.Schedule.Steps {
		if s.ID == id {
			return s, true
		}
	}
	return plan.Step{}, false
}

func temp(u measure.Units, c float64) float64 {
	v, _ := u.Value(plan.Of(c, plan.Celsius))
	return v
}

func tempUnit(u measure.Units) string {
	_, unit := u.Value(plan.Of(0, plan.Celsius))
	return unit
}

// Mash draws the temperature over the mash day, what goes in when, and where
// the enzymes work once they are in. Readings of a run of the plan may be marked on it.
func Mash(p *plan.Plan, u measure.Units, taken ...Taken) Chart {
	m := p.Mash
	c := Chart{ID: "chart-mash", Title: "Temperature of the mash", W: width}
	n := len(m.Curve)
	if n < 2 || len(m.Steps) == 0 {
		return Chart{}
	}
	first, _ := find(p, m.Steps[0].ID)
	start := plan.Moment(first.Start)
	at := func(i int) (float64, float64) { return m.Curve[i].Min, temp(u, m.Curve[i].TempC) }
	low, high := span(n, func(i int) float64 { return temp(u, m.Curve[i].TempC) })
	low, high = widen(low, high, taken, "temperature", func(t Taken) float64 { return temp(u, t.Value) })
	minute := func(t Taken) float64 { return t.Clock.Sub(start).Minutes() }
	begin, end := widen(0, m.Curve[n-1].Min, taken, "temperature", minute)

	flags := additions(m)
	edge := float64(plotRight)
	if len(m.Windows) > 0 {
		edge -= nameRoom
	}
	x := scale{begin, end, plotLeft, edge}
	for i := range flags {
		flags[i].x = x.at(flags[i].x)
	}
	row, left, rowCount := rows(flags, plotLeft, edge)
	top := float64(rowCount*rowH + 8)
	pane, by := c.panel(plotLeft, top, edge, top+225, begin, end, low, high+2, 7)
	c.H = int(top) + 225 + 42

	if b := p.Bands; b != nil {
		pane.band(len(b.Mash), func(i int) (float64, float64, float64) {
			return b.Mash[i].Min, temp(u, b.Mash[i].LowC), temp(u, b.Mash[i].HighC)
		})
	}
	windows(pane, m.Windows, u)
	pane.yAxis(by, "temperature, "+tempUnit(u))
	pane.clockAxis(start, "clock")
	pane.frame()
	for i, f := range flags {
		y := top - 6 - float64(row[i]*rowH)
		touch := pane.y.at(between(n, m.Steps[steps(m)[i]].StartMin, at))
		c.stroke("leader", f.x, y+3, f.x, touch)
		c.dot(f.x, touch)
		c.text("label", "start", left[i], y, f.text)
	}
	pane.curve("line", n, at)
	touchMash(&c, pane.x, m, start, u)
	for _, t := range taken {
		if t.Of == "temperature" {
			pane.read(minute(t), temp(u, t.Value), t.Off)
		}
	}
	c.Desc = mashDesc(p, u, start) + takenDesc(taken, func(t Taken) string { return hm(t.Clock) + " " + takenWords(t, u) })
	return c
}

// steps are the indexes of the steps that put something in.
func steps(m plan.Mash) []int {
	var out []int
	for i, s := range m.Steps {
		if len(s.Adds) > 0 {
			out = append(out, i)
		}
	}
	return out
}

// additions are the flags of what goes in, placed by the minute.
func additions(m plan.Mash) []flag {
	var out []flag
	for _, i := range steps(m) {
		out = append(out, flag{m.Steps[i].StartMin, shorten(strings.Join(m.Steps[i].Adds, ", "), 40)})
	}
	return out
}

var windowHatch = []string{"rising", "falling", "dots", "level", "upright"}

func windowName(w plan.EnzymeWindow) string {
	if w.Malt {
		return "malt's " + w.Name
	}
	return w.Name + ", added"
}

// windows hatches, for each enzyme, the temperatures at which it works, from
// when it is in. Its name stands at the right, in its band.
func windows(p panel, all []plan.EnzymeWindow, u measure.Units) {
	for i, w := range all {
		low, high := max(temp(u, w.LowC), p.y.from), min(temp(u, w.HighC), p.y.to)
		if high <= low || w.FromMin >= p.x.to {
			continue
		}
		x, y := p.x.at(max(w.FromMin, p.x.from)), p.y.at(high)
		p.c.area("window", windowHatch[i%len(windowHatch)], x, y, p.right()-x, p.y.at(low)-y)
	}
	names(p, all, u)
}

// names stand right of the plot, each at the height of its window as far as
// they leave one another room, with a square of its hatch.
func names(p panel, all []plan.EnzymeWindow, u measure.Units) {
	const apart = 36
	order := make([]int, 0, len(all))
	for i := range all {
		order = append(order, i)
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(all[b].HighC, all[a].HighC) })
	y := p.top() + 12
	for _, i := range order {
		w := all[i]
		if want := p.y.at(temp(u, (w.LowC+w.HighC)/2)); want > y {
			y = min(want, p.bottom())
		}
		p.c.area("window", windowHatch[i%len(windowHatch)], p.right()+10, y-10, 14, 24)
		p.c.text("label", "start", p.right()+30, y, shorten(w.Name, 18))
		whose := "added, "
		if w.Malt {
			whose = "malt's, "
		}
		p.c.text("tick", "start", p.right()+30, y+15, whose+measure.Number(temp(u, w.LowC), 0)+" to "+measure.Number(temp(u, w.HighC), 0)+" "+tempUnit(u))
		y += apart
	}
}

func mashDesc(p *plan.Plan, u measure.Units, start time.Time) string {
	m := p.Mash
	var b strings.Builder
	fmt.Fprintf(&b, "From %s the mash is at %s", hm(start), u.Temp(m.Curve[0].TempC))
	for _, s := range m.Steps {
		at := hm(start.Add(time.Duration(s.StartMin * float64(time.Minute))).Round(time.Minute))
		switch {
		case len(s.Adds) > 0:
			fmt.Fprintf(&b, "; %s %s goes in", at, strings.Join(s.Adds, ", "))
		case s.Verb == "heat" || s.Verb == "cool":
			fmt.Fprintf(&b, "; %s %s to %s in %s", at, s.Verb, u.Temp(s.ToC), measure.Duration(s.Minutes))
		case s.Verb == "rest" || s.Verb == "boil":
			fmt.Fprintf(&b, "; %s %s for %s at %s", at, s.Verb, measure.Duration(s.Minutes), u.Temp(s.ToC))
		}
	}
	b.WriteString(".")
	for _, w := range m.Windows {
		fmt.Fprintf(&b, " %s works from %s to %s.", windowName(w), u.Temp(w.LowC), u.Temp(w.HighC))
	}
	return b.String()
}
