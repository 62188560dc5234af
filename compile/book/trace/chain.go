package trace

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"newmake/compile/book/flow"
	"newmake/lang/diag"
	"newmake/lang/inventory"
	"newmake/lang/record"
	"newmake/lang/tree"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// link is one thing in the chain from a supplier to a bottle.
type link struct {
	kind       Kind
	name       string
	on         record.Date
	at         diag.Span
	says       []string
	from, into []*link
	ways       []way // by which spirit came into it
	broken     []gap
	run        *record.Run  // of a run
	life       *record.Life // of a cask
}

// way is spirit that went into something: what it was drawn from, when, and the line that
// says so.
type way struct {
	from *link
	on   record.Date
	at   diag.Span
}

// gap is a place at which nothing is written that would lead on.
type gap struct {
	what, mend string
	in         string // where the line is written, in words
	instead    bool   // it is the line that is named, with more in it
	at         diag.Span
	good       string // the material of which no lot is named, "" of others
	any        bool   // no material is named at all
}

// chain is all of a house's.
type chain struct {
	links []*link
	by    map[string]*link
	texts *inventory.Inventory
	cask  map[*record.Life]*link
	into  map[string][]entry // what went into each tank
	holds map[string][]entry // whose tank each was: a vat is blended in it, a run's hearts are reduced in it
}

// entry is something that went into a tank.
type entry struct {
	on   record.Date
	l    *link
	at   diag.Span
	over bool // it went on from there, to casks or bottles: what stayed has a line of its own
}

// keyOf tells links apart.
func keyOf(kind Kind, names ...string) string {
	k := string(kind)
	for _, n := range names {
		k += "\x00" + tree.Key(n)
	}
	return k
}

func (c *chain) get(key string, made link) *link {
	if l := c.by[key]; l != nil {
		return l
	}
	l := &made
	c.by[key], c.links = l, append(c.links, l)
	return l
}

// join says that one thing went into another.
func join(from, into *link) {
	for _, l := range into.from {
		if l == from {
			return
		}
	}
	into.from, from.into = append(into.from, from), append(from.into, into)
}

// pour is join of spirit that went from one into the other.
func pour(from, into *link, on record.Date, at diag.Span) {
	join(from, into)
	if w := (way{from, on, at}); !slices.Contains(into.ways, w) {
		into.ways = append(into.ways, w)
	}
}

// chainOf reads a house's texts into one chain.
func chainOf(h *inventory.Inventory) *chain {
	c := &chain{texts: h, by: map[string]*link{}, cask: map[*record.Life]*link{}, into: map[string][]entry{}, holds: map[string][]entry{}}
	for _, s := range h.Stores {
		for i := range s.Lots {
			c.bought(s, &s.Lots[i])
		}
	}
	for _, r := range h.Runs {
		c.get(keyOf(Run, r.Number), link{kind: Run, name: r.Number, on: r.Date, at: r.At, run: r})
	}
	for _, l := range h.Lives {
		nth := slices.Index(h.LivesOf(l.Serial), l)
		c.cask[l] = c.get(keyOf(Cask, l.Serial, l.Filled().String(), fmt.Sprint(nth)), link{kind: Cask, name: l.Serial, on: l.Filled(), at: l.At(), life: l})
	}
	for _, v := range h.Vats {
		c.get(keyOf(Vat, v.Name), link{kind: Vat, name: v.Name, on: v.On, at: v.At})
	}
	for _, b := range h.Bottlings {
		c.get(keyOf(Bottling, b.Lot), link{kind: Bottling, name: b.Lot, on: b.On, at: b.At})
	}
	for _, r := range h.Runs {
		c.used(r)
	}
	all := flow.Of(h)
	for i := range all {
		c.tank(&all[i])
	}
	for i := range all {
		c.flows(&all[i])
	}
	c.fromNowhere(h)
	for _, b := range h.Bottlings {
		c.bottling(b)
	}
	c.lie()
	return c
}

// bought is a line of a store.
func (c *chain) bought(s *record.Store, l *record.Lot) {
	if l.Lot == "" && l.Word != "" {
		return
	}
	n := c.get(keyOf(Lot, l.What, l.Lot), link{kind: Lot, name: l.Lot, on: l.On, at: l.At, says: []string{l.What}})
	if l.Word != "" {
		n.says = append(n.says, fmt.Sprintf("%s %s in %s on %s", l.Word, l.Amount, s.Name, l.On))
		return
	}
	said := fmt.Sprintf("%s came into %s on %s", l.Amount, s.Name, l.On)
	if l.Moisture != nil {
		said += fmt.Sprintf(", moisture %.1f %%", 100**l.Moisture)
	}
	if l.Starch != nil {
		said += fmt.Sprintf(", starch %.1f %%", 100**l.Starch)
	}
	n.says = append(n.says, said)
	if l.From == "" {
		n.broken = append(n.broken, gap{what: "nothing says from whom it came", at: l.At, mend: wording.Completed(l.At.Text(), wording.More{From: `"who sold it"`}), instead: true})
		return
	}
	join(c.get(keyOf(Supplier, l.From), link{kind: Supplier, name: l.From}), n)
}

// tank keeps what a line put into a tank.
func (c *chain) tank(e *flow.Event) {
	tank, in := e.To.Tank, entry{on: e.On, at: e.At}
	switch {
	case e.Run != nil && !nothing(e.Visit):
		in.l = c.by[keyOf(Run, e.Run.Number)]
		in.over = e.Visit.Word == "hearts" && slices.ContainsFunc(e.Run.Visits, func(v record.Visit) bool { return v.Word == "into" })
	case e.End != nil && e.End.Word == "emptied":
		in.l = c.cask[e.Life]
	case e.Vat != nil && e.Visit == nil:
		tank, in.l, in.over = e.Vat.Tank, c.by[keyOf(Vat, e.Vat.Name)], true
	case e.Bottling != nil && tank != "": // what is left is not of the bottles: it comes of what was bottled
		in.l = c.of(e.From, e.Bottling.On, nil)
	}
	if tank == "" || in.l == nil {
		return
	}
	k := tree.Key(tank)
	c.into[k] = append(c.into[k], in)
	if in.over {
		c.holds[k] = append(c.holds[k], in)
	}
}

// nothing says that a line tells of no volume at all: left 0 gal.
func nothing(v *record.Visit) bool {
	return slices.ContainsFunc(v.Read, func(r record.Reading) bool {
		h, ok := r.Holds()
		return r.What == record.Volume && ok && h.SI == 0
	})
}

// of is what a vessel was on a day, nil if nothing says what was in it, or it is the one that
// draws.
func (c *chain) of(v flow.Vessel, on record.Date, not *link) *link {
	var l *link
	switch {
	case v.Vat != nil:
		l = c.by[keyOf(Vat, v.Vat.Name)]
	case v.Life != nil:
		l = c.cask[v.Life]
	case v.Run != nil:
		l = c.by[keyOf(Run, v.Run.Number)]
	case v.Tank != "":
		l = c.drawn(v.Tank, on, not)
	}
	if l == not {
		return nil
	}
	return l
}

// drawn is a tank on the day on which something was drawn from it: all that had gone in by
// then may be in it, for nobody writes when a tank was empty.
func (c *chain) drawn(name string, on record.Date, not *link) *link {
	var in []entry
	for _, e := range c.into[tree.Key(name)] {
		if e.on.Compare(on) <= 0 && e.l != not {
			in = append(in, e)
		}
	}
	if len(in) == 0 {
		return nil
	}
	l := c.get(keyOf(Tank, name, on.String()), link{kind: Tank, name: name, on: on, says: []string{"all that had gone in by then may be in it"}})
	for _, e := range in {
		pour(e.l, l, e.on, e.at)
	}
	return l
}

// mingle joins what is blended or reduced in a tank with what had been left in there: all
// that came since the tank was last used for such work, and on that day.
func (c *chain) mingle(tank string, on record.Date, n *link) {
	var since record.Date
	for _, e := range c.holds[tree.Key(tank)] {
		if e.l != n && e.on.Compare(on) < 0 && e.on.Compare(since) > 0 {
			since = e.on
		}
	}
	var left []entry
	for _, e := range c.into[tree.Key(tank)] {
		if !e.over && e.l != n && e.on.Compare(on) <= 0 && e.on.Compare(since) >= 0 {
			left = append(left, e)
		}
	}
	if len(left) == 0 {
		return
	}
	l := c.get(keyOf(Tank, tank, on.String(), "left"), link{kind: Tank, name: tank, on: on, says: []string{"what had been left in it is mingled"}})
	for _, e := range left {
		pour(e.l, l, e.on, e.at)
	}
	pour(l, n, on, n.at)
}

// earlier is the last run before one, for a line that names none.
func (c *chain) earlier(on record.Date) string {
	best := ""
	var day record.Date
	for _, l := range c.links {
		if l.kind == Run && l.on.Compare(on) < 0 && l.on.Compare(day) > 0 {
			best, day = l.name, l.on
		}
	}
	if best == "" {
		return `"N"`
	}
	return fmt.Sprintf("%q", best)
}

// numbered says of a line that names a run of no number what is to stand there.
func numbered(run string) string {
	if run == `"N"` {
		return "with the number of a run before for N"
	}
	return ""
}

// lot is the last lot of a material that had come by a day, as the end of a line that names
// none; of any material, with what it is, where none is named.
func (c *chain) lot(good string, on record.Date) (what, end string) {
	what, end = good, `"as the sack says"`
	var day record.Date
	for _, l := range c.links {
		if l.kind == Lot && l.name != "" && !l.on.IsZero() && l.on.Compare(on) <= 0 && l.on.Compare(day) > 0 && (good == "" || tree.Key(l.says[0]) == tree.Key(good)) {
			what, end, day = l.says[0], fmt.Sprintf("%q", l.name), l.on
		}
	}
	if what == "" {
		what = "__"
	}
	return what, end
}

// grain is what another run of a batch used; "" if none says.
func (c *chain) grain(batch string) string {
	for _, r := range c.texts.Runs {
		for _, u := range r.Used {
			if tree.Key(r.Batch) == tree.Key(batch) && u.Bought() {
				return u.What
			}
		}
	}
	return ""
}

// lie says of what went into a tank and was not drawn from it since that it is there.
func (c *chain) lie() {
	for _, tank := range slices.Sorted(maps.Keys(c.into)) {
		in := c.into[tank]
		last := record.Date{}
		for _, l := range c.links {
			if l.kind == Tank && tree.Key(l.name) == tank && l.on.Compare(last) > 0 {
				last = l.on
			}
		}
		for _, e := range in {
			if !e.over && (last.IsZero() || e.on.Compare(last) > 0) {
				said := "went into " + tank + " on " + e.on.String()
				e.l.says = append(e.l.says, said)
			}
		}
	}
}

// used joins a run with what it was made of.
func (c *chain) used(r *record.Run) {
	n := c.by[keyOf(Run, r.Number)]
	join(c.get(keyOf(Batch, r.Batch), link{kind: Batch, name: r.Batch}), n)
	grown := false
	for i := range r.Used {
		u := &r.Used[i]
		switch from := c.of(flow.Source(c.texts, u.From, "", r.Date), r.Date, n); {
		case u.Lot != "":
			grown = true
			l := c.get(keyOf(Lot, u.What, u.Lot), link{kind: Lot, name: u.Lot, at: u.At, says: []string{u.What}})
			if l.on.IsZero() && len(l.broken) == 0 {
				amount := "__ lb"
				if v, ok := u.Amount.Holds(); ok {
					amount = v.String()
				}
				var loft *record.Store
				if len(c.texts.Stores) > 0 {
					loft = c.texts.Stores[0]
				}
				l.broken = append(l.broken, gap{what: "no store says when it came, and from whom", at: u.At,
					mend: fmt.Sprintf(`%s %s %s lot %q from "who sold it"`, r.Date, u.What, amount, u.Lot), in: loft.BoughtIn()})
			}
			if from == nil && u.From != "" && len(l.from) == 0 {
				join(c.get(keyOf(Supplier, u.From), link{kind: Supplier, name: u.From}), l)
			}
			join(l, n)
		case from != nil:
			join(from, n)
		case u.What != "backset" && !u.Bought():
		default:
			grown = grown || u.What != "backset"
			_, end := c.lot(u.What, r.Date)
			more := wording.More{Lot: end}
			if u.What == "backset" {
				more = wording.More{From: c.earlier(r.Date)}
			}
			var oldest []string
			for _, lot := range c.texts.Taken(u) { // first in, first out, as the books have it
				if l := c.by[keyOf(Lot, u.What, lot)]; l != nil {
					oldest = append(oldest, lot)
					join(l, n)
				}
			}
			if len(oldest) > 0 {
				more.Lot = fmt.Sprintf("%q", oldest[0])
				n.says = append(n.says, fmt.Sprintf("it names no lot of its %s: first in, first out it is of %s", u.What, words.And(oldest)))
			}
			n.broken = append(n.broken, gap{what: "nothing says of which lot its " + u.What + " was", good: u.What, at: u.At, mend: wording.Completed(u.At.Text(), more), in: numbered(more.From), instead: true})
		}
	}
	if !grown {
		what, end := c.lot(c.grain(r.Batch), r.Date)
		n.broken = append(n.broken, gap{what: "nothing says which lots went into it", any: true, at: r.At, mend: fmt.Sprintf("used { %s __ lb lot %s }", what, end), in: "in the run"})
	}
}

// flows joins a vessel with what a line put into it.
func (c *chain) flows(e *flow.Event) {
	switch {
	case e.Run != nil:
		c.ofRun(e)
	case e.End != nil && e.To.Vat != nil:
		pour(c.cask[e.Life], c.by[keyOf(Vat, e.To.Vat.Name)], e.On, e.At)
	case e.End == nil && e.Life != nil && e.Visit.Word == "topped":
		n := c.cask[e.Life]
		if s := c.of(e.From, e.On, n); s != nil {
			pour(s, n, e.On, e.At)
			return
		}
		n.broken = append(n.broken, gap{what: "nothing says with what it was topped on " + e.On.String(), at: e.At, mend: wording.Completed(e.At.Text(), wording.More{From: c.earlier(e.On)}), in: numbered(c.earlier(e.On)), instead: true})
	case e.Vat != nil && e.Visit == nil:
		c.mingle(e.Vat.Tank, e.On, c.by[keyOf(Vat, e.Vat.Name)])
	case e.Vat != nil && e.Visit.Word == "from":
		c.blended(e)
	}
}

// ofRun joins a run with what it charged, and a cask with the run that filled it.
func (c *chain) ofRun(e *flow.Event) {
	n, v := c.by[keyOf(Run, e.Run.Number)], e.Visit
	switch {
	case e.To.Life != nil:
		pour(n, c.cask[e.To.Life], e.On, e.At)
	case v.Word == "hearts" && v.To != "":
		c.mingle(v.To, e.On, n)
	case v.Word != "charge":
	case v.From != "":
		if s := c.of(e.From, e.On, n); s != nil {
			join(s, n)
			return
		}
		n.broken = append(n.broken, gap{what: fmt.Sprintf("its charge is from %q, and nothing says what was in there", v.From), at: v.At, mend: fmt.Sprintf(`feints __ gal, __ proof at __ F to %q`, v.From), in: "in the `spirit` of the run that it comes from"})
	case v.Of == "feints":
		n.broken = append(n.broken, gap{what: "nothing says from which run its feints were", at: v.At, mend: wording.Completed(v.At.Text(), wording.More{From: c.earlier(e.Run.Date)}), in: numbered(c.earlier(e.Run.Date)), instead: true})
	}
}

// blended joins a vat with what a line of it says went into it.
func (c *chain) blended(e *flow.Event) {
	n, w := c.by[keyOf(Vat, e.Vat.Name)], e.Visit
	if s := c.of(e.From, e.On, n); s != nil {
		pour(s, n, e.On, e.At)
		return
	}
	sort := cmp.Or(w.Of, "cask")
	g := gap{what: fmt.Sprintf("nothing says what was in %s %q by then", sort, w.From), at: w.At}
	switch sort {
	case "tank":
		g.mend, g.in = fmt.Sprintf(`left __ gal, __ proof at __ F to %q`, w.From), "in the `fill` of the run that it comes from"
	case "cask":
		g.mend, g.in = fmt.Sprintf(`fill { into %q __ gal }`, w.From), "in the run that filled it"
	}
	n.broken = append(n.broken, g)
}

// fromNowhere misses what no line put anything into.
func (c *chain) fromNowhere(h *inventory.Inventory) {
	for _, l := range h.Lives {
		if len(l.Fills) == 0 {
			n := c.cask[l]
			n.broken = slices.Insert(n.broken, 0, gap{what: "no run says that it filled it", at: l.At(), mend: fmt.Sprintf(`fill { into %q __ gal }`, l.Serial), in: "in the run that filled it"})
		}
	}
	for _, v := range h.Vats {
		if !slices.ContainsFunc(v.Visits, func(w record.Visit) bool { return w.Word == "from" }) {
			n := c.by[keyOf(Vat, v.Name)]
			n.broken = append(n.broken, gap{what: "nothing says what went into it", at: v.At, mend: `from "which cask" gross __ lb, tare __ lb, __ proof at __ F`, in: "in the vat"})
		}
	}
}

// bottling joins a bottling with what was bottled.
func (c *chain) bottling(b *record.Bottling) {
	n := c.by[keyOf(Bottling, b.Lot)]
	if s := c.of(flow.Source(c.texts, b.Of, "", b.On), b.On, n); s != nil {
		pour(s, n, b.On, b.At)
		return
	}
	n.broken = append(n.broken, gap{what: fmt.Sprintf("nothing says what was in %q on that day", b.Of), at: b.At, mend: fmt.Sprintf(`vat %q on %s { from "which cask" gross __ lb, tare __ lb, __ proof at __ F }`, b.Of, b.On), in: "in a file of the house"})
}
