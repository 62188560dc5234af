package ledger

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"newmake/compile/book/flow"
	"newmake/compile/matter/fluid"
	"newmake/lang/diag"
	"newmake/lang/inventory"
	"newmake/lang/record"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// books turns the records of a house into events.
type books struct {
	texts  *inventory.Inventory
	events []event
	names  map[*record.Life]string
	// bottleC is the temperature at which its bottles hold their size.
	bottleC float64
}

func keyOf(name string) string { return tree.Key(name) }

func (b *books) add(on record.Date, rank flow.Rank, do func(*fold)) {
	b.events = append(b.events, event{on, rank, do})
}

// name gives each life a name of its own: the serial, and from the second life on its fill.
func (b *books) name(l *record.Life) {
	n := l.Serial
	of := b.texts.LivesOf(l.Serial)
	if of[0] != l {
		n = fmt.Sprintf("%s, filled %s", l.Serial, l.Filled())
		for _, o := range of {
			if b.names[o] == n {
				n += ", again"
			}
		}
	}
	b.names[l] = n
}

func (b *books) cask(f *fold, l *record.Life) *holder { return f.of(Wood, b.names[l], l.At()) }

// holds is the holder of a vessel; nil of a tank into which nothing went, and of none.
func (b *books) holds(f *fold, v flow.Vessel) *holder {
	switch {
	case v.Vat != nil:
		return f.of(Vats, v.Vat.Name, v.Vat.At)
	case v.Life != nil:
		return b.cask(f, v.Life)
	case v.Run != nil:
		return f.of(Tanks, "hearts of run "+v.Run.Number, v.Run.At)
	}
	return f.hold[string(Tanks)+"\x00"+v.Tank]
}

// lies says that a line of a cask's own moves spirit, or measures it.
func lies(v *record.Visit) bool {
	return v.Word != "to" && v.Word != "note" && (len(v.Read) > 0 || v.Word == "topped" || v.Word == "leaked")
}

// lying books a line of a cask's own.
func (b *books) lying(f *fold, e *flow.Event) {
	l, v := e.Life, e.Visit
	if !f.sees(v) || v.None {
		return
	}
	h := b.cask(f, l)
	who := "cask " + l.Serial
	switch v.Word {
	case "topped":
		b.topped(f, h, e)
	case "leaked":
		if a, ok := f.part(v, record.Lost, h.abv); ok {
			f.move(h, f.outside(Losses), a, f.lineOf(v, who))
		} else {
			f.want(Missing{What: "how much leaked from " + who, Mend: f.more(v, wording.More{Readings: []string{"about __ gal"}, Remark: `"stave by the bung, pegged"`}), Instead: true, Section: "19.590", at: v.At})
		}
	default:
		if s := f.strength(v); s > 0 {
			h.abv = s
		}
	}
	if f.read(v, record.Sampled) != nil {
		if a, ok := f.part(v, record.Sampled, h.abv); ok {
			f.move(h, f.outside(Samples), a, f.lineOf(v, who))
		}
	}
}

func (b *books) topped(f *fold, h *holder, e *flow.Event) {
	v, who := e.Visit, "cask "+e.Life.Serial
	src := b.holds(f, e.From)
	abv := h.abv
	if src != nil && src.abv > 0 {
		abv = src.abv
	}
	g, ok := f.measured(v, "topped", who, abv, 0, record.Dip, record.Volume)
	if !ok {
		from := ""
		if src == nil {
			from = whichRun
		}
		f.want(Missing{What: "how much " + who + " was topped with, and how strong it was", Mend: f.more(v, f.amountOf(v, wording.More{From: from})), Instead: true, Section: "19.590", at: v.At})
		return
	}
	if src == nil {
		f.want(Missing{What: "what " + who + " was topped with", Mend: f.more(v, wording.More{From: whichRun}), Instead: true, Section: "19.590", at: v.At})
		src = f.nowhere(v.From, g.amount, v.At)
	}
	f.move(src, h, g.amount, f.lineOf(v, who))
}

// end books what became of a cask, or of a part of it.
func (b *books) end(f *fold, l *record.Life, e *record.End) {
	v := e.Visit
	if !f.sees(v) || e.Word == "bottled" { // what was bottled says how much it was
		return
	}
	h := b.cask(f, l)
	who := "cask " + l.Serial
	ln := f.lineOf(v, who)
	g, ok := f.measured(v, "dump", who, h.abv, f.tare[l], record.Dip, record.Volume)
	if e.Word == "destroyed" && !ok {
		if a, is := f.part(v, record.Lost, h.abv); is {
			g.amount, ok = a, true
		}
	}
	var to *holder
	switch {
	case e.Vat != nil:
		to = f.of(Vats, e.Vat.Name, e.Vat.At)
	case e.Word == "destroyed":
		to = f.outside(Destroyed)
		if v.Note == "" {
			f.want(Missing{What: "how " + who + " was destroyed, and who saw it", Mend: f.more(v, wording.More{Remark: `"poured away, J was there"`}), Instead: true, Section: "19.617", at: v.At})
		}
	case v.To != "":
		to = f.of(Tanks, v.To, v.At)
	default:
		to = f.of(Tanks, "not said", v.At)
		f.want(Missing{What: "where " + who + " was emptied to", Mend: f.more(v, wording.More{To: `"which tank"`}), Instead: true, Section: "19.590", at: v.At})
	}
	switch {
	case ok:
		if e.Word != "destroyed" {
			f.gauged(g)
		}
		if g.amount.pg > h.balance.pg && g.amount.minus(h.balance).share(h.most) > caskFinds {
			f.odd = append(f.odd, Check{What: "a cask gives no more than went in", Of: who, Says: fmt.Sprintf("%.1f %% more was dumped than it should hold", 100*g.amount.minus(h.balance).share(h.most)), By: g.amount.minus(h.balance).amount(), day: f.today, at: v.At})
		}
		if f.read(v, record.Strength) == nil && e.Word != "destroyed" {
			f.want(Missing{What: "the strength of " + who + " when it was emptied", Mend: f.more(v, wording.More{Readings: []string{"__ proof at __ F"}}), Instead: true, Section: "19.618", at: v.At})
		}
	case e.Part:
		f.want(Missing{What: "how much of " + who + " was drawn", Mend: f.more(v, f.amountOf(v, wording.More{})), Instead: true, Section: "19.618", at: v.At})
	default:
		g.amount = h.balance // by the books
		if e.Word != "destroyed" {
			f.want(Missing{What: "what " + who + " held when it was emptied", Mend: f.more(v, f.weightOf(v)), Instead: true, Section: "19.618", at: v.At})
		}
	}
	f.move(h, to, g.amount, ln)
	if g.abv > 0 && to.account == Tanks {
		to.abv = g.abv
	}
	if !e.Part {
		f.move(h, f.outside(Losses), h.balance, ln)
	}
}

// caskFinds is how much more than it should hold, as a share of its fill, a cask may give
// before a gauge or the serial is doubted: two weighings and a proof are good to about this
// (common practice).
const caskFinds = 0.01

// settle sets a holder to what was gauged: the difference is lost in the work, or found.
func (b *books) settle(f *fold, h *holder, g gauge, v *record.Visit, doing string) {
	f.gauged(g)
	off := h.balance.minus(g.amount)
	if part := off.share(h.balance); part > workLoses || part < -workLoses {
		f.odd = append(f.odd, Check{What: "a gauge finds what the books say", Of: named(h), Says: fmt.Sprintf("%s by %s, by these gauges", lostOrFound(part), doing), By: off.amount(), day: f.today, at: v.At})
	}
	f.move(h, f.outside(Losses), off, f.lineOf(v, named(h)))
	h.abv = g.abv
}

// left books what was left, and where it went.
func (b *books) left(f *fold, h *holder, v *record.Visit, volumes ...record.What) {
	g, ok := f.measured(v, "left", named(h), h.abv, 0, volumes...)
	if !ok {
		tank := ""
		if v.To == "" {
			tank = `"which tank"`
		}
		f.want(Missing{What: "how much was left of " + named(h) + ", and how strong", Mend: f.more(v, f.amountOf(v, wording.More{To: tank})), Instead: true, Section: "19.590, 19.599", at: v.At})
		g.amount = h.balance
	}
	if v.To == "" {
		if ok {
			b.settle(f, h, g, v, "the work before")
		}
		return
	}
	to := f.of(Tanks, v.To, v.At)
	f.move(h, to, g.amount, f.lineOf(v, named(h)))
	if g.abv > 0 {
		to.abv = g.abv
	}
}

// lost books what was spilt.
func (b *books) lost(f *fold, h *holder, v *record.Visit) {
	if a, ok := f.part(v, record.Lost, h.abv); ok {
		f.move(h, f.outside(Losses), a, f.lineOf(v, named(h)))
		return
	}
	m := Missing{What: "how much was lost of " + named(h) + ", and how strong it was", Section: "19.590", at: v.At}
	switch {
	case f.read(v, record.Lost) == nil:
		m.Mend, m.Instead = f.more(v, wording.More{Readings: []string{"about __ gal"}}), true
	case h.account == Vats:
		m.Mend, m.Instead = f.more(v, wording.More{Readings: []string{"__ proof at __ F"}}), true
	default:
		m.Mend, m.In = "__ proof at __ F", "before it, in the `fill`"
	}
	f.want(m)
}

// mingled books what still lay in the tank in which a vat is blended: it is in the vat now.
func (b *books) mingled(f *fold, e *flow.Event) {
	t := e.Vat
	for _, h := range f.all {
		if h.account == Tanks && keyOf(h.name) == keyOf(e.From.Tank) && h.balance.pg > 0 {
			f.move(h, f.of(Vats, t.Name, t.At), h.balance, line{at: t.At, what: "vat " + t.Name})
		}
	}
}

// ofVat books a line of a vat.
func (b *books) ofVat(f *fold, e *flow.Event) {
	t, v := e.Vat, e.Visit
	if v == nil {
		b.mingled(f, e)
		return
	}
	if !f.sees(v) || v.None {
		return
	}
	h := f.of(Vats, t.Name, t.At)
	switch v.Word {
	case "from":
		b.from(f, h, e)
	case "reduce":
		h.abv = 0
	case "gauge":
		if g, ok := f.measured(v, "vat", named(h), 0, 0, record.Dip, record.Volume); ok {
			b.settle(f, h, g, v, "blending and reducing")
		} else {
			f.want(Missing{What: "how much is in " + named(h) + ", and how strong", Mend: f.more(v, f.amountOf(v, wording.More{})), Instead: true, Section: "19.598", at: v.At})
		}
	case "lost":
		b.lost(f, h, v)
	default:
		if s := f.strength(v); s > 0 {
			h.abv = s
		}
		if a, ok := f.part(v, record.Sampled, h.abv); ok {
			f.move(h, f.outside(Samples), a, f.lineOf(v, named(h)))
		}
	}
}

// from books what went into a vat that is no cask: a vat, a tank or new make.
func (b *books) from(f *fold, h *holder, e *flow.Event) {
	v := e.Visit
	if v.Of == "" {
		return // no cask is known by the name
	}
	src := b.holds(f, e.From)
	if src == nil {
		g, ok := f.measured(v, "dump", v.Of+" "+v.From, 0, 0, record.Dip, record.Volume)
		if ok {
			f.gauged(g)
		}
		f.want(Missing{What: "what was in " + v.Of + " " + v.From + " when it went into " + named(h), Mend: fmt.Sprintf(`left __ gal, __ proof at __ F to %q`, v.From), In: "in the `fill` of the run that it comes from", Section: "19.592", at: v.At})
		f.move(f.nowhere(v.Of+" "+v.From, g.amount, v.At), h, g.amount, f.lineOf(v, named(h)))
		return
	}
	g, ok := f.measured(v, "dump", v.Of+" "+v.From, src.abv, 0, record.Dip, record.Volume)
	switch {
	case ok:
		f.gauged(g)
	case v.Why == "part":
		f.want(Missing{What: "how much of " + v.Of + " " + v.From + " went into " + named(h), Mend: f.more(v, f.amountOf(v, wording.More{})), Instead: true, Section: "19.592, 19.598", at: v.At})
	default:
		g.amount = src.balance
		f.want(Missing{What: "how much came from " + v.Of + " " + v.From, Mend: f.more(v, f.amountOf(v, wording.More{})), Instead: true, Section: "19.592, 19.598", at: v.At})
	}
	f.move(src, h, g.amount, f.lineOf(v, named(h)))
}

// ofBottling books a line of a bottling.
func (b *books) ofBottling(f *fold, e *flow.Event) {
	v := e.Visit
	if !f.sees(v) || v.None {
		return
	}
	src := b.holds(f, e.From)
	switch {
	case src == nil:
	case v.Word == "left":
		b.left(f, src, v, record.Dip, record.Volume)
	default:
		if s := f.strength(v); s > 0 {
			src.abv = s
		}
	}
}

// bottled adds what ends a bottling: last is the day of its last line.
func (b *books) bottled(t *record.Bottling, of flow.Vessel, last record.Date) {
	b.tried(t)
	b.add(last, flow.BottlingEnds, func(f *fold) {
		src := b.holds(f, of)
		if src == nil || src.account != Vats && src.account != Wood {
			return
		}
		part, less := src.balance.share(src.most), remainder
		if src.account == Wood {
			less = 1 - (1-remainder)*math.Pow(1-woodTakes, float64(src.since.DaysTo(t.On))/365.25)
		}
		switch {
		case src.account == Vats && (part > 0 && b.gaugedLeft(t) || part > less && b.goesOn(t)):
			return // it is there, and keeps its part of what it cost
		case part > less:
			f.want(Missing{What: fmt.Sprintf("where the other %.1f %% of %s are", 100*part, named(src)), Mend: `left __ gal, __ proof at __ F to "which tank"`, In: "in the bottling", Section: "19.599", at: t.At})
			return
		case src.account == Wood && part < -caskFinds:
			f.odd = append(f.odd, Check{What: "a cask gives no more than went in", Of: named(src), Says: fmt.Sprintf("%.1f %% more was bottled than it should hold", -100*part), By: cents{}.minus(src.balance).amount(), day: f.today, at: t.At})
		case src.account == Wood: // what is gone went through the wood
		case part > workLoses && src.balance.pg > b.oneOf(f, t).pg || part < -workLoses: // the last bottle is not full
			f.odd = append(f.odd, Check{What: "what was bottled is what there was", Of: "bottling " + t.Lot, Says: fmt.Sprintf("%+.1f %% of %s is not in bottles, or left", 100*part, named(src)), By: src.balance.amount(), day: f.today, at: t.At})
		}
		f.move(src, f.outside(Losses), src.balance, line{at: t.At, what: "bottling " + t.Lot})
	})
}

// gaugedLeft says that what a bottling left in its vat was gauged, and stays there.
func (b *books) gaugedLeft(t *record.Bottling) bool {
	for i := range t.Visits {
		if v := &t.Visits[i]; v.Word == "left" && v.To == "" && !v.None && len(v.Read) > 0 {
			return true
		}
	}
	return false
}

// goesOn says that a vat is not empty after a bottling: another bottling or vat is made of it
// later.
func (b *books) goesOn(t *record.Bottling) bool {
	after := false
	for _, o := range b.texts.Bottlings {
		if c := o.On.Compare(t.On); keyOf(o.Of) == keyOf(t.Of) && (c > 0 || c == 0 && after) {
			return true
		}
		after = after || o == t
	}
	for _, o := range b.texts.Vats {
		for i := range o.Visits {
			if v := &o.Visits[i]; v.Of == "vat" && keyOf(v.From) == keyOf(t.Of) && v.When.Date.Compare(t.On) >= 0 {
				return true
			}
		}
	}
	return false
}

// woodTakes is the share of its alcohol that a cask may lose in a year before somebody asks
// where it is: a warm and dry house loses less (common practice).
const woodTakes = 0.10

// tried misses the test of a bottle, of a bottling that has bottles.
func (b *books) tried(t *record.Bottling) {
	for i := range t.Visits {
		if t.Visits[i].Word == "test" {
			return
		}
	}
	if len(t.Bottles) == 0 {
		return
	}
	w := &t.Bottles[0]
	b.add(t.On, flow.Last, func(f *fold) {
		f.want(Missing{What: "the fill and the strength that were found in a bottle of " + t.Lot, Mend: "test " + w.Size.String() + ", __ proof at __ F", In: "in the bottling", Section: "19.600", at: t.At})
	})
}

// oneOf is what the smallest bottle of a bottling holds.
func (b *books) oneOf(f *fold, t *record.Bottling) cents {
	var least *record.Bottles
	for i := range t.Bottles {
		if w := &t.Bottles[i]; w.Word == "bottles" && (least == nil || w.EachM3 < least.EachM3) {
			least = w
		}
	}
	if least == nil {
		return cents{}
	}
	return alcohol(b.inBottles(1, least.EachM3, f.of(Bottles, t.Lot, t.At).abv))
}

// bottles books bottles that were filled, or what became of some.
func (b *books) bottles(f *fold, e *flow.Event) {
	t, w := e.Bottling, e.Bottles
	lot := f.of(Bottles, t.Lot, t.At)
	var src *holder
	if w.Word == "bottles" {
		src = b.holds(f, e.From)
	}
	abv := lot.abv
	if w.Label != nil {
		abv = labelled(*w.Label)
	} else if src != nil && abv == 0 {
		abv = src.abv
	}
	if abv == 0 {
		m := Missing{What: "the strength in the bottles of " + t.Lot, Mend: "bottles __ of " + w.Size.String() + " at __ proof", In: "in the bottling", Section: "19.599", at: w.At}
		for i := range t.Bottles {
			if o := &t.Bottles[i]; o.Word == "bottles" && o.Label == nil {
				m.Mend, m.In, m.Instead, m.at = labelledAs(o), "", true, o.At
				break
			}
		}
		f.want(m)
		return
	}
	a := alcohol(b.inBottles(w.N, w.EachM3, abv))
	l := line{at: w.At, what: "bottling " + t.Lot}
	switch w.Word {
	case "bottles":
		lot.abv = abv
		if src == nil {
			f.want(Missing{What: fmt.Sprintf("what was in %q when it was bottled", t.Of), Mend: fmt.Sprintf(`vat %q on %s { from "which cask" gross __ lb, tare __ lb, __ proof at __ F }`, t.Of, t.On), In: "in a file of the house", Section: "19.598", at: t.At})
			src = f.nowhere(fmt.Sprintf("%q", t.Of), a, t.At)
		}
		f.move(src, lot, a, l)
	case "broken":
		f.move(lot, f.outside(Losses), a, l)
	case "samples":
		f.move(lot, f.outside(Samples), a, l)
	case "withdrawn":
		f.move(lot, f.outside(Withdrawn), a, l)
	}
}

// nowhere is where spirit comes from of which nothing says what it was drawn from: the books
// find it, and it fails a check, for no house finds casks of spirit.
func (f *fold) nowhere(of string, a cents, at diag.Span) *holder {
	f.odd = append(f.odd, Check{What: "all spirit comes from somewhere", Of: cmp.Or(of, "where it came from"), Says: "spirit is drawn from it, and nothing says what was in there", By: a.amount(), day: f.today, at: at})
	return f.outside(Losses)
}

// labelledAs is a line of bottles with the strength on their label, which stands behind their size.
func labelledAs(w *record.Bottles) string {
	size, text := w.Size.String(), w.At.Text()
	i := strings.Index(text, size) + len(size)
	return text[:i] + " at __ proof" + text[i:]
}

// labelled is a strength on a label, by volume at 20 C.
func labelled(v record.Value) float64 {
	if v.Unit == "proof" {
		w, err := fluid.MassFracFromProof(200 * v.SI)
		if err != nil {
			return 0
		}
		return fluid.ABVFromMassFrac(w)
	}
	return v.SI
}

// lostOrFound says of a share in words whether it was lost or, below 0, found.
func lostOrFound(part float64) string {
	if part < 0 {
		return fmt.Sprintf("%.1f %% more was found", -100*part)
	}
	return fmt.Sprintf("%.1f %% of it was lost", 100*part)
}
