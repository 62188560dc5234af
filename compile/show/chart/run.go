package chart

import (
	"fmt"
	"strings"
	"time"

	"newmake/compile/measure"
	"newmake/compile/plan"
)

// cutHatch is the hatch of each fraction. What is wanted is left white.
var cutHatch = map[string]string{"foreshots": "dense", "heads": "rising", "hearts": "", "tails": "falling", "low wines": ""}

// Strip draws a run of the wash still. Readings of a run of the plan may be marked on it.
func Strip(p *plan.Plan, u measure.Units, taken ...Taken) Chart {
	return run(p, p.Strip, bandsOf(p).Strip, "strip", "Strength, flow and vapour temperature of the stripping run", u, taken)
}

// Spirit draws a run of the spirit still, with the cuts. Readings of a run of the plan may
// be marked on it.
func Spirit(p *plan.Plan, u measure.Units, taken ...Taken) Chart {
	return run(p, p.Spirit, bandsOf(p).Spirit, "spirit", "Strength, flow and vapour temperature of the spirit run", u, taken)
}

// bandsOf are the bands of a plan; empty where it has none.
func bandsOf(p *plan.Plan) plan.Bands {
	if p.Bands == nil {
		return plan.Bands{}
	}
	return *p.Bands
}

// run draws strength and flow at the spout and the vapour's temperature against what
// has come over, of one charge, with the clock above and the fractions hatched.
func run(p *plan.Plan, r plan.Run, bands plan.RunBands, use, title string, u measure.Units, taken []Taken) Chart {
	n := len(r.Curve)
	if n < 2 || r.Curve[n-1].OverL <= 0 {
		return Chart{}
	}
	c := Chart{ID: "chart-" + use, Title: title, W: width}
	over := func(l float64) float64 { v, _ := u.Value(r.Over(l)); return v }
	place := func(t Taken) float64 { // the plan's gallons end with its run
		last := r.Curve[n-1].OverL
		return over(min(t.OverL, last)) * max(t.OverL/last, 1)
	}
	_, end := widen(0, over(r.Curve[n-1].OverL), taken, "spout", place)
	_, end = widen(0, end, taken, "vapour", place)
	_, end = widen(0, end, taken, "flow", place)
	x := scale{0, end, plotLeft, plotRight}

	var flags []flag
	for _, f := range r.Fractions {
		if f.EndOverL > f.StartOverL {
			flags = append(flags, flag{x.at(over(f.StartOverL)), f.Name + " " + u.Volume(share(f, r.Charges)) + ", " + gauged(f, u)})
		}
	}
	row, begin, rowCount := rows(flags, plotLeft, plotRight)
	const clockH = 44
	top := float64(clockH + rowCount*rowH)
	_, high := span(n, func(i int) float64 { return r.Curve[i].AbvPct })
	low, hot := span(n, func(i int) float64 { return temp(u, r.Curve[i].VapourC) })
	_, fast := span(n, func(i int) float64 { return flow(u, r.Curve[i].RateLPerH) })
	at := bands.ByVolume
	for _, b := range at {
		high, fast = max(high, b.HighAbvPct), max(fast, flow(u, b.HighRateLPerH))
		low, hot = min(low, temp(u, b.LowVapourC)), max(hot, temp(u, b.HighVapourC))
	}
	_, high = widen(0, high, taken, "spout", func(t Taken) float64 { return t.Value })
	low, hot = widen(low, hot, taken, "vapour", func(t Taken) float64 { return temp(u, t.Value) })
	_, fast = widen(0, fast, taken, "flow", func(t Taken) float64 { return flow(u, t.Value) })
	upper, byAbv := c.panel(plotLeft, top, plotRight, top+144, 0, end, 0, high, 5)
	middle, byFlow := c.panel(plotLeft, top+154, plotRight, top+202, 0, end, 0, fast, 2)
	lower, byTemp := c.panel(plotLeft, top+212, plotRight, top+280, 0, end, low, hot, 3)
	c.H = int(top) + 280 + 42

	upper.band(len(at), func(i int) (float64, float64, float64) { return over(at[i].OverL), at[i].LowAbvPct, at[i].HighAbvPct })
	middle.band(len(at), func(i int) (float64, float64, float64) {
		return over(at[i].OverL), flow(u, at[i].LowRateLPerH), flow(u, at[i].HighRateLPerH)
	})
	lower.band(len(at), func(i int) (float64, float64, float64) {
		return over(at[i].OverL), temp(u, at[i].LowVapourC), temp(u, at[i].HighVapourC)
	})
	for _, f := range r.Fractions {
		for _, pane := range []panel{upper, middle, lower} {
			a, b := x.at(over(f.StartOverL)), x.at(over(f.EndOverL))
			if b > a {
				c.area("cut", cutHatch[f.Name], a, pane.top(), b-a, pane.bottom()-pane.top())
			}
		}
	}
	upper.yAxis(byAbv, "spout, "+abvUnit(u))
	middle.yAxis(byFlow, "flow, "+flowUnit(u))
	lower.yAxis(byTemp, "vapour, "+tempUnit(u))
	for _, pane := range []panel{upper, middle, lower} {
		pane.frame()
	}
	lower.overAxis(u)
	clockAbove(upper, p, r, use, over)
	for i, f := range flags {
		y := top - 6 - float64(row[i]*rowH)
		c.stroke("leader", f.x, y-10, f.x, lower.bottom())
		c.text("label cutname", "start", begin[i]+4, y, f.text)
	}
	abv := func(i int) (float64, float64) { return over(r.Curve[i].OverL), r.Curve[i].AbvPct }
	vap := func(i int) (float64, float64) { return over(r.Curve[i].OverL), temp(u, r.Curve[i].VapourC) }
	upper.curve("line", n, abv)
	middle.curve("line", n, func(i int) (float64, float64) { return over(r.Curve[i].OverL), flow(u, r.Curve[i].RateLPerH) })
	lower.curve("line", n, vap)
	var strengths, temps []value
	for _, f := range r.Fractions {
		if f.Name == "foreshots" || f.EndOverL <= f.StartOverL {
			continue
		}
		e := over(f.EndOverL)
		v, t := between(n, e, abv), between(n, e, vap)
		c.dot(x.at(e), upper.y.at(v))
		strengths = append(strengths, value{e, v, u.StrengthAbv(f.Ends)})
		c.dot(x.at(e), lower.y.at(t))
		temps = append(temps, value{e, t, u.Temp(f.VapourC)})
	}
	upper.notes(n, abv, strengths)
	lower.notes(n, vap, temps)
	touchRun(&c, x, r, fired(p, use), u)
	for _, t := range taken {
		switch t.Of {
		case "spout":
			upper.read(place(t), t.Value, t.Off)
		case "flow":
			middle.read(place(t), flow(u, t.Value), t.Off)
		case "vapour":
			lower.read(place(t), temp(u, t.Value), t.Off)
		}
	}
	c.Desc = runDesc(r, u) + takenDesc(taken, func(t Taken) string { return u.Litres(t.OverL) + " over: " + takenWords(t, u) })
	return c
}

// fired is when the still of a run is lit, of the first charge; zero if no step says.
func fired(p *plan.Plan, use string) time.Time {
	heat, ok := find(p, use+".heat")
	if !ok {
		heat, _ = find(p, use+".1.heat")
	}
	return plan.Moment(heat.Start)
}

// gauged is a fraction's strength as its reader's gauge says it.
func gauged(f plan.Fraction, u measure.Units) string {
	if u == measure.US {
		return measure.Number(f.Proof, 1) + " proof"
	}
	return measure.Number(f.AbvPct, 1) + " % vol"
}

// share is a fraction of one charge.
func share(f plan.Fraction, charges int) plan.Lot {
	l := f.Lot
	if charges > 1 {
		l.VolumeL, l.WineGallons = l.VolumeL/float64(charges), l.WineGallons/float64(charges)
	}
	return l
}

// overAxis marks what has come over below a panel.
func (p panel) overAxis(u measure.Units) {
	by := step(p.x.from, p.x.to, 10)
	for _, v := range ticks(p.x.from, p.x.to, by) {
		p.c.under(p.x.at(v), p.bottom()+17, measure.Number(v, places(by)))
	}
	_, unit := u.Value(plan.Of(0, plan.Litre))
	p.c.text("axis", "middle", (p.left()+p.right())/2, p.bottom()+35, "over so far, "+unit+", one charge")
}

// clockAbove marks the clock over a run: the time at which so much has come
// over, in the first charge.
func clockAbove(p panel, pl *plan.Plan, r plan.Run, use string, over func(float64) float64) {
	fire := fired(pl, use)
	if fire.IsZero() {
		return
	}
	n := len(r.Curve)
	at := func(i int) (float64, float64) { return r.Curve[i].Min, over(r.Curve[i].OverL) }
	p.c.text("axis", "middle", (p.left()+p.right())/2, 12, "clock, first charge")
	if r.Charges <= 1 {
		p.c.Marks[len(p.c.Marks)-1].Text = "clock"
	}
	y := 32.0
	last := p.left() - 60
	for m := r.Curve[0].Min; m <= r.Curve[n-1].Min; {
		t := fire.Add(time.Duration(m * float64(time.Minute))).Truncate(30 * time.Minute).Add(30 * time.Minute)
		m = t.Sub(fire).Minutes()
		if m > r.Curve[n-1].Min {
			break
		}
		x := p.x.at(between(n, m, at))
		p.c.stroke("leader", x, y+3, x, y+9)
		if x-last > 44 {
			p.c.under(x, y, hm(t))
			last = x
		}
	}
	p.c.stroke("frame", p.left(), y+9, p.right(), y+9)
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

// flow is what runs from the spout, in the reader's units.
func flow(u measure.Units, litrePerH float64) float64 {
	v, _ := u.Value(plan.Of(litrePerH, plan.LitrePerH))
	return v
}

func flowUnit(u measure.Units) string {
	_, unit := u.Value(plan.Of(0, plan.LitrePerH))
	return unit
}
