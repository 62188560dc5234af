package chart

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"newmake/compile/measure"
	"newmake/compile/plan"
)

// Cask draws volume and strength of one cask month by month, side by side, with the
// calendar's years over them.
func Cask(p *plan.Plan, u measure.Units) Chart {
	return both(func(w float64) Chart { return drawCask(p, u, w) })
}

func drawCask(p *plan.Plan, u measure.Units, w float64) Chart {
	y := p.Cask.Forecast
	n := len(y)
	if n < 2 {
		return Chart{}
	}
	c := Chart{ID: "chart-cask", Title: "Volume and strength over the years in wood", W: int(w), H: 212}
	_, volumeUnit := u.Value(plan.Of(0, plan.Litre))
	volume := func(y *plan.CaskYear) float64 { v, _ := u.Value(y.Volume()); return v }
	strength, strengthUnit := func(y *plan.CaskYear) float64 { return y.Proof }, "proof"
	if u == measure.SI {
		strength, strengthUnit = func(y *plan.CaskYear) float64 { return y.AbvPct }, "% vol"
	}
	end := y[n-1].AgeYears
	months := p.Cask.ByMonth
	if len(months) < 2 {
		months = y
	}
	filled, isFilled := find(p, "cask.rest")
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
		y     func(*plan.CaskYear) float64
		band  func(int) (low, high float64)
	}{{"volume, " + volumeUnit, volume, volumes}, {"strength, " + strengthUnit, strength, strengths}} {
		left, top, paneW := plotLeft+float64(k)*(width/2), 22.0, float64(width)/2
		if c.narrow() { // one below the other
			left, top, paneW = plotLeft, 22+float64(k)*212, w+4
			c.H = 2 * 212
		}
		monthly := func(i int) float64 { return g.y(&months[i]) }
		low, high := span(len(months), monthly)
		for i := range bands {
			l, h := g.band(i)
			low, high = min(low, l), max(high, h)
		}
		pad := max((high-low)*0.25, 0.5)
		pane, by := c.panel(left, top, left+paneW-plotLeft-14, top+142, 0, end, low-pad, high+pad, 4)
		pane.band(len(bands), func(i int) (float64, float64, float64) {
			low, high := g.band(i)
			return bands[i].AgeYears, low, high
		})
		for _, v := range ticks(pane.y.from, pane.y.to, by) {
			c.stroke("rule", pane.left(), pane.y.at(v), pane.right(), pane.y.at(v))
			c.text("tick", "end", pane.left()-6, pane.y.at(v)+4.5, measure.Number(v, places(by)))
		}
		c.axisName(left-plotLeft, top+71, g.label)
		yearBy := step(0, end, 6)
		for _, v := range ticks(0, end, yearBy) {
			c.under(pane.x.at(v), pane.bottom()+17, measure.Number(v, places(yearBy)))
		}
		c.text("axis", "middle", (pane.left()+pane.right())/2, pane.bottom()+35, "years in wood")
		if isFilled {
			pane.newYears(plan.Moment(filled.Start))
		}
		pane.frame()
		touchCask(&c, pane.x, months, u)
		pane.curve("line", len(months), func(i int) (float64, float64) { return months[i].AgeYears, monthly(i) })
		yearly := func(i int) float64 { return g.y(&y[i]) }
		every := (n + 6) / 7
		for i := range n {
			c.dot(pane.x.at(y[i].AgeYears), pane.y.at(yearly(i)))
			if i%every == 0 || i == n-1 {
				words := measure.Number(yearly(i), 1)
				if i > 0 && i < n-1 && yearly(i-1) > yearly(i) && yearly(i+1) > yearly(i) {
					c.text("label", "middle", pane.x.at(y[i].AgeYears), pane.y.at(yearly(i))+19, words) // below the dip
				} else {
					pane.noteIn(y[i].AgeYears, yearly(i), words)
				}
			}
		}
	}
	c.Desc = caskDesc(p.Cask, u)
	return c
}

// newYears rules each first of January, of an axis in years from the fill, and names the
// years that have room, by two figures where they have little.
func (p panel) newYears(filled time.Time) {
	const year = 365.25 * 24
	age := func(t time.Time) float64 { return t.Sub(filled).Hours() / year }
	from, of := p.x.from, filled.Year()
	for {
		to := min(age(time.Date(of+1, 1, 1, 0, 0, 0, 0, filled.Location())), p.x.to)
		switch a, b := p.x.at(from), p.x.at(to); {
		case b-a > 34:
			p.c.under((a+b)/2, p.top()-7, strconv.Itoa(of))
		case b-a > 17:
			p.c.under((a+b)/2, p.top()-7, fmt.Sprintf("%02d", of%100))
		}
		if to >= p.x.to {
			return
		}
		p.c.stroke("day", p.x.at(to), p.top(), p.x.at(to), p.bottom())
		from, of = to, of+1
	}
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
