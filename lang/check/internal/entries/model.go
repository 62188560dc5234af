package entries

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// model reads the constants of one model, each in SI. What a constant measures is
// for the built-in model of that name to say: a house tunes the figure, in
// whatever unit of that kind.
func model(n *tree.Node, e recipe.Entry, under *house.Entry, diags *diag.List) *recipe.Model {
	m := &recipe.Model{Entry: e, Values: make(map[string]float64, len(n.Lines))}
	stated := map[string]*tree.Capture{}
	if under != nil {
		for _, l := range under.Node.All("") {
			stated[l.Text("name")] = l.Get("quantity")
		}
	}
	for _, l := range n.All("") {
		name, c := l.Text("name"), l.Get("quantity")
		m.Values[name] = c.SI
		of := stated[name]
		if of == nil {
			continue
		}
		si, ok := tree.ToSI(c.Item.Value, c.Item.Unit, of.Kind)
		if ok {
			m.Values[name] = si
			continue
		}
		d := diag.Diagnostic{
			Code: diag.CodeWrongKind, At: c.At(),
			Summary: fmt.Sprintf("`%s` is %s, and the constant `%s` is %s", c.Item.Unit, c.Kind, name, of.Kind),
			Help:    fmt.Sprintf("the built-in model has `%s %s`: write it in that unit, or another that measures the same", name, lineOf(of)),
		}
		switch {
		case c.Item.Unit == "":
			d.Code, d.Summary = diag.CodeNoUnit, fmt.Sprintf("the constant `%s` is %s, and needs its unit", name, of.Kind)
		case of.Kind == quantity.Number:
			d.Summary = fmt.Sprintf("`%s` is %s, and the constant `%s` is a plain number", c.Item.Unit, c.Kind, name)
		}
		diags.Add(d)
		m.Values[name] = of.SI
	}
	return m
}

// lineOf is a number as the library writes it.
func lineOf(c *tree.Capture) string {
	if c.Item.Unit == "" {
		return c.Item.Num
	}
	return c.Item.Num + " " + c.Item.Unit
}
