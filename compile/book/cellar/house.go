package cellar

import (
	"newmake/lang/check"
	"newmake/lang/inventory"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// HouseOf asks a house what its cellar needs. The units are those asked for, or else those
// of the batch that filled the first cask.
func HouseOf(h *check.House, texts *inventory.Inventory, asked *recipe.System) House {
	tastings, _ := h.Tastings()
	library := h.Library()
	o := House{
		Lives: texts.Lives, Tastings: tastings, Batch: func(name string) *recipe.Batch { b, _ := h.Batch(name); return b },
		Wood: func(name string) *recipe.CaskWood { return library.Woods[name] },
	}
	o.Source = func(name string, on record.Date) *record.Life {
		s, _ := texts.Source(name, "", on)
		return s.Life
	}
	switch {
	case asked != nil:
		o.Units = *asked
	case len(texts.Lives) > 0 && len(texts.Lives[0].Fills) > 0:
		if b := o.Batch(texts.Lives[0].Fills[0].Run.Batch); b != nil {
			o.Units = b.Units
		}
	}
	return o
}
