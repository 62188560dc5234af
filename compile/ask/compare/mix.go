package compare

import (
	"slices"

	"newmake/lang/recipe"
)

// Mix is the old batch with some of the edits made; on has one entry for each.
// With none it is the old batch, with all it is the new one, but for names and
// the order of lines that have none.
func (d *Difference) Mix(on []bool) *recipe.Batch {
	b := *d.Old
	b.Plant = clonePlant(d.Old.Plant)
	b.Ferm.Doses = slices.Clone(b.Ferm.Doses)
	for i, e := range d.Edits {
		if on[i] && e.apply != nil {
			e.apply(&b)
		}
	}
	bind(&b)
	b.Bill = d.bill.mix(on)
	b.Mash.Steps = d.steps.mix(on, b.Bill)
	d.stock.mix(&b, on)
	b.Resolve()
	return &b
}

func clonePlant(p *recipe.Plant) *recipe.Plant {
	out := *p
	out.Vessels = make([]*recipe.Vessel, len(p.Vessels))
	for i, v := range p.Vessels {
		w := *v
		out.Vessels[i] = &w
	}
	return &out
}

// bind finds the vessels of the batch in its own plant, in which some figures
// may have been changed. One that only the new plant has stays that.
func bind(b *recipe.Batch) {
	own := func(v *recipe.Vessel) *recipe.Vessel {
		if w := vessel(b.Plant, v.Name); w != nil {
			return w
		}
		return v
	}
	b.Mash.Cooker, b.Strip.Still, b.Spirit.Still = own(b.Mash.Cooker), own(b.Strip.Still), own(b.Spirit.Still)
	b.Ferm.Vessels = slices.Clone(b.Ferm.Vessels)
	for i, v := range b.Ferm.Vessels {
		b.Ferm.Vessels[i] = own(v)
	}
}

// mix puts in the entries that the edits change.
func (m *stockMix) mix(b *recipe.Batch, on []bool) {
	for i, l := range b.Bill.Lines {
		if c, ok := m.grains[l.Grain.Name]; ok && on[c.edit] {
			b.Bill.Lines[i].Grain = c.new
		}
	}
	for i, s := range b.Mash.Steps {
		if s.Enzyme != nil {
			b.Mash.Steps[i].Enzyme = m.enzyme(s.Enzyme, on)
		}
	}
	for i, x := range b.Ferm.Doses {
		b.Ferm.Doses[i].Enzyme = m.enzyme(x.Enzyme, on)
	}
}

// enzyme is the entry that holds. A dose that only the new batch has comes with
// the new entry, and keeps it.
func (m *stockMix) enzyme(e *recipe.Enzyme, on []bool) *recipe.Enzyme {
	if c, ok := m.enzymes[e.Name]; ok && on[c.edit] {
		return c.new
	}
	return e
}
