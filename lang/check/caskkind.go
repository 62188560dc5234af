package check

import (
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// caskKind reads one kind of cask.
func caskKind(n *tree.Node, e recipe.Entry) *recipe.CaskKind {
	k := &recipe.CaskKind{
		Entry:    e,
		Wood:     n.Word("wood"),
		Charred:  n.Yes("charred"),
		Toasted:  n.Yes("toasted"),
		SoakFrac: n.SIOr("soak", 0.04),
	}
	if l := n.Line("sizes"); l != nil {
		for _, c := range l.Match.All("volume") {
			k.SizesM3 = append(k.SizesM3, c.SI)
		}
	}
	return k
}
