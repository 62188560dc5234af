package entries

import (
	"fmt"

	"newmake/lang/check/internal/fields"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// grain reads one grain.
func grain(n *tree.Node, e recipe.Entry, diags *diag.List) *recipe.Grain {
	g := &recipe.Grain{Entry: e, LimitShare: 1}
	g.Read(fields.Text{In: n})
	what := fmt.Sprintf("the grain `%s`", g.Name)
	switch {
	case g.Starch+g.Sugars+g.Solubles > 1:
		diags.Add(diag.Diagnostic{
			Code: diag.CodeLibrarySum, At: n.At(),
			Summary: fmt.Sprintf("%s has more than itself in it: starch, sugars and solubles come to %s %%", what, wording.Decimal(100*(g.Starch+g.Sugars+g.Solubles))),
			Help:    "each is a share of the dry matter: together they stay below 100 %",
		})
	case n.Present("starch") && g.Starch > 0 && !n.Present("gelatinizes"):
		diags.Add(diag.Diagnostic{
			Code: diag.CodeMissing, At: n.At(), Summary: what + " has starch and no `gelatinizes` line",
			Help:   "add one, for example: `gelatinizes 62..75 C`",
			Reason: "without it nobody knows what temperature cooks it",
		})
	case !n.Present("starch") && !n.Present("sugars") && !n.Present("extract"):
		diags.Add(diag.Diagnostic{
			Code: diag.CodeMissing, At: n.At(), Summary: what + " has neither `starch` nor `sugars` nor `extract`",
			Help: "add what the maltster's or the mill's sheet says, for example: `starch 71.8 %`",
		})
	}
	return g
}
