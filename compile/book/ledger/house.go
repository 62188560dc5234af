package ledger

import (
	"newmake/compile/book/identity"
	"newmake/compile/book/trace"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// HouseOf asks a house what its books need. law is the name of a country's, "" for that of
// the house's units; initials are shown with people.
func HouseOf(h *check.House, texts *check.Cellar, law string, people bool) House {
	o := House{Texts: texts, People: people, BushelKg: h.BushelKg, Declared: func(batch string) bool { return h.Find(batch) != nil }}
	o.Blends = func(amount func(diag.Span) float64, wanted func(*trace.Blend) bool) []identity.Identity {
		return identity.Of(identity.HouseOf(h, texts, amount), wanted)
	}
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
