package check

import "newmake/lang/recipe"

var modelField = &Field{
	Name: "model", Shape: stockName, Repeat: true, Key: "name", Example: "model mash",
	Doc: "The constants of a model, so that a house can tune them to its own runs.",
	Block: &Block{
		Any: &Field{Shape: "NAME QUANTITY", Repeat: true, Key: "name", Example: "gel-rate 11.5 /h", Doc: "One constant with its unit."},
	},
}

// model reads the constants of one model, each in SI.
func model(n *node, e recipe.Entry) *recipe.Model {
	m := &recipe.Model{Entry: e, Values: make(map[string]float64, len(n.lines))}
	for _, l := range n.all("") {
		m.Values[l.text("name")] = l.num("quantity")
	}
	return m
}
