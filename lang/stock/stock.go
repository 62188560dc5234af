// Package stock says of which lots the lines of a house's stores and records are: what came, what
// runs used, what was filled, counted and thrown away. Whoever wants to know what lies in the
// stores, or of which lot a mash was, asks here: the books, a plan, a trace, the list of what to
// buy.
//
// First in, first out: what names no lot is of the oldest that was there. Of one day what came
// goes first, then what was used, then what was counted or thrown away. Amounts are whole (grams,
// millilitres, a count), so that what is divided among lots comes to what was written.
package stock

import (
	"cmp"
	"math"

	"newmake/lang/quantity"
	"newmake/lang/record"
	"newmake/lang/sorting"
	"newmake/lang/tree"
)

// Lot is what came of one thing under one code.
type Lot struct {
	What string
	Code string // "" of what came without one
	Unit string // in which it is counted: g, mL, count
	Came record.Date

	there int64 // by the lines so far
}

// Move is a line, with the lots that it is of. It is one of a store, of what a run used, and of
// casks or bottles that were filled.
type Move struct {
	On     record.Date
	Line   *record.Lot // of a store
	Used   *record.Used
	Run    *record.Run // that used it
	Filled *Filled
	Unit   string // of a line that was used
	Parts  []Part

	rank int // of several of one day
}

// Part is what a line put into one lot, or, below 0, took from it.
type Part struct {
	Of     *Lot
	Amount int64
	// Unwritten says that it must have been there, and no store says that it came.
	Unwritten bool
}

// Records are what a house wrote of its stock.
type Records struct {
	Stores   []*record.Store
	Runs     []*record.Run
	Filled   []Filled
	BushelKg func(grain string) float64 // 0 where nobody knows
	Known    record.Date                // the day on which this is asked: later corrections are not made yet
}

// Forever is a day on which every correction is known.
var Forever = record.Date{Year: record.LastYear, Month: 12, Day: 31}

// Moves are the lines in the order of their days, each with its lots.
func (r *Records) Moves() []Move {
	var all []Move
	for _, s := range r.Stores {
		for i := range s.Lots {
			m := Move{On: s.Lots[i].On, Line: &s.Lots[i]}
			if m.Line.Word != "" {
				m.rank = 2
			}
			all = append(all, m)
		}
	}
	for _, run := range r.Runs {
		for i := range run.Used {
			all = append(all, Move{On: run.Date, rank: 1, Used: &run.Used[i], Run: run})
		}
	}
	for i := range r.Filled {
		all = append(all, Move{On: r.Filled[i].On, rank: 1, Filled: &r.Filled[i]})
	}
	sorting.Stable(all, func(a, b Move) int { return cmp.Or(a.On.Compare(b.On), cmp.Compare(a.rank, b.rank)) })
	k := &keeping{Records: r, by: map[lotKey]*Lot{}, of: map[goodKey][]*Lot{}}
	out := all[:0]
	for _, m := range all {
		switch {
		case m.Line != nil:
			k.line(&m)
		case m.Used != nil:
			if !k.use(&m) {
				continue
			}
		default:
			m.Parts = take(k.containers, m.Filled.N, m.Filled.from)
		}
		out = append(out, m)
	}
	return out
}

// keeping is what lies in the stores while the lines are gone through.
type keeping struct {
	*Records
	by         map[lotKey]*Lot
	of         map[goodKey][]*Lot // in the order in which they came
	containers []*Lot             // casks and bottles
}

type goodKey struct{ what, unit string }

type lotKey struct {
	goodKey
	code string
}

// whole is an amount in whole units.
func (k *keeping) whole(v record.Value, what string) (n int64, unit string) {
	switch v.Kind {
	case quantity.Mass:
		return int64(math.Round(v.SI * 1000)), "g"
	case quantity.Bushel:
		if kg := k.BushelKg(what); kg > 0 {
			return int64(math.Round(v.SI * kg * 1000)), "g"
		}
	case quantity.Volume:
		return int64(math.Round(v.SI * 1e6)), "mL"
	}
	return int64(math.Round(v.Number)), "count"
}

// lot is that of a code, nil if none came.
func (k *keeping) lot(good goodKey, code string) *Lot { return k.by[lotKey{good, tree.Key(code)}] }

// begun is a lot of which nothing was written before.
func (k *keeping) begun(good goodKey, l Lot) *Lot {
	k.by[lotKey{good, tree.Key(l.Code)}] = &l
	k.of[good] = append(k.of[good], &l)
	if _, is := ContainerOf(l.What); is && l.Unit == "count" {
		k.containers = append(k.containers, &l)
	}
	return &l
}

// line is a line of a store.
func (k *keeping) line(m *Move) {
	n, unit := k.whole(m.Line.Amount, m.Line.What)
	good := goodKey{tree.Key(m.Line.What), unit}
	all := k.of[good]
	l := k.lot(good, m.Line.Lot)
	if l == nil && m.Line.Word != "" && m.Line.Lot == "" && len(all) > 0 {
		l = all[len(all)-1]
	}
	if l == nil {
		l = k.begun(good, Lot{What: m.Line.What, Code: m.Line.Lot, Unit: unit, Came: m.On})
	}
	switch m.Line.Word {
	case "count":
		if m.Line.Lot == "" { // of all of it together
			for _, o := range all {
				if o != l {
					n -= o.there
				}
			}
		}
		n -= l.there
	case "discarded":
		n = -n
	}
	l.there += n
	m.Parts = []Part{{Of: l, Amount: n}}
}

// use is what a run used: of the lot that it names, or of the oldest. It is false of what nobody
// buys, and of a line that says no amount.
func (k *keeping) use(m *Move) bool {
	u := m.Used
	r := u.Amount.AsOf(k.Known)
	v, ok := r.Holds()
	if !ok || !u.Bought() {
		return false
	}
	n, unit := k.whole(v, u.What)
	m.Unit = unit
	good := goodKey{tree.Key(u.What), unit}
	rest := n
	if u.Lot == "" {
		m.Parts = take(k.of[good], n, func(*Lot) bool { return true })
		for _, p := range m.Parts {
			rest += p.Amount
		}
		if rest <= 0 {
			return true
		}
	}
	l := k.lot(good, u.Lot)
	if l == nil {
		l = k.begun(good, Lot{What: u.What, Code: u.Lot, Unit: unit, Came: m.On})
	} else if u.Lot != "" {
		l.there -= n
		m.Parts = []Part{{Of: l, Amount: -n}}
		return true
	}
	m.Parts = append(m.Parts, Part{l, rest, true}, Part{Of: l, Amount: -rest})
	return true
}

// take takes so much from the oldest that there is of what fits.
func take(all []*Lot, n int64, fits func(*Lot) bool) (out []Part) {
	for _, l := range all {
		if n > 0 && l.there > 0 && fits(l) {
			part := min(n, l.there)
			l.there, n = l.there-part, n-part
			out = append(out, Part{Of: l, Amount: -part})
		}
	}
	return out
}
