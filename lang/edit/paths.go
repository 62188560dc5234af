package edit

import (
	"fmt"
	"slices"

	"newmake/lang/check"
	"newmake/lang/recipe"
)

// Paths names the values of a batch that Apply can change, sorted: bill.rye,
// mash.rest.2, plant.water.
func Paths(h *check.House, b *recipe.Batch) []string {
	e := &editor{house: h, batch: b, result: &Result{}}
	var out []string
	for _, name := range e.known() {
		p := recipe.ParsePath(name)
		parts := p.Parts()
		if _, ok := e.where(p); ok && !(len(parts) > 1 && parts[0] == "mash" && parts[1] == "step") {
			out = append(out, name)
		}
	}
	count := map[string]int{}
	for _, s := range b.Mash.Steps {
		verb := e.verb(s)
		if verb == "" {
			continue
		}
		count[verb]++
		out = append(out, fmt.Sprintf("mash.%s.%d", verb, count[verb]))
	}
	slices.Sort(out)
	return slices.Compact(out)
}
