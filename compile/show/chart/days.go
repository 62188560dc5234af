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
	barH     = 18
	barRow   = 27
	nameLeft = 130
)

var useHatch = map[string]string{"mash": "rising", "ferment": "dots", "strip": "falling", "spirit": "dense"}

// Days draws which vessel is in use when, from the first day to the filling.
func Days(p *plan.Plan, u measure.Units) Chart {
	s := p.Schedule
	if len(s.Vessels) == 0 {
		return Chart{}
	}
	c := Chart{ID: "chart-days", Title: "The days by vessel", W: width}
	first, last := plan.Moment(s.Start), plan.Moment(s.End)
	from := time.Date(first.Year(), first.Month(), first.Day(), 0, 0, 0, 0, first.Location())
	to := time.Date(last.Year(), last.Month(), last.Day()+1, 0, 0, 0, 0, last.Location())
	names := vessels(s.Vessels)
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
			c.under((a+b)/2, top-6, "off")
		}
		c.stroke("day", a, top-6, a, bottom)
		if dayWidth > 34 {
			c.under((a+b)/2, top-35, d.Format("Mon"))
			c.under((a+b)/2, top-20, d.Format("2 Jan"))
		} else {
			c.under((a+b)/2, top-20, d.Format("2"))
		}
	}
	var b strings.Builder
	for _, o := range s.Vessels {
		i := slices.Index(names, o.Vessel)
		y := top + float64(i)*barRow + (barRow-barH)/2
		f, t := plan.Moment(o.From), plan.Moment(o.To)
		a, e := at(f), max(at(t), at(f)+3)
		c.area("bar", useHatch[o.Use], a, y, e-a, barH)
		label := fmt.Sprintf("%s %s, %s", o.Use, hm(f), measure.Duration(o.Hours*60))
		switch {
		case e+wide(label)+8 < plotRight:
			c.text("label", "start", e+6, y+barH-4, label)
		case a-6-wide(label) > nameLeft:
			c.text("label", "end", a-6, y+barH-4, label)
		default: // in the bar, which is long
			c.text("label", "middle", (max(a, nameLeft)+min(e, plotRight))/2, y+barH-4, label)
		}
		fmt.Fprintf(&b, "%s: %s from %s to %s. ", o.Vessel, o.Use, f.Format("Mon 2 Jan 15:04"), t.Format("Mon 2 Jan 15:04"))
	}
	for i, name := range names {
		c.text("label name", "end", nameLeft-8, top+float64(i)*barRow+barRow/2+5, shorten(name, 16))
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

// vessels are the names in order of first use.
func vessels(all []plan.Occupancy) []string {
	var out []string
	for _, o := range all {
		if !slices.Contains(out, o.Vessel) {
			out = append(out, o.Vessel)
		}
	}
	return out
}
