package check

import (
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// strengthOf is the value with what it is a fraction of.
func strengthOf(c *tree.Capture) recipe.Strength {
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

// strengthOn is the strength on the line that begins with a word.
func strengthOn(n *tree.Node, word string) recipe.Strength {
	if c := n.Line(word).Get("strength"); c != nil {
		return strengthOf(c)
	}
	return recipe.Strength{}
}
