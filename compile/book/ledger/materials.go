package ledger

import (
	"fmt"
	"math"

	"newmake/lang/diag"
	"newmake/lang/inventory"
	"newmake/lang/quantity"
	"newmake/lang/record"
	"newmake/lang/stock"
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
	*stock.Lot
	there       int64
	price       float64 // of one of its unit, 0 if nobody wrote it
	currency    string
	opening     int64
	in, used    int64
	gone, count int64
}

// stores is what lies in the stores of a house, as the records are gone through.
type stores struct {
	piles []*pile // in the order in which they came
	by    map[*stock.Lot]*pile
	loft  *record.Store // the first that the house has, or nil
	known record.Date   // corrections after it are not made yet
	uses  []use
	odd   []Check
	wants []Missing
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

// storesOf goes through what was bought, used, counted and thrown away up to a day.
func storesOf(t *inventory.Inventory, bushel func(string) float64, from, until record.Date) *stores {
	s := &stores{by: map[*stock.Lot]*pile{}, known: until}
	if len(t.Stores) > 0 {
		s.loft = t.Stores[0]
	}
	begun := false
	for _, m := range t.Stock(bushel, until) {
		if m.On.Compare(until) > 0 {
			break
		}
		if !begun && m.On.Compare(from) >= 0 {
			s.open()
			begun = true
		}
		switch {
		case m.Used != nil:
			s.use(&m)
		case m.Line != nil:
			s.line(&m)
		default:
			for _, p := range m.Parts {
				s.pile(p.Of).take(-p.Amount)
			}
		}
	}
	if !begun {
		s.open()
	}
	return s
}

// pile is that of a lot.
func (s *stores) pile(l *stock.Lot) *pile {
	p := s.by[l]
	if p == nil {
		p = &pile{Lot: l}
		s.by[l], s.piles = p, append(s.piles, p)
	}
	return p
}

func (p *pile) take(n int64) { p.there, p.used = p.there-n, p.used+n }

// open begins the month.
func (s *stores) open() {
	for _, p := range s.piles {
		p.opening, p.in, p.used, p.gone, p.count = p.there, 0, 0, 0, 0
	}
}

// line is a line of a store.
func (s *stores) line(m *stock.Move) {
	l, n := m.Line, m.Parts[0].Amount
	p := s.pile(m.Parts[0].Of)
	was := p.there
	p.there += n
	switch l.Word {
	case "count":
		p.count += n
		if off := math.Abs(float64(n)); off > countsDiffer*math.Max(float64(p.there), float64(was)) {
			s.odd = append(s.odd, Check{What: "a count finds what the books say", Of: stockName(p), Says: fmt.Sprintf("%s were counted, and the books say %s", inUnit(p.there, p.Unit), inUnit(was, p.Unit)), day: l.On, at: l.At})
		}
	case "discarded":
		p.gone -= n
		s.below(p, l.On, l.At)
	default:
		p.in += n
		p.priced(l, n)
	}
}

// priced keeps what a lot cost when it came.
func (p *pile) priced(l *record.Lot, n int64) {
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
		if p.Code != "" && p.there > 0 && p.Unit == unit && keyOf(p.What) == keyOf(what) {
			return fmt.Sprintf("%q", p.Code)
		}
	}
	return `"as the sack says"`
}

// use is what a run used: of the lot that it names, or of the oldest.
func (s *stores) use(m *stock.Move) {
	u := m.Used
	if u.Lot == "" {
		s.wants = append(s.wants, Missing{What: fmt.Sprintf("of which lot the %s of run %s was", u.What, m.Run.Number), Mend: wording.Completed(u.At.Text(), wording.More{Lot: s.lotThere(u.What, m.Unit)}), Instead: true, Section: "19.584", at: u.At, day: m.On})
	}
	for _, part := range m.Parts {
		p := s.pile(part.Of)
		if part.Unwritten {
			if u.Lot != "" {
				was := u.Amount.AsOf(s.known)
				v, _ := was.Holds()
				s.wants = append(s.wants, Missing{What: fmt.Sprintf("when lot %s of %s came, and from whom", u.Lot, u.What), Mend: fmt.Sprintf(`%s %s %s lot %q from "who sold it"`, m.On, u.What, v, u.Lot), In: s.loft.BoughtIn(), Section: "19.584", at: u.At, day: m.On})
			}
			p.there, p.in = p.there+part.Amount, p.in+part.Amount
			continue
		}
		p.take(-part.Amount)
		s.uses = append(s.uses, use{on: m.On, run: m.Run, of: p, amount: -part.Amount, guess: u.Lot == "", by: u.By, at: u.At})
		if u.Lot != "" {
			s.below(p, m.On, u.At)
		}
	}
}

// below says that more was taken of a lot than came.
func (s *stores) below(p *pile, on record.Date, at diag.Span) {
	if p.there < -p.in/1000 && p.there < 0 {
		s.odd = append(s.odd, Check{What: "nothing gives more than it holds", Of: stockName(p), Says: "more is taken than came: " + inUnit(-p.there, p.Unit) + " over", day: on, at: at})
	}
}

func stockName(p *pile) string {
	if p.Code == "" {
		return p.What
	}
	return p.What + " lot " + p.Code
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
