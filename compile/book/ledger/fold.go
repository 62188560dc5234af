package ledger

import (
	"cmp"

	"newmake/compile/book/flow"
	"newmake/compile/lot"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/inventory"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/sorting"
)

// holder is something that holds alcohol: a cask's life, a tank, a vat, a bottling, a run's
// receiver.
type holder struct {
	account  Account
	name     string
	since    record.Date
	balance  cents
	abv      float64 // of what is in it, by volume at 20 C, as it was last read; 0 if never
	most     cents   // the most that was in it
	at       diag.Span
	below    bool // it was below nothing at the end of a day, and that was said
	stills   bool // of a run: what came out of it is held against its charge when the run ends
	ungauged bool // feints that nobody gauged: what the charge holds more than the hearts
}

// event is a line of the records, in its place in the order of the days.
type event struct {
	on   record.Date
	rank flow.Rank
	do   func(f *fold)
}

// movement is alcohol that went from one holder to another, whole: who says so is the line.
type movement struct {
	on       record.Date
	from, to *holder
	amount   cents
	at       diag.Span
	what     string // the lot, cask or run that it is about, as a reader finds it
	by       string
	late     *record.Correction
	written  record.Date // of a late entry
}

// key tells movements of two folds together: of the same line between the same holders.
type key struct {
	at       diag.Span
	from, to string
	nth      int
}

// fold is the books so far, by what was known on a day.
type fold struct {
	known   record.Date // corrections and late entries after this are not made yet
	until   record.Date // the last day that is counted
	hold    map[string]*holder
	all     []*holder // in the order in which they came up
	moves   []movement
	gauges  []gauge
	wants   []Missing
	odd     []Check
	tare    map[*record.Life]float64 // kg, as the fill says it
	charged map[string]cents         // what a run's own low wines held, as its charges have them
	early   map[string]cents         // what of a run was booked as distilled before its hearts were gauged
	unsure  map[string]bool          // a charge of the run has no gauge
	first   map[string][]gauge       // what the receivers of a run's hearts held, before the production gauge
	feints  []feints                 // of each run, in the order in which they were gauged
	today   record.Date
	touch   []*holder // of today
}

// feints are those of a run, where they were put, as the line says that gauged them.
type feints struct {
	run   string
	in    *holder
	visit *record.Visit
}

// foldOf goes through the events up to a day, as they were known on another.
func foldOf(events []event, until, known record.Date) *fold {
	f := &fold{known: known, until: until, hold: map[string]*holder{}, tare: map[*record.Life]float64{}, first: map[string][]gauge{}, charged: map[string]cents{}, early: map[string]cents{}, unsure: map[string]bool{}}
	for _, e := range events {
		if e.on.Compare(until) > 0 {
			break
		}
		if e.on != f.today {
			f.endDay()
			f.today = e.on
		}
		e.do(f)
	}
	f.endDay()
	return f
}

// sorted puts events into the order of their days.
func sorted(events []event) []event {
	sorting.Stable(events, func(a, b event) int { return cmp.Or(a.on.Compare(b.on), cmp.Compare(a.rank, b.rank)) })
	return events
}

// endDay looks for what cannot be: less than nothing in a holder when a day is over.
func (f *fold) endDay() {
	for _, h := range f.touch {
		if h.balance.pg < -belowNothing && !h.below && !h.stills {
			h.below = true
			f.odd = append(f.odd, Check{What: "nothing gives more than it holds", Of: named(h), Says: "more is drawn from it than went in", By: h.balance.minus(cents{}).amount(), day: f.today, at: h.at})
		}
	}
	f.touch = f.touch[:0]
}

// belowNothing is how far below nothing a balance may be, in hundredths of a proof gallon:
// gauges of one thing by two instruments differ.
const belowNothing = 10

// outside is one of the accounts that nothing is on hand in.
func (f *fold) outside(a Account) *holder { return f.of(a, "", diag.Span{}) }

// of is the holder of a name in an account.
func (f *fold) of(a Account, name string, at diag.Span) *holder {
	k := string(a) + "\x00" + name
	h := f.hold[k]
	if h == nil {
		h = &holder{account: a, name: name, at: at, since: f.today}
		f.hold[k] = h
		f.all = append(f.all, h)
	}
	return h
}

// line is the line of the records that a movement stands on.
type line struct {
	at   diag.Span
	what string
	by   string
	late *record.Correction
	writ record.Date
}

// lineOf is a visit as a movement keeps it.
func (f *fold) lineOf(v *record.Visit, what string) line {
	l := line{at: v.At, what: what, by: v.By, writ: v.Written}
	for i := range v.Read {
		if c := v.Read[i].Corrected.AsOf(f.known); c != nil {
			l.late = c
		}
	}
	return l
}

// move books a movement. One of less than nothing goes the other way.
func (f *fold) move(from, to *holder, a cents, l line) {
	if a.zero() || from == to {
		return
	}
	if a.pg < 0 || a.pg == 0 && a.lpa < 0 {
		from, to, a = to, from, cents{}.minus(a)
	}
	from.balance, to.balance = from.balance.minus(a), to.balance.plus(a)
	if to.balance.pg > to.most.pg {
		to.most = to.balance
	}
	f.moves = append(f.moves, movement{on: f.today, from: from, to: to, amount: a, at: l.at, what: l.what, by: l.by, late: l.late, written: l.writ})
	for _, h := range []*holder{from, to} {
		if h.name != "" {
			f.touch = append(f.touch, h)
		}
	}
}

// sees says that a line had been written by the day of which the books know.
func (f *fold) sees(v *record.Visit) bool {
	return v.Written.IsZero() || v.Written.Compare(f.known) <= 0
}

// want notes a field that is missing, once a line.
func (f *fold) want(m Missing) {
	m.day = f.today
	f.wants = append(f.wants, m)
}

// onHand is what the holders of an account hold together.
func (f *fold) onHand(a Account) cents {
	var sum cents
	for _, h := range f.all {
		if h.account == a {
			sum = sum.plus(h.balance)
		}
	}
	return sum
}

// named is a holder as a reader is told of it.
func named(h *holder) string {
	switch h.account {
	case Wood:
		return "cask " + h.name
	case Vats:
		return "vat " + h.name
	case Bottles:
		return "bottling " + h.name
	}
	return h.name
}

// amounts are the proof gallons that each line of the records put into a holder on the
// premises; of a line that moved several, the most. 0 of what moved none.
func (f *fold) amounts() func(diag.Span) float64 {
	by := map[diag.Span]cents{}
	for _, v := range f.moves {
		if bears(v.to.account) && v.to.name != "" && v.amount.pg > by[v.at].pg {
			by[v.at] = v.amount
		}
	}
	return func(at diag.Span) float64 { return float64(by[at].pg) / 100 }
}

// Amounts are the proof gallons that each line of a house's records moved, 0 of what moved
// none, or nobody knows how much.
func Amounts(h *check.House, texts *inventory.Inventory) func(diag.Span) float64 {
	forever := record.Date{Year: record.LastYear, Month: 12, Day: 31}
	gauge := recipe.SI // as HouseOf has it of a house without a batch
	if b := h.BatchOfBooks(texts); b != nil {
		gauge = b.Gauge
	}
	return foldOf(booksOf(texts, lot.BottleC(gauge)).events, forever, forever).amounts()
}
