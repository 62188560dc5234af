package check

import (
	"newmake/lang/recipe"
	"newmake/lang/tree"
	"newmake/lang/vocabulary"
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

// Vocabulary is the house's words for what is tasted, the library's among them.
func (h *House) Vocabulary() *vocabulary.Words { return h.vocabulary() }
