package sheet

import (
	"newmake/compile/plan"
	"newmake/compile/show/markup"
)

// Style is the style sheet of the run sheet, for another page about the same plan: an
// element, and the policy that lets it in and nothing else. more is added at its end.
func Style(p *plan.Plan, more string) (style markup.HTML, policy string) {
	v, _ := viewOf(p, Options{})
	text := inner(string(v.Style)) + more
	return markup.HTML("<style>" + text + "</style>"), markup.Policy(text)
}
