package text

import (
	"strings"

	"newmake/compile/measure"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// tanks is what waits between the runs: for each tank, or those that share it, the most
// and when, and what is left at the end.
func (t *text) tanks() {
	if len(t.p.Plant.Tanks) == 0 {
		return
	}
	t.Heading("TANKS: what waits in them at most")
	for _, u := range t.p.Plant.Tanks {
		name := diag.Safe(strings.Join(u.Names, ", "))
		if columns.Width("  "+name) >= valueCol {
			t.Line(columns.Cut("  "+name, columns.Page))
			name = ""
		}
		note := "for " + strings.ReplaceAll(words.And(u.For), "-", " ")
		if len(u.For) > 1 {
			note += " together"
		}
		if u.MostL == 0 {
			t.fact(name, "nothing", note+"; holds "+t.Litres(u.HoldsL))
			continue
		}
		note += "; " + pct(u.FillPct, 0) + " of " + t.Litres(u.HoldsL)
		if u.FullestAt != "" {
			note += ", " + measure.DayAndClock(u.FullestAt)
		}
		if u.LeftL > 0 {
			note += "; " + t.Quantity(u.Left()) + " left at the end"
		} else {
			note += "; empty at the end"
		}
		t.fact(name, t.Quantity(u.Most()), note)
	}
}
