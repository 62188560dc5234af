package measure

import (
	"strings"

	"newmake/compile/plan"
)

// Lots are those of a grain of the bill, as one takes them: lot C-118; C-118 (200 lb), C-119 (300 lb),
// to buy 37 lb. It is short, for a row of a page. It is "" where the stores have none.
func (u Units) Lots(g plan.Grain) string {
	if len(g.Lots) == 0 {
		return ""
	}
	name := func(l plan.GrainLot) string {
		if l.Lot == "" {
			return "without a code"
		}
		return l.Lot
	}
	if len(g.Lots) == 1 && g.NoLotKg == 0 {
		return "lot " + name(g.Lots[0])
	}
	var all []string
	for _, l := range g.Lots {
		all = append(all, name(l)+" ("+u.Mass(l.MassKg)+")")
	}
	if g.NoLotKg > 0 {
		all = append(all, "to buy "+u.Mass(g.NoLotKg))
	}
	return strings.Join(all, ", ")
}
