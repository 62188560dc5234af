package inventory

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/record"
	"newmake/lang/sorting"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// fact is one thing that happened to a cask: it was filled, read or moved, or emptied.
type fact struct {
	on    record.Date
	fill  *record.Filling
	event *record.Visit
	end   *record.End
}

// happened is a line of a cask's own block, or of a round.
func happened(v *record.Visit) fact {
	if v.Word == "emptied" || v.Word == "destroyed" {
		return fact{on: v.When.Date, end: &record.End{On: v.When.Date, Visit: v, Word: v.Word}}
	}
	return fact{on: v.When.Date, event: v}
}

// rank puts what happened on one day into an order: read before it is emptied, and
// emptied before it is filled again. Before its first fill there is nothing to empty.
func (f fact) rank(first *record.Filling) int {
	switch {
	case f.end != nil:
		return 2
	case f.fill != nil && first != nil && f.on == first.On():
		return 1
	case f.fill != nil:
		return 3
	}
	return 0
}

// serial is all that is written of one serial.
type serial struct {
	name  string
	cask  *record.Cask
	facts []fact
}

// serials are all of a house, in the order of their first mention.
type serials struct {
	by    map[string]*serial
	order []*serial
}

func (a *serials) has(name string) bool { return a.by[tree.Key(name)] != nil }

func (a *serials) of(name string) *serial {
	s := a.by[tree.Key(name)]
	if s == nil {
		s = &serial{name: name}
		a.by[tree.Key(name)] = s
		a.order = append(a.order, s)
	}
	return s
}

func (a *serials) add(name string, f fact) { s := a.of(name); s.facts = append(s.facts, f) }

// firstFill is the first that a run recorded, nil if none did.
func (s *serial) firstFill() *record.Filling {
	var first *record.Filling
	for i := range s.facts {
		if f := s.facts[i].fill; f != nil && (first == nil || f.On().Compare(first.On()) < 0) {
			first = f
		}
	}
	return first
}

// lives parts what is written of a serial where it was emptied, and says what cannot be:
// it is read or emptied when there is nothing in it, or filled over what it holds.
func (s *serial) lives(sizeOf func(*record.Cask, *record.Filling) float64, diags *diag.List) []*record.Life {
	first := s.firstFill()
	sorting.Stable(s.facts, func(a, b fact) int { return cmp.Or(a.on.Compare(b.on), a.rank(first)-b.rank(first)) })
	l := &living{serial: s, diags: diags}
	for _, f := range s.facts {
		switch {
		case f.fill != nil:
			now := l.begin()
			size := sizeOf(s.cask, f.fill)
			s.again(now, f.fill, diags)
			l.over(now, f.fill.Visit, record.Volume, f.on, size)
			s.heavy(f.fill, size, diags)
			now.Fills = append(now.Fills, *f.fill)
		case f.end != nil:
			if l.gone(f.end.Visit.At, "emptied again") || l.unfilled(f.end, first) {
				continue
			}
			now := l.begin()
			beyond(now, f.end.Visit, sizeOf, diags)
			l.out(f.end.Visit, record.Dip, f.on)
			if now.Ends = append(now.Ends, *f.end); !f.end.Part {
				l.now = nil
			}
		case f.event.Word != "to" && l.gone(f.event.At, "read"), l.tooEarly(f.event, first):
		default:
			now := l.begin()
			twice(now, f.event, diags)
			weighed(now, f.event, sizeOf, diags)
			size, fits := beyond(now, f.event, sizeOf, diags)
			switch f.event.Word {
			case "topped":
				if fits && len(now.Fills) > 0 {
					l.over(now, f.event, record.Dip, f.on, size)
				}
			case "leaked":
				l.out(f.event, record.Lost, f.on)
			}
			now.Events = append(now.Events, *f.event)
		}
	}
	if s.cask != nil && len(l.all) == 0 {
		l.begin()
	}
	if s.cask != nil && len(l.all[0].Fills) == 0 {
		diags.Add(s.neverFilled())
	}
	return l.all
}

// living is a serial as its days go by.
type living struct {
	*serial
	all   []*record.Life
	now   *record.Life // nil where it is empty
	inM3  float64      // the least that is in it, by what was put in and came out
	last  record.Date  // of which day that is
	aired bool         // the air took of it
	diags *diag.List
}

// begin is the life that it has now, a new one where it was empty.
func (l *living) begin() *record.Life {
	if l.now == nil {
		l.now = &record.Life{Serial: l.name, Cask: l.cask}
		l.all, l.inM3, l.aired = append(l.all, l.now), 0, false
	}
	return l.now
}

// gone reports whether it was emptied, and is something here that only a full cask can be.
func (l *living) gone(at diag.Span, what string) bool {
	if l.now != nil || len(l.all) == 0 {
		return false
	}
	end := l.all[len(l.all)-1].Over()
	l.diags.Add(diag.Diagnostic{Code: diag.CodeEmptied, At: at, Summary: fmt.Sprintf("cask %s was emptied on %s, and is %s here", l.name, end.On, what),
		Related: []diag.Related{{At: end.Visit.At, Text: "it was emptied here"}},
		Help:    "look at the serial and the dates; a cask that was filled again has a run that says so with `into`"})
	return true
}

// tooEarly reports whether it is read before its first fill, when there was nothing in it: not of
// wood that is weighed empty, and not of a cask that came full.
func (l *living) tooEarly(v *record.Visit, first *record.Filling) bool {
	if first == nil || v.When.Date.Compare(first.On()) >= 0 || v.Word == "to" || v.Word == "note" {
		return false
	}
	if v.Word == "" && !slices.ContainsFunc(v.Read, func(r record.Reading) bool { return r.What != record.Tare }) {
		return false
	}
	l.diags.Add(diag.Diagnostic{Code: diag.CodeEmptied, At: v.At, Summary: fmt.Sprintf("cask %s is read on %s, and was filled on %s", l.name, v.When.Date, first.On()),
		Related: []diag.Related{{At: first.Visit.At, Text: "it was filled here"}},
		Help:    "look at the serial and the dates; the weight of the empty wood is a `tare`; a cask that was filled before has a run that says so with `into`"})
	return true
}

// beyond holds what was read of a cask, put into it or ran out of it against what it holds. It
// gives that, 0 if nobody knows it, and whether the reading is within it.
func beyond(l *record.Life, v *record.Visit, sizeOf func(*record.Cask, *record.Filling) float64, diags *diag.List) (size float64, fits bool) {
	fits = true
	for i := range l.Fills {
		size = sizeOf(l.Cask, &l.Fills[i])
	}
	if size == 0 {
		size = sizeOf(l.Cask, nil)
	}
	if v.Word == "topped" && tree.Key(v.From) == tree.Key(l.Serial) {
		fits = false
		diags.Add(diag.Diagnostic{Code: diag.CodeTooSoon, At: v.At, Summary: fmt.Sprintf("cask %s is topped from itself", l.Serial), Help: "write the serial of the cask, or the number of the run, that it was topped from"})
	}
	for i := range v.Read {
		r := &v.Read[i]
		now, ok := r.Holds()
		if !ok || r.Kind != quantity.Volume || size <= 0 || now.SI <= size*Fullest {
			continue
		}
		fits = false
		diags.Add(diag.Diagnostic{Code: diag.CodeOverfull, At: r.Place, Summary: fmt.Sprintf("`%s` is more than cask %s holds, %s", now, l.Serial, wording.In(size, now.Unit, quantity.Volume)),
			Help: "look at the volume and at the serial; a slip of the pen is put right beside it, with `corrected`"})
	}
	return size, fits
}

// unfilled reports whether it is emptied where nothing was filled into it.
func (l *living) unfilled(e *record.End, first *record.Filling) bool {
	if l.now != nil && len(l.now.Fills) > 0 {
		return false
	}
	d := diag.Diagnostic{Code: diag.CodeEmptied, At: e.Visit.At}
	switch {
	case len(l.all) > 1: // moved since it was emptied, and not filled
		end := l.all[len(l.all)-2].Over()
		d.Summary = fmt.Sprintf("cask %s was emptied on %s, and is emptied again here", l.name, end.On)
		d.Related = []diag.Related{{At: end.Visit.At, Text: "it was emptied here"}}
	case first != nil:
		d.Summary = fmt.Sprintf("cask %s is emptied on %s, and was filled on %s", l.name, e.On, first.On())
		d.Related = []diag.Related{{At: first.Visit.At, Text: "it was filled here"}}
	default:
		return false // it came full, and no run of the house filled it
	}
	d.Help = "look at the serial and the dates; a cask that was filled before has a run that says so with `into`"
	l.diags.Add(d)
	return true
}

// neverFilled says that no run tells when a cask was filled.
func (s *serial) neverFilled() diag.Diagnostic {
	into := wording.Restated("53 gal", s.cask.At.Units())
	if size := s.cask.SizeM3; size > 0 { // with what it holds
		unit := "gal"
		if s.cask.At.Units() == quantity.SI {
			unit = "L"
		}
		into = wording.In(size, unit, quantity.Volume)
	}
	return diag.Diagnostic{Code: diag.CodeUnfilled, Severity: diag.Note, At: s.cask.At, Summary: fmt.Sprintf("no run says when cask %s was filled", s.name),
		Help: "the run that filled it says so: " + "`into \"" + s.name + "\" " + into + "`; without it nothing is known of its age"}
}

// again notes that a cask which is not empty is filled.
func (s *serial) again(l *record.Life, f *record.Filling, diags *diag.List) {
	if before := lastFill(l); before != nil {
		diags.Add(diag.Diagnostic{Code: diag.CodeFilledAgain, Severity: diag.Note, At: f.Visit.At,
			Summary: fmt.Sprintf("cask %s was filled before, by run %s", s.name, before.Run.Number),
			Related: []diag.Related{{At: before.Visit.At, Text: "it was filled here"}},
			Help:    "that may be: it was filled up; if it was emptied since, a vat says so, or its own `emptied`; if it is another cask, write its serial"})
	}
}

func lastFill(l *record.Life) *record.Filling {
	if n := len(l.Fills); n > 0 {
		return &l.Fills[n-1]
	}
	return nil
}

// mostLostAYear is the share of what is in a cask that the air takes in a year, at the most: what
// a plant may say of its first (lang/schema, loss-first-year; common practice). More is a leak.
const mostLostAYear = 0.4

// left is the least that can be left on a day of what was in it.
func (l *living) left(on record.Date) {
	if days := l.last.DaysTo(on); days > 0 && l.inM3 > 0 {
		l.inM3 *= math.Pow(1-mostLostAYear, float64(days)/365.25)
		l.aired = true
	}
	l.last = on
}

// over holds what has been put into a cask, less what came out of it by the records and the most
// that the air can have taken, against what it holds.
func (l *living) over(now *record.Life, v *record.Visit, what record.What, on record.Date, sizeM3 float64) {
	l.left(on)
	for i := range v.Read {
		r := &v.Read[i]
		put, ok := r.Holds()
		if r.What != what || !ok {
			continue
		}
		l.inM3 += put.SI
		if sizeM3 <= 0 || l.inM3 <= sizeM3*Fullest {
			continue
		}
		by := ""
		if l.aired {
			by = "at least "
		}
		d := diag.Diagnostic{Code: diag.CodeOverfull, At: v.At,
			Summary: fmt.Sprintf("cask %s has %s%s in it by now, and holds %s", l.name, by, wording.In(l.inM3, put.Unit, quantity.Volume), wording.In(sizeM3, put.Unit, quantity.Volume)),
			Help:    "look at the volume and at the serial; a slip of the pen is put right beside it, with `corrected`"}
		if before := lastFill(now); before != nil {
			d.Related = []diag.Related{{At: before.Visit.At, Text: "it was filled here"}}
		}
		l.diags.Add(d)
		l.inM3 = sizeM3 // what comes after is held against a full cask
	}
}

// out counts what came out of a cask, which is all that was in it where nobody wrote how much.
func (l *living) out(v *record.Visit, what record.What, on record.Date) {
	l.left(on)
	out := l.inM3
	if r := readingOf(v, what); r != nil {
		if is, ok := r.Holds(); ok && r.Kind == quantity.Volume {
			out = min(out, is.SI)
		}
	}
	l.inM3 -= out
}

// heavy holds the weight that was filled into a cask against its size: no spirit is heavier than
// water.
func (s *serial) heavy(f *record.Filling, sizeM3 float64, diags *diag.List) {
	gross, tare := readingOf(f.Visit, record.Gross), readingOf(f.Visit, record.Tare)
	if gross == nil || tare == nil || sizeM3 <= 0 {
		return
	}
	full, ok := gross.Holds()
	empty, both := tare.Holds()
	if !ok || !both || full.SI-empty.SI <= sizeM3*Fullest*waterKgM3 {
		return
	}
	size := "L"
	if full.Unit == "lb" {
		size = "gal"
	}
	diags.Add(diag.Diagnostic{Code: diag.CodeOverfull, At: f.Visit.At,
		Summary: fmt.Sprintf("cask %s has %s in it, which as water would be more than the %s that it holds, and spirit is lighter", s.name, wording.In(full.SI-empty.SI, full.Unit, quantity.Mass), wording.In(sizeM3, size, quantity.Volume)),
		Help:    "look at the tare and the gross; a slip of the pen is put right beside it, with `corrected`"})
}

// weighed holds the weight of a cask that lies against its tare, and against what it weighs full
// of water. What cannot be is kept, and doubted.
func weighed(l *record.Life, v *record.Visit, sizeOf func(*record.Cask, *record.Filling) float64, diags *diag.List) {
	gross, tare := readingOf(v, record.Gross), readingOf(v, record.Tare)
	var size float64
	for i := range l.Fills {
		if size = sizeOf(l.Cask, &l.Fills[i]); tare == nil {
			tare = readingOf(l.Fills[i].Visit, record.Tare)
		}
	}
	if gross == nil || tare == nil || gross.Doubt != "" {
		return
	}
	full, ok := gross.Holds()
	empty, both := tare.Holds()
	most := empty.SI + size*Fullest*waterKgM3
	switch {
	case !ok || !both:
		return
	case full.SI < empty.SI:
		gross.Doubt = fmt.Sprintf("cask %s weighs `%s` empty", l.Serial, empty)
	case size > 0 && full.SI > most:
		gross.Doubt = fmt.Sprintf("cask %s weighs %s when it is full of water, and spirit is lighter", l.Serial, wording.In(most, full.Unit, quantity.Mass))
	default:
		return
	}
	diags.Add(diag.Diagnostic{Code: diag.CodeImprobable, Severity: diag.Warning, At: gross.Place,
		Summary: fmt.Sprintf("`%s` is hard to believe: %s", full, gross.Doubt),
		Related: []diag.Related{{At: tare.Place, Text: "its tare is from here"}},
		Help:    "if it was read so, leave it: it is kept, and nothing is reckoned from it; a slip of the pen is put right beside it, with `corrected`"})
}

// readingOf is what a visit read of a quantity; nil if it did not.
func readingOf(v *record.Visit, what record.What) *record.Reading {
	for i := range v.Read {
		if v.Read[i].What == what {
			return &v.Read[i]
		}
	}
	return nil
}

// waterKgM3 is the density of water in the cold, as it is at most.
const waterKgM3 = 1000.0

// Fullest is how much over its size a cask may take before nobody believes it: casks
// of one size differ by a few per cent (common practice).
const Fullest = 1.03

// twice speaks of a weight that stands in two places for one day, for one fact is written
// once, and of two that differ.
func twice(l *record.Life, v *record.Visit, diags *diag.List) {
	for i := range l.Events {
		o := &l.Events[i]
		if o.When.Date != v.When.Date || o.At.Src == v.At.Src && o.At.Start == v.At.Start {
			continue
		}
		for _, a := range o.Read {
			for _, b := range v.Read {
				if a.What != record.Gross || b.What != record.Gross || a.State != record.Read || b.State != record.Read {
					continue
				}
				if !a.Same(b.Value) {
					diags.Add(diag.Diagnostic{Code: diag.CodeReadTwice, Severity: diag.Warning, At: b.Place, Summary: fmt.Sprintf("cask %s weighs `%s` and `%s` on %s", l.Serial, a.Value, b.Value, v.When.Date),
						Related: []diag.Related{{At: a.Place, Text: "the other is here"}}, Help: "look at the serials: one of them may be another cask's; if it was weighed twice, keep the better one. The later line is reckoned from"})
				} else {
					diags.Add(diag.Diagnostic{Code: diag.CodeReadTwice, Severity: diag.Note, At: b.Place, Summary: fmt.Sprintf("cask %s weighs `%s` on %s in two places", l.Serial, b.Value, v.When.Date),
						Related: []diag.Related{{At: a.Place, Text: "it stands here too"}}, Help: "write one weight once: in the cask's own block or in the round"})
				}
			}
		}
	}
}
