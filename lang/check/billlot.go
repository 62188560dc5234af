package check

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/logbook"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// stored is a lot of the stores, and what its certificate says.
type stored struct {
	what, lot        string
	came             record.Date
	moisture, starch *float64
}

// readStored reads the lots of all stores, in the order in which they are written.
func (h *House) readStored() []*stored {
	var out []*stored
	at := map[string]*stored{}
	for _, d := range h.Past(schema.Store) {
		s, _ := logbook.Store(d.Node())
		for i := range s.Lots {
			l := &s.Lots[i]
			if l.Lot == "" {
				continue
			}
			x := at[lotKey(l.What, l.Lot)]
			if x == nil {
				x = &stored{what: l.What, lot: l.Lot, came: l.On}
				at[lotKey(l.What, l.Lot)] = x
				out = append(out, x)
			}
			if l.Word == "" && l.Moisture != nil {
				x.moisture = l.Moisture
			}
			if l.Word == "" && l.Starch != nil {
				x.starch = l.Starch
			}
		}
	}
	return out
}

// ofLots gives the grains of a bill whose lot is named the moisture and the starch of its
// certificate, and says where there is no such lot, or not enough of it.
func ofLots(b *reader, lines []billLine, r *recipe.Bill) {
	for i := range lines {
		c := lines[i].node.Get("sack")
		if c == nil {
			continue
		}
		l := &r.Lines[i]
		all := b.house.stored()
		k := slices.IndexFunc(all, func(x *stored) bool { return lotKey(x.what, x.lot) == lotKey(l.Grain.Name, c.Text()) })
		if k < 0 {
			b.add(notOfGrain(all, l.Grain.Name, c))
			continue
		}
		x := all[k]
		l.Lot = x.lot
		g := *l.Grain
		if x.moisture != nil {
			g.Moisture = *x.moisture
		}
		if x.starch != nil {
			g.Starch = *x.starch
		}
		if g.Starch+g.Sugars+g.Solubles > 1 {
			b.add(diag.Diagnostic{Code: diag.CodeBillLot, Severity: diag.Warning, At: c.At(), Summary: fmt.Sprintf("lot %q has so much starch by its certificate that sugars and solubles of `%s` have no room beside it", x.lot, g.Name), Help: "the library's starch is reckoned with; is the certificate's of the dry grain?"})
			g.Starch = l.Grain.Starch
		}
		l.Grain = &g
		b.enough(x, l, c)
	}
}

// enough holds a lot against what the bill wants of it.
func (b *reader) enough(x *stored, l *recipe.BillLine, c *tree.Capture) {
	day := record.Date{Year: record.LastYear, Month: 12, Day: 31}
	if n := b.node.Line("start"); n != nil {
		day = record.ReadDate(n.Text("date"))
	}
	if x.came.Compare(day) > 0 {
		b.add(diag.Diagnostic{Code: diag.CodeBillLot, Severity: diag.Warning, At: c.At(), Summary: fmt.Sprintf("lot %q comes on %s, and the batch is of %s", x.lot, x.came, day), Help: "name a lot that has come by then, or another day"})
		return
	}
	all := b.house.OnHandOf(x.what, day)
	k := slices.IndexFunc(all, func(o *OnHand) bool { return tree.Key(o.Lot) == tree.Key(x.lot) })
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
		d.Summary = fmt.Sprintf("nothing is left of lot %q by the store and the runs", x.lot)
	} else {
		d.Summary = fmt.Sprintf("%s are left of lot %q by the store and the runs, and the bill takes %s", wording.In(there, unit, quantity.Mass), x.lot, wording.In(l.MassKg, unit, quantity.Mass))
	}
	var other []string
	for _, o := range b.house.stored() {
		if o != x && tree.Key(o.what) == tree.Key(x.what) {
			other = append(other, o.lot)
		}
	}
	if len(other) == 1 {
		d.Fix = &diag.Fix{At: c.At(), Text: fmt.Sprintf("%q", other[0]), Label: fmt.Sprintf("take lot %q", other[0]), Guess: true}
	}
	b.add(d)
}

// notOfGrain says that there is no such lot of a grain: it is of another one, or none has
// its name.
func notOfGrain(all []*stored, grain string, c *tree.Capture) diag.Diagnostic {
	var own []string
	of := ""
	for _, x := range all {
		switch {
		case tree.Key(x.what) == tree.Key(grain):
			own = append(own, x.lot)
		case tree.Key(x.lot) == tree.Key(c.Text()):
			of = x.what
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
