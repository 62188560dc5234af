package notice

import (
	"fmt"

	"newmake/compile/law"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Law says where the spirit does not come off the still as its standard of
// identity asks, or not in the season that it asks for. What the text alone shows, the checker has said.
func Law(b *recipe.Batch, held *plan.Law) diag.List {
	if held == nil {
		return nil
	}
	w := about(b)
	for i, k := range b.Standard.Conditions {
		p := held.Conditions[i]
		if p.Met != law.NotMet {
			continue
		}
		switch {
		case k.Test == recipe.OneSeason:
			w.add(diag.Diagnostic{
				Code: diag.CodeTwoSeasons, At: w.at(recipe.PathStart),
				Summary: fmt.Sprintf("%s is %s, and this batch is distilled %s", k.Of, p.Asks, p.Found),
				Help:    "start it so that every run falls before the end of June or of December, or after it",
				Reason:  k.Law,
				Related: []diag.Related{{At: w.at(recipe.PathStandard), Text: "the standard is named here"}},
			})
		case isOffStill(k.Test):
			w.add(diag.Diagnostic{
				Code: diag.CodeOffStill, At: w.at(recipe.PathHearts),
				Summary: fmt.Sprintf("%s comes %s, and these hearts come off it at %s", k.Of, p.Asks, p.Found),
				Help:    "move the cuts or the reflux, or name another standard",
				Reason:  k.Law,
				Related: []diag.Related{{At: w.at(recipe.PathStandard), Text: "the standard is named here"}},
			})
		}
	}
	return w.list
}

func isOffStill(t recipe.Test) bool {
	return t == recipe.OffStillUnder || t == recipe.OffStillMost || t == recipe.OffStillOver
}
