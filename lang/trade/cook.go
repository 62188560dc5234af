package trade

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// checkCook warns of raw grain whose starch swells with nothing in that thins it.
// Halfway through a grain's range it counts as swollen. Whether there are enzymes
// in the batch at all is tradeEnzymes' business.
func checkCook(r *rules, w *walkthrough) {
	thin := false
	var raw []int // bill lines in the mash
	for i := range w.moments {
		m := &w.moments[i]
		thin = thin || m.step.Enzyme != nil && m.step.Enzyme.Does == recipe.Liquefying
		for _, g := range m.step.Grains {
			switch l := &r.batch.Bill.Lines[g]; {
			case hasEnzymes(l.Grain) && l.MassKg > 0:
				thin = true
			case !l.Grain.Malted && !l.Grain.Roasted && l.Grain.Starch > 0 && l.MassKg > 0:
				raw = append(raw, g)
			}
		}
		if thin {
			return
		}
		for _, g := range raw {
			l := &r.batch.Bill.Lines[g]
			if m.liquorM3 == 0 || m.afterC < (l.Grain.GelLowC+l.Grain.GelHighC)/2 {
				continue
			}
			r.add(diag.Diagnostic{
				Code: diag.CodeSetsSolid, Severity: diag.Warning, At: r.at(m.step.Path.Child("to")),
				Summary: fmt.Sprintf("`%s` is cooked with nothing to thin it: neither a liquefying enzyme nor malt is in by then", l.Grain.Name),
				Help:    "write `dose alpha-amylase` before it is heated, or put some malt in first",
				Reason:  "as its starch swells the mash sets solid: the rakes stall, and what lies on the hot wall scorches (common practice)",
			})
			return
		}
	}
}
