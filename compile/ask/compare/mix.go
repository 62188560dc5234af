package compare

import (
	"slices"

	"newmake/lang/recipe"
)

// mix is the old batch with some of the edits made; on has one entry for each.
// With none it is the old batch, with all it is the new one, but for names and
// the order of lines that have none.
func (d *Difference) mix(on []bool) *recipe.Batch {
	b := d.Old.Clone()
	d.set(b, on, true)
	for i, e := range d.Edits {
		if on[i] && e.apply != nil {
			e.apply(b)
		}
	}
	bind(b)
	b.Bill = d.bill.mix(on)
	b.Mash.Steps = d.steps.mix(on, b.Bill)
	b = b.Clone() // what it took from the two batches stays theirs
	d.set(b, on, false)
	b.Resolve()
	return b
}

// set puts in the values of the edits that are made: the batch's own, which name
// vessels and entries of the library, or the figures of those.
func (d *Difference) set(b *recipe.Batch, on []bool, own bool) {
	from := map[recipe.Key]recipe.Value{}
	for i, e := range d.Edits {
		for _, v := range e.sets {
			if on[i] && (v.Of == "") == own {
				from[v.Key()] = v
			}
		}
	}
	if len(from) == 0 {
		return
	}
	for _, x := range b.Values() {
		if v, ok := from[x.Key()]; ok {
			x.Set(v)
		}
	}
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
