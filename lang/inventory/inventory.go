// Package inventory puts together what the records of a house say of its casks, vats,
// bottlings and stores: each cask's lives, what lies in the stores on a day, and what a name
// means there.
package inventory

import (
	"sync"
	"time"

	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/logbook"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// Inventory is what the texts of a house say of its casks, vats, bottlings and stores.
type Inventory struct {
	Runs      []*record.Run  // in the order of the files and lines
	Lives     []*record.Life // in the order of their serials' first mention, then of their fills
	Vats      []*record.Vat
	Bottlings []*record.Bottling
	Stores    []*record.Store

	once    sync.Once // of what follows
	numbers map[string]*record.Run
	vats    map[string]*record.Vat
	lives   map[string][]*record.Life
	fills   map[*record.Visit]*record.Life

	bushelKg func(grain string) float64
	takes    sync.Once // of what follows
	taken    map[*record.Used][]string
}

// Declares are the sorts of declarations that an inventory is read from.
var Declares = []*schema.Field{schema.Run, schema.OwnCask, schema.Round, schema.Vat, schema.Bottling, schema.Store}

// Around is what an inventory is read beside.
type Around struct {
	House      *house.House
	Runs       []*record.Run // all of the house, read
	Instrument func(name string) *record.Instrument
	Plants     []*recipe.Plant
	Batch      func(*house.Decl) *recipe.Batch // nil where it could not be read
	Stores     *Stores
}

// Read reads the texts that tell of casks, and sorts what they say into lives.
func Read(a Around) (*Inventory, diag.List) {
	h := a.House
	c := &Inventory{Runs: a.Runs, bushelKg: a.Stores.BushelKg}
	known := &names{house: h, filled: Filled(a.Runs)}
	around := logbook.Around{Zone: time.UTC, Instrument: a.Instrument, Names: known.of, Has: known.has} // days are what counts here
	all := &serials{by: map[string]*serial{}}
	var diags diag.List
	for _, r := range a.Runs {
		for i := range r.Visits {
			if v := &r.Visits[i]; v.Word == "into" && v.To != "" {
				all.add(v.To, fact{on: v.When.Date, fill: &record.Filling{Run: r, Visit: v}})
			}
		}
	}
	for _, d := range h.Past(schema.OwnCask) {
		k, said := logbook.Cask(d.Node(), around)
		diags = append(diags, said...)
		if w := d.Node().Line("wood"); w != nil && k.Wood != "" && !h.Declares(schema.CaskWood, k.Wood) {
			diags.Add(tree.UnknownName("wood", w.Get("wood"), func() []string { return h.EntryNames(schema.CaskWood) }))
		}
		all.of(k.Serial).cask = k
		for i := range k.Visits {
			all.add(k.Serial, happened(&k.Visits[i]))
		}
	}
	for _, d := range h.Past(schema.Round) {
		visits, said := logbook.Round(d.Node(), around)
		diags = append(diags, said...)
		for i := range visits {
			if all.has(visits[i].To) {
				all.add(visits[i].To, happened(&visits[i]))
			}
		}
	}
	for _, d := range h.Past(schema.Vat) {
		v, said := logbook.Vat(d.Node(), around)
		c.Vats, diags = append(c.Vats, v), append(diags, said...)
		for i := range v.Visits {
			f := &v.Visits[i]
			if f.Word == "from" && f.Of == "" && all.has(f.From) {
				all.add(f.From, fact{on: f.When.Date, end: &record.End{On: f.When.Date, Part: f.Why == "part", Vat: v, Visit: f, Word: "from"}})
			}
		}
	}
	for _, d := range h.Past(schema.Bottling) {
		b, said := logbook.Bottling(d.Node(), around)
		c.Bottlings, diags = append(c.Bottlings, b), append(diags, said...)
		bottled(b, d.NameAt, &diags)
		if l := d.Node().Line("standard"); l != nil {
			for _, name := range l.Match.All("standard") {
				if !h.Declares(schema.Standard, name.Text()) {
					diags.Add(tree.UnknownName("standard of identity", name, func() []string { return h.EntryNames(schema.Standard) }))
				}
			}
		}
		if h.PastNamed(schema.Vat, b.Of) == nil && all.has(b.Of) { // straight from a cask, which is empty then
			v := &record.Visit{Word: "bottled", When: record.When{Date: b.On}, At: b.At}
			all.add(b.Of, fact{on: b.On, end: &record.End{On: b.On, Visit: v, Word: "bottled"}})
		}
	}
	vatsInOrder(c, &diags)
	overdrawn(c, &diags)
	for _, d := range h.Past(schema.Store) {
		s, said := logbook.Store(d.Node())
		c.Stores, diags = append(c.Stores, s), append(diags, said...)
	}
	var own []*record.Cask
	for _, s := range all.order {
		if s.cask != nil {
			own = append(own, s.cask)
		}
	}
	inRack(own, a.Plants, &diags)
	inTank(c.Vats, a.Plants, &diags)
	alike(all.order, &diags)
	for _, s := range all.order {
		c.Lives = append(c.Lives, s.lives(a.sizeOf, &diags)...)
	}
	return c, diags
}

// sizeOf is what a cask holds: as it is declared, or as the batch fills that its run is
// of; 0 where nothing tells.
func (a Around) sizeOf(k *record.Cask, f *record.Filling) float64 {
	if k != nil && k.SizeM3 > 0 {
		return k.SizeM3
	}
	if f == nil {
		return 0
	}
	if d := a.House.Find(f.Run.Batch); d != nil {
		if b := a.Batch(d); b != nil {
			return b.Cask.SizeM3
		}
	}
	return 0
}
