package ledger

import (
	"cmp"
	"fmt"
	"math"

	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/record"
	"newmake/lang/sorting"
	"newmake/lang/wording"
)

// Stock is one lot of a material over the month. Amounts are in the unit that is named: g,
// mL, or a count.
type Stock struct {
	What      string  `json:"what"`
	Lot       string  `json:"lot"` // "" of what came without a code
	Unit      string  `json:"unit"`
	Opening   float64 `json:"opening"`
	Received  float64 `json:"received"`
	Used      float64 `json:"used"`
	Discarded float64 `json:"discarded"`
	Counted   float64 `json:"counted"` // found at a count, less what the books said
	Closing   float64 `json:"closing"`
}

// Use is material that a run used, of one lot.
type Use struct {
	On    string  `json:"date"`
	Run   string  `json:"run"`
	What  string  `json:"what"`
	Lot   string  `json:"lot"`
	Unit  string  `json:"unit"`
	Used  float64 `json:"used"`
	Guess bool    `json:"firstInFirstOut"` // the run names no lot: the oldest that was there is taken
	By    string  `json:"by,omitempty"`
	File  string  `json:"file,omitempty"`
	Line  int     `json:"line,omitempty"`
}

// pile is a lot in a store. Its amounts are whole: g, mL or a count.
type pile struct {
	what, lot, unit string
	came            record.Date
	there           int64
	price           float64 // of one of its unit, 0 if nobody wrote it
	currency        string
	moisture        *float64
	starch          *float64
	opening         int64
	in, used        int64
	gone, count     int64
}

// stores is what lies in the stores of a house, as the records are gone through.
type stores struct {
	piles  []*pile // in the order in which they came
	bushel func(what string) (kg float64)
	loft   *record.Store // the first that the house has, or nil
	uses   []use
	odd    []Check
	wants  []Missing
}

// use is a part of a pile that a run took.
type use struct {
	on     record.Date
	run    *record.Run
	of     *pile
	amount int64
	guess  bool
	by     string
	at     diag.Span
}

// whole is an amount in the whole units of a pile.
func (s *stores) whole(v record.Value, what string) (n int64, unit string) {
	switch v.Kind {
	case quantity.Mass:
		return int64(math.Round(v.SI * 1000)), "g"
	case quantity.Bushel:
		if kg := s.bushel(what); kg > 0 {
			return int64(math.Round(v.SI * kg * 1000)), "g"
		}
	case quantity.Volume:
		return int64(math.Round(v.SI * 1e6)), "mL"
	}
	return int64(math.Round(v.Number)), "count"
}

func (s *stores) pile(what, lot, unit string) *pile {
	for _, p := range s.piles {
		if keyOf(p.what) == keyOf(what) && keyOf(p.lot) == keyOf(lot) && p.unit == unit {
			return p
		}
	}
	return nil
}

// step is a line of a store or a run, in its place.
type step struct {
	on   record.Date
	rank int
	lot  *record.Lot
	used *record.Used
	run  *record.Run
	// filled is what was filled or bottled into.
	filled *filled
}

// storesOf goes through what was bought, used, counted and thrown away up to a day. A run
// that names no lot takes the oldest first.
func storesOf(t *check.Cellar, bushel func(string) float64, from, until record.Date) *stores {
	s := &stores{bushel: bushel}
	var steps []step
	if len(t.Stores) > 0 {
		s.loft = t.Stores[0]
	}
	for _, at := range t.Stores {
		for i := range at.Lots {
			l := &at.Lots[i]
			rank := 0
			if l.Word != "" {
				rank = 2
			}
			steps = append(steps, step{on: l.On, rank: rank, lot: l})
		}
	}
	for _, r := range t.Runs {
		for i := range r.Used {
			steps = append(steps, step{on: r.Date, rank: 1, used: &r.Used[i], run: r})
		}
	}
	steps = append(steps, containers(t)...)
	sorting.Stable(steps, func(a, b step) int { return cmp.Or(a.on.Compare(b.on), cmp.Compare(a.rank, b.rank)) })
	begun := false
	for _, e := range steps {
		if e.on.Compare(until) > 0 {
			break
		}
		if !begun && e.on.Compare(from) >= 0 {
			s.open()
			begun = true
		}
		switch {
		case e.filled != nil:
			s.fill(e.filled)
		case e.used != nil:
			s.use(e, until)
		default:
			s.line(e.lot)
		}
	}
	if !begun {
		s.open()
	}
	return s
}

// open begins the month.
func (s *stores) open() {
	for _, p := range s.piles {
		p.opening, p.in, p.used, p.gone, p.count = p.there, 0, 0, 0, 0
	}
}

// line is a line of a store.
func (s *stores) line(l *record.Lot) {
	n, unit := s.whole(l.Amount, l.What)
	p := s.pile(l.What, l.Lot, unit)
	if p == nil && l.Word != "" && l.Lot == "" {
		p = s.newest(l.What, unit)
	}
	if p == nil {
		p = &pile{what: l.What, lot: l.Lot, unit: unit, came: l.On}
		s.piles = append(s.piles, p)
	}
	switch l.Word {
	case "count":
		if l.Lot == "" {
			for _, o := range s.piles {
				if o != p && keyOf(o.what) == keyOf(l.What) && o.unit == unit {
					n -= o.there
				}
			}
		}
		was := p.there
		p.there, p.count = n, p.count+n-was
		if off := math.Abs(float64(n - was)); off > countsDiffer*math.Max(float64(n), float64(was)) {
			s.odd = append(s.odd, Check{What: "a count finds what the books say", Of: stockName(p), Says: fmt.Sprintf("%s were counted, and the books say %s", inUnit(n, unit), inUnit(was, unit)), day: l.On, at: l.At})
		}
	case "discarded":
		p.there, p.gone = p.there-n, p.gone+n
		s.below(p, l.On, l.At)
	default:
		p.there, p.in = p.there+n, p.in+n
		p.certify(l, n)
	}
}

// certify keeps what is written of a lot when it came.
func (p *pile) certify(l *record.Lot, n int64) {
	if l.Moisture != nil {
		p.moisture = l.Moisture
	}
	if l.Starch != nil {
		p.starch = l.Starch
	}
	if l.Price == nil || n == 0 {
		return
	}
	unit := l.Price.Unit
	if pr, ok := quantity.ParsePrice(unit); ok {
		p.currency = pr.Currency
		switch {
		case pr.Per == nil:
			p.price = l.Price.Number / float64(n)
		case pr.Per.Measures[0].Kind == quantity.Mass:
			p.price = l.Price.SI / 1000
		case pr.Per.Measures[0].Kind == quantity.Volume:
			p.price = l.Price.SI / 1e6
		case pr.Per.Measures[0].Kind == quantity.Bushel && l.Amount.Kind == quantity.Bushel:
			p.price = l.Price.SI * l.Amount.SI / float64(n)
		}
		return
	}
	if quantity.IsCurrency(unit) {
		p.currency, p.price = quantity.Currency(unit), l.Price.SI/float64(n)
	}
}

// countsDiffer is how far a count and the books may be apart, as a share: a sack is weighed
// to about this (common practice).
const countsDiffer = 0.02

// lotThere is the lot that a line of what was used would name, by the books: the oldest of it
// that was there.
func (s *stores) lotThere(what, unit string) string {
	for _, p := range s.piles {
		if p.lot != "" && p.there > 0 && p.unit == unit && keyOf(p.what) == keyOf(what) {
			return fmt.Sprintf("%q", p.lot)
		}
	}
	return `"as the sack says"`
}

func (s *stores) newest(what, unit string) *pile {
	var out *pile
	for _, p := range s.piles {
		if keyOf(p.what) == keyOf(what) && p.unit == unit {
			out = p
		}
	}
	return out
}

// use takes what a run used from the lot that it names, or from the oldest.
func (s *stores) use(e step, known record.Date) {
	u := e.used
	r := u.Amount.AsOf(known)
	v, ok := r.Holds()
	if !ok || !u.Bought() {
		return
	}
	n, unit := s.whole(v, u.What)
	take := func(p *pile, n int64, guess bool) {
		p.there, p.used = p.there-n, p.used+n
		s.uses = append(s.uses, use{on: e.on, run: e.run, of: p, amount: n, guess: guess, by: u.By, at: u.At})
	}
	if u.Lot != "" {
		p := s.pile(u.What, u.Lot, unit)
		if p == nil {
			s.wants = append(s.wants, Missing{What: fmt.Sprintf("when lot %s of %s came, and from whom", u.Lot, u.What), Mend: fmt.Sprintf(`%s %s %s lot %q from "who sold it"`, e.on, u.What, v, u.Lot), In: s.loft.BoughtIn(), Section: "19.584", at: u.At, day: e.on})
			p = &pile{what: u.What, lot: u.Lot, unit: unit, came: e.on}
			s.piles = append(s.piles, p)
			p.there, p.in = n, n
		}
		take(p, n, false)
		s.below(p, e.on, u.At)
		return
	}
	s.wants = append(s.wants, Missing{What: fmt.Sprintf("of which lot the %s of run %s was", u.What, e.run.Number), Mend: wording.Completed(u.At.Text(), wording.More{Lot: s.lotThere(u.What, unit)}), Instead: true, Section: "19.584", at: u.At, day: e.on})
	for _, p := range s.piles {
		if n > 0 && p.there > 0 && p.unit == unit && keyOf(p.what) == keyOf(u.What) {
			part := min(n, p.there)
			take(p, part, true)
			n -= part
		}
	}
	if n > 0 {
		p := s.pile(u.What, "", unit)
		if p == nil {
			p = &pile{what: u.What, unit: unit, came: e.on}
			s.piles = append(s.piles, p)
		}
		p.there, p.in = p.there+n, p.in+n // it was there: nobody wrote that it came
		take(p, n, true)
	}
}

// below says that more was taken of a lot than came.
func (s *stores) below(p *pile, on record.Date, at diag.Span) {
	if p.there < -p.in/1000 && p.there < 0 {
		s.odd = append(s.odd, Check{What: "nothing gives more than it holds", Of: stockName(p), Says: "more is taken than came: " + inUnit(-p.there, p.unit) + " over", day: on, at: at})
	}
}

func stockName(p *pile) string {
	if p.lot == "" {
		return p.what
	}
	return p.what + " lot " + p.lot
}

// inUnit is an amount with its unit, for a message.
func inUnit(n int64, unit string) string {
	switch unit {
	case "g":
		return fmt.Sprintf("%.1f kg (%.1f lb)", float64(n)/1000, float64(n)/1000/quantity.PoundKg)
	case "mL":
		return fmt.Sprintf("%.2f L (%.2f gal)", float64(n)/1000, float64(n)/1e6/quantity.USGallonM3)
	}
	return fmt.Sprint(n)
}
