package check

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/schema"
)

// model reads the constants of one model, each in SI. What a constant measures is
// for the built-in model of that name to say: a house tunes the figure, in
// whatever unit of that kind.
func model(n *node, e recipe.Entry, base *Library, diags *diag.List) *recipe.Model {
	m := &recipe.Model{Entry: e, Values: make(map[string]float64, len(n.lines))}
	stated := map[string]*capture{}
	if base != nil {
		for _, l := range base.nodes[schema.Model].find(e.Name).all("") {
			stated[l.text("name")] = l.get("quantity")
		}
	}
	for _, l := range n.all("") {
		name, c := l.text("name"), l.get("quantity")
		m.Values[name] = c.si
		of := stated[name]
		if of == nil {
			continue
		}
		si, ok := toSI(c.item.Value, c.item.Unit, of.kind)
		if ok {
			m.Values[name] = si
			continue
		}
		d := diag.Diagnostic{
			Code: diag.CodeWrongKind, At: c.at(),
			Summary: fmt.Sprintf("`%s` is %s, and the constant `%s` is %s", c.item.Unit, c.kind, name, of.kind),
			Help:    fmt.Sprintf("the built-in model has `%s %s`: write it in that unit, or another that measures the same", name, lineOf(of)),
		}
		switch {
		case c.item.Unit == "":
			d.Code, d.Summary = diag.CodeNoUnit, fmt.Sprintf("the constant `%s` is %s, and needs its unit", name, of.kind)
		case of.kind == quantity.Number:
			d.Summary = fmt.Sprintf("`%s` is %s, and the constant `%s` is a plain number", c.item.Unit, c.kind, name)
		}
		diags.Add(d)
		m.Values[name] = of.si
	}
	return m
}

// lineOf is a number as the stock writes it.
func lineOf(c *capture) string {
	if c.item.Unit == "" {
		return c.item.Num
	}
	return c.item.Num + " " + c.item.Unit
}
