package logbook

import (
	"fmt"
	"slices"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/record"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// parts is what a line of a record ends in: readings, who, and a remark.
type parts struct {
	read    []record.Reading
	none    bool // the line says `none` and nothing else
	by      string
	note    string
	written record.Date
}

// parts reads what a line captured from an item on.
func (r *reader) parts(l *tree.Node, lead int, stage record.StageName, word string) parts {
	p := parts{by: r.by}
	var now *record.Reading // the reading at hand
	about := false
	labels := record.Labels(stage)
	begin := func(what record.What, c *tree.Capture) {
		p.read = append(p.read, record.Reading{What: what, State: record.Blank, Place: c.At()})
		now = &p.read[len(p.read)-1]
	}
	caps := l.Match.Caps
	for i := min(lead, len(caps)); i < len(caps); i++ {
		c := &caps[i]
		switch {
		case c.Slot == "about":
			about = true
		case c.Slot == ",":
			now = nil
		case c.Slot == "value":
			if now == nil {
				begin("", c)
			}
			now.State, now.Value, now.About = record.Read, valueOf(c), about
			r.amount(c)
			now.Place, about = now.Place.To(c.At()), false
			if stage != "" && (word != "lost" || stage == record.InCask) {
				r.names(stage, word, now, c)
			}
		case c.Slot == "none" && now != nil:
			now.State, now.Place = record.None, now.Place.To(c.At())
		case c.Slot == "none":
			p.none = true
		case c.Slot == "warmth" && now != nil:
			v := valueOf(c)
			now.At, now.Place = &v, now.Place.To(c.At())
		case c.Slot == "truly":
			if s := lastStrength(p.read); s != nil {
				v := valueOf(c)
				s.True = &v
			} else {
				r.diags.Add(diag.Diagnostic{Code: diag.CodeTrueAlone, At: c.At(), Summary: "a true strength stands here without what was read",
					Help: "write what the hydrometer said before it: " + wording.Example(c.At(), "121.9 proof at 65 F, true 120.0 proof")})
			}
		case c.Slot == "using" && now != nil:
			now.With = c.Text()
		case c.Slot == "who":
			p.by = c.Text()
		case c.Slot == "remark":
			p.note = c.Text()
		case c.Slot == "noted":
			p.written = record.ReadDate(c.Text())
		case slices.Contains(labels, c.Slot) && now == nil:
			begin(record.What(c.Slot), c)
		}
	}
	p.read = slices.DeleteFunc(p.read, func(o record.Reading) bool {
		return o.What == "" && stage != "" && (word != "lost" || stage == record.InCask)
	})
	for i := range p.read {
		o := &p.read[i]
		if o.State == record.Blank {
			r.run.Blank++
		}
		if o.With == "" {
			o.With = r.with[o.Kind]
		}
		if o.With != "" && r.Instrument != nil {
			if i := r.Instrument(o.With); i != nil && i.Scale.AtSaid && i.Scale.Kind == o.Kind {
				o.ScaleC = &i.Scale.AtC
			}
		}
		spread(p.read[:i+1], o.At)
	}
	return p
}

// amount refuses a volume, a weight or a strength of less than nothing: no instrument says it,
// and books that reckon with it would balance.
func (r *reader) amount(c *tree.Capture) {
	switch c.Kind {
	case quantity.Volume, quantity.Mass, quantity.Bushel, quantity.Strength:
		if c.SI < 0 {
			r.diags.Add(diag.Diagnostic{Code: diag.CodeOutOfRange, At: c.At(), Summary: fmt.Sprintf("`%s` is less than nothing", c.At().Text()),
				Help: "allowed: 0 or more; `none` says that it was not read"})
		}
	}
}

// spread gives the temperature of a sample to the readings before it that have none:
// volumes, gravities and strengths, which depend on it.
func spread(read []record.Reading, at *record.Value) {
	if at == nil {
		return
	}
	for i := range read {
		switch o := &read[i]; o.Kind {
		case quantity.Volume, quantity.Gravity, quantity.Strength:
			if o.At == nil {
				o.At = at
			}
		}
	}
}

func lastStrength(read []record.Reading) *record.Reading {
	for i := len(read) - 1; i >= 0; i-- {
		if read[i].Kind == quantity.Strength {
			return &read[i]
		}
	}
	return nil
}

// valueOf is a number as it was written.
func valueOf(c *tree.Capture) record.Value {
	return record.Value{Num: c.Item.Num, Number: c.Item.Value, Unit: c.Item.Unit, Kind: c.Kind, SI: c.SI}
}

// names finds what a value was read for, by its word or by its unit, and says where
// that cannot be.
func (r *reader) names(stage record.StageName, word string, o *record.Reading, c *tree.Capture) {
	kinds := record.Kinds(stage)
	ofWhat := c.Kind == quantity.Share && slices.Contains(kinds, quantity.Strength)
	if c.Item.Unit != "" && !ofWhat { // what is said of a fault is made for a fault: a house has many readings
		what := o.What
		if what == "" {
			what = record.Named(stage, word, c.Kind)
		}
		if what != "" && (o.What == "" || record.KindOf(stage, what) == c.Kind) {
			o.What = what
			return
		}
	}
	d := diag.Diagnostic{Code: diag.CodeWrongKind, At: c.At()}
	unit := func(u string) {
		end := diag.Span{Src: c.At().Src, Start: c.At().End, End: c.At().End}
		d.Fix = &diag.Fix{At: end, Text: " " + u, Label: "write `" + c.Item.Num + " " + u + "`", Guess: true}
		d.Help = "write `" + c.Item.Num + " " + u + "`"
	}
	allowed := "what is read here is " + tree.KindList(kinds, c.At().Units())
	switch {
	case c.Item.Unit == "":
		d.Code, d.Summary = diag.CodeNoUnit, fmt.Sprintf("`%s` needs its unit", c.Item.Num)
		d.Help = allowed
		switch v := c.Item.Value; {
		case v > 0.9 && v < 1.2 && slices.Contains(kinds, quantity.Gravity):
			unit("SG")
		case v > 2.5 && v < 7.5 && slices.Contains(kinds, quantity.PH):
			unit("pH")
		}
	case ofWhat:
		d.Code, d.Summary = diag.CodePercentOf, fmt.Sprintf("`%s` of what?", c.At().Text())
		strength := wording.Restated(c.Item.Num+" % abv", c.At().Units())
		d.Help = "a strength is written `" + strength + "`"
		d.Fix = &diag.Fix{At: c.At(), Text: strength, Label: "write `" + strength + "`", Guess: true}
	case o.What == "":
		d.Summary = fmt.Sprintf("%s is %s, and nothing like it is read here", wording.Item(c.Item), c.Kind)
		d.Help = allowed
	default:
		want := record.KindOf(stage, o.What)
		d.Summary = fmt.Sprintf("`%s` is %s, and %s is %s", o.What, want, wording.Item(c.Item), c.Kind)
		d.Help = strings.TrimSpace(tree.KindHelp([]quantity.Kind{want}, d.At.Units()))
	}
	o.What = ""
	r.diags.Add(d)
}
