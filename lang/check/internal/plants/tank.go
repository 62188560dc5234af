package plants

import (
	"fmt"

	"newmake/lang/check/internal/fields"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// tanks reads one block that declares one tank or several alike. Their names are
// among those of the vessels.
func tanks(p *recipe.Plant, n *tree.Node, seen map[string]diag.Span, diags *diag.List) (whole bool) {
	whole = tree.Missing(diags, n, fmt.Sprintf("the tank %q", n.Text("name"))) && n.Sound()
	t := recipe.Tank{Where: make(map[string]diag.Span, len(n.Lines))}
	t.Read(fields.Text{In: n})
	for _, l := range n.Lines {
		t.Where[l.Field.Name] = l.At()
	}
	for _, c := range recipe.AllContents {
		if l := n.Line("for"); l != nil && l.Has(c.String()) {
			t.For |= c
		}
	}
	for _, c := range n.Match.All("name") {
		one := t
		one.Name, one.At = c.Text(), c.At()
		if at, twice := seen[tree.Key(one.Name)]; twice {
			diags.Add(house.Duplicate("tank", one.Name, one.At, at))
			continue
		}
		seen[tree.Key(one.Name)] = one.At
		p.Tanks = append(p.Tanks, &one)
	}
	return whole
}
