package inventory

import (
	"slices"

	"newmake/lang/record"
	"newmake/lang/tree"
)

// Origin is where a sample comes from, as far as the records tell: "" of what they do not,
// and of what is of several.
type Origin struct {
	Batch, Run string
	Filled     record.Date // into the cask; zero of what is none
}

// OriginOf is where a sample comes from, as it stood on a day: of a cask the last run that
// filled it by then; of a bottling what went into it.
func (c *Inventory) OriginOf(s record.Sample, on record.Date) Origin {
	switch s.Kind {
	case record.OfCask:
		return c.filledBy(s.Name, on)
	case record.OfBottling:
		for _, b := range c.Bottlings {
			if tree.Key(b.Lot) == tree.Key(s.Name) {
				return c.drawnFrom(b.Of, b.On, 0)
			}
		}
		return Origin{}
	}
	for _, r := range c.Runs {
		if tree.Key(r.Number) == tree.Key(s.Name) {
			return Origin{Batch: r.Batch, Run: r.Number}
		}
	}
	return Origin{}
}

// filledBy is the run that filled a cask last, by a day.
func (c *Inventory) filledBy(serial string, on record.Date) (m Origin) {
	for _, r := range c.Runs {
		for i := range r.Visits {
			v := &r.Visits[i]
			if v.Word == "into" && tree.Key(v.To) == tree.Key(serial) && v.When.Date.Compare(on) <= 0 && (m.Run == "" || v.When.Date.Compare(m.Filled) >= 0) {
				m = Origin{r.Batch, r.Number, v.When.Date}
			}
		}
	}
	return m
}

// mostVats is how many vats may lie behind one another.
const mostVats = 20

// drawnFrom is what went into a vat, or a cask: its batch and its run where they are one.
func (c *Inventory) drawnFrom(name string, on record.Date, depth int) Origin {
	i := slices.IndexFunc(c.Vats, func(v *record.Vat) bool { return tree.Key(v.Name) == tree.Key(name) })
	if i < 0 || depth > mostVats {
		m := c.filledBy(name, on)
		m.Filled = record.Date{}
		return m
	}
	var all Origin
	first := true
	for j := range c.Vats[i].Visits {
		f := &c.Vats[i].Visits[j]
		if f.Word != "from" {
			continue
		}
		var m Origin
		switch f.Of {
		case "run":
			m = c.OriginOf(record.Sample{Kind: record.OfNewMake, Name: f.From}, on)
		case "", "vat":
			m = c.drawnFrom(f.From, f.When.Date, depth+1)
		}
		if first {
			all, first = m, false
		}
		if all.Run != m.Run {
			all.Run = ""
		}
		if all.Batch != m.Batch {
			all.Batch = ""
		}
	}
	return all
}
