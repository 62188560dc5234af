package recipe

import (
	"maps"
	"slices"
)

// Clone is a batch that shares no value with b: whatever is set in the one, the
// other stays as it is. What is one thing in b (a vessel of two uses, an enzyme
// dosed twice) is one in the clone.
func (b *Batch) Clone() *Batch {
	c := *b
	if b.Plant != nil {
		p := *b.Plant
		c.Plant = &p
	}
	vessels := map[*Vessel]*Vessel{}
	if c.Plant != nil {
		c.Plant.Vessels = slices.Clone(b.Plant.Vessels)
		eachOwn(c.Plant.Vessels, vessels)
		c.Plant.Tanks = slices.Clone(b.Plant.Tanks)
		eachOwn(c.Plant.Tanks, map[*Tank]*Tank{})
		c.Plant.RackHouses = slices.Clone(b.Plant.RackHouses)
		eachOwn(c.Plant.RackHouses, map[*RackHouse]*RackHouse{})
	}
	c.Mash.Cooker, c.Strip.Still, c.Spirit.Still = own(b.Mash.Cooker, vessels), own(b.Strip.Still, vessels), own(b.Spirit.Still, vessels)
	c.Ferm.Vessels = slices.Clone(b.Ferm.Vessels)
	eachOwn(c.Ferm.Vessels, vessels)

	grains, enzymes := map[*Grain]*Grain{}, map[*Enzyme]*Enzyme{}
	c.Bill.Lines = slices.Clone(b.Bill.Lines)
	for i := range c.Bill.Lines {
		c.Bill.Lines[i].Grain = own(c.Bill.Lines[i].Grain, grains)
	}
	c.Mash.Steps = slices.Clone(b.Mash.Steps)
	for i := range c.Mash.Steps {
		c.Mash.Steps[i].Enzyme = own(c.Mash.Steps[i].Enzyme, enzymes)
	}
	c.Ferm.Doses = slices.Clone(b.Ferm.Doses)
	for i := range c.Ferm.Doses {
		c.Ferm.Doses[i].Enzyme = own(c.Ferm.Doses[i].Enzyme, enzymes)
	}
	c.Ferm.Yeast = own(b.Ferm.Yeast, map[*Yeast]*Yeast{})
	c.Strip.Apart, c.Spirit.Apart = slices.Clone(b.Strip.Apart), slices.Clone(b.Spirit.Apart)
	c.Cask.Kind = own(b.Cask.Kind, map[*CaskWood]*CaskWood{})
	c.Costs.PerKg, c.Costs.BagKg, c.Costs.BagsAPallet = maps.Clone(b.Costs.PerKg), maps.Clone(b.Costs.BagKg), maps.Clone(b.Costs.BagsAPallet)
	c.Promises = slices.Clone(b.Promises)
	c.Models = maps.Clone(b.Models)
	for name, m := range c.Models {
		n := *m
		n.Values = maps.Clone(m.Values)
		c.Models[name] = &n
	}
	return &c
}

// own gives the copy of what p points to, the same one each time.
func own[T any](p *T, copies map[*T]*T) *T {
	if p == nil {
		return nil
	}
	if copies[p] == nil {
		c := *p
		copies[p] = &c
	}
	return copies[p]
}

func eachOwn[T any](all []*T, copies map[*T]*T) {
	for i := range all {
		all[i] = own(all[i], copies)
	}
}
