package chart

import (
	"fmt"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
)

// Cask draws volume and strength of one cask over the years in wood, side by
// side.
func Cask(p *plan.Plan, u measure.Units) Chart {
	y := p.Cask.Forecast
	n := len(y)
	if n < 2 {
		return Chart{}
	}
	c := Chart{ID: "chart-cask", Title: "Volume and strength over the years in wood", W: width, H: 300}
	_, volumeUnit := u.Value(plan.Of(0, plan.Litre))
	volume := func(i int) float64 { v, _ := u.Value(y[i].Volume()); return v }
	strength, strengthUnit := func(i int) float64 { return y[i].Proof }, "proof"
	if u == measure.SI {
		strength, strengthUnit = func(i int) float64 { return y[i].AbvPct }, "% vol"
	}
	end := y[n-1].AgeYears
	bands := bandsOf(p).Cask
	volumes := func(i int) (low, high float64) {
		low, _ = u.Value(bands[i].LowVolume())
		high, _ = u.Value(bands[i].HighVolume())
		return low, high
	}
	strengths := func(i int) (low, high float64) { return bands[i].LowProof, bands[i].HighProof }
	if u == measure.SI {
		strengths = func(i int) (low, high float64) { return bands[i].LowAbvPct, bands[i].HighAbvPct }
	}
	for k, g := range []struct {
		label string
		y     func(int) float64
		band  func(int) (low, high float64)
	}{{"volume, " + volumeUnit, volume, volumes}, {"strength, " + strengthUnit, strength, strengths}} {
		left := plotLeft + float64(k)*(width/2)
		low, high := span(n, g.y)
		for i := range bands {
			l, h := g.band(i)
			low, high = min(low, l), max(high, h)
		}
		pad := max((high-low)*0.25, 0.5)
		pane, by := c.panel(left, 12, left+width/2-plotLeft-14, 252, 0, end, low-pad, high+pad, 4)
		pane.band(len(bands), func(i int) (float64, float64, float64) {
			low, high := g.band(i)
			return bands[i].AgeYears, low, high
		})
		for _, v := range ticks(pane.y.from, pane.y.to, by) {
			c.stroke("rule", pane.left(), pane.y.at(v), pane.right(), pane.y.at(v))
			c.text("tick", "end", pane.left()-6, pane.y.at(v)+4.5, measure.Number(v, places(by)))
		}
		c.axisName(left-plotLeft, 132, g.label)
		yearBy := step(0, end, 6)
		for _, v := range ticks(0, end, yearBy) {
			c.under(pane.x.at(v), pane.bottom()+17, measure.Number(v, places(yearBy)))
		}
		c.text("axis", "middle", (pane.left()+pane.right())/2, pane.bottom()+35, "years in wood")
		pane.frame()
		touchCask(&c, pane.x, y, u)
		pane.curve("line", n, func(i int) (float64, float64) { return y[i].AgeYears, g.y(i) })
		every := (n + 6) / 7
		for i := range n {
			c.dot(pane.x.at(y[i].AgeYears), pane.y.at(g.y(i)))
			if i%every == 0 || i == n-1 {
				words := measure.Number(g.y(i), 1)
				if i > 0 && i < n-1 && g.y(i-1) > g.y(i) && g.y(i+1) > g.y(i) {
					c.text("label", "middle", pane.x.at(y[i].AgeYears), pane.y.at(g.y(i))+19, words) // below the dip
				} else {
					pane.noteIn(y[i].AgeYears, g.y(i), words)
				}
			}
		}
	}
	c.Desc = caskDesc(p.Cask, u)
	return c
}

// noteIn is note, kept off the left edge too.
func (p panel) noteIn(x, y float64, s string) {
	if px := p.x.at(x); px-wide(s)/2 < p.left() {
		p.c.text("label", "start", p.left()+4, p.y.at(y)-9, s)
		return
	}
	p.note(x, y, s)
}

func caskDesc(k plan.Cask, u measure.Units) string {
	var b strings.Builder
	for _, y := range k.Forecast {
		fmt.Fprintf(&b, "After %s years %s at %s. ", measure.Number(y.AgeYears, 1), u.Quantity(y.Volume()),
			u.Strength(plan.Strength{AbvPct: y.AbvPct, Proof: y.Proof}))
	}
	return strings.TrimSpace(b.String())
}
