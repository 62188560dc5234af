package plants

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"newmake/lang/check/internal/entries"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// costs reads the prices of a house.
func costs(n *tree.Node, lib *entries.Library, diags *diag.List) recipe.Costs {
	h := lib.House()
	c := recipe.Costs{PerKg: map[string]float64{}, BagKg: map[string]float64{}, BagsAPallet: map[string]int{}}
	if n == nil {
		return c
	}
	c.Where = make(map[string]diag.Span, len(n.Lines))
	for _, l := range n.Lines {
		word := l.Field.Name
		if word == "" {
			word = l.Text("name")
		}
		c.Where[word] = l.At()
	}
	c.Currency = quantity.Currency(n.Word("currency"))
	c.PerKWh = price(&c, n.Line("energy"), quantity.Energy, "kWh", diags) * 3.6e6
	c.PerM3Water = price(&c, n.Line("water"), quantity.Volume, "gal", diags)
	c.PerHour = price(&c, n.Line("work"), quantity.Duration, "h", diags) * quantity.HourS
	c.PerCask = price(&c, n.Line("cask"), quantity.None, "cask", diags)
	c.PerUsedCask = price(&c, n.Line("used-cask"), quantity.None, "cask", diags)
	c.PerBottle = price(&c, n.Line("bottle"), quantity.None, "bottle", diags)
	if l := n.Line("carrying"); l != nil {
		c.CarryingPerYear = l.Num("peryear")
	}
	known := sync.OnceValue(func() []string { return priced(h) })
	for _, l := range n.All("") {
		name := l.Text("name")
		if !slices.Contains(recipe.Additions, name) && !h.Declares(schema.Grain, name) && !h.Declares(schema.Yeast, name) && !h.Declares(schema.Enzyme, name) {
			diags.Add(tree.UnknownName("grain, yeast, enzyme or addition", l.Get("name"), known))
			continue
		}
		packs(&c, name, l, diags)
		if q := l.Quantity(); q != nil {
			if p, _ := quantity.ParsePrice(q.Item.Unit); p.Per != nil && p.Per.Measures[0].Kind == quantity.Bushel {
				if bushelKg := lib.BushelKg(name); bushelKg > 0 {
					c.PerKg[name] = price(&c, l, quantity.Bushel, "bushel", diags) / bushelKg
					continue
				}
			}
		}
		c.PerKg[name] = price(&c, l, quantity.Mass, "lb", diags)
	}
	return c
}

// packs reads in which bags something comes.
func packs(c *recipe.Costs, name string, l *tree.Node, diags *diag.List) {
	bag := l.Get("bag")
	if bag == nil {
		return
	}
	c.BagKg[name] = bag.SI
	stacked := l.Get("stacked")
	if stacked == nil {
		return
	}
	n := int(stacked.SI)
	if float64(n) != stacked.SI {
		diags.Add(diag.Diagnostic{Code: diag.CodeWholeNumber, At: stacked.At(), Summary: "bags are counted, and " + stacked.Item.Num + " is none of the numbers", Help: "write a whole number"})
	}
	c.BagsAPallet[name] = n
}

// price reads one price: money per SI unit of a kind, or for each thing where the
// kind is none. All prices of a house are in one currency, for they are summed.
func price(costs *recipe.Costs, n *tree.Node, per quantity.Kind, such string, diags *diag.List) float64 {
	c := n.Quantity()
	if c == nil {
		return 0
	}
	p, ok := quantity.ParsePrice(c.Item.Unit)
	if !ok && quantity.IsCurrency(c.Item.Unit) {
		p, ok = quantity.Price{Currency: quantity.Currency(c.Item.Unit)}, true
	}
	if ok && costs.Currency == "" {
		costs.Currency = p.Currency
	}
	switch {
	case !ok:
		return 0
	case p.Currency != costs.Currency:
		diags.Add(diag.Diagnostic{
			Code: diag.CodePrice, Summary: fmt.Sprintf("this price is in %s, and the house counts in %s", p.Currency, costs.Currency), At: c.At(),
			Help: "write all prices in one currency: they are added up as they stand",
		})
	case per == quantity.None && p.Per != nil:
		diags.Add(diag.Diagnostic{
			Code: diag.CodePrice, Summary: fmt.Sprintf("this price is per `%s`, and that of one %s is wanted", p.PerName, such), At: c.At(),
			Help: fmt.Sprintf("write what one %s costs, as in `%s %s %s`", such, such, priceOf[such], costs.Currency),
		})
	case per != quantity.None && (p.Per == nil || p.Per.Measures[0].Kind != per):
		d := diag.Diagnostic{
			Code: diag.CodePrice, Summary: fmt.Sprintf("this price is per `%s`, and that of %s is wanted", p.PerName, per), At: c.At(),
			Help: costed(such, costs.Currency, c.At().Units()),
		}
		switch {
		case p.PerName == "":
			d.Summary = fmt.Sprintf("this price does not say what it buys: that of %s is wanted", per)
		case per == quantity.Mass && p.Per == nil: // by the bag
			holds, unit := 50.0, "lb"
			if c.At().Units() == quantity.SI {
				holds, unit = 25, "kg"
			}
			d.Help = fmt.Sprintf("divide by what one holds: %s %s for %g %s is `%s %s/%s`", c.Item.Num, costs.Currency, holds, unit,
				strconv.FormatFloat(c.Item.Value/holds, 'g', 6, 64), costs.Currency, unit)
		}
		diags.Add(d)
	}
	return c.SI
}

// costed asks for what one of a unit costs, with an example in the reader's units.
func costed(such, currency string, reader quantity.System) string {
	written := wording.Restated(priceOf[such]+" "+currency+"/"+such, reader)
	_, one, _ := strings.Cut(written, "/")
	return fmt.Sprintf("write what one `%s` costs, as in `%s`", one, written)
}

// priceOf is a price such as a house may pay, by what it buys.
var priceOf = map[string]string{"kWh": "0.06", "gal": "0.008", "h": "32", "lb": "0.16", "cask": "330", "bottle": "2.40"}

// priced lists what has a price by weight.
func priced(h *house.House) []string {
	return slices.Concat(h.EntryNames(schema.Grain), h.EntryNames(schema.Yeast), h.EntryNames(schema.Enzyme), recipe.Additions)
}
