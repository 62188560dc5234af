package batches

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/inventory"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// ofLots gives the grains of a bill whose lot is named the moisture and the starch of its
// certificate, and says where there is no such lot, or not enough of it.
func ofLots(b *reader, lines []billLine, r *recipe.Bill) {
	for i := range lines {
		c := lines[i].node.Get("sack")
		if c == nil {
			continue
		}
		l := &r.Lines[i]
		all := b.Stores.Named()
		k := slices.IndexFunc(all, func(x *inventory.NamedLot) bool { return x.Is(l.Grain.Name, c.Text()) })
		if k < 0 {
			b.add(notOfGrain(all, l.Grain.Name, c))
			continue
		}
		x := all[k]
		l.Lot = x.Lot
		g := *l.Grain
		if x.Moisture != nil {
			g.Moisture = *x.Moisture
		}
		if x.Starch != nil {
			g.Starch = *x.Starch
		}
		if g.Starch+g.Sugars+g.Solubles > 1 {
			b.add(diag.Diagnostic{Code: diag.CodeBillLot, Severity: diag.Warning, At: c.At(), Summary: fmt.Sprintf("lot %q has so much starch by its certificate that sugars and solubles of `%s` have no room beside it", x.Lot, g.Name), Help: "the library's starch is reckoned with; is the certificate's of the dry grain?"})
			g.Starch = l.Grain.Starch
		}
		l.Grain = &g
		b.enough(x, l, c)
	}
}

// enough holds a lot against what the bill wants of it.
func (b *reader) enough(x *inventory.NamedLot, l *recipe.BillLine, c *tree.Capture) {
	day := record.Date{Year: record.LastYear, Month: 12, Day: 31}
	if n := b.node.Line("start"); n != nil {
		day = record.ReadDate(n.Text("date"))
	}
	if x.Came.Compare(day) > 0 {
		b.add(diag.Diagnostic{Code: diag.CodeBillLot, Severity: diag.Warning, At: c.At(), Summary: fmt.Sprintf("lot %q comes on %s, and the batch is of %s", x.Lot, x.Came, day), Help: "name a lot that has come by then, or another day"})
		return
	}
	all := b.Stores.OnHand(x.What, day)
	k := slices.IndexFunc(all, func(o *inventory.OnHand) bool { return tree.Key(o.Lot) == tree.Key(x.Lot) })
	if k < 0 || all[k].Kg >= l.MassKg*(1-1e-6) { // of one that came by number nobody knows
		return
	}
	there := all[k].Kg
	unit := "kg"
	if c.At().Units() == quantity.US {
		unit = "lb"
	}
	d := diag.Diagnostic{Code: diag.CodeBillLot, Severity: diag.Warning, At: c.At(), Help: "name another lot, or make the bill smaller; a count of the store sets right what the books say"}
	if there <= 0 {
		d.Summary = fmt.Sprintf("nothing is left of lot %q by the store and the runs", x.Lot)
	} else {
		d.Summary = fmt.Sprintf("%s are left of lot %q by the store and the runs, and the bill takes %s", wording.In(there, unit, quantity.Mass), x.Lot, wording.In(l.MassKg, unit, quantity.Mass))
	}
	var other []string
	for _, o := range b.Stores.Named() {
		if o != x && tree.Key(o.What) == tree.Key(x.What) {
			other = append(other, o.Lot)
		}
	}
	if len(other) == 1 {
		d.Fix = &diag.Fix{At: c.At(), Text: fmt.Sprintf("%q", other[0]), Label: fmt.Sprintf("take lot %q", other[0]), Guess: true}
	}
	b.add(d)
}

// notOfGrain says that there is no such lot of a grain: it is of another one, or none has
// its name.
func notOfGrain(all []*inventory.NamedLot, grain string, c *tree.Capture) diag.Diagnostic {
	var own []string
	of := ""
	for _, x := range all {
		switch {
		case tree.Key(x.What) == tree.Key(grain):
			own = append(own, x.Lot)
		case tree.Key(x.Lot) == tree.Key(c.Text()):
			of = x.What
		}
	}
	if of == "" {
		return tree.UnknownName("lot of "+grain, c, func() []string { return own })
	}
	d := diag.Diagnostic{Code: diag.CodeBillLot, At: c.At(), Summary: fmt.Sprintf("lot %q is `%s`, and the line is of `%s`", c.Text(), of, grain), Help: "name a lot of `" + grain + "`, or leave the lot out: then it is reckoned by the library"}
	if len(own) == 1 {
		d.Fix = &diag.Fix{At: c.At(), Text: fmt.Sprintf("%q", own[0]), Label: fmt.Sprintf("take lot %q", own[0]), Guess: true}
	}
	return d
}
