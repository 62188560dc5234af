//go:build !js

package check

import (
	"math"
	"slices"
	"time"

	"newmake/lang/logbook"
	"newmake/lang/quantity"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/sorting"
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
func (h *House) FirstIn(grain string, kg float64, on record.Date) []OnHand {
	var out []OnHand
	rest := int64(math.Round(1000 * kg))
	for _, p := range h.OnHandOf(grain, on) {
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

// OnHandOf are the lots of a grain on the morning of a day, in the order in which they came, as
// the books have them: a run that names no lot took the oldest that was there. Those of the day
// itself have come.
func (h *House) OnHandOf(grain string, on record.Date) []*OnHand {
	all := h.goods()
	return gone(grain, all.stores, all.runs, h.BushelKg, on, nil)
}

// goods are what the stores of a house and the runs that drew on them say.
type goods struct {
	stores []*record.Store
	runs   []*record.Run
}

// readGoods reads them, the runs only where there is a store, and of them those that say what
// they used: a plan asks for this, and is to cost the same beside years of others. Their texts
// are asked and not the runs, for a run asks its batch.
func (h *House) readGoods() (all goods) {
	for _, d := range h.Past(schema.Store) {
		s, _ := logbook.Store(d.Node())
		all.stores = append(all.stores, s)
	}
	if len(all.stores) == 0 {
		return all
	}
	for _, d := range h.Runs {
		if !d.HasWord("used") {
			continue
		}
		r, _ := logbook.Run(d.Node(), logbook.Around{Zone: time.UTC, Instrument: func(string) *record.Instrument { return nil }})
		all.runs = append(all.runs, r)
	}
	return all
}

// Taken is of which lots a line of a run is that names none, by the books: the oldest that were
// there. It is nil where the line names one, or nothing was there.
func (c *Cellar) Taken(u *record.Used) []OnHand {
	c.takes.Do(func() {
		c.taken = map[*record.Used][]OnHand{}
		seen := map[string]bool{}
		for _, s := range c.Stores {
			for i := range s.Lots {
				if k := tree.Key(s.Lots[i].What); !seen[k] {
					seen[k] = true
					gone(s.Lots[i].What, c.Stores, c.Runs, c.bushelKg, record.Date{Year: record.LastYear, Month: 12, Day: 31}, c.taken)
				}
			}
		}
	})
	return c.taken[u]
}

// gone goes through what came of a grain and what went, up to the morning of a day. taken keeps
// of which lots a line is that names none; it may be nil.
func gone(grain string, stores []*record.Store, runs []*record.Run, bushelKg func(string) float64, on record.Date, taken map[*record.Used][]OnHand) []*OnHand {
	type step struct {
		on   record.Date
		rank int // of several of one day: come, then used, then counted
		lot  *record.Lot
		used *record.Used
	}
	var steps []step
	is := func(what string) bool { return tree.Key(what) == tree.Key(grain) }
	for _, s := range stores {
		for i := range s.Lots {
			switch l := &s.Lots[i]; {
			case !is(l.What):
			case l.Word == "":
				steps = append(steps, step{on: l.On, lot: l})
			default:
				steps = append(steps, step{on: l.On, rank: 2, lot: l})
			}
		}
	}
	if len(steps) == 0 {
		return nil
	}
	for _, r := range runs {
		for i := range r.Used {
			if u := &r.Used[i]; is(u.What) {
				steps = append(steps, step{on: r.Date, rank: 1, used: u})
			}
		}
	}
	sorting.Stable(steps, func(a, b step) int {
		if c := a.on.Compare(b.on); c != 0 {
			return c
		}
		return a.rank - b.rank
	})
	s := piles{bushelKg: bushelKg}
	for _, e := range steps {
		if c := e.on.Compare(on); c > 0 || c == 0 && e.rank > 0 {
			break
		}
		if e.used == nil {
			s.line(e.lot)
		} else if of := s.take(e.used); taken != nil && of != nil {
			taken[e.used] = of
		}
	}
	for _, p := range s.all {
		p.Kg = float64(p.grams) / 1000
	}
	return s.all
}

// piles are lots of one grain.
type piles struct {
	all      []*OnHand
	bushelKg func(grain string) float64
}

// grams are those of an amount; false where it is none of weight.
func (s *piles) grams(v record.Value, what string) (int64, bool) {
	switch v.Kind {
	case quantity.Mass:
		return int64(math.Round(v.SI * 1000)), true
	case quantity.Bushel:
		kg := s.bushelKg(what)
		return int64(math.Round(v.SI * kg * 1000)), kg > 0
	}
	return 0, false
}

func (s *piles) of(lot string) *OnHand {
	i := slices.IndexFunc(s.all, func(p *OnHand) bool { return tree.Key(p.Lot) == tree.Key(lot) })
	if i < 0 {
		return nil
	}
	return s.all[i]
}

// line is a line of a store.
func (s *piles) line(l *record.Lot) {
	n, ok := s.grams(l.Amount, l.What)
	if !ok {
		return
	}
	p := s.of(l.Lot)
	if p == nil && l.Word != "" && l.Lot == "" && len(s.all) > 0 {
		p = s.all[len(s.all)-1]
	}
	if p == nil {
		p = &OnHand{Lot: l.Lot, Came: l.On}
		s.all = append(s.all, p)
	}
	switch l.Word {
	case "count":
		if l.Lot == "" { // of all of it together
			for _, o := range s.all {
				if o != p {
					n -= o.grams
				}
			}
		}
		p.grams = n
	case "discarded":
		p.grams -= n
	default:
		p.grams += n
		if l.Moisture != nil {
			p.Moisture = l.Moisture
		}
		if l.Starch != nil {
			p.Starch = l.Starch
		}
	}
}

// take is what a run used: of the lot that it names, or of the oldest, which are told.
func (s *piles) take(u *record.Used) (oldest []OnHand) {
	v, ok := u.Amount.Holds()
	if !ok {
		return nil
	}
	n, ok := s.grams(v, u.What)
	if !ok {
		return nil
	}
	if u.Lot != "" {
		if p := s.of(u.Lot); p != nil {
			p.grams -= n
		}
		return nil
	}
	for _, p := range s.all {
		if n > 0 && p.grams > 0 {
			part := min(n, p.grams)
			p.grams, n = p.grams-part, n-part
			oldest = append(oldest, OnHand{Lot: p.Lot, Came: p.Came, Kg: float64(part) / 1000, Moisture: p.Moisture, Starch: p.Starch})
		}
	}
	return oldest
}
