package chart

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"newmake/compile/measure"
	"newmake/compile/plan"
)

const (
	barH   = 16
	barRow = 21
)

var useHatch = map[string]string{"mash": "rising", "ferment": "dots", "strip": "falling", "spirit": "dense"}

// Days draws which vessel is in use when, from the first day to the filling.
func Days(p *plan.Plan, u measure.Units) Chart {
	return both(func(w float64) Chart { return drawDays(p, u, w) })
}

func drawDays(p *plan.Plan, _ measure.Units, w float64) Chart {
	s := p.Schedule
	if len(s.Vessels) == 0 {
		return Chart{}
	}
	c := Chart{ID: "chart-days", Title: "The days by vessel", W: int(w)}
	first, last := plan.Moment(s.Start), plan.Moment(s.End)
	from := time.Date(first.Year(), first.Month(), first.Day(), 0, 0, 0, 0, first.Location())
	to := time.Date(last.Year(), last.Month(), last.Day()+1, 0, 0, 0, 0, last.Location())
	bars := barsOf(s)
	names := rowNames(bars)
	nameLeft, plotRight, letters := 130.0, c.right(), 16
	if c.narrow() {
		nameLeft, letters = 112, 13
	}
	top := 52.0
	bottom := top + float64(len(names))*barRow
	c.H = int(bottom) + 10
	x := scale{0, to.Sub(from).Hours(), nameLeft, plotRight}
	at := func(t time.Time) float64 { return x.at(t.Sub(from).Hours()) }

	dayWidth := (plotRight - nameLeft) / (x.to / 24)
	for _, d := range append([]time.Time{from}, days(from, to)...) {
		a, b := at(d), min(at(d.AddDate(0, 0, 1)), plotRight)
		if len(p.Plant.ShiftDays) > 0 && !slices.Contains(p.Plant.ShiftDays, d.Weekday().String()) {
			c.area("off", "", a, top, b-a, bottom-top)
			if b-a > 20 {
				c.under((a+b)/2, top-6, "off")
			}
		}
		c.stroke("day", a, top-6, a, bottom)
		if dayWidth > 34 {
			c.under((a+b)/2, top-35, d.Format("Mon"))
			c.under((a+b)/2, top-20, d.Format("2 Jan"))
		} else {
			if dayWidth > 16 {
				c.under((a+b)/2, top-20, d.Format("2"))
			}
		}
	}
	var b strings.Builder
	for _, o := range bars {
		i := slices.Index(names, o.row)
		y := top + float64(i)*barRow + (barRow-barH)/2
		f, t := o.from, o.to
		a, e := at(f), max(at(t), at(f)+3)
		c.area("bar", o.hatch, a, y, e-a, barH)
		label := o.label
		switch {
		case label == "":
		case e+wide(label)+8 < plotRight:
			c.text("label", "start", e+6, y+barH-4, label)
		case a-6-wide(label) > nameLeft:
			c.text("label", "end", a-6, y+barH-4, label)
		default: // in the bar, which is long, or over it
			middle := (max(a, nameLeft) + min(e, plotRight)) / 2
			c.text("label", "middle", min(max(middle, nameLeft+wide(label)/2+4), plotRight-wide(label)/2), y+barH-4, label)
		}
		fmt.Fprintf(&b, "%s: %s from %s to %s. ", o.row, o.what, f.Format("Mon 2 Jan 15:04"), t.Format("Mon 2 Jan 15:04"))
	}
	for i, name := range names {
		c.text("label name", "end", nameLeft-8, top+float64(i)*barRow+barRow/2+5, shorten(name, letters))
		y := top + float64(i+1)*barRow
		c.stroke("rule", nameLeft, y, plotRight, y)
	}
	c.area("frame", "", nameLeft, top, plotRight-nameLeft, bottom-top)
	done := "All is done"
	if p.Cask.Casks > 0 {
		done = "The spirit is in wood"
	}
	fmt.Fprintf(&b, "%s by %s.", done, last.Format("Mon 2 Jan 15:04"))
	c.Desc = b.String()
	return c
}

// bar is a stretch of work in a vessel, or beside them.
type bar struct {
	row, what string
	label     string // none where another bar of the row says it
	hatch     string
	from, to  time.Time
}

// Work that is done in no vessel of the plant has rows of its own: the first and the last.
const (
	weighing = "Weigh, mill"
	filling  = "Reduce, fill"
)

// barsOf are the bars in the order of their rows: what is weighed, the vessels by first
// use, what is reduced, settles and is filled.
func barsOf(s plan.Schedule) []bar {
	var first, out, last []bar
	for _, o := range s.Vessels {
		f, t := plan.Moment(o.From), plan.Moment(o.To)
		out = append(out, bar{o.Vessel, o.Use, fmt.Sprintf("%s %s, %s", o.Use, hm(f), measure.Duration(o.Hours*60)), useHatch[o.Use], f, t})
	}
	for _, x := range s.Steps {
		f, t := plan.Moment(x.Start), plan.Moment(x.End)
		if x.Vessel != "" {
			continue
		}
		switch x.Stage {
		case "mash":
			first = append(first, bar{weighing, "weigh and mill", fmt.Sprintf("weigh %s, %s", hm(f), measure.Duration(x.DurationMin)), "", f, t})
		case "fill":
			one := bar{filling, "reduce and fill", "", "", f, t}
			if x.ID == "fill.settle" {
				one.what, one.hatch = "settle", "dots"
			}
			if n := len(last); n > 0 && last[n-1].hatch == one.hatch && !f.After(last[n-1].to) {
				last[n-1].to = t
				continue
			}
			last = append(last, one)
		}
	}
	if n := len(last); n > 0 {
		last[0].label = "from " + last[0].from.Format("Mon 15:04")
		if last[n-1].to.After(last[0].to) {
			last[0].label += " to " + last[n-1].to.Format("Mon 15:04")
		}
	}
	return append(append(first, out...), last...)
}

// rowNames are the rows in order of first use.
func rowNames(all []bar) []string {
	var out []string
	for _, b := range all {
		if !slices.Contains(out, b.row) {
			out = append(out, b.row)
		}
	}
	return out
}
