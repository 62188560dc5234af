package trade

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/words"
)

// Gums: the pentosans of rye, the beta-glucan of oats and raw barley. Up to a third of
// them a bill is worked without more ado (from memory); a bill that is mostly of them is
// like glue (common practice).
const (
	gumsSome = 0.33
	gumsMost = 0.60

	// Malt's own beta-glucanase works at 35 to 45 C and is gone at 60 (common practice).
	gumRestLowC, gumRestHighC = 35, 45
	gumRestLeastS             = 10 * 60

	// Where xylanase and beta-glucanase of the library both work.
	thinLowC, thinHighC = 40, 65
)

// checkGums warns of a bill whose gums nothing thins: no enzyme for them, and no rest
// in which malt does it.
func checkGums(r *rules, w *walkthrough) {
	share := 0.0
	var names []string
	at := r.batch.Mash.At
	for i := range w.moments {
		for _, g := range w.moments[i].step.Grains {
			if l := &r.batch.Bill.Lines[g]; l.Grain.Viscous && l.MassKg > 0 {
				if share == 0 {
					at = r.at(w.moments[i].step.Path.Child(l.Grain.Name))
				}
				share += l.Share
				names = append(names, "`"+l.Grain.Name+"`")
			}
		}
	}
	if share <= gumsSome || dosed(r, recipe.Viscosity) || gumRest(r, w) {
		return
	}
	is := "is"
	if len(names) > 1 {
		is = "are"
	}
	d := diag.Diagnostic{
		Code: diag.CodeGums, Severity: diag.Note, At: at,
		Summary: fmt.Sprintf("%s %s %s of the bill, and nothing thins the gums", words.And(names), is, percent(share)),
		Help: fmt.Sprintf("write `dose xylanase` and `dose beta-glucanase` where the mash rests between %s and %s; leave room for foam in the fermenter and the still, or give an `antifoam`",
			r.temp(thinLowC), r.temp(thinHighC)),
		Reason: "the gums make a mash like glue, and a wash that foams: rakes and pumps labour, a cooler chokes, and it boils over (common practice)",
	}
	if share > gumsMost {
		d.Severity = diag.Warning
	}
	r.add(d)
}

// gumRest reports whether the mash rests where malt's own enzymes thin it, with malt in.
func gumRest(r *rules, w *walkthrough) bool {
	malt := false
	for i := range w.moments {
		m := &w.moments[i]
		for _, g := range m.step.Grains {
			l := &r.batch.Bill.Lines[g]
			malt = malt || hasEnzymes(l.Grain) && l.MassKg > 0
		}
		if malt && m.step.Verb == recipe.MashRest && m.step.DurationS >= gumRestLeastS && m.afterC >= gumRestLowC && m.afterC <= gumRestHighC {
			return true
		}
	}
	return false
}
