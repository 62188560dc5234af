package compare

import (
	"cmp"
	"maps"
	"reflect"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// findLibrary finds entries that both batches use under one name and that say
// something else now. Each entry is one edit with all its figures.
func (d *Difference) findLibrary() {
	var entries []recipe.Path // in which a figure is not the same
	differ := func(a, b values) {
		for i := range a.all {
			v := &a.all[i]
			if !v.Path.Within(recipe.PathLibrary) {
				continue
			}
			if w := b.at(v.Key()); w == nil || !v.Same(*w) {
				if e := v.Path.Parent(); !slices.Contains(entries, e) {
					entries = append(entries, e)
				}
			}
		}
	}
	differ(d.old, d.new)
	differ(d.new, d.old)
	for _, e := range entries {
		kind, name := e.Parts()[1], e.Last()
		edit := Edit{Part: OfLibrary, Kind: Changed, Path: e, What: kind + " " + name + " in the library", Counts: true}
		if d.say.measured {
			edit.What = name + " as it was bought"
		}
		if old, new := lotOf(d.Old, name), lotOf(d.New, name); kind == "grain" && (old != "" || new != "") {
			edit.What = "grain " + name + " by its certificate, " + cmp.Or(old, "no lot") + " -> " + cmp.Or(new, "no lot")
		}
		if kind == "model" {
			new := d.New.Models[name]
			edit.apply = func(b *recipe.Batch) {
				b.Models = maps.Clone(b.Models)
				if new == nil {
					delete(b.Models, name)
				} else {
					b.Models[name] = new
				}
			}
		} else if edit.sets = d.new.below(e); len(edit.sets) == 0 || len(d.old.below(e)) == 0 {
			continue
		}
		if edit.Lines = lines(d.old, d.new, e, d.say.value); len(edit.Lines) > 0 {
			d.add(edit)
		}
	}
}

// lotOf is the lot of a store that a bill names for a grain, "" for none.
func lotOf(b *recipe.Batch, grain string) string {
	for _, l := range b.Bill.Lines {
		if l.Grain.Name == grain && l.Lot != "" {
			return "lot " + l.Lot
		}
	}
	return ""
}

// sameStandard compares what two standards ask, wherever they stand.
func sameStandard(a, b *recipe.Standard) bool {
	plain := func(s *recipe.Standard) []recipe.Condition {
		out := slices.Clone(s.Conditions)
		for i := range out {
			out[i].At = diag.Span{}
		}
		return out
	}
	return reflect.DeepEqual(plain(a), plain(b))
}
