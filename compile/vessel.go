package compile

import (
	"fmt"

	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// fillMost is the greatest fill of a vessel, as a share of what it holds: the
// house's own figure, or what is common practice. A cooker keeps a hand's
// breadth, a fermenter room for the head of foam, a still room for a wash that
// rises: two thirds to three quarters with grain in it.
func fillMost(v *recipe.Vessel) float64 {
	if v.FillMost > 0 {
		return v.FillMost
	}
	switch v.Kind {
	case recipe.Cooker:
		return 0.95
	case recipe.Fermenter:
		return 0.90
	default:
		return 0.75
	}
}

var kindWords = map[recipe.VesselKind]string{recipe.Cooker: "cooker", recipe.Fermenter: "fermenter", recipe.Still: "still"}

var fullCodes = map[recipe.VesselKind]diag.Code{
	recipe.Cooker: diag.CodeCookerFull, recipe.Fermenter: diag.CodeFermenterFull, recipe.Still: diag.CodeStillFull,
}

// vessel enters a vessel that the batch uses, and says if it does not hold what
// goes in. reason is why the room is wanted.
func (c *compiler) vessel(v *recipe.Vessel, use string, mostM3 float64, what, help, reason string) {
	c.p.House.Vessels = append(c.p.House.Vessels, plan.Vessel{
		Name: v.Name, Kind: kindWords[v.Kind], Use: use,
		HoldsL: v.HoldsM3 * litresPerM3, HeatKW: v.HeatsW / 1000, CoolKW: v.CoolsW / 1000,
		MostL: mostM3 * litresPerM3, FillPct: 100 * mostM3 / v.HoldsM3,
	})
	room := v.HoldsM3 * fillMost(v)
	if mostM3 <= room*(1+1e-9) {
		return
	}
	d := diag.Diagnostic{
		Code: fullCodes[v.Kind], At: c.where(use, "batch"), Reason: reason,
		Summary: fmt.Sprintf("%s is %s, and the %s %q takes %s: %.0f %% of the %s it holds",
			what, c.say.Litres(mostM3*litresPerM3), kindWords[v.Kind], v.Name, c.say.Litres(room*litresPerM3),
			100*fillMost(v), c.say.Litres(v.HoldsM3*litresPerM3)),
		Help:    help,
		Related: c.declared(v),
	}
	if mostM3 <= v.HoldsM3 && v.Kind == recipe.Cooker {
		c.tellAs(diag.Warning, d)
		return
	}
	c.tell(d)
}

func (c *compiler) declared(v *recipe.Vessel) []diag.Related {
	if v.At.IsZero() {
		return nil
	}
	return []diag.Related{{At: v.At, Text: fmt.Sprintf("the %s is declared here", kindWords[v.Kind])}}
}

// boiler says if a vessel alone wants more heat than the boiler gives.
func (c *compiler) boiler(v *recipe.Vessel, use string) {
	if b := c.b.Plant.BoilerW; b > 0 && v.HeatsW > b {
		c.tell(diag.Diagnostic{
			Code: diag.CodeBoilerSmall, At: c.where(use),
			Summary: fmt.Sprintf("%q heats at %s, and the boiler gives %s: the boiler sets the pace",
				v.Name, c.say.Power(v.HeatsW/1000), c.say.Power(b/1000)),
			Help:    "nothing need be done; the plan reckons with the boiler",
			Related: c.declared(v),
		})
	}
}
