package check

import (
	"fmt"
	"sync"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// costs reads the prices of a house.
func costs(n *node, stock recipe.Stock, diags *diag.List) recipe.Costs {
	c := recipe.Costs{PerKg: map[string]float64{}}
	if n == nil {
		return c
	}
	c.Where = make(map[string]diag.Span, len(n.lines))
	for _, l := range n.lines {
		word := l.field.Name
		if word == "" {
			word = l.text("name")
		}
		c.Where[word] = l.at()
	}
	c.Currency = n.word("currency")
	c.PerKWh = price(&c, n.line("energy"), quantity.Energy, "kWh", diags) * 3.6e6
	c.PerM3Water = price(&c, n.line("water"), quantity.Volume, "gal", diags)
	c.PerHour = price(&c, n.line("work"), quantity.Duration, "h", diags) * quantity.HourS
	c.PerCask = price(&c, n.line("cask"), quantity.None, "", diags)
	c.PerUsedCask = price(&c, n.line("used-cask"), quantity.None, "", diags)
	known := sync.OnceValue(func() []string { return stockNames(stock) })
	for _, l := range n.all("") {
		name := l.text("name")
		if stock.Grains[name] == nil && stock.Yeasts[name] == nil && stock.Enzymes[name] == nil {
			diags.Add(unknownName("grain, yeast or enzyme", l.get("name"), known))
			continue
		}
		c.PerKg[name] = price(&c, l, quantity.Mass, "lb", diags)
	}
	return c
}

// price reads one price: money per SI unit of a kind, or for each thing where the
// kind is none. All prices of a house are in one currency, for they are summed.
func price(costs *recipe.Costs, n *node, per quantity.Kind, such string, diags *diag.List) float64 {
	c := n.quantity()
	if c == nil {
		return 0
	}
	p, ok := quantity.ParsePrice(c.item.Unit)
	if !ok && quantity.IsCurrency(c.item.Unit) {
		p, ok = quantity.Price{Currency: c.item.Unit}, true
	}
	if ok && costs.Currency == "" {
		costs.Currency = p.Currency
	}
	switch {
	case !ok:
		return 0
	case p.Currency != costs.Currency:
		diags.Add(diag.Diagnostic{
			Code: diag.CodePrice, Summary: fmt.Sprintf("this price is in %s, and the house counts in %s", p.Currency, costs.Currency), At: c.at(),
			Help: "write all prices in one currency: they are added up as they stand",
		})
	case per == quantity.None && p.Per != nil:
		diags.Add(diag.Diagnostic{
			Code: diag.CodePrice, Summary: fmt.Sprintf("this price is per `%s`, and that of one cask is wanted", p.PerName), At: c.at(),
			Help: fmt.Sprintf("for example `%s %s`", c.item.Num, costs.Currency),
		})
	case per != quantity.None && (p.Per == nil || p.Per.Measures[0].Kind != per):
		diags.Add(diag.Diagnostic{
			Code: diag.CodePrice, Summary: fmt.Sprintf("this price is per `%s`, and %s is wanted", p.PerName, per), At: c.at(),
			Help: fmt.Sprintf("for example `%s %s/%s`", c.item.Num, costs.Currency, such),
		})
	}
	return c.si
}
