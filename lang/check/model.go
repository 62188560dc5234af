package check

import (
	"newmake/lang/recipe"
)

// model reads the constants of one model, each in SI.
func model(n *node, e recipe.Entry) *recipe.Model {
	m := &recipe.Model{Entry: e, Values: make(map[string]float64, len(n.lines))}
	for _, l := range n.all("") {
		m.Values[l.text("name")] = l.num("quantity")
	}
	return m
}
