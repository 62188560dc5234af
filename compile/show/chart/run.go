package chart

import (
	"fmt"
	"strings"
	"time"

	"newmake/compile/measure"
	"newmake/compile/plan"
)

// Strip draws a run of the wash still. Readings of a run of the plan may be marked on it.
func Strip(p *plan.Plan, u measure.Units, taken ...Taken) Chart {
	return both(func(w float64) Chart {
		return run(p, p.Strip, bandsOf(p).Strip, "strip", "Strength, flow and vapour temperature of the stripping run", u, taken, w)
	})
}

// Spirit draws a run of the spirit still, with the cuts. Readings of a run of the plan may
// be marked on it.
func Spirit(p *plan.Plan, u measure.Units, taken ...Taken) Chart {
	return both(func(w float64) Chart {
		return run(p, p.Spirit, bandsOf(p).Spirit, "spirit", "Strength, flow and vapour temperature of the spirit run, with the cuts", u, taken, w)
	})
}

// bandsOf are the bands of a plan; empty where it has none.
func bandsOf(p *plan.Plan) plan.Bands {
	if p.Bands == nil {
		return plan.Bands{}
	}
	return *p.Bands
}

const (
	overY     = 11.0  // the gallons above a run
	bracketUp = 5.0   // of the brackets that name its fractions over their panel
	runTop    = 37.0  // of its first panel
	insetW    = 168.0 // of the panel that shows the first cuts enlarged
	insetGap  = 40.0
)

// run draws one charge by the clock, with what has come over above: strength and flow at
// the spout, and the vapour's temperature. Brackets at the upper edge name the fractions.
// The first cuts follow so close on one another that they are shown enlarged on the left.
//
// Bands and readings are judged at what has come over, as the steps judge them; they
// stand where the plan has that volume.
func run(p *plan.Plan, r plan.Run, bands plan.RunBands, use, title string, u measure.Units, taken []Taken, w float64) Chart {
	n := len(r.Curve)
	fire := fired(p, use)
	if n < 2 || r.Curve[n-1].OverL <= 0 || fire.IsZero() {
		return Chart{}
	}
	c := Chart{ID: "chart-" + use, Title: title, W: int(w)}
	grey := bands.ByVolume
	from, to := r.Curve[0].Min, r.Curve[n-1].Min
	place := placeOver(r.Curve)
	for _, of := range []string{"spout", "flow", "vapour"} {
		from, to = widen(from, to, taken, of, func(t Taken) float64 { return place(t.OverL) })
	}

	left, spoutH, lowerH := float64(plotLeft), 82.0, 34.0
	hearts := r.Fraction("hearts")
	inset := hearts.StartMin > r.Curve[0].Min && hearts.StartMin-from < 0.2*(to-from)
	switch {
	case c.narrow():
		spoutH, lowerH = 110, 54
	case inset: // on a page that is not full of steps
		left += insetW + insetGap
		spoutH, lowerH = 94, 36
		enlarged(&c, r, grey, fire, hearts.StartMin, runTop, plotLeft+insetW, spoutH)
	}
	var panes []panel
	top := runTop
	for i, g := range gauges(r, u) {
		h := lowerH
		if i == 0 {
			h = spoutH
		}
		low, high := span(n, g.y)
		for _, b := range grey {
			l, k := g.band(b)
			low, high = min(low, l), max(high, k)
		}
		low, high = widen(low, high, taken, g.of, g.taken)
		if g.zero {
			low = 0
		}
		pane, by := c.panel(left, top, c.right(), top+h, from, to, low, high, g.ticks)
		pane.band(len(grey), func(i int) (float64, float64, float64) {
			low, high := g.band(grey[i])
			return grey[i].Min, low, high
		})
		pane.clockLines(fire)
		pane.ruled(by)
		names := left - plotLeft
		if i == 0 {
			names = 0 // left of what is enlarged
		}
		c.axisName(names, (pane.top()+pane.bottom())/2, g.label)
		panes, top = append(panes, pane), top+h+11
	}
	c.H = int(top-11) + 19
	if inset && c.narrow() { // below what it enlarges
		const gap = 44
		enlarged(&c, r, grey, fire, hearts.StartMin, float64(c.H)+gap, c.right(), spoutH)
		c.axisName(0, float64(c.H)+gap+spoutH/2, "spout, "+abvUnit(u))
		c.text("axis", "start", plotLeft, float64(c.H)+14, "the first cuts, enlarged")
		c.H += gap + int(spoutH) + 19
	}
	panes[len(panes)-1].clockLabels(fire)
	panes[0].overAbove(r, u)
	panes[0].fractions(r, func(f plan.Fraction) string { return f.Name + " " + u.Volume(share(f, r.Charges)) }, panes[len(panes)-1].bottom())
	for i, g := range gauges(r, u) {
		pane, at := panes[i], func(i int) (float64, float64) { return r.Curve[i].Min, g.y(i) }
		pane.frame()
		pane.curve("line", n, at)
		var ends []value
		for _, f := range r.Fractions {
			if g.end == nil || f.Name == "foreshots" || f.EndOverL <= f.StartOverL || inset && f.Name == "heads" {
				continue
			}
			v := between(n, f.EndMin, at)
			c.dot(pane.x.at(f.EndMin), pane.y.at(v))
			ends = append(ends, value{f.EndMin, v, g.end(f)})
		}
		pane.notes(n, at, ends)
		for _, t := range taken {
			if t.Of == g.of {
				pane.read(place(t.OverL), g.taken(t), t.Off)
			}
		}
	}
	touchRun(&c, panes[0].x, r, fire, u)
	c.Desc = runDesc(r, u) + takenDesc(taken, func(t Taken) string { return u.Litres(t.OverL) + " over: " + takenWords(t, u) })
	return c
}

// gauge is what one panel of a run shows.
type gauge struct {
	label, of string
	ticks     int
	zero      bool // from nought
	y         func(i int) float64
	band      func(b plan.RunBand) (low, high float64)
	taken     func(Taken) float64
	end       func(plan.Fraction) string // what it says at the end of a fraction
}

func gauges(r plan.Run, u measure.Units) []gauge {
	return []gauge{
		{"spout, " + abvUnit(u), "spout", 4, true, func(i int) float64 { return r.Curve[i].AbvPct },
			func(b plan.RunBand) (float64, float64) { return b.LowAbvPct, b.HighAbvPct },
			func(t Taken) float64 { return t.Value }, func(f plan.Fraction) string { return u.StrengthAbv(f.Ends) }},
		{"flow, " + flowUnit(u), "flow", 2, true, func(i int) float64 { return flow(u, r.Curve[i].RateLPerH) },
			func(b plan.RunBand) (float64, float64) { return flow(u, b.LowRateLPerH), flow(u, b.HighRateLPerH) },
			func(t Taken) float64 { return flow(u, t.Value) }, nil},
		{"vapour, " + tempUnit(u), "vapour", 2, false, func(i int) float64 { return temp(u, r.Curve[i].VapourC) },
			func(b plan.RunBand) (float64, float64) { return temp(u, b.LowVapourC), temp(u, b.HighVapourC) },
			func(t Taken) float64 { return temp(u, t.Value) }, func(f plan.Fraction) string { return u.Temp(f.VapourC) }},
	}
}

// placeOver gives the minute at which a run has so much over; beyond the end of it, as it
// ran last.
func placeOver(curve []plan.RunPoint) func(overL float64) float64 {
	n := len(curve)
	minute := func(i int) (float64, float64) { return curve[i].OverL, curve[i].Min }
	first, last := curve[0], curve[n-1]
	return func(overL float64) float64 {
		at := between(n, min(overL, last.OverL), minute)
		return at + max(overL-last.OverL, 0)/last.OverL*(last.Min-first.Min)
	}
}

// flow is what runs from the spout, in the reader's units.
func flow(u measure.Units, litrePerH float64) float64 {
	v, _ := u.Value(plan.Of(litrePerH, plan.LitrePerH))
	return v
}

func flowUnit(u measure.Units) string {
	_, unit := u.Value(plan.Of(0, plan.LitrePerH))
	return unit
}

// enlarged is the beginning of a run up to a little after the cut to hearts: the strength
// at the spout, with a bracket for each fraction.
func enlarged(c *Chart, r plan.Run, grey []plan.RunBand, fire time.Time, cut, top, right, h float64) {
	from := r.Curve[0].Min
	to := cut + 0.45*(cut-from)
	curve := until(r.Curve, to)
	at := func(i int) (float64, float64) { return curve[i].Min, curve[i].AbvPct }
	low, high := span(len(curve), func(i int) float64 { return curve[i].AbvPct })
	for i, b := range grey {
		if b.Min >= to && i > 0 {
			grey = grey[:i]
			break
		}
		low, high = min(low, b.LowAbvPct), max(high, b.HighAbvPct)
	}
	pane, by := c.panel(plotLeft, top, right, top+h, from, to, low-0.3, high+0.3, 3)
	pane.band(len(grey), func(i int) (float64, float64, float64) { return grey[i].Min, grey[i].LowAbvPct, grey[i].HighAbvPct })
	pane.clockLines(fire)
	pane.ruled(by)
	pane.clockLabels(fire)
	pane.fractions(r, func(f plan.Fraction) string { return f.Name }, pane.bottom())
	pane.frame()
	pane.curve("line", len(curve), at)
	var strengths []value
	for _, f := range r.Fractions {
		if f.EndOverL > f.StartOverL && pane.x.holds(f.EndMin) {
			v := between(len(curve), f.EndMin, at)
			c.dot(pane.x.at(f.EndMin), pane.y.at(v))
			strengths = append(strengths, value{f.EndMin, v, measure.Number(v, 1)})
		}
	}
	pane.notes(len(curve), at, strengths)
}

// until is a curve up to a minute, with a last point there.
func until(curve []plan.RunPoint, minute float64) []plan.RunPoint {
	var out []plan.RunPoint
	for i, k := range curve {
		if k.Min > minute {
			at := func(i int) (float64, float64) { return curve[i].Min, curve[i].AbvPct }
			return append(out, plan.RunPoint{Min: minute, AbvPct: between(i+1, minute, at)})
		}
		out = append(out, k)
	}
	return out
}

// fired is when the still of a run is lit, of the first charge; zero if no step says.
func fired(p *plan.Plan, use string) time.Time {
	heat, ok := find(p, use+".heat")
	if !ok {
		heat, _ = find(p, use+".1.heat")
	}
	return plan.Moment(heat.Start)
}

// share is a fraction of one charge.
func share(f plan.Fraction, charges int) plan.Lot {
	l := f.Lot
	if charges > 1 {
		l.VolumeL, l.WineGallons = l.VolumeL/float64(charges), l.WineGallons/float64(charges)
	}
	return l
}

// fractions draws a bracket over a panel for each fraction, with its name where there is
// room for it, and a line down to a depth at each cut.
func (p panel) fractions(r plan.Run, name func(plan.Fraction) string, depth float64) {
	end, y := p.left()-8, p.top()-bracketUp
	for _, f := range r.Fractions {
		if f.EndOverL <= f.StartOverL || f.StartMin >= p.x.to {
			continue
		}
		a, b := p.x.at(max(f.StartMin, p.x.from)), p.x.at(min(f.EndMin, p.x.to))
		var d pen
		d.move(a+1, y+5)
		d.line(a+1, y)
		d.line(b-1, y)
		if f.EndMin <= p.x.to {
			d.line(b-1, y+5)
		}
		p.c.path("bracket", d.String())
		if f.StartMin > p.x.from {
			p.c.stroke("cutline", a, p.top(), a, depth)
		}
		s := name(f)
		if w := wide(s); max((a+b)/2-w/2, end+6) <= b && (a+b)/2-w/2 > end && (a+b)/2+w/2 < p.right()+8 {
			p.c.text("label cutname", "middle", (a+b)/2, y-4, s)
			end = (a+b)/2 + w/2
		}
	}
}

// overAbove marks what has come over, above a panel that goes by the clock.
func (p panel) overAbove(r plan.Run, u measure.Units) {
	n := len(r.Curve)
	over := func(i int) float64 { v, _ := u.Value(r.Over(r.Curve[i].OverL)); return v }
	minute := func(i int) (float64, float64) { return over(i), r.Curve[i].Min }
	_, unit := u.Value(plan.Of(0, plan.Litre))
	words := "over, " + unit
	if r.Charges > 1 {
		words = "over, " + unit + ", one charge"
	}
	p.c.text("axis", "end", p.right(), overY, words)
	by := step(0, over(n-1), 8)
	last := p.left() - 60
	for _, v := range ticks(0, over(n-1), by) {
		x := p.x.at(between(n, v, minute))
		p.c.stroke("leader", x, p.top()-4, x, p.top())
		if half := wide(measure.Number(v, places(by))) / 2; x-last > 34 && x+half < p.right()-wide(words)-6 {
			p.c.under(x, overY, measure.Number(v, places(by)))
			last = x
		}
	}
}

func runDesc(r plan.Run, u measure.Units) string {
	var b strings.Builder
	n := len(r.Curve)
	slow, fast := span(n, func(i int) float64 { return r.Curve[i].RateLPerH })
	fmt.Fprintf(&b, "One charge: strength at the spout falls from %s to %s while %s comes over, at %s to %s; the vapour warms from %s to %s.",
		u.Abv(r.Curve[0].AbvPct), u.Abv(r.Curve[n-1].AbvPct), u.Litres(r.Curve[n-1].OverL),
		u.Quantity(plan.Of(slow, plan.LitrePerH)), u.Quantity(plan.Of(fast, plan.LitrePerH)), u.Temp(r.Curve[0].VapourC), u.Temp(r.Curve[n-1].VapourC))
	for _, f := range r.Fractions {
		if f.EndOverL > f.StartOverL {
			fmt.Fprintf(&b, " %s: from %s to %s at the spout, %s.", strings.ToUpper(f.Name[:1])+f.Name[1:],
				u.StrengthAbv(f.Begins), u.StrengthAbv(f.Ends), u.Volume(share(f, r.Charges)))
		}
	}
	return b.String()
}
