package entries

import (
	"slices"
	"time"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// country reads a country.
func country(n *tree.Node, e recipe.Entry, diags *diag.List) *recipe.Country {
	c := &recipe.Country{Entry: e, Title: n.Word("title"), Records: n.Word("records"), Kept: n.Word("kept"), Calls: map[string]string{}}
	for _, l := range n.Lines {
		if l.Bad {
			continue
		}
		switch l.Field.Name {
		case "counts":
			c.Unit, c.UnitLong = l.Text("unit"), l.Text("long")
			for _, word := range []string{"proof", "litres", "hectolitres"} {
				if l.Has(word) {
					c.Counts = word
				}
			}
		case "calls":
			name := l.Get("name")
			if !slices.Contains(schema.Accounts, tree.Key(name.Text())) {
				diags.Add(tree.UnknownName("account", name, func() []string { return schema.Accounts }))
				continue
			}
			c.Calls[tree.Key(name.Text())] = l.Text("text")
		case "excise":
			c.Excise = append(c.Excise, excise(l))
		case "note":
			c.Notes = append(c.Notes, l.Text("text"))
		}
	}
	return c
}

func excise(l *tree.Node) recipe.Excise {
	m := l.Get("money")
	x := recipe.Excise{Money: m.SI, Currency: quantity.Currency(m.Item.Unit), UpTo: l.Num("number"), Reduced: l.Has("reduced"), Source: l.Comment()}
	if c := l.Get("since"); c != nil {
		if t, err := time.Parse(time.DateOnly, c.Text()); err == nil {
			x.From = record.DateOf(t)
		}
	}
	return x
}
