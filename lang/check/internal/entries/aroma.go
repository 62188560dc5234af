package entries

import (
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// aroma reads the words of one cause.
func aroma(n *tree.Node, e recipe.Entry) *recipe.Aroma {
	a := &recipe.Aroma{Entry: e, Cause: n.Word("cause"), Taken: n.Word("source")}
	for _, l := range n.All("") {
		if !l.Bad {
			a.Words = append(a.Words, recipe.AromaWord{Word: l.Text("name"), Of: l.Text("compound")})
		}
	}
	return a
}
