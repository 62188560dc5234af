package ledger

import (
	"newmake/lang/check"
	"newmake/lang/recipe"
)

// HouseOf asks a house what its books need. law is the name of a country's, "" for that of
// the house's units; initials are shown with people.
func HouseOf(h *check.House, texts *check.Cellar, law string, people bool) House {
	o := House{Texts: texts, People: people, BushelKg: h.BushelKg, Declared: func(batch string) bool { return h.Find(batch) != nil }}
	if b := h.Made(texts); b != nil {
		o.US, o.Name = b.Gauge == recipe.US, b.Plant.Name
	}
	switch {
	case law != "":
	case o.US:
		law = "us"
	default:
		law = "eu"
	}
	o.Law, _ = LawOf(law)
	return o
}
