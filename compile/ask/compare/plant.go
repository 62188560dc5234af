package compare

import (
	"maps"
	"slices"

	"newmake/compile/measure"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// vessels finds the edits of the vessels that the batch uses, and their new names.
func (d *Difference) vessels() {
	for _, v := range used(d.Old) {
		for _, o := range v.Values() {
			if n, ok := d.new.find(o.Key()); ok && !o.Same(n) {
				d.value(o, n)
			}
		}
	}
	for _, t := range d.Old.Plant.Tanks {
		for _, o := range t.Values() {
			if n, ok := d.new.find(o.Key()); ok && !o.Same(n) {
				d.value(o, n)
			}
		}
	}
	names := renamed(d.Old, d.New)
	for _, old := range slices.Sorted(maps.Keys(names)) {
		d.add(Edit{Part: OfPlant, Kind: Renamed, Path: recipe.PathPlant, What: "a vessel's name", Lines: []Line{{Name: "vessel", Old: old, New: names[old]}}})
	}
}

// used lists the vessels of a batch, each once.
func used(b *recipe.Batch) []*recipe.Vessel {
	all := append([]*recipe.Vessel{b.Mash.Cooker}, b.Ferm.Vessels...)
	all = append(all, b.Strip.Still, b.Spirit.Still)
	var out []*recipe.Vessel
	for _, v := range all {
		if !slices.Contains(out, v) {
			out = append(out, v)
		}
	}
	return out
}

func vessel(p *recipe.Plant, name string) *recipe.Vessel {
	for _, v := range p.Vessels {
		if v.Name == name {
			return v
		}
	}
	return nil
}

// renamed finds vessels that are the same under another name.
func renamed(old, new *recipe.Batch) map[string]string {
	out := map[string]string{}
	taken := map[string]bool{}
	for _, v := range used(old) {
		if vessel(new.Plant, v.Name) != nil {
			continue
		}
		for _, w := range used(new) {
			if vessel(old.Plant, w.Name) == nil && !taken[w.Name] && v.Kind == w.Kind && slices.EqualFunc(v.Values(), w.Values(), recipe.Value.Same) {
				out[v.Name], taken[w.Name] = w.Name, true
				break
			}
		}
	}
	return out
}

// renamedVessel reports whether a value which names vessels differs by their new names
// alone.
func renamedVessel(o, n recipe.Value, names map[string]string) bool {
	old, new := vesselsOf(o), vesselsOf(n)
	if len(old) == 0 {
		return false
	}
	return slices.EqualFunc(old, new, func(v, w *recipe.Vessel) bool {
		to, ok := names[v.Name]
		return ok && to == w.Name || v.Name == w.Name
	})
}

// vesselsOf are the vessels that a value names; none if it names something else.
func vesselsOf(v recipe.Value) []*recipe.Vessel {
	switch x := v.Is()[0].(type) {
	case *recipe.Vessel:
		return []*recipe.Vessel{x}
	case []*recipe.Vessel:
		return x
	}
	return nil
}

// prices is one edit, however many of them changed.
func (d *Difference) prices() {
	new := d.New.Costs
	lines := lines(d.old, d.new, recipe.PathCosts, func(v recipe.Value) string {
		x, ok := v.Cells[0].Is().(float64)
		switch {
		case !ok:
			return d.say.value(v)
		case x == 0:
			return ""
		}
		return d.say.price(x, new.Currency, v.Cells[0].Per)
	})
	if len(lines) > 0 {
		d.add(Edit{Part: OfPlant, Kind: Changed, Path: recipe.PathCosts, Counts: true, What: "prices", Lines: lines, apply: func(b *recipe.Batch) { b.Costs = new }})
	}
}

// perUnit is x for one of the reader's own units.
func (s say) perUnit(x, ofUS float64) float64 {
	if s.Units == measure.US {
		return x * ofUS
	}
	return x
}

// price is money for one unit of a kind, by what the reader buys it.
func (s say) price(x float64, currency string, per quantity.Kind) string {
	switch per {
	case quantity.Mass:
		return number(s.perUnit(x, kgPerPound)) + " " + currency + "/" + s.or("lb", "kg")
	case quantity.Volume:
		return number(s.perUnit(x, m3PerGallon)) + " " + currency + "/" + s.or("gal", "m3")
	case quantity.Energy:
		return number(x) + " " + currency + "/kWh"
	case quantity.Duration:
		return number(x) + " " + currency + "/h"
	default:
		return number(x) + " " + currency
	}
}

// lines are the values below a path that are not the same in both batches, those
// of the new one first that only it has.
func lines(old, new values, below recipe.Path, words func(recipe.Value) string) []Line {
	var lines []Line
	seen := map[recipe.Key]bool{}
	for _, side := range []values{new, old} {
		for _, v := range side.below(below) {
			k := v.Key()
			if v.Part || seen[k] {
				continue
			}
			seen[k] = true
			o, was := old.find(k)
			n, is := new.find(k)
			if was && is && o.Same(n) {
				continue
			}
			l := Line{Name: v.Name}
			if was {
				l.Old = words(o)
			}
			if is {
				l.New = words(n)
			}
			lines = append(lines, l)
		}
	}
	return lines
}
