package entries

import (
	"fmt"

	"newmake/lang/check/internal/fields"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// enzyme reads one preparation.
func enzyme(n *tree.Node, e recipe.Entry, diags *diag.List) *recipe.Enzyme {
	z := &recipe.Enzyme{Entry: e}
	z.Read(fields.Text{In: n})
	if l := n.Line("optimum"); l != nil && n.Line("range") != nil && (z.OptimumC < z.LowC || z.OptimumC > z.HighC) {
		diags.Add(diag.Diagnostic{
			Code: diag.CodeLibrarySum, At: l.At(), Summary: fmt.Sprintf("the enzyme `%s` works best where it does not work", z.Name),
			Help: "`optimum` lies within `range`",
		})
	}
	return z
}
