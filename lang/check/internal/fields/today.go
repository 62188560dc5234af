package fields

import (
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// Today reads what the house has on the day, of what one batch hands on to
// the next.
func Today(n *tree.Node) recipe.Today {
	t := recipe.Today{NoBackset: n.Line("backset").Has("none"), NoKept: n.Line("kept").Has("none"), NoPotAle: n.Line("pot-ale").Has("none")}
	if l := n.Line("feints"); l != nil && !l.Bad {
		t.FeintsSaid = true
		if l.Has("volume") {
			t.FeintsM3, t.FeintsAt = l.Num("volume"), StrengthOn(n, "feints")
		}
	}
	return t
}
