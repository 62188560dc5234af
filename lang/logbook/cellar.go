package logbook

import (
	"fmt"
	"strconv"
	"time"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/record"
	"newmake/lang/tree"
)

// dated is a reader of lines that are no run's: of a cask, a round, a vat, a bottling or
// a store. What it reads it keeps as the visits of one stage.
func dated(n *tree.Node, around Around, on record.Date) *reader {
	if around.Zone == nil {
		around.Zone = time.UTC
	}
	r := &reader{Around: around, of: n.Field.Name, with: map[quantity.Kind]string{}, run: &record.Run{
		Zone: around.Zone, Date: on, At: n.At(), Stages: []record.Stage{{Name: record.InCask, At: n.At()}},
	}, day: on}
	r.clock.dated = true
	return r
}

// lines reads the lines of a block. Those of its own it gives to own.
func (r *reader) lines(n *tree.Node, own func(l *tree.Node) bool) {
	for _, l := range n.Lines {
		if l.Bad {
			continue
		}
		switch l.Field.Name {
		case "by":
			r.by = l.Text("who")
		case "with":
			r.takes(l)
		case "corrected":
			r.corrected(l, r.run.Visits, nil)
		default:
			if own == nil || !own(l) {
				r.keep(r.event(l))
			}
		}
	}
	r.inOrder()
	doubts(r.run, &r.diags)
}

// event reads a line of something that is no stage of a run.
func (r *reader) event(l *tree.Node) record.Visit {
	v := record.Visit{Word: l.Field.Name, When: r.when(l), At: l.At()}
	if v.When.Date.IsZero() {
		r.diags.Add(diag.Diagnostic{Code: diag.CodeNoDay, At: l.At(), Summary: "this line needs its date", Help: "write the date before it: `2027-03-11 " + l.At().Text() + "`"})
	}
	p := r.parts(l, 0, record.InCask, v.Word)
	v.Read, v.None, v.By, v.Note, v.Written = p.read, p.none, p.by, p.note, p.written
	for slot, to := range map[string]*string{"source": &v.From, "tank": &v.To, "place": &v.To} {
		if c := l.Get(slot); c != nil {
			*to = c.Text()
		}
	}
	if v.Word == "from" {
		for _, sort := range []string{"vat", "tank", "run"} {
			if l.Has(sort) {
				v.Of = sort
			}
		}
		switch v.Of {
		case "":
			r.caskOrVat(l.Get("source"))
		case "vat", "run":
			r.named(v.Of, l.Get("source"))
		}
	}
	for i, slot := range []string{"rowed", "tiered"} {
		if c := l.Get(slot); c != nil {
			v.Names = append(v.Names, [...]string{"row ", "tier "}[i]+c.Item.Num)
		}
	}
	if l.Has("part") {
		v.Why = "part"
	}
	for i := range v.Read {
		switch o := &v.Read[i]; {
		case v.Word == "reduce" && o.What == record.Dip:
			o.What = record.Water
		case (v.Word == "leaked" || v.Word == "lost") && o.What == record.Dip:
			o.What = record.Lost
		}
	}
	return v
}

// caskOrVat wants the name of a cask, and tells one that is a vat's.
func (r *reader) caskOrVat(c *tree.Capture) {
	if c == nil || r.Has == nil || r.Has("cask", c.Text()) || !r.Has("vat", c.Text()) {
		r.named("cask", c)
		return
	}
	say := fmt.Sprintf("vat %q", c.Text())
	r.diags.Add(diag.Diagnostic{
		Code: diag.CodeUnknownName, At: c.At(), Summary: fmt.Sprintf("`%s` is a vat, and no cask", c.Text()),
		Help: "write `from " + say + "`", Fix: &diag.Fix{At: c.At(), Text: say, Label: "write `" + say + "`"},
	})
}

// Cask reads one cask.
func Cask(n *tree.Node, around Around) (*record.Cask, diag.List) {
	r := dated(n, around, record.Date{})
	c := &record.Cask{Serial: n.Text("name"), At: n.At()}
	r.lines(n, func(l *tree.Node) bool {
		if l.Field.Name != "wood" {
			return false
		}
		c.SizeM3, c.Used, c.Wood, c.Before = l.Num("volume"), l.Has("used"), l.Text("wood"), l.Text("before")
		return true
	})
	c.Visits = r.run.Visits
	return c, r.diags
}

// Round reads many casks of one day: the visits of each, by its serial in To.
func Round(n *tree.Node, around Around) ([]record.Visit, diag.List) {
	r := dated(n, around, record.ReadDate(n.Text("date")))
	r.lines(n, func(l *tree.Node) bool {
		v := r.event(l)
		v.To = l.Text("name")
		r.named("cask", l.Get("name"))
		r.keep(v)
		return true
	})
	return r.run.Visits, r.diags
}

// Vat reads one vat.
func Vat(n *tree.Node, around Around) (*record.Vat, diag.List) {
	v := &record.Vat{Name: n.Text("name"), On: record.ReadDate(n.Text("date")), Tank: n.Text("tank"), At: n.At()}
	r := dated(n, around, v.On)
	r.lines(n, nil)
	v.Visits = r.run.Visits
	return v, r.diags
}

// Bottling reads one bottling.
func Bottling(n *tree.Node, around Around) (*record.Bottling, diag.List) {
	b := &record.Bottling{Lot: n.Text("name"), Of: n.Text("source"), On: record.ReadDate(n.Text("date")), At: n.At()}
	r := dated(n, around, b.On)
	r.named("vat or cask", n.Get("source"))
	r.lines(n, func(l *tree.Node) bool {
		switch l.Field.Name {
		case "standard":
			b.SoldAs = l.At()
			for _, c := range l.Match.All("standard") {
				b.Standards = append(b.Standards, c.Text())
			}
		case "bottles", "broken", "samples", "withdrawn":
			size := l.Get("volume")
			w := record.Bottles{Word: l.Field.Name, EachM3: size.SI, Size: valueOf(size), N: whole(l.Get("number"), "bottles", "write a whole number", &r.diags), To: l.Text("whom"), On: r.when(l).Date, Note: l.Text("remark"), At: l.At()}
			if c := l.Get("label"); c != nil {
				v := valueOf(c)
				w.Label = &v
			}
			b.Bottles = append(b.Bottles, w)
		default:
			return false
		}
		return true
	})
	b.Visits = r.run.Visits
	return b, r.diags
}

// Store reads one store.
func Store(n *tree.Node) (*record.Store, diag.List) {
	s := &record.Store{Name: n.Text("name"), At: n.At()}
	r := dated(n, Around{}, record.Date{})
	r.lines(n, func(l *tree.Node) bool {
		lot := record.Lot{Word: l.Field.Name, On: r.when(l).Date, What: l.Text("name"), Lot: l.Text("sack"), From: l.Text("source"), By: r.by, Note: l.Text("remark"), At: l.At()}
		if c := l.Get("who"); c != nil {
			lot.By = c.Text()
		}
		if lot.On.IsZero() {
			r.diags.Add(diag.Diagnostic{Code: diag.CodeNoDay, At: l.At(), Summary: "this line needs its date", Help: fmt.Sprintf("write the date before it: `2026-02-10 %s`", l.At().Text())})
		}
		for _, slot := range []string{"mass", "volume", "bushels", "number"} {
			if c := l.Get(slot); c != nil {
				lot.Amount = valueOf(c)
			}
		}
		if each := l.Get("each"); each != nil { // so many bags
			n := lot.Amount.SI
			lot.Amount = valueOf(each)
			lot.Amount.SI, lot.Amount.Number = n*lot.Amount.SI, n*lot.Amount.Number
			lot.Amount.Num = strconv.FormatFloat(lot.Amount.Number, 'f', -1, 64)
		}
		for slot, to := range map[string]**float64{"damp": &lot.Moisture, "starched": &lot.Starch} {
			if c := l.Get(slot); c != nil {
				v := c.SI
				*to = &v
			}
		}
		for _, slot := range []string{"price", "money"} {
			if c := l.Get(slot); c != nil {
				v := valueOf(c)
				lot.Price = &v
			}
		}
		s.Lots = append(s.Lots, lot)
		return true
	})
	return s, r.diags
}
