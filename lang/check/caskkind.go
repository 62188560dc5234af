package check

import (
	"newmake/lang/recipe"
)

// caskKind reads one kind of cask.
func caskKind(n *node, e recipe.Entry) *recipe.CaskKind {
	k := &recipe.CaskKind{
		Entry:    e,
		Wood:     n.word("wood"),
		Charred:  n.yes("charred"),
		Toasted:  n.yes("toasted"),
		SoakFrac: n.siOr("soak", 0.04),
	}
	if l := n.line("sizes"); l != nil {
		for _, c := range l.m.all("volume") {
			k.SizesM3 = append(k.SizesM3, c.si)
		}
	}
	return k
}
