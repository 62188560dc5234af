//go:build !js

package inventory

import (
	"math"
	"time"

	"newmake/lang/logbook"
	"newmake/lang/record"
	"newmake/lang/stock"
	"newmake/lang/tree"
)

// OnHand is what lies in the stores of one lot of a grain.
type OnHand struct {
	Lot  string // "" of what came without a code
	Came record.Date
	Kg   float64
	// Moisture and Starch are those of its certificate; nil where none is written.
	Moisture, Starch *float64

	grams int64
}

// FirstIn are the lots of a grain that would be taken for so much of it on a day, first in, first
// out: what came by then, less what runs of the days before used. Of the last only a part may be
// wanted; where all of them are less, they come to less.
func (s *Stores) FirstIn(grain string, kg float64, on record.Date) []OnHand {
	var out []OnHand
	rest := int64(math.Round(1000 * kg))
	for _, p := range s.OnHand(grain, on) {
		if rest <= 0 {
			break
		}
		if p.grams > 0 {
			q := *p
			q.grams = min(rest, p.grams)
			q.Kg = float64(q.grams) / 1000
			rest -= q.grams
			out = append(out, q)
		}
	}
	return out
}

// OnHand are the lots of a grain on the morning of a day, in the order in which they came, as
// the books have them: those of the day itself have come, and runs of that day used nothing yet.
func (s *Stores) OnHand(grain string, on record.Date) []*OnHand {
	var out []*OnHand
	at := map[*stock.Lot]*OnHand{}
	for _, m := range s.moved() {
		if c := m.On.Compare(on); c > 0 || c == 0 && (m.Line == nil || m.Line.Word != "") {
			break
		}
		for _, p := range m.Parts {
			if p.Of.Unit != "g" || tree.Key(p.Of.What) != tree.Key(grain) {
				continue
			}
			o := at[p.Of]
			if o == nil {
				if m.Line == nil {
					continue // no store has it
				}
				o = &OnHand{Lot: p.Of.Code, Came: p.Of.Came}
				at[p.Of], out = o, append(out, o)
			}
			o.grams += p.Amount
			o.Kg = float64(o.grams) / 1000
			if m.Line != nil && m.Line.Word == "" {
				o.certified(m.Line)
			}
		}
	}
	return out
}

// certified keeps what is written of a lot when it came.
func (o *OnHand) certified(l *record.Lot) {
	if l.Moisture != nil {
		o.Moisture = l.Moisture
	}
	if l.Starch != nil {
		o.Starch = l.Starch
	}
}

// moved is what came into the stores and what went, the runs only where there is a store, and of
// them those that say what they used: a plan asks for this, and is to cost the same beside years
// of others. Their texts are asked and not the runs, for a run asks its batch.
func (s *Stores) moved() []stock.Move {
	s.drawn.Do(func() {
		all := stock.Records{Stores: s.read().all, BushelKg: s.BushelKg, Known: stock.Forever}
		if len(all.Stores) == 0 {
			return
		}
		for _, d := range s.house.Runs {
			if d.HasWord("used") {
				r, _ := logbook.Run(d.Node(), logbook.Around{Zone: time.UTC, Instrument: func(string) *record.Instrument { return nil }})
				all.Runs = append(all.Runs, r)
			}
		}
		s.moves = all.Moves()
	})
	return s.moves
}

// Taken are the codes of the lots of which a line of a run is that names none, by the books: the
// oldest that were there. There are none where the line names one, or nothing was there.
func (c *Inventory) Taken(u *record.Used) []string {
	c.takes.Do(func() {
		c.taken = map[*record.Used][]string{}
		for _, m := range c.Stock(c.bushelKg, stock.Forever) {
			if m.Used == nil || m.Used.Lot != "" {
				continue
			}
			for _, p := range m.Parts {
				if p.Amount < 0 && p.Of.Code != "" {
					c.taken[m.Used] = append(c.taken[m.Used], p.Of.Code)
				}
			}
		}
	})
	return c.taken[u]
}
