package ledger

import (
	"newmake/compile/book/identity"
	"newmake/compile/book/trace"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/inventory"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// HouseOf asks a house what its books need. law is the name of a country; "" is the one under
// whose law the plant stands, and where nothing tells, the United States for a house that counts
// in gallons, else the European Union. Its Law has no
// country where there is none of that name. initials are shown with people.
func HouseOf(h *check.House, texts *inventory.Inventory, law string, people bool) House {
	under := ""
	o := House{Texts: texts, People: people, BushelKg: h.BushelKg, Declared: func(batch string) bool { return h.Find(batch) != nil }}
	o.Blends = func(amount func(diag.Span) float64, wanted func(*trace.Blend) bool) []identity.Identity {
		return identity.Of(identity.HouseOf(h, texts, amount), wanted)
	}
	if b := h.BatchOfBooks(texts); b != nil {
		o.US, o.Name, under = b.Gauge == recipe.US, b.Plant.Name, b.Plant.Under()
	}
	countries := h.Library().Countries
	for _, name := range []string{law, under} {
		if name == "" {
			continue
		}
		for _, c := range countries {
			if tree.Key(c.Name) == tree.Key(name) {
				o.Law = lawOf(c)
				return o
			}
		}
		return o
	}
	if o.US {
		o.Law = lawOf(countries[recipe.CountryUS])
	} else {
		o.Law = lawOf(countries["eu"])
	}
	return o
}
