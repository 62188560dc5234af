package chart

import (
	"fmt"
	"strings"
	"time"

	"newmake/compile/measure"
	"newmake/compile/plan"
)

// Ferment draws gravity, temperature and pH over the ferment, one above the other, with
// a dot where somebody reads them: three pictures of what is read, and none of what is
// not. Readings of a run of the plan may be marked on it.
func Ferment(p *plan.Plan, u measure.Units, taken ...Taken) Chart {
	return both(func(w float64) Chart { return ferment(p, u, taken, w) })
}

func ferment(p *plan.Plan, u measure.Units, taken []Taken, w float64) Chart {
	f := p.Ferment
	n := len(f.Curve)
	if n < 2 {
		return Chart{}
	}
	c := Chart{ID: "chart-ferment", Title: "Gravity, temperature and pH of the ferment", W: int(w)}
	run, _ := find(p, "ferment.run")
	start := plan.Moment(run.Start)
	_, end := widen(0, f.Curve[n-1].Hour, taken, "gravity", func(t Taken) float64 { return t.Hours })
	_, end = widen(0, end, taken, "temperature", func(t Taken) float64 { return t.Hours })
	var at []float64 // hours at which it is read
	for _, s := range p.Schedule.Steps {
		if strings.HasPrefix(s.ID, "ferment.round.") {
			at = append(at, plan.Moment(s.Start).Sub(start).Hours())
		}
	}
	held := f.HoldHighC > f.HoldLowC
	edge := c.right()
	switch {
	case held && c.narrow():
		edge -= 8
	case held:
		edge -= 96
	}
	panels := []struct {
		label  string
		height float64
		y      func(i int) float64
		say    func(v float64) string
		of     string
		taken  func(Taken) float64
		band   func(b plan.FermentBand) (low, high float64) // nil where there is none
	}{
		{"gravity, SG", 92, func(i int) float64 { return f.Curve[i].SG }, func(v float64) string { return measure.Number(v, 3) },
			"gravity", func(t Taken) float64 { return t.Value },
			func(b plan.FermentBand) (float64, float64) { return b.LowSG, b.HighSG }},
		{"temperature, " + tempUnit(u), 86, func(i int) float64 { return temp(u, f.Curve[i].TempC) }, func(v float64) string { return measure.Number(v, 0) + " " + tempUnit(u) },
			"temperature", func(t Taken) float64 { return temp(u, t.Value) },
			func(b plan.FermentBand) (float64, float64) { return temp(u, b.LowC), temp(u, b.HighC) }},
		{"acidity, pH", 62, func(i int) float64 { return f.Curve[i].PH }, func(v float64) string { return measure.Number(v, 1) }, "", nil, nil},
	}
	top := 24.0
	for k, g := range panels {
		low, high := span(n, g.y)
		low, high = widen(low, high, taken, g.of, g.taken)
		var bands []plan.FermentBand
		if g.band != nil {
			bands = bandsOf(p).Ferment
		}
		for _, b := range bands {
			l, h := g.band(b)
			low, high = min(low, l), max(high, h)
		}
		if k == 1 && f.HoldHighC > 0 {
			low, high = min(low, temp(u, f.HoldLowC)-1), max(high, temp(u, f.HoldHighC)+1)
		}
		pane, by := c.panel(plotLeft, top, edge, top+g.height, 0, end, low, high, 4)
		pane.band(len(bands), func(i int) (float64, float64, float64) {
			low, high := g.band(bands[i])
			return bands[i].Hour, low, high
		})
		if k == 1 && held {
			pane.hold(temp(u, f.HoldLowC), temp(u, f.HoldHighC), u)
		}
		pane.yAxis(by, g.label)
		pane.midnights(start, k == 0)
		pane.frame()
		curve := func(i int) (float64, float64) { return f.Curve[i].Hour, g.y(i) }
		pane.curve("line", n, curve)
		for _, h := range at {
			v := between(n, h, curve)
			c.dot(pane.x.at(h), pane.y.at(v))
			pane.note(h, v, g.say(v))
		}
		for _, t := range taken {
			if t.Of == g.of {
				pane.read(t.Hours, g.taken(t), t.Off)
			}
		}
		top += g.height + 12
		if c.narrow() {
			top += 10
		}
		if k == len(panels)-1 {
			touchFerment(&c, pane.x, f, start, u)
			pane.hours()
		}
	}
	c.H = int(top) + 22
	c.Desc = fermentDesc(p, u) + takenDesc(taken, func(t Taken) string {
		return "after " + measure.Hours(t.Hours) + " " + takenWords(t, u)
	})
	return c
}

// hold draws a bracket right of a panel over the temperatures within which it is held.
func (p panel) hold(low, high float64, u measure.Units) {
	x := p.right() + 6
	p.bracket(x, low, high)
	words := measure.Number(low, 0) + " to " + measure.Number(high, 0) + " " + tempUnit(u)
	if p.c.narrow() {
		p.c.text("label", "end", p.right(), p.top()-5, "hold "+words)
		return
	}
	y := (p.y.at(low) + p.y.at(high)) / 2
	p.c.text("label", "start", x+8, y-2, "hold")
	p.c.text("tick", "start", x+8, y+12, words)
}

func abvUnit(u measure.Units) string {
	if u == measure.SI {
		return "% vol"
	}
	return "% abv"
}

// note writes a value beside its dot, above or below the curve, inside the
// panel.
func (p panel) note(x, y float64, s string) {
	px, py := p.x.at(x), p.y.at(y)
	at := py - 9
	if at < p.top()+14 {
		at = py + 19
	}
	anchor := "middle"
	if px+wide(s)/2 > p.right() {
		anchor, px = "end", p.right()-3
	}
	p.c.text("label", anchor, px, at, s)
}

// midnights marks the days of a panel whose x axis counts hours, and names them
// above it.
func (p panel) midnights(start time.Time, named bool) {
	hours := func(t time.Time) float64 { return t.Sub(start).Hours() }
	from := p.x.from
	name := func(from, to float64, day time.Time) {
		a, b := p.x.at(from), p.x.at(to)
		for _, form := range []string{"Mon 2 Jan", "2 Jan", "2"} {
			if s := day.Format(form); named && wide(s) < b-a+8 {
				p.c.under((a+b)/2, p.top()-7, s)
				return
			}
		}
	}
	end := start.Add(time.Duration(p.x.to * float64(time.Hour)))
	last := start
	for _, d := range days(start, end) {
		x := p.x.at(hours(d))
		p.c.stroke("day", x, p.top(), x, p.bottom())
		name(from, hours(d), last)
		from, last = hours(d), d
	}
	name(from, p.x.to, last)
}

// hours marks the hours from the pitch below a panel.
func (p panel) hours() {
	by := 12.0
	for (p.x.to-p.x.from)/by > 12 {
		by *= 2
	}
	for _, h := range ticks(p.x.from, p.x.to, by) {
		p.c.under(p.x.at(h), p.bottom()+15, measure.Number(h, 0))
	}
	p.c.text("axis", "middle", (p.left()+p.right())/2, p.bottom()+31, "hours from the pitch")
}

func fermentDesc(p *plan.Plan, u measure.Units) string {
	f := p.Ferment
	var b strings.Builder
	n := len(f.Curve)
	fmt.Fprintf(&b, "Gravity falls from %s to %s in %s h, and the strength of the whole comes to %s.", measure.Gravity(f.Curve[0].SG),
		measure.Gravity(f.Curve[n-1].SG), measure.Number(f.Curve[n-1].Hour, 0), u.Abv(f.AbvPct))
	fmt.Fprintf(&b, " It is pitched at %s and warmest, %s, after %s.", u.Temp(f.PitchC), u.Temp(f.PeakC), measure.Hours(f.PeakHours))
	switch hold := u.Temp(f.HoldLowC) + " to " + u.Temp(f.HoldHighC); {
	case f.HoldHighC <= f.HoldLowC:
	case f.LeavesHoldC != 0:
		fmt.Fprintf(&b, " It is to be held at %s, and leaves that after %s, for %s.", hold, measure.Hours(f.LeavesHoldH), u.Temp(f.LeavesHoldC))
	default:
		fmt.Fprintf(&b, " It is held within %s.", hold)
	}
	return b.String()
}
