package chart

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"newmake/compile/measure"
	"newmake/compile/plan"
)

// width of every chart, in pixels of CSS: that of a page's text.
const width = 700

// narrowWidth is that of a phone's screen, less the edges of a page.
const narrowWidth = 360

const (
	plotLeft = 66
	nameRoom = 164 // right of the mash, for the enzymes' names
	rowH     = 17  // a row of labels
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

const (
	mashH       = 92.0
	narrowMashH = 120.0
	leastMashH  = 54.0 // of a mash of many steps, whose page is full
	manySteps   = 9
	shortRow    = 17.0
	windowRow   = 27.0 // a name beside the mash, with its range below it
	bracketGap  = 8.0
)

// Mash draws the temperature over the mash day, what goes in when, how long it rests how
// warm, and beside it brackets of the temperatures at which its enzymes work. Readings of a
// run of the plan may be marked on it.
func Mash(p *plan.Plan, u measure.Units, taken ...Taken) Chart {
	return both(func(w float64) Chart { return mash(p, u, taken, w) })
}

func mash(p *plan.Plan, u measure.Units, taken []Taken, w float64) Chart {
	m := p.Mash
	c := Chart{ID: "chart-mash", Title: "Temperature of the mash", W: int(w)}
	n := len(m.Curve)
	if n < 2 || len(m.Steps) == 0 {
		return Chart{}
	}
	first, _ := find(p, m.Steps[0].ID)
	start := plan.Moment(first.Start)
	at := func(i int) (float64, float64) { return m.Curve[i].Min, temp(u, m.Curve[i].TempC) }
	low, high := span(n, func(i int) float64 { return temp(u, m.Curve[i].TempC) })
	bands := bandsOf(p).Mash
	for _, b := range bands {
		low, high = min(low, temp(u, b.LowC)), max(high, temp(u, b.HighC))
	}
	low, high = widen(low, high, taken, "temperature", func(t Taken) float64 { return temp(u, t.Value) })
	minute := func(t Taken) float64 { return t.Clock.Sub(start).Minutes() }
	from, end := widen(0, m.Curve[n-1].Min, taken, "temperature", minute)

	edge := c.right()
	switch {
	case c.narrow():
		edge -= bracketGap * float64(len(m.Windows))
	case len(m.Windows) > 0:
		edge -= nameRoom + bracketGap*float64(len(m.Windows))
	}
	x := scale{from, end, plotLeft, edge}
	flags := additions(m, x)
	row, begin, rowCount := rows(flags, plotLeft, edge)
	top := float64(rowCount*rowH + 8)
	least, nameRow := mashH, windowRow
	if len(m.Steps) > manySteps {
		least = leastMashH
		if len(m.Windows) > 2 {
			nameRow = shortRow
		}
	}
	bottom := top + max(least, nameRow*float64(len(m.Windows)))
	if c.narrow() {
		bottom = top + narrowMashH
	}
	pane, by := c.panel(plotLeft, top, edge, bottom, from, end, low, high+4, 6)
	c.H = int(bottom) + 19
	if c.narrow() {
		c.H += int(shortRow) * len(m.Windows)
	}

	pane.band(len(bands), func(i int) (float64, float64, float64) {
		return bands[i].Min, temp(u, bands[i].LowC), temp(u, bands[i].HighC)
	})
	pane.yAxis(by, "mash, "+tempUnit(u))
	pane.clockLines(start)
	pane.clockLabels(start)
	pane.frame()
	windows(pane, m.Windows, nameRow, u)
	for i, f := range flags {
		y := top - 6 - float64(row[i]*rowH)
		c.stroke("leader", f.x, y+3, f.x, top)
		c.text("label", "start", begin[i], y, f.text)
	}
	pane.curve("line", n, at)
	for _, i := range steps(m) {
		begun := m.Steps[i].StartMin
		c.dot(pane.x.at(begun), pane.y.at(between(n, begun, at)))
	}
	pane.notes(n, at, plateaus(m, u))
	touchMash(&c, pane.x, m, start, u)
	for _, t := range taken {
		if t.Of == "temperature" {
			pane.read(minute(t), temp(u, t.Value), t.Off)
		}
	}
	c.Desc = mashDesc(p, u, start) + takenDesc(taken, func(t Taken) string { return hm(t.Clock) + " " + takenWords(t, u) })
	return c
}

// plateaus are what is written beside each rest: how warm, and how long.
func plateaus(m plan.Mash, u measure.Units) []value {
	var out []value
	for _, s := range m.Steps {
		if s.Verb == "rest" || s.Verb == "boil" {
			out = append(out, value{s.StartMin + s.Minutes/2, temp(u, (s.FromC+s.ToC)/2), u.Temp(s.ToC) + ", " + measure.Duration(s.Minutes)})
		}
	}
	return out
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

// near is how close what goes in one after the other may be and still have a flag each.
const near = 26.0

// additions are the flags of what goes in, one for what goes in close together.
func additions(m plan.Mash, x scale) []flag {
	var out []flag
	last := 0.0
	for _, i := range steps(m) {
		at, words := x.at(m.Steps[i].StartMin), strings.Join(m.Steps[i].Adds, ", ")
		if n := len(out); n > 0 && at-last < near {
			out[n-1].text += ", " + words
		} else {
			out = append(out, flag{at, words})
		}
		last = at
	}
	for i := range out {
		out[i].text = shorten(out[i].text, min(50, int((x.end-x.start)/glyphW)))
	}
	return out
}

func windowName(w plan.EnzymeWindow) string {
	if w.Malt {
		return "malt's " + w.Name
	}
	return w.Name + ", added"
}

// windows draws, right of the mash, a bracket for each enzyme over the temperatures at
// which it works, and its name at about the height of its bracket, as far as the names
// leave one another room; with its range, where a name has two lines.
func windows(p panel, all []plan.EnzymeWindow, nameRow float64, u measure.Units) {
	order := make([]int, 0, len(all))
	for i := range all {
		order = append(order, i)
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(all[b].HighC, all[a].HighC) })
	names := p.right() + 14 + bracketGap*float64(len(all))
	y := p.top() + 10
	below := p.bottom() + 19 + 12
	for k, i := range order {
		w := all[i]
		low, high := max(temp(u, w.LowC), p.y.from), min(temp(u, w.HighC), p.y.to)
		if middle := p.y.at((low + high) / 2); middle > y {
			y = min(middle, p.bottom()-nameRow*float64(len(order)-1-k)-(nameRow-11))
		}
		if high > low {
			x := p.right() + 8 + bracketGap*float64(k)
			p.bracket(x, low, high)
			if !p.c.narrow() {
				p.c.stroke("leader", x+1, min(max(y-4, p.y.at(high)), p.y.at(low)), names-4, y-4)
			}
		}
		if p.c.narrow() { // below, in the order of the brackets
			p.c.text("tick", "end", p.c.right()+6, below, "bracket "+strconv.Itoa(k+1)+": "+shorten(windowName(w), 22)+", "+
				measure.Number(temp(u, w.LowC), 0)+" to "+measure.Number(temp(u, w.HighC), 0)+" "+tempUnit(u))
			below += shortRow
			continue
		}
		if nameRow == shortRow {
			p.c.text("label", "start", names, y, shorten(windowName(w), 21))
			y += nameRow
			continue
		}
		p.c.text("label", "start", names, y, shorten(w.Name, 16))
		whose := "added, "
		if w.Malt {
			whose = "malt's, "
		}
		p.c.text("tick", "start", names, y+13, whose+measure.Number(temp(u, w.LowC), 0)+" to "+measure.Number(temp(u, w.HighC), 0)+" "+tempUnit(u))
		y += nameRow
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
