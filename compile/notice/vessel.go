package notice

import (
	"fmt"
	"math"

	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

var fullCodes = map[recipe.VesselKind]diag.Code{
	recipe.Cooker: diag.CodeCookerFull, recipe.Fermenter: diag.CodeFermenterFull, recipe.Still: diag.CodeStillFull,
}

// fullest says if a vessel does not hold what goes in. reason is why the room is
// wanted.
func fullest(w *writer, u numbers.Use, what, help, reason string) {
	v, mostM3 := u.Vessel, u.MostM3
	room := v.HoldsM3 * numbers.FillMost(v)
	if mostM3 <= room*(1+1e-9) {
		return
	}
	d := diag.Diagnostic{
		Code: fullCodes[v.Kind], At: w.at(recipe.PathOf(u.Stage)), Reason: reason,
		Summary: fmt.Sprintf("%s is %s, and the %s %q takes %s: %.0f %% of the %s it holds",
			what, w.say.Litres(mostM3*lot.LitresPerM3), v.Kind.Word(), v.Name, w.say.Litres(room*lot.LitresPerM3),
			100*numbers.FillMost(v), w.say.Litres(v.HoldsM3*lot.LitresPerM3)),
		Help:    help,
		Related: declared(v),
	}
	if mostM3 <= v.HoldsM3 && v.Kind == recipe.Cooker {
		w.addAs(diag.Warning, d)
		return
	}
	w.add(d)
}

// chargesThatFit is in how many charges a still takes what is too much for it in so many.
func chargesThatFit(u numbers.Use, charges int) int {
	most := u.Vessel.HoldsM3 * numbers.FillMost(u.Vessel)
	return max(charges+1, int(math.Ceil(float64(charges)*u.MostM3/most-1e-9)))
}

func declared(v *recipe.Vessel) []diag.Related {
	if v.At.IsZero() {
		return nil
	}
	return []diag.Related{{At: v.At, Text: fmt.Sprintf("the %s is declared here", v.Kind.Word())}}
}

// boiler says if a vessel alone wants more heat than the boiler gives.
func boiler(w *writer, v *recipe.Vessel, use string) {
	if b := w.b.Plant.BoilerW; b > 0 && v.HeatsW > b {
		w.add(diag.Diagnostic{
			Code: diag.CodeBoilerSmall, At: w.at(recipe.PathOf(use)),
			Summary: fmt.Sprintf("%q heats at %s, and the boiler gives %s: the boiler sets the pace",
				v.Name, w.say.Power(v.HeatsW/1000), w.say.Power(b/1000)),
			Help:    "nothing need be done; the plan reckons with the boiler",
			Related: declared(v),
		})
	}
}
