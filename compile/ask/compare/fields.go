package compare

import (
	"slices"

	"newmake/lang/recipe"
)

// alone reports whether a value is compared by itself, and not as one of a list that is
// aligned first, or of an entry that is one edit with all its figures.
func alone(v recipe.Value) bool {
	return !v.Part && v.Path != recipe.PathStandard && !slices.ContainsFunc(together, v.Path.Within)
}

// together are the paths of what is aligned or gathered before it is compared.
var together = []recipe.Path{recipe.PathBill, recipe.PathMash.Child("step"), recipe.PathDose, recipe.PathPromise, recipe.PathCosts, recipe.PathLibrary}

// fields finds the edits of single values, the vessels' apart.
func (d *Difference) fields() {
	names := renamed(d.Old, d.New)
	for _, o := range d.old.all {
		if !alone(o) || o.Of != "" {
			continue
		}
		n, ok := d.new.find(o.Key())
		if ok && !o.Same(n) && !renamedVessel(o, n, names) && !goesWithWood(o, d.Old, d.New) {
			d.value(o, n)
		}
	}
	d.promises()
	d.standard()
	d.doses()
}

// value is the edit of one value.
func (d *Difference) value(o, n recipe.Value) {
	e := Edit{Part: partOf(o.Path), Kind: Changed, Path: o.Path, Counts: !o.Idle, What: d.say.change(o, n), sets: []recipe.Value{n},
		Lines: []Line{{Name: o.Words, Old: d.say.value(o), New: d.say.value(n)}}}
	if o.Path == recipe.PathFill && (d.Old.Cask.Kind == nil) != (d.New.Cask.Kind == nil) {
		new := d.New
		e.sets, e.apply = nil, func(b *recipe.Batch) {
			bottle, at := b.Cask.BottleM3, b.Cask.BottleAt
			b.Cask = new.Cask
			b.Cask.BottleM3, b.Cask.BottleAt = bottle, at
		}
	}
	d.add(e)
}

// goesWithWood reports whether a value changes because one of the two batches goes into
// no wood at all: the edit of the cask says so, and takes these with it.
func goesWithWood(v recipe.Value, old, new *recipe.Batch) bool {
	if (old.Cask.Kind == nil) == (new.Cask.Kind == nil) {
		return false
	}
	return v.Path == recipe.PathEntry || v.Path == recipe.PathRest || v.Path == recipe.PathClimate
}

// promises are one edit, however many of them changed.
func (d *Difference) promises() {
	if !slices.EqualFunc(d.old.below(recipe.PathPromise), d.new.below(recipe.PathPromise), recipe.Value.Same) {
		d.add(Edit{Part: OfBatch, Kind: Changed, Path: recipe.PathPromise, What: "the promises"})
	}
}

// standard is the standard that the batch is held against. It counts only where it
// says the bottling strength.
func (d *Difference) standard() {
	o, n := d.Old.Standard, d.New.Standard
	title := func(s *recipe.Standard) string {
		if s == nil {
			return "none"
		}
		return s.Name
	}
	e := Edit{Part: OfBatch, Kind: Changed, Path: recipe.PathStandard, Counts: d.Old.Cask.BottleAt.Value == 0 || d.New.Cask.BottleAt.Value == 0,
		What: "standard " + title(n), Lines: []Line{{Name: "standard", Old: title(o), New: title(n)}},
		apply: func(b *recipe.Batch) { b.Standard = n }}
	switch {
	case title(o) != title(n):
	case o != nil && !sameStandard(o, n):
		e.Part, e.What, e.Lines = OfLibrary, "what "+title(n)+" asks", nil
	default:
		return
	}
	d.add(e)
}

// doses are the enzymes that go into the fermenter.
func (d *Difference) doses() {
	find := func(all []recipe.Dose, name string) *recipe.Dose {
		for i := range all {
			if all[i].Enzyme.Name == name {
				return &all[i]
			}
		}
		return nil
	}
	amount := func(x *recipe.Dose) string {
		switch {
		case x == nil:
			return ""
		case x.Share > 0:
			return d.say.share(x.Share) + " of grain"
		}
		return d.say.mass(x.MassKg)
	}
	edit := func(name string) {
		o, n := find(d.Old.Ferm.Doses, name), find(d.New.Ferm.Doses, name)
		e := Edit{Part: OfFerment, Kind: Changed, Path: recipe.PathDose.Child(name), Counts: true,
			Lines: []Line{{Name: name, Old: amount(o), New: amount(n)}}}
		switch {
		case o == nil:
			e.Kind, e.What = Added, name+" added to the ferment"
			e.apply = func(b *recipe.Batch) { b.Ferm.Doses = append(b.Ferm.Doses, *n) }
		case n == nil:
			e.Kind, e.What = Removed, name+" left out of the ferment"
			e.apply = func(b *recipe.Batch) {
				b.Ferm.Doses = slices.DeleteFunc(b.Ferm.Doses, func(x recipe.Dose) bool { return x.Enzyme.Name == name })
			}
		case o.Share != n.Share || o.Share == 0 && differ(o.MassKg, n.MassKg):
			e.What = dosed(name, o.Share, n.Share, o.MassKg, n.MassKg) + " in the ferment"
			e.apply = func(b *recipe.Batch) {
				if x := find(b.Ferm.Doses, name); x != nil {
					x.Share, x.MassKg = n.Share, n.MassKg
				}
			}
		default:
			new := n.Values()
			for i, x := range o.Values() {
				if !slices.Contains(worded, x.Name) && !x.Same(new[i]) {
					d.value(x, new[i])
				}
			}
			return
		}
		d.add(e)
	}
	for _, o := range d.Old.Ferm.Doses {
		edit(o.Enzyme.Name)
	}
	for _, n := range d.New.Ferm.Doses {
		if find(d.Old.Ferm.Doses, n.Enzyme.Name) == nil {
			edit(n.Enzyme.Name)
		}
	}
}
