package notice

import (
	"fmt"
	"strings"

	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// tankFill is the share of a tank that is filled at most: spirit that warms rises,
// and a full tank is not carried or moved without spilling (common practice).
const tankFill = 0.95

// Tanks says which tanks do not hold what waits in them.
func Tanks(n *numbers.Batch) diag.List {
	w := about(n.Batch)
	for _, u := range n.TankUses() {
		if u.MostM3() <= u.HoldsM3*tankFill*(1+1e-9) {
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
		most, room := w.say.Quantity(u.Most), w.say.Litres(u.HoldsM3*lot.LitresPerM3)
		if most == room && u.MostM3() > u.HoldsM3 {
			most = "a little more than " + most
		}
		d := diag.Diagnostic{
			Code: diag.CodeTankFull, At: u.Tanks[0].At,
			Summary: fmt.Sprintf("%s to wait in %s, for %s, which %s %s", most, words.And(names), strings.ReplaceAll(u.For.String(), "-", " "), holds, room),
			Help:    "a smaller batch, a larger tank, or another one beside it, `for` the same",
			Reason:  "what does not fit runs over; a tank is filled to 95 % at most, for liquids grow as they warm (common practice)",
			Related: related[min(1, len(related)):],
		}
		if u.MostM3() <= u.HoldsM3 {
			w.addAs(diag.Warning, d)
			continue
		}
		w.add(d)
	}
	return w.list
}
