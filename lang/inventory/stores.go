package inventory

import (
	"sync"

	"newmake/lang/house"
	"newmake/lang/logbook"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/stock"
	"newmake/lang/tree"
)

// Stores are the stores of a house, read when something is asked of them.
type Stores struct {
	BushelKg func(grain string) float64 // what a trade bushel weighs, 0 where the library does not say

	house *house.House
	read  func() *storesRead
	drawn sync.Once
	moves []stock.Move // what came and went, once it is asked for
}

// storesRead are the stores as they are written, and their lots that have a name.
type storesRead struct {
	all   []*record.Store
	named []*NamedLot // in the order in which they are written
	byKey map[lotKey]*NamedLot
}

// NamedLot is a lot of the stores that has a name, and what its certificate says.
type NamedLot struct {
	What, Lot        string
	Came             record.Date
	Moisture, Starch *float64 // nil where none is written
}

// Is reports whether a lot is of a grain and has a name.
func (l *NamedLot) Is(grain, lot string) bool { return keyOf(l.What, l.Lot) == keyOf(grain, lot) }

type lotKey struct{ what, lot string }

func keyOf(what, lot string) lotKey { return lotKey{tree.Key(what), tree.Key(lot)} }

// StoresOf are those of a house. bushelKg is what a trade bushel of a grain weighs.
func StoresOf(h *house.House, bushelKg func(grain string) float64) *Stores {
	return &Stores{BushelKg: bushelKg, house: h, read: sync.OnceValue(func() *storesRead {
		out := &storesRead{byKey: map[lotKey]*NamedLot{}}
		for _, d := range h.Past(schema.Store) {
			one, _ := logbook.Store(d.Node())
			out.all = append(out.all, one)
			out.name(one)
		}
		return out
	})}
}

// Named are the lots that have a name, in the order in which they are written.
func (s *Stores) Named() []*NamedLot { return s.read().named }

// Certificate is the lot of a grain by its name, nil if there is none.
func (s *Stores) Certificate(what, lot string) *NamedLot { return s.read().byKey[keyOf(what, lot)] }

// name gathers what the lines of a store say of each lot that has a name.
func (r *storesRead) name(s *record.Store) {
	for i := range s.Lots {
		l := &s.Lots[i]
		if l.Lot == "" {
			continue
		}
		k := keyOf(l.What, l.Lot)
		x := r.byKey[k]
		if x == nil {
			x = &NamedLot{What: l.What, Lot: l.Lot, Came: l.On}
			r.byKey[k], r.named = x, append(r.named, x)
		}
		if l.Word == "" && l.Moisture != nil {
			x.Moisture = l.Moisture
		}
		if l.Word == "" && l.Starch != nil {
			x.Starch = l.Starch
		}
	}
}

// Stock is what the stores, the runs, the casks and the bottlings say of what was bought, as it
// was known on a day.
func (c *Inventory) Stock(bushelKg func(grain string) float64, known record.Date) []stock.Move {
	r := stock.Records{Stores: c.Stores, Runs: c.Runs, Filled: stock.FilledOf(c.Lives, c.Bottlings), BushelKg: bushelKg, Known: known}
	return r.Moves()
}
