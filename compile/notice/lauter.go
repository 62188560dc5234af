package notice

import (
	"fmt"

	"newmake/compile/lot"
	"newmake/compile/stage/mash"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// keptSlack is by how much a mash may take more kept water than it leaves: what a
// tank's gauge does not show.
const keptSlack = 1.02

// lauter says what does not work out as worts are drained off the grain.
func lauter(w *writer, r mash.Result) {
	drained, said, takes := false, false, 0.0
	var taken recipe.MashStep
	for _, s := range w.b.Mash.Steps {
		switch s.Verb {
		case recipe.MashDrain, recipe.MashSparge:
			drained = drained || !s.NextMash
		case recipe.MashWater:
			if s.KeptM3 > 0 {
				takes, taken = takes+s.KeptM3, s
			}
		case recipe.MashCool:
			if drained && !said && w.b.Plant.WortCooler.AreaM2 == 0 && w.b.Mash.Cooker.HasCooling() {
				said = true
				w.add(diag.Diagnostic{
					Code: diag.CodeCooledOnBed, At: s.At,
					Summary: fmt.Sprintf("the worts are cooled in %q, in which the draff lies", w.b.Mash.Cooker.Name),
					Help:    "give the plant a `wort-cooler` and write `drain ... cooled to " + w.say.Temp(s.TempC) + "`, so that they run cold into the fermenter; or let them stand in an underback, and `cool` them by the cooler",
					Reason:  "worts leave the tun to be cooled: on the draff they draw its husk, and its jacket cools the grain (common practice)",
				})
			}
		}
	}
	if takes > r.Kept.VolumeM3*keptSlack {
		w.add(diag.Diagnostic{
			Code: diag.CodeKeptShort, At: w.at(taken.Path.Child("kept"), taken.Path),
			Summary: fmt.Sprintf("the mash takes %s of kept water and leaves %s for the next", w.say.Litres(takes*lot.LitresPerM3), w.say.Litres(r.Kept.VolumeM3*lot.LitresPerM3)),
			Help:    "take less of it, or let more water over the bed before the last `drain ... for the next mash`",
			Reason:  "each mash lives on what the one before left",
		})
	}
}
