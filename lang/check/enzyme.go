package check

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// enzyme reads one preparation.
func enzyme(n *node, e recipe.Entry, diags *diag.List) *recipe.Enzyme {
	z := &recipe.Enzyme{
		Entry:         e,
		Does:          recipe.EnzymeKind(n.word("does")),
		ActivityPerKg: n.si("activity"),
		OptimumC:      n.si("optimum"),
		MostC:         n.si("dies-above"),
		HalfLifeS:     n.line("half-life").num("duration"),
		HalfLifeC:     n.line("half-life").num("temp"),
		DeathJMol:     n.si("death-energy"),
	}
	z.LowC, z.HighC = n.span("range")
	z.PHLow, z.PHHigh = n.span("acidity")
	z.DoseLow, z.DoseHigh = n.span("dose")
	if l := n.line("optimum"); l != nil && n.line("range") != nil && (z.OptimumC < z.LowC || z.OptimumC > z.HighC) {
		diags.Add(diag.Diagnostic{
			Code: diag.CodeStockSum, At: l.at(), Summary: fmt.Sprintf("the enzyme `%s` works best where it does not work", z.Name),
			Help: "`optimum` lies within `range`",
		})
	}
	return z
}
