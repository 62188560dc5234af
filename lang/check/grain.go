package check

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/wording"
)

// grain reads one grain.
func grain(n *node, e recipe.Entry, diags *diag.List) *recipe.Grain {
	g := &recipe.Grain{
		Entry:        e,
		Cereal:       n.word("cereal"),
		Malted:       n.yes("malted"),
		Roasted:      n.yes("roasted"),
		TestWeightKg: n.si("bushel"),
		Moisture:     n.si("moisture"),
		Starch:       n.si("starch"),
		Sugars:       n.si("sugars"),
		Extract:      n.si("extract"),
		Solubles:     n.si("solubles"),
		LintnerPower: n.si("power"),
		AlphaDU:      n.si("alpha"),
		Viscous:      n.yes("viscous"),
		MostC:        n.si("most"),
	}
	g.GelLowC, g.GelHighC = n.span("gelatinizes")
	lines := fmt.Sprintf("the grain `%s`", g.Name)
	switch {
	case g.Starch+g.Sugars+g.Solubles > 1:
		diags.Add(diag.Diagnostic{
			Code: diag.CodeStockSum, At: n.at(),
			Summary: fmt.Sprintf("%s has more than itself in it: starch, sugars and solubles come to %s %%", lines, wording.Decimal(100*(g.Starch+g.Sugars+g.Solubles))),
			Help:    "each is a share of the dry matter: together they stay below 100 %",
		})
	case n.present("starch") && g.Starch > 0 && !n.present("gelatinizes"):
		diags.Add(diag.Diagnostic{
			Code: diag.CodeMissing, At: n.at(), Summary: lines + " has starch and no `gelatinizes` line",
			Help:   "add one, for example: `gelatinizes 62..75 C`",
			Reason: "without it nobody knows what temperature cooks it",
		})
	case !n.present("starch") && !n.present("sugars") && !n.present("extract"):
		diags.Add(diag.Diagnostic{
			Code: diag.CodeMissing, At: n.at(), Summary: lines + " has neither `starch` nor `sugars` nor `extract`",
			Help: "add what the maltster's or the mill's sheet says, for example: `starch 71.8 %`",
		})
	}
	return g
}
