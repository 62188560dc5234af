package fields

import (
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// Strength is the value with what it is a fraction of.
func Strength(c *tree.Capture) recipe.Strength {
	s := recipe.Strength{Value: c.SI}
	if u, ok := quantity.Lookup(c.Item.Unit); ok {
		switch u.Name {
		case "proof":
			s.Basis = recipe.Proof
		case "% abw":
			s.Basis = recipe.ABW
		}
	}
	return s
}

// StrengthOn is the strength on the line that begins with a word.
func StrengthOn(n *tree.Node, word string) recipe.Strength {
	if c := n.Line(word).Get("strength"); c != nil {
		return Strength(c)
	}
	return recipe.Strength{}
}
