package check

import (
	"cmp"
	"fmt"
	"slices"
	"sync"
	"time"

	"newmake/lang/diag"
	"newmake/lang/logbook"
	"newmake/lang/parallel"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// Cellar is what the texts of a house say of its casks, vats, bottlings and stores.
type Cellar struct {
	Runs      []*record.Run  // in the order of the files and lines
	Lives     []*record.Life // in the order of their serials' first mention, then of their fills
	Vats      []*record.Vat
	Bottlings []*record.Bottling
	Stores    []*record.Store

	diags diag.List

	once    sync.Once // of what follows
	numbers map[string]*record.Run
	vats    map[string]*record.Vat
	lives   map[string][]*record.Life
	fills   map[*record.Visit]*record.Life
}

// Made is the batch of the first run that has one, else the first of the house that can be
// read; nil if none can. Its plant and its units are those of the house's books.
func (h *House) Made(c *Cellar) *recipe.Batch {
	for _, r := range c.Runs {
		if b, _ := h.Batch(r.Batch); b != nil && b.Plant != nil {
			return b
		}
	}
	for _, name := range h.Batches() {
		if b, _ := h.Batch(name); b != nil && b.Plant != nil {
			return b
		}
	}
	return nil
}

// ofCellar are the sorts of declarations that a cellar is read from.
var ofCellar = []*schema.Field{schema.Run, schema.OwnCask, schema.Round, schema.Vat, schema.Bottling, schema.Store}

// Cellar reads runs, casks, rounds, vats, bottlings and stores, with their diagnostics.
func (h *House) Cellar() (*Cellar, diag.List) {
	c := h.cellar()
	list := append(slices.Clone(c.diags), h.unread()...)
	for _, f := range ofCellar {
		for _, d := range h.Past(f) {
			list = append(list, d.Said()...)
		}
	}
	return c, h.Ordered(list)
}

// unread is what there is to say of texts of which parts, or all, could not be read: what
// happened may stand there.
func (h *House) unread() diag.List {
	list := slices.Concat(h.Loading(), h.General())
	for _, f := range h.Files {
		list = append(list, f.Loose()...)
	}
	return list
}

// readCellar reads the texts that tell of casks, and sorts what they say into lives.
func (h *House) readCellar() *Cellar {
	c := &Cellar{}
	around := logbook.Around{Zone: time.UTC, Instrument: h.Instrument, Names: h.cellarNames, Has: h.inCellar()} // days are what counts here
	all := &serials{by: map[string]*serial{}}
	parallel.Each(len(h.Runs), func(i int) { h.run(h.Runs[i]) })
	for _, d := range h.Runs {
		r := h.run(d).run
		c.Runs = append(c.Runs, r)
		for i := range r.Visits {
			if v := &r.Visits[i]; v.Word == "into" && v.To != "" {
				all.add(v.To, fact{on: v.When.Date, fill: &record.Filling{Run: r, Visit: v}})
			}
		}
	}
	for _, d := range h.Past(schema.OwnCask) {
		k, said := logbook.Cask(d.Node(), around)
		c.diags = append(c.diags, said...)
		if w := d.Node().Line("wood"); w != nil && k.Wood != "" && !h.Declares(schema.CaskWood, k.Wood) {
			c.diags.Add(tree.UnknownName("wood", w.Get("wood"), func() []string { return h.EntryNames(schema.CaskWood) }))
		}
		all.of(k.Serial).cask = k
		for i := range k.Visits {
			all.add(k.Serial, happened(&k.Visits[i]))
		}
	}
	for _, d := range h.Past(schema.Round) {
		visits, said := logbook.Round(d.Node(), around)
		c.diags = append(c.diags, said...)
		for i := range visits {
			if all.has(visits[i].To) {
				all.add(visits[i].To, happened(&visits[i]))
			}
		}
	}
	for _, d := range h.Past(schema.Vat) {
		v, said := logbook.Vat(d.Node(), around)
		c.Vats, c.diags = append(c.Vats, v), append(c.diags, said...)
		for i := range v.Visits {
			f := &v.Visits[i]
			if f.Word == "from" && f.Of == "" && all.has(f.From) {
				all.add(f.From, fact{on: f.When.Date, end: &record.End{On: f.When.Date, Part: f.Why == "part", Vat: v, Visit: f, Word: "from"}})
			}
		}
	}
	for _, d := range h.Past(schema.Bottling) {
		b, said := logbook.Bottling(d.Node(), around)
		c.Bottlings, c.diags = append(c.Bottlings, b), append(c.diags, said...)
		bottled(b, d.NameAt, &c.diags)
		if l := d.Node().Line("standard"); l != nil {
			for _, name := range l.Match.All("standard") {
				if !h.Declares(schema.Standard, name.Text()) {
					c.diags.Add(tree.UnknownName("standard of identity", name, func() []string { return h.EntryNames(schema.Standard) }))
				}
			}
		}
		if h.PastNamed(schema.Vat, b.Of) == nil && all.has(b.Of) { // straight from a cask, which is empty then
			v := &record.Visit{Word: "bottled", When: record.When{Date: b.On}, At: b.At}
			all.add(b.Of, fact{on: b.On, end: &record.End{On: b.On, Visit: v, Word: "bottled"}})
		}
	}
	vatsInOrder(c)
	for _, d := range h.Past(schema.Store) {
		s, said := logbook.Store(d.Node())
		c.Stores, c.diags = append(c.Stores, s), append(c.diags, said...)
	}
	var own []*record.Cask
	for _, s := range all.order {
		if s.cask != nil {
			own = append(own, s.cask)
		}
	}
	h.inRack(own, &c.diags)
	for _, s := range all.order {
		c.Lives = append(c.Lives, s.lives(h.sizeOf, &c.diags)...)
	}
	return c
}

// cellarNames are the names of a sort that casks and vats speak of.
func (h *House) cellarNames(sort string) []string {
	past := func(f *schema.Field) []string {
		var out []string
		for _, d := range h.Past(f) {
			out = append(out, d.Name)
		}
		return out
	}
	switch sort {
	case "cask":
		return append(past(schema.OwnCask), h.filled()...)
	case "run":
		return h.RunNumbers()
	case "vat":
		return past(schema.Vat)
	}
	return slices.Concat(past(schema.Vat), past(schema.OwnCask), h.filled())
}

// inCellar finds names of those sorts.
func (h *House) inCellar() func(sort, name string) bool {
	known := map[string]map[string]bool{}
	return func(sort, name string) bool {
		if known[sort] == nil {
			known[sort] = map[string]bool{}
			for _, n := range h.cellarNames(sort) {
				known[sort][tree.Key(n)] = true
			}
		}
		return known[sort][tree.Key(name)]
	}
}

// sizeOf is what a cask holds: as it is declared, or as the batch fills that its run is
// of; 0 where nothing tells.
func (h *House) sizeOf(k *record.Cask, f *record.Filling) float64 {
	if k != nil && k.SizeM3 > 0 {
		return k.SizeM3
	}
	if f == nil {
		return 0
	}
	if d := h.Find(f.Run.Batch); d != nil {
		if b := h.batch(d).batch; b != nil {
			return b.Cask.SizeM3
		}
	}
	return 0
}

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
	slices.SortStableFunc(s.facts, func(a, b fact) int { return cmp.Or(a.on.Compare(b.on), a.rank(first)-b.rank(first)) })
	var out []*record.Life
	var now *record.Life
	inM3 := 0.0
	begin := func() *record.Life {
		if now == nil {
			now = &record.Life{Serial: s.name, Cask: s.cask}
			out, inM3 = append(out, now), 0
		}
		return now
	}
	gone := func(at diag.Span, what string) bool {
		if now != nil || len(out) == 0 {
			return false
		}
		end := out[len(out)-1].Over()
		diags.Add(diag.Diagnostic{Code: diag.CodeEmptied, At: at, Summary: fmt.Sprintf("cask %s was emptied on %s, and is %s here", s.name, end.On, what),
			Related: []diag.Related{{At: end.Visit.At, Text: "it was emptied here"}},
			Help:    "look at the serial and the dates; a cask that was filled again has a run that says so with `into`"})
		return true
	}
	unfilled := func(e *record.End) bool {
		if now != nil && len(now.Fills) > 0 {
			return false
		}
		d := diag.Diagnostic{Code: diag.CodeEmptied, At: e.Visit.At}
		switch {
		case len(out) > 1: // moved since it was emptied, and not filled
			end := out[len(out)-2].Over()
			d.Summary = fmt.Sprintf("cask %s was emptied on %s, and is emptied again here", s.name, end.On)
			d.Related = []diag.Related{{At: end.Visit.At, Text: "it was emptied here"}}
		case first != nil:
			d.Summary = fmt.Sprintf("cask %s is emptied on %s, and was filled on %s", s.name, e.On, first.On())
			d.Related = []diag.Related{{At: first.Visit.At, Text: "it was filled here"}}
		default:
			return false // it came full, and no run of the house filled it
		}
		d.Help = "look at the serial and the dates; a cask that was filled before has a run that says so with `into`"
		diags.Add(d)
		return true
	}
	for _, f := range s.facts {
		switch {
		case f.fill != nil:
			l := begin()
			size := sizeOf(s.cask, f.fill)
			s.full(l, f.fill, size, &inM3, diags)
			s.heavy(f.fill, size, diags)
			l.Fills = append(l.Fills, *f.fill)
		case f.end != nil:
			if gone(f.end.Visit.At, "emptied again") || unfilled(f.end) {
				continue
			}
			l := begin()
			if l.Ends = append(l.Ends, *f.end); !f.end.Part {
				now = nil
			}
		case f.event.Word != "to" && gone(f.event.At, "read"):
		default:
			l := begin()
			twice(l, f.event, diags)
			weighed(l, f.event, sizeOf, diags)
			l.Events = append(l.Events, *f.event)
		}
	}
	if s.cask != nil && len(out) == 0 {
		begin()
	}
	if s.cask != nil && len(out[0].Fills) == 0 {
		into := wording.Restated("53 gal", s.cask.At.Units())
		if size := s.cask.SizeM3; size > 0 { // with what it holds
			unit := "gal"
			if s.cask.At.Units() == quantity.SI {
				unit = "L"
			}
			into = wording.In(size, unit, quantity.Volume)
		}
		diags.Add(diag.Diagnostic{Code: diag.CodeUnfilled, Severity: diag.Note, At: s.cask.At, Summary: fmt.Sprintf("no run says when cask %s was filled", s.name),
			Help: "the run that filled it says so: " + "`into \"" + s.name + "\" " + into + "`; without it nothing is known of its age"})
	}
	return out
}

// full holds what has been filled into a cask against what it holds.
func (s *serial) full(l *record.Life, f *record.Filling, sizeM3 float64, inM3 *float64, diags *diag.List) {
	var before *record.Filling
	if n := len(l.Fills); n > 0 {
		before = &l.Fills[n-1]
		diags.Add(diag.Diagnostic{Code: diag.CodeFilledAgain, Severity: diag.Note, At: f.Visit.At,
			Summary: fmt.Sprintf("cask %s was filled before, by run %s", s.name, before.Run.Number),
			Related: []diag.Related{{At: before.Visit.At, Text: "it was filled here"}},
			Help:    "that may be: it was filled up; if it was emptied since, a vat says so, or its own `emptied`; if it is another cask, write its serial"})
	}
	for i := range f.Visit.Read {
		r := &f.Visit.Read[i]
		v, ok := r.Holds()
		if r.What != record.Volume || !ok {
			continue
		}
		if *inM3 += v.SI; sizeM3 > 0 && *inM3 > sizeM3*fullest {
			d := diag.Diagnostic{Code: diag.CodeOverfull, At: f.Visit.At,
				Summary: fmt.Sprintf("cask %s has %s in it by now, and holds %s", s.name, wording.In(*inM3, v.Unit, quantity.Volume), wording.In(sizeM3, v.Unit, quantity.Volume)),
				Help:    "look at the volume and at the serial; a slip of the pen is put right beside it, with `corrected`"}
			if before != nil {
				d.Related = []diag.Related{{At: before.Visit.At, Text: "it was filled here"}}
			}
			diags.Add(d)
		}
	}
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
	if !ok || !both || full.SI-empty.SI <= sizeM3*fullest*waterKgM3 {
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
	most := empty.SI + size*fullest*waterKgM3
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

// fullest is how much over its size a cask may take before nobody believes it: casks
// of one size differ by a few per cent (common practice).
const fullest = 1.03

// twice speaks of a weight that stands in two places for one day: one fact is written
// once.
func twice(l *record.Life, v *record.Visit, diags *diag.List) {
	for i := range l.Events {
		o := &l.Events[i]
		if o.When.Date != v.When.Date || o.At.Src == v.At.Src && o.At.Start == v.At.Start {
			continue
		}
		for _, a := range o.Read {
			for _, b := range v.Read {
				if a.What == record.Gross && b.What == record.Gross && a.State == record.Read && b.State == record.Read && a.Same(b.Value) {
					diags.Add(diag.Diagnostic{Code: diag.CodeReadTwice, Severity: diag.Note, At: b.Place, Summary: fmt.Sprintf("cask %s weighs `%s` on %s in two places", l.Serial, b.Value, v.When.Date),
						Related: []diag.Related{{At: a.Place, Text: "it stands here too"}}, Help: "write one weight once: in the cask's own block or in the round"})
				}
			}
		}
	}
}

// bottled holds a bottling's lot code against its day, and its bottles against one
// another.
func bottled(b *record.Bottling, at diag.Span, diags *diag.List) {
	if want, is := lotCode(b.Lot, b.On); is && want != "" {
		diags.Add(diag.Diagnostic{Code: diag.CodeLotCode, Severity: diag.Warning, At: at, Summary: fmt.Sprintf("the lot code %q says another day than %s, whose lot is %s", b.Lot, b.On, want),
			Help: "a lot is its year, the letter of its month, A to L, its day, and a letter from the second lot of a day on (27 CFR 19.485); look at the code and the date"})
	}
	filled, gone := map[float64]int{}, map[float64]int{}
	for i := range b.Bottles {
		w := &b.Bottles[i]
		if w.Word == "bottles" {
			filled[w.EachM3] += w.N
			continue
		}
		if gone[w.EachM3] += w.N; gone[w.EachM3] > filled[w.EachM3] {
			diags.Add(diag.Diagnostic{Code: diag.CodeNoBottles, At: w.At, Summary: fmt.Sprintf("%d bottles of %s are gone by here, and %d were filled", gone[w.EachM3], w.Size, filled[w.EachM3]),
				Help: "look at the numbers and the sizes; each bottle is broken, a sample or withdrawn once"})
		}
	}
}

// lotCode says that a code is of the form of 27 CFR 19.485, and what the day's is where
// it says another.
func lotCode(code string, on record.Date) (want string, is bool) {
	if len(code) < 5 || len(code) > 6 || code[2] < 'A' || code[2] > 'L' {
		return "", false
	}
	for _, i := range []int{0, 1, 3, 4} {
		if code[i] < '0' || code[i] > '9' {
			return "", false
		}
	}
	if len(code) == 6 && (code[5] < 'A' || code[5] > 'Z') {
		return "", false
	}
	day := LotOf(on)
	if code[:5] == day {
		return "", true
	}
	return day, true
}

// LotOf is the lot code of the first lot that is bottled on a day (27 CFR 19.485): the
// year in two digits, the month as a letter, A to L, and the day in two digits.
func LotOf(on record.Date) string {
	return fmt.Sprintf("%02d%c%02d", on.Year%100, 'A'+rune(on.Month)-1, on.Day)
}
