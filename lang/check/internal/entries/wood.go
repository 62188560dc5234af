package entries

import (
	"newmake/lang/check/internal/fields"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// caskWood reads a wood.
func caskWood(n *tree.Node, e recipe.Entry) *recipe.CaskWood {
	k := &recipe.CaskWood{Entry: e, SoakFrac: 0.04, TareKg: 50}
	k.Read(fields.Text{In: n})
	if l := n.Line("sizes"); l != nil {
		for _, c := range l.Match.All("volume") {
			k.SizesM3 = append(k.SizesM3, c.SI)
		}
	}
	return k
}
