package sheet

import (
	"newmake/compile/plan"
	"newmake/compile/show/markup"
)

// Look is the style of the run sheet, for another page about the same plan. more is added at its
// end.
func Look(p *plan.Plan, more string) markup.Look {
	v, _ := viewOf(p, Options{})
	return markup.LookOf(inner(string(v.Style)) + more)
}
