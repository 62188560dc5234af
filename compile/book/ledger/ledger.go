// Package ledger keeps the books of a house: what was produced, filled, dumped, bottled,
// lost and withdrawn in a month, and what is on hand, as the records of its runs, casks,
// vats, bottlings and stores have it. Nothing of it is typed.
//
// Each line of the records that moves alcohol is a movement between two holders (a run's
// receiver, a cask, a tank, a vat, a bottling), and each holder is of one account. So what
// is on hand is what came less what went, in each holder, in each account and in all.
//
// A cask stands in the books with what was filled; what it loses in wood is booked on the
// day on which it is emptied and gauged, as storage accounts have it. A gauge that differs
// from the books is a loss, or a find. A correction, or an entry that was written late,
// leaves the months before it as they were: it is a line of its own in the month in which it
// was made.
//
// This is no official form and no legal advice.
package ledger

import (
	"fmt"
	"math"
	"slices"
	"time"

	"newmake/compile/book/flow"
	"newmake/compile/book/identity"
	"newmake/compile/book/trace"
	"newmake/compile/lot"
	"newmake/lang/diag"
	"newmake/lang/inventory"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/sorting"
	"newmake/lang/wording"
)

// Format and Version name the shape of a ledger as JSON. A minor version adds names and
// never takes one away.
const (
	Format  = "newmake.ledger"
	Version = "1.0"
)

// Ledger is the books of one month.
type Ledger struct {
	Format    string     `json:"format"`
	Version   string     `json:"version"`
	House     string     `json:"house"`
	Month     string     `json:"month"` // 2026-03
	Law       LawShown   `json:"law"`
	Units     string     `json:"units"` // "us" or "si", for a reader; all numbers are in the units of their names
	Accounts  []Balance  `json:"accounts"`
	Outside   []Flow     `json:"outside"` // what was distilled, and what left the premises or was lost
	Lines     []Line     `json:"lines"`
	OnHand    []Held     `json:"onHand"`
	Gauges    []Gauge    `json:"gauges"`
	Materials []Stock    `json:"materials"`
	Uses      []Use      `json:"uses"`
	Reports   []Answered `json:"reports"` // of the monthly reports, where the law has forms that are known
	Checks    []Check    `json:"checks"`
	Missing   []Missing  `json:"missing"`
	// Blends are the vats and bottlings of the month, and what they are.
	Blends []identity.Identity `json:"blends"`
	Cost   *Money              `json:"cost,omitempty"` // where it is asked for
}

// LawShown is a law as a ledger shows it.
type LawShown struct {
	Name    string `json:"name"`
	Country string `json:"country"`
	Text    string `json:"text"`
	Read    string `json:"read"`
	Alcohol string `json:"alcohol"`     // the unit that it is counted in
	Long    string `json:"alcoholLong"` // its name
	// ProofGallons says that it is counted in proof gallons at 60 F, and else in litres at 20 C.
	ProofGallons bool    `json:"proofGallons"`
	Each         float64 `json:"unitsEach"` // proof gallons, or litres, of one unit of alcohol
	Keep         string  `json:"keep"`
}

// Balance is one account over the month.
type Balance struct {
	Account Account `json:"account"`
	Title   string  `json:"title"`
	Opening Amount  `json:"opening"`
	In      Amount  `json:"in"`
	Out     Amount  `json:"out"`
	Lost    Amount  `json:"lost"` // of what went out: lost, less what was found
	Closing Amount  `json:"closing"`
	Flows   []Flow  `json:"flows"`
}

// Flow is all movements of one kind. Out of an account it is below zero.
type Flow struct {
	Kind    Kind   `json:"kind"`
	Section string `json:"section,omitempty"`
	Amount  Amount `json:"amount"`
}

// Line is one movement.
type Line struct {
	On      string `json:"date"`
	Kind    Kind   `json:"kind"`
	Of      string `json:"of"` // the run, cask, vat or bottling whose line it is
	From    string `json:"from"`
	To      string `json:"to"`
	Amount  Amount `json:"amount"` // below zero where a correction takes it back
	Section string `json:"section,omitempty"`
	// Corrects is the day of the line that a correction, or a late entry, is of.
	Corrects string `json:"corrects,omitempty"`
	By       string `json:"by,omitempty"`
	File     string `json:"file,omitempty"`
	Line     int    `json:"line,omitempty"`

	kind way
	sum  cents
}

// Held is a holder with something in it at the end of the month.
type Held struct {
	Account Account `json:"account"`
	Name    string  `json:"name"`
	Since   string  `json:"since"`
	Amount  Amount  `json:"amount"`
}

// Gauge is a gauge record (27 CFR 19.618 and 19.619).
type Gauge struct {
	Serial   string  `json:"serial"` // from 1 in each year
	On       string  `json:"date"`
	What     string  `json:"what"`
	Of       string  `json:"of"`
	By       string  `json:"method"` // weight or volume
	GrossKg  float64 `json:"grossKg,omitempty"`
	TareKg   float64 `json:"tareKg,omitempty"`
	NetKg    float64 `json:"netKg,omitempty"`
	ReadL    float64 `json:"readL,omitempty"` // the volume as it was read, at
	ReadC    float64 `json:"readC,omitempty"`
	WineGal  float64 `json:"wineGallons"` // at 60 F
	VolumeL  float64 `json:"volumeL"`     // at 20 C
	Proof    float64 `json:"proof"`       // true
	AbvPct   float64 `json:"abvPct"`      // at 20 C
	Amount   Amount  `json:"amount"`
	Section  string  `json:"section,omitempty"`
	Initials string  `json:"by,omitempty"`
	File     string  `json:"file,omitempty"`
	Line     int     `json:"line,omitempty"`
}

// Answered is a line of a monthly report.
type Answered struct {
	Form   string `json:"form"`
	Line   string `json:"line,omitempty"`
	What   string `json:"what"`
	Amount Amount `json:"amount"`
}

// Check is something that must hold, and whether it does.
type Check struct {
	What string `json:"what"`
	Of   string `json:"of,omitempty"`
	OK   bool   `json:"ok"`
	Says string `json:"says"`
	By   Amount `json:"by"` // how far it is off
	File string `json:"file,omitempty"`
	Line int    `json:"line,omitempty"`

	day record.Date
	at  diag.Span
}

// Missing is a field that the books want and nobody wrote, or that cannot be.
type Missing struct {
	What    string `json:"what"`
	Mend    string `json:"mend"`         // the line to write, with __ for what nobody knows yet
	In      string `json:"in,omitempty"` // where it is written, in words, if not beside the line that is named
	Instead bool   `json:"instead"`      // it is that line, with more in it
	Section string `json:"section,omitempty"`
	Wrong   bool   `json:"wrong"` // it was written, and cannot be
	File    string `json:"file,omitempty"`
	Line    int    `json:"line,omitempty"`

	wrong bool
	day   record.Date
	at    diag.Span
}

// House is what the books ask of a house.
type House struct {
	Name  string
	Texts *inventory.Inventory
	US    bool // it counts in gallons
	// BushelKg is what a trade bushel of a grain weighs, 0 if nobody knows.
	BushelKg func(grain string) float64
	Law      Law
	People   bool // initials are shown
	// Prices are asked for what things cost; nil: nobody asks.
	Prices *Prices
	// Blends judges those of the vats and bottlings that are wanted; nil: nobody can. amount is
	// how much alcohol a line moved.
	Blends func(amount func(diag.Span) float64, wanted func(*trace.Blend) bool) []identity.Identity
	// Declared says that there is a batch of a name.
	Declared func(batch string) bool
}

// Of keeps the books of a month.
func Of(h House, year int, month time.Month) *Ledger {
	first := record.Date{Year: year, Month: month, Day: 1}
	before := first.After(-1)
	last := record.DateOf(time.Date(year, month+1, 0, 12, 0, 0, 0, time.UTC))
	b := booksOf(h.Texts, lot.BottleC(h.counts()))
	then, now := foldOf(b.events, before, before), foldOf(b.events, last, last)
	m := &monthly{House: h, first: first, last: last, then: then, now: now}
	m.stores = storesOf(h.Texts, h.BushelKg, first, last)
	l := m.write()
	if h.Blends != nil {
		l.Blends = h.Blends(now.amounts(), func(b *trace.Blend) bool { return b.On.Compare(first) >= 0 && b.On.Compare(last) <= 0 })
	}
	if h.Prices != nil {
		l.Cost = m.cost(b, h.Prices)
	}
	return l
}

// counts is the system of units in which the house counts.
func (h *House) counts() recipe.System {
	if h.US {
		return recipe.US
	}
	return recipe.SI
}

// booksOf turns the records of a house into events, in the order of their days. bottleC is
// the temperature at which its bottles hold their size.
func booksOf(c *inventory.Inventory, bottleC float64) *books {
	b := &books{texts: c, names: map[*record.Life]string{}, bottleC: bottleC}
	for _, l := range c.Lives {
		b.name(l)
	}
	runs, over := map[*record.Run]*distilling{}, map[*record.Run]*ends{}
	for _, r := range c.Runs {
		runs[r], over[r] = b.distilled(r), &ends{}
	}
	last := map[*record.Bottling]record.Date{}
	all := flow.Of(c)
	b.events = make([]event, 0, len(all))
	for i := range all {
		e := &all[i]
		switch {
		case e.Run != nil:
			d := runs[e.Run]
			over[e.Run].see(d, e)
			b.add(e.On, e.Rank, func(f *fold) { b.ofRun(f, d, e) })
		case e.End != nil:
			b.add(e.On, e.Rank, func(f *fold) { b.end(f, e.Life, e.End) })
		case e.Life != nil && lies(e.Visit):
			b.add(e.On, e.Rank, func(f *fold) { b.lying(f, e) })
		case e.Life != nil:
		case e.Vat != nil:
			b.add(e.On, e.Rank, func(f *fold) { b.ofVat(f, e) })
		case e.Bottles != nil:
			b.add(e.On, e.Rank, func(f *fold) { b.bottles(f, e) })
		default:
			b.add(e.On, e.Rank, func(f *fold) { b.ofBottling(f, e) })
		}
		if t := e.Bottling; t != nil && e.Rank == flow.Bottled {
			last[t] = later(last[t], e.On)
		}
	}
	for _, r := range c.Runs {
		b.over(runs[r], *over[r])
	}
	for _, t := range c.Bottlings {
		b.bottled(t, flow.Source(c, t.Of, "", t.On), later(last[t], t.On))
	}
	sorted(b.events)
	return b
}

// monthly is a ledger in the making.
type monthly struct {
	House
	first, last record.Date
	then, now   *fold
	stores      *stores
	lines       []Line
}

func (m *monthly) write() *Ledger {
	l := &Ledger{Format: Format, Version: Version, House: m.Name, Month: fmt.Sprintf("%04d-%02d", m.first.Year, m.first.Month), Units: "si",
		Law:      m.Law.shown(),
		Accounts: []Balance{}, Outside: []Flow{}, OnHand: []Held{}, Gauges: []Gauge{}, Materials: []Stock{}, Uses: []Use{}, Reports: []Answered{}, Checks: []Check{}, Missing: []Missing{}, Blends: []identity.Identity{}}
	if m.US {
		l.Units = "us"
	}
	m.lines = slices.Concat(m.corrections(), m.moves())
	l.Lines = append([]Line{}, m.lines...)
	m.accounts(l)
	m.gauges(l)
	m.materials(l)
	if m.Law.Sections {
		m.reports(l)
	}
	m.checks(l)
	m.missing(l)
	return l
}

// section is the one that wants a line, where the law's are known.
func (m *monthly) section(s string) string {
	if !m.Law.Sections || s == "" {
		return ""
	}
	return "27 CFR " + s
}

// moves are the movements of the month.
func (m *monthly) moves() []Line {
	var out []Line
	for _, v := range m.now.moves {
		if v.on.Compare(m.first) >= 0 {
			out = append(out, m.line(v, v.amount))
		}
	}
	return out
}

func (m *monthly) line(v movement, a cents) Line {
	w := way{v.from.account, v.to.account}
	kind, section := kindOf(w)
	l := Line{On: v.on.String(), Kind: kind, Of: v.what, From: shownAs(v.from), To: shownAs(v.to), Amount: a.amount(), Section: m.section(section), kind: w, sum: a}
	if m.People {
		l.By = v.by
	}
	l.File, l.Line = place(v.at)
	return l
}

// shownAs is a holder, or an account outside, as a reader is told of it.
func shownAs(h *holder) string {
	if h.name == "" {
		return titles[h.account]
	}
	return named(h)
}

func place(at diag.Span) (file string, line int) {
	if at.IsZero() {
		return "", 0
	}
	line, _ = at.Position()
	return at.Src.Name, line
}

// corrections are what is known now of the days before the month, and was not when the
// month before was closed.
func (m *monthly) corrections() []Line {
	keys := func(f *fold) ([]key, map[key]movement) {
		seen, by := map[key]int{}, map[key]movement{}
		var order []key
		for _, v := range f.moves {
			if v.on.Compare(m.first) >= 0 {
				break
			}
			k := key{at: v.at, from: string(v.from.account) + "\x00" + v.from.name, to: string(v.to.account) + "\x00" + v.to.name}
			n := seen[k]
			seen[k]++
			k.nth = n
			by[k] = v
			order = append(order, k)
		}
		return order, by
	}
	were, was := keys(m.then)
	are, is := keys(m.now)
	var out []Line
	var sides [][]string // of each, what it is about and the vessels on its two sides
	add := func(v movement, a cents) {
		if a.zero() {
			return
		}
		l := m.line(v, a)
		l.Corrects, l.On = l.On, m.first.String()
		switch {
		case !v.written.IsZero() && v.written.Compare(m.first) >= 0:
			l.On = v.written.String()
		case v.late != nil && v.late.On.Compare(m.first) >= 0:
			l.On = v.late.On.String()
			l.File, l.Line = place(v.late.Place)
		}
		out = append(out, l)
		of := []string{l.Of}
		for _, h := range []*holder{v.from, v.to} {
			if h.name != "" {
				of = append(of, named(h))
			}
		}
		sides = append(sides, of)
	}
	for _, k := range are {
		add(is[k], is[k].amount.minus(was[k].amount))
	}
	for _, k := range were {
		if _, still := is[k]; !still {
			add(was[k], cents{}.minus(was[k].amount))
		}
	}
	// What a remainder takes with it is of the day of what was put right: of the same vessel, or of
	// the one that it came from or went to.
	day := map[string]string{}
	for i := range out {
		for _, of := range sides[i] {
			day[of] = max(day[of], out[i].On)
		}
	}
	for i := range out {
		if l := &out[i]; l.On == m.first.String() {
			for _, of := range sides[i] {
				l.On = max(l.On, day[of])
			}
		}
	}
	return out
}

// accounts sums the lines into accounts.
func (m *monthly) accounts(l *Ledger) {
	for _, a := range onPremises {
		b := Balance{Account: a, Title: m.Law.title(a), Opening: m.then.onHand(a).amount(), Closing: m.now.onHand(a).amount(), Flows: []Flow{}}
		var in, out, lost cents
		by := map[way]cents{}
		for _, x := range m.lines {
			if x.kind.from == x.kind.to {
				continue
			}
			switch a {
			case x.kind.to:
				in = in.plus(x.sum)
				by[x.kind] = by[x.kind].plus(x.sum)
				if x.kind.from == Losses {
					lost, in = lost.minus(x.sum), in.minus(x.sum)
				}
			case x.kind.from:
				by[x.kind] = by[x.kind].minus(x.sum)
				if x.kind.to == Losses || x.kind.to == Stills {
					lost = lost.plus(x.sum)
				} else {
					out = out.plus(x.sum)
				}
			}
		}
		b.In, b.Out, b.Lost = in.amount(), out.amount(), lost.amount()
		for _, k := range kinds {
			if s, is := by[k.way]; is && !s.zero() {
				b.Flows = append(b.Flows, Flow{k.kind, m.section(k.section), s.amount()})
				delete(by, k.way)
			}
		}
		var rest []way
		for w := range by {
			rest = append(rest, w)
		}
		sorting.Stable(rest, func(a, b way) int {
			return slices.Compare([]string{string(a.from), string(a.to)}, []string{string(b.from), string(b.to)})
		})
		for _, w := range rest {
			if kind, section := kindOf(w); !by[w].zero() {
				b.Flows = append(b.Flows, Flow{kind, m.section(section), by[w].amount()})
			}
		}
		l.Accounts = append(l.Accounts, b)
	}
	for _, a := range []Account{Distilled, Stills, Losses, Samples, Withdrawn, Destroyed} {
		var s cents
		for _, x := range m.lines {
			if x.kind.to == a {
				s = s.plus(x.sum)
			}
			if x.kind.from == a {
				s = s.minus(x.sum)
			}
		}
		if a == Distilled {
			s = cents{}.minus(s) // it comes
		}
		if !s.zero() {
			l.Outside = append(l.Outside, Flow{Kind: Kind(m.Law.title(a)), Amount: s.amount()})
		}
	}
	for _, a := range onPremises {
		for _, h := range m.now.all {
			if h.account == a && h.name != "" && !h.balance.zero() {
				l.OnHand = append(l.OnHand, Held{a, named(h), h.since.String(), h.balance.amount()})
			}
		}
	}
}

func (m *monthly) gauges(l *Ledger) {
	for _, g := range m.now.gauges {
		if g.on.Compare(m.first) < 0 {
			continue
		}
		o := Gauge{Serial: fmt.Sprintf("%04d-%d", g.on.Year, g.serial), On: g.on.String(), What: g.what, Of: g.of, By: "volume", AbvPct: to(100*g.abv, 2), Amount: g.amount.amount(), Section: m.section("19.618")}
		if g.byWeight {
			o.By = "weight"
			o.GrossKg, o.NetKg = to(g.grossKg, 2), to(g.netKg, 2)
			o.Section = m.section("19.618, 19.619")
		} else {
			o.ReadL, o.ReadC = to(1000*g.volumeM3, 2), to(g.atC, 1)
		}
		o.TareKg = to(g.tareKg, 2)
		o.Proof, o.WineGal, o.VolumeL = to(g.proof(), 1), to(g.wineGal, 2), to(g.litres(), 2)
		if m.People {
			o.Initials = g.visit.By
		}
		o.File, o.Line = place(g.visit.At)
		l.Gauges = append(l.Gauges, o)
	}
}

func (m *monthly) materials(l *Ledger) {
	for _, p := range m.stores.piles {
		if p.opening == 0 && p.in == 0 && p.used == 0 && p.there == 0 && p.gone == 0 && p.count == 0 {
			continue
		}
		l.Materials = append(l.Materials, Stock{p.What, p.Code, p.Unit, float64(p.opening), float64(p.in), float64(p.used), float64(p.gone), float64(p.count), float64(p.there)})
	}
	for _, u := range m.stores.uses {
		if u.on.Compare(m.first) < 0 {
			continue
		}
		o := Use{On: u.on.String(), Run: u.run.Number, What: u.of.What, Lot: u.of.Code, Unit: u.of.Unit, Used: float64(u.amount), Guess: u.guess}
		if m.People {
			o.By = u.by
		}
		o.File, o.Line = place(u.at)
		l.Uses = append(l.Uses, o)
	}
}

func (m *monthly) missing(l *Ledger) {
	for _, w := range slices.Concat(m.now.wants, m.stores.wants) {
		if w.day.Compare(m.first) < 0 {
			continue
		}
		w.File, w.Line = place(w.at)
		w.Wrong, w.Section = w.wrong, m.section(w.Section)
		if !m.US {
			w.Mend, w.In = wording.Restated(w.Mend, quantity.SI), wording.Restated(w.In, quantity.SI)
		}
		if !slices.ContainsFunc(l.Missing, func(o Missing) bool { return o.What == w.What && o.File == w.File && o.Line == w.Line }) {
			l.Missing = append(l.Missing, w)
		}
	}
}

// to rounds to so many places: what is shown is the same on every processor.
func to(x float64, places int) float64 {
	p := math.Pow10(places)
	return math.Round(x*p) / p
}
