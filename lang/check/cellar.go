package check

import (
	"fmt"
	"slices"
	"sync"
	"time"

	"newmake/lang/diag"
	"newmake/lang/logbook"
	"newmake/lang/parallel"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/tree"
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

	bushelKg func(grain string) float64
	takes    sync.Once // of what follows
	taken    map[*record.Used][]string
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
	c := &Cellar{bushelKg: h.BushelKg}
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
	h.inTank(c.Vats, &c.diags)
	alike(all.order, &c.diags)
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
		return eachOnce(past(schema.OwnCask), h.filled())
	case "run":
		return h.RunNumbers()
	case "vat":
		return past(schema.Vat)
	}
	return eachOnce(past(schema.Vat), past(schema.OwnCask), h.filled())
}

// eachOnce joins lists of names, of which none stands twice.
func eachOnce(lists ...[]string) []string {
	var out []string
	seen := map[string]bool{}
	for _, n := range slices.Concat(lists...) {
		if k := tree.Key(n); !seen[k] {
			seen[k] = true
			out = append(out, n)
		}
	}
	return out
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
