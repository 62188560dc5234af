package compare

import (
	"maps"
	"reflect"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// findStock finds entries that both batches use under one name and that say
// something else now. Each entry is one edit with all its figures.
func (d *Difference) findStock() {
	var entries []recipe.Path
	for _, v := range slices.Concat(d.old.below(recipe.PathStock), d.new.below(recipe.PathStock)) {
		if e := v.Path.Parent(); len(entries) == 0 || entries[len(entries)-1] != e && !slices.Contains(entries, e) {
			entries = append(entries, e)
		}
	}
	for _, e := range entries {
		kind, name := e.Parts()[1], e.Last()
		edit := Edit{Part: OfStock, Kind: Changed, Path: e, What: kind + " " + name + " in the stock", Counts: true}
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
		if edit.Lines = d.lines(e, d.say.value); len(edit.Lines) > 0 {
			d.add(edit)
		}
	}
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
