package notice

import (
	"fmt"

	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/cask"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// leftoverSmall is the share of a cask below which what is left over is not
// worth a word: the sheet shows it, and it goes into the next batch's cask.
const leftoverSmall = 0.30

// reduction says if the hearts cannot be brought to what is asked of them.
func reduction(n *numbers.Batch, hearts plan.Lot) diag.List {
	b, r := n.Batch, n.Reduced
	if r.Err != nil {
		return Failed(n, r.Err)
	}
	if !r.Weak {
		return nil
	}
	w, goes := about(b), "go into wood"
	if !numbers.InWood(b) {
		goes = "be bottled"
	}
	w.add(diag.Diagnostic{
		Code: diag.CodeBelowEntry, At: w.at(strengthPath(b)),
		Summary: fmt.Sprintf("the hearts come at %s, and are to %s at %s",
			w.say.Strength(hearts.Strength()), goes, w.say.Strength(lot.AtMassFrac(r.ToMassFrac))),
		Help:   "end the hearts earlier, or ask for a lower strength",
		Reason: "water only weakens",
	})
	return w.list
}

// Cask is what a distiller should know of the wood. p is what the plan says of it.
func Cask(b *recipe.Batch, r numbers.Cask, p plan.Cask) diag.List {
	if !r.Done {
		return nil
	}
	w, k := about(b), b.Cask
	size := w.say.Litres(p.SizeL)
	for _, problem := range r.Problems {
		switch problem {
		case cask.ProblemNotOneCask:
			help := "a larger bill, wider hearts, a lower entry strength, or a smaller cask"
			if !b.Spirit.Feints && !b.Today.FeintsSaid {
				help = "let the feints of the run before into the charge: a line `charge low-wines, feints` in `spirit`; or " + help
			}
			w.add(diag.Diagnostic{
				Code: diag.CodeCaskNotFilled, At: w.at(recipe.PathFill),
				Summary: fmt.Sprintf("%s at entry strength does not fill a cask of %s: %s short", w.say.Volume(p.Leftover), size, short(w, p.Leftover)),
				Help:    help,
				Reason:  "an ullaged cask oxidizes and leaks, and its head dries out",
			})
			return w.list
		case cask.ProblemShort:
			if !lot.SeenShort(b, *p.LastFill) {
				continue
			}
			which := "the cask"
			if p.Casks > 1 {
				which = "the last cask"
			}
			w.addAs(diag.Note, diag.Diagnostic{
				Code: diag.CodeCaskNotFilled, At: w.at(recipe.PathFill),
				Summary: fmt.Sprintf("%s takes %s of its %s: it is filled %s short", which, w.say.Volume(*p.LastFill), size, short(w, *p.LastFill)),
				Help:    "top it up with spirit of the same kind that is left over; a larger bill or wider hearts fill it",
				Reason:  "from 97 % full a cask is as good as full (common practice)",
			})
		case cask.ProblemWeak:
			w.add(diag.Diagnostic{
				Code: diag.CodeBelowBottling, At: w.at(recipe.PathBottle, recipe.PathRest),
				Summary: fmt.Sprintf("after its rest the cask is at %s, weaker than the bottling strength of %s",
					w.say.Strength(lot.AtABV(r.Years[len(r.Years)-1].ABV)), w.say.Strength(lot.AtABV(numbers.BottleABV(b)))),
				Help: "a higher entry strength, a shorter rest, or a lower bottling strength",
			})
		case cask.ProblemDry:
			w.addAs(diag.Warning, diag.Diagnostic{
				Code: diag.CodeBelowBottling, At: w.at(recipe.PathRest),
				Summary: "the cask runs dry before its rest ends", Help: "a shorter rest, or a larger cask",
			})
		case cask.ProblemClimate:
			w.addAs(diag.Warning, diag.Diagnostic{
				Code: diag.CodeCaskFailed, At: w.at(recipe.PathClimate),
				Summary: "the losses and the change of proof that are stated cannot both be; the change of proof gives way",
				Help:    "mend the climate's figures",
			})
		}
	}
	if over := lot.VolumeM3(b.Gauge, p.Leftover) / k.SizeM3; over > leftoverSmall {
		w.add(diag.Diagnostic{
			Code: diag.CodeLeftover, At: w.at(recipe.PathFill),
			Summary: fmt.Sprintf("%s is left over at entry strength, %.0f %% of a cask", w.say.Volume(p.Leftover), p.LeftoverOf),
			Help:    "keep it for the next batch's cask, or fit the batch to whole casks",
		})
	}
	return w.list
}

// short is how much a lot lacks to fill a cask.
func short(w *writer, l plan.Lot) string {
	m3 := w.b.Cask.SizeM3 - lot.VolumeM3(w.b.Gauge, l)
	return w.say.Quantity(lot.Written(w.b.Gauge, m3, l))
}
