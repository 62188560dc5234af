package notice

import (
	"fmt"
	"strings"

	"newmake/compile/lot"
	"newmake/compile/matter/stream"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/words"
)

// tankFill is the share of a tank that is filled at most: spirit that warms rises,
// and a full tank is not carried or moved without spilling (common practice).
const tankFill = 0.95

// Tanks says which tanks do not hold what waits in them.
func Tanks(n *numbers.Batch) diag.List {
	w := about(n.Batch)
	for _, u := range n.TankUses() {
		if u.MostM3 <= u.HoldsM3*tankFill*(1+1e-9) {
			continue
		}
		var names []string
		var related []diag.Related
		for _, t := range u.Tanks {
			names = append(names, fmt.Sprintf("%q", t.Name))
			if !t.At.IsZero() {
				related = append(related, diag.Related{At: t.At, Text: "the tank is declared here"})
			}
		}
		holds := "holds"
		if len(names) > 1 {
			holds = "hold together"
		}
		most, room := w.say.Quantity(waiting(n, u)), w.say.Litres(u.HoldsM3*lot.LitresPerM3)
		if most == room && u.MostM3 > u.HoldsM3 {
			most = "a little more than " + most
		}
		d := diag.Diagnostic{
			Code: diag.CodeTankFull, At: u.Tanks[0].At,
			Summary: fmt.Sprintf("%s to wait in %s, for %s, which %s %s", most, words.And(names), strings.ReplaceAll(u.For.String(), "-", " "), holds, room),
			Help:    "a smaller batch, a larger tank, or another one beside it, `for` the same",
			Reason:  "what does not fit runs over; a tank is filled to 95 % at most, for liquids grow as they warm (common practice)",
			Related: related[min(1, len(related)):],
		}
		if u.MostM3 <= u.HoldsM3 {
			w.addAs(diag.Warning, d)
			continue
		}
		w.add(d)
	}
	return w.list
}

// waiting is the most that waits in tanks, spirit in the gallons of its gauge, as the plan
// has it.
func waiting(n *numbers.Batch, u numbers.TankUse) plan.Quantity {
	litres := u.MostM3 * lot.LitresPerM3
	q := plan.Of(litres, plan.Litre)
	for _, spirit := range []struct {
		of recipe.Contents
		stream.Stream
	}{{recipe.OfLowWines, n.Stripped.LowWines}, {recipe.OfFeints, n.Distilled.Feints()}, {recipe.OfSpirit, n.Reduced.Spirit}} {
		if l := lot.Of(spirit.Stream); u.For&spirit.of != 0 && l.VolumeL > 0 {
			q.Gallons = litres * l.WineGallons / l.VolumeL
			break
		}
	}
	return q
}
