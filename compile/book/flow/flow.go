// Package flow goes through the records of a house once, for all who follow its spirit: which
// line says that something went from one vessel into another, on which day, or was read where it
// lies. The books count what went, a trace follows who it was; both ask here what flows where.
package flow

import (
	"cmp"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/inventory"
	"newmake/lang/record"
	"newmake/lang/sorting"
	"newmake/lang/tree"
)

// Vessel is what holds spirit: one of a run (its still and its receivers), a cask from its fill to
// its end, a vat, a bottling and a tank that has no more than a name. The zero is none that is
// known.
type Vessel struct {
	Run      *record.Run
	Life     *record.Life
	Vat      *record.Vat
	Bottling *record.Bottling
	Tank     string
}

// Rank is the place of a line among those of one day.
type Rank int

// What is made comes first, then what casks lose and get, what is drawn from them, what is
// blended, and what is bottled; between them a run ends, and a bottling.
const (
	Made Rank = iota
	RunEnds
	Lying
	Drawn
	Blended
	Bottled
	BottlingEnds
	Gone
	Last
)

// Event is a line of the records. It stands in the declaration of one of the four, and says what
// left one vessel for another; of what was only read, both are the one that it lies in.
type Event struct {
	On       record.Date
	Rank     Rank
	Run      *record.Run
	Life     *record.Life // of a cask's own line, a round's, and of its end
	Vat      *record.Vat
	Bottling *record.Bottling
	Visit    *record.Visit   // nil of what still lay in the tank in which a vat is blended, and is in it now
	End      *record.End     // of what ends a cask, or draws on it
	Bottles  *record.Bottles // of bottles that were filled, or went
	From, To Vessel          // To is none of what left the house, or was lost
	At       diag.Span
}

// Source is what a name stands for on the day on which something is drawn from it; sort is the
// word before it. What is no vat, cask or run is a tank.
func Source(c *inventory.Inventory, name, sort string, on record.Date) Vessel {
	switch s, _ := c.Source(name, sort, on); {
	case s.Vat != nil:
		return Vessel{Vat: s.Vat}
	case s.Life != nil:
		return Vessel{Life: s.Life}
	case s.Run != nil:
		return Vessel{Run: s.Run}
	}
	return Vessel{Tank: name}
}

// Of are the lines of a house that move or measure spirit, in the order of their days.
func Of(c *inventory.Inventory) []Event {
	w := &walk{texts: c, out: make([]Event, 0, lines(c))}
	for _, r := range c.Runs {
		w.run(r)
	}
	for _, l := range c.Lives {
		w.life(l)
	}
	for _, v := range c.Vats {
		w.vat(v)
	}
	for _, b := range c.Bottlings {
		w.bottling(b)
	}
	sorting.Stable(w.out, func(a, b Event) int { return cmp.Or(a.On.Compare(b.On), cmp.Compare(a.Rank, b.Rank)) })
	return w.out
}

// lines is how many there may be.
func lines(c *inventory.Inventory) (n int) {
	for _, r := range c.Runs {
		n += len(r.Visits)
	}
	for _, l := range c.Lives {
		n += len(l.Events) + len(l.Ends)
	}
	for _, v := range c.Vats {
		n += len(v.Visits) + 1
	}
	for _, b := range c.Bottlings {
		n += len(b.Visits) + len(b.Bottles)
	}
	return n
}

type walk struct {
	texts *inventory.Inventory
	out   []Event
}

func (w *walk) add(e Event) { w.out = append(w.out, e) }

// day is that of a line, or of the declaration that it stands in.
func day(v *record.Visit, whole record.Date) record.Date {
	if v.When.Date.IsZero() {
		return whole
	}
	return v.When.Date
}

func (w *walk) run(r *record.Run) {
	own := Vessel{Run: r}
	for i := range r.Visits {
		v := &r.Visits[i]
		e := Event{On: day(v, r.Date), Rank: Made, Run: r, Visit: v, From: own, To: own, At: v.At}
		switch {
		case v.Word == "into":
			e.To = Vessel{Life: w.texts.FilledBy(v)}
		case v.Word == "charge" && v.From != "":
			if e.From = Source(w.texts, v.From, "", e.On); e.From == own { // nothing is charged from itself
				e.From = Vessel{Tank: v.From}
			}
		case v.To != "":
			e.To = Vessel{Tank: v.To}
		}
		w.add(e)
	}
}

func (w *walk) life(l *record.Life) {
	own := Vessel{Life: l}
	for i := range l.Events {
		v := &l.Events[i]
		e := Event{On: v.When.Date, Rank: Lying, Life: l, Visit: v, From: own, To: own, At: v.At}
		if v.Word == "topped" {
			if e.From = Source(w.texts, v.From, "", e.On); e.From == own {
				e.From = Vessel{Tank: v.From}
			}
		}
		w.add(e)
	}
	for i := range l.Ends {
		end := &l.Ends[i]
		e := Event{On: end.On, Rank: Drawn, Life: l, Visit: end.Visit, End: end, From: own, To: Vessel{Vat: end.Vat, Tank: end.Visit.To}, At: end.Visit.At}
		w.add(e)
	}
}

func (w *walk) vat(t *record.Vat) {
	own := Vessel{Vat: t}
	if t.Tank != "" {
		e := Event{On: t.On, Rank: Blended, Vat: t, To: own, At: t.At}
		if !takesOfOwn(t) {
			e.From.Tank = t.Tank
		}
		w.add(e)
	}
	for i := range t.Visits {
		v := &t.Visits[i]
		e := Event{On: day(v, t.On), Rank: Blended, Vat: t, Visit: v, From: own, To: own, At: v.At}
		if v.Word == "from" {
			sort := cmp.Or(v.Of, "cask")
			if e.From = Source(w.texts, v.From, sort, e.On); sort == "cask" && e.From.Life != nil {
				continue // it is among what was drawn from the cask
			}
			if sort == "cask" {
				e.From = Vessel{}
			}
		}
		w.add(e)
	}
}

// takesOfOwn says that a vat says itself what it takes of the tank in which it is blended.
func takesOfOwn(t *record.Vat) bool {
	return slices.ContainsFunc(t.Visits, func(v record.Visit) bool {
		return v.Word == "from" && v.Of == "tank" && tree.Key(v.From) == tree.Key(t.Tank)
	})
}

func (w *walk) bottling(b *record.Bottling) {
	own, of := Vessel{Bottling: b}, Source(w.texts, b.Of, "", b.On)
	for i := range b.Bottles {
		s := &b.Bottles[i]
		e := Event{On: cmp.Or(s.On, b.On), Rank: Bottled, Bottling: b, Bottles: s, From: of, To: own, At: s.At}
		if s.Word != "bottles" {
			e.Rank, e.From, e.To = Gone, own, Vessel{}
		}
		w.add(e)
	}
	for i := range b.Visits {
		v := &b.Visits[i]
		e := Event{On: day(v, b.On), Rank: Blended, Bottling: b, Visit: v, From: of, To: of, At: v.At}
		if v.Word == "left" {
			e.Rank = Bottled
			if v.To != "" {
				e.To = Vessel{Tank: v.To}
			}
		}
		w.add(e)
	}
}
