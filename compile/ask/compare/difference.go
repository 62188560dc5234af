package compare

import (
	"fmt"
	"slices"

	"newmake/compile/measure"
	"newmake/lang/recipe"
)

// Difference is the edits that lead from one batch to another, and what it takes
// to make some of them and not the others.
type Difference struct {
	Old, New *recipe.Batch
	Edits    []Edit
	Bill     []BillRow
	Notes    []string // what changed without effect, in words

	old, new values
	say      say
	bill     billMix
	steps    stepMix
}

// Find compares two batches by meaning. The words are in the given units.
func Find(old, new *recipe.Batch, units measure.Units) *Difference {
	return find(old, new, say{Units: units})
}

func find(old, new *recipe.Batch, in say) *Difference {
	d := &Difference{Old: old, New: new, old: valuesOf(old, new), new: valuesOf(new, old), say: in}
	d.names()
	d.findBill()
	d.findSteps()
	d.fields()
	d.vessels()
	d.prices()
	d.findLibrary()
	d.sort()
	d.tellApart()
	return d
}

// values are those of a batch, in their order and by their keys, but for what it
// shares with the other.
type values struct {
	all []recipe.Value
	by  map[recipe.Key]int // where the first of its key stands in all, from 1
}

func valuesOf(b, other *recipe.Batch) values {
	v := values{all: b.ValuesBeside(other)}
	v.by = make(map[recipe.Key]int, len(v.all))
	for i := range v.all {
		if k := v.all[i].Key(); v.by[k] == 0 {
			v.by[k] = i + 1
		}
	}
	return v
}

// at gives the value of a key, nil if there is none.
func (v values) at(k recipe.Key) *recipe.Value {
	if i := v.by[k]; i > 0 {
		return &v.all[i-1]
	}
	return nil
}

// find gives the value of a key.
func (v values) find(k recipe.Key) (recipe.Value, bool) {
	if x := v.at(k); x != nil {
		return *x, true
	}
	return recipe.Value{}, false
}

// below are the values within a path.
func (v values) below(p recipe.Path) []recipe.Value {
	var out []recipe.Value
	for i := range v.all {
		if v.all[i].Path.Within(p) {
			out = append(out, v.all[i])
		}
	}
	return out
}

// Same reports whether nothing of meaning changed, a name apart.
func (d *Difference) Same() bool {
	return !slices.ContainsFunc(d.Edits, func(e Edit) bool { return e.Kind != Renamed })
}

// add notes an edit and gives it a number that stays its own until sort.
func (d *Difference) add(e Edit) int {
	d.Edits = append(d.Edits, e)
	return len(d.Edits) - 1
}

func (d *Difference) note(format string, args ...any) {
	d.Notes = append(d.Notes, fmt.Sprintf(format, args...))
}

// sort brings the edits into the order of the parts. The numbers that the mix
// knows them by follow.
func (d *Difference) sort() {
	order := make([]int, len(d.Edits))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return slices.Index(parts, d.Edits[a].Part) - slices.Index(parts, d.Edits[b].Part)
	})
	to := make([]int, len(order))
	sorted := make([]Edit, len(order))
	for new, old := range order {
		to[old], sorted[new] = new, d.Edits[old]
	}
	d.Edits = sorted
	d.bill.renumber(to)
	d.steps.renumber(to)
}

// tellApart gives edits that read the same the place they stand at.
func (d *Difference) tellApart() {
	seen := map[string]int{}
	for _, e := range d.Edits {
		seen[e.What]++
	}
	for i := range d.Edits {
		if e := &d.Edits[i]; seen[e.What] > 1 && !e.Path.IsZero() {
			e.What += " (" + e.Path.String() + ")"
		}
	}
}

// names says what is called otherwise.
func (d *Difference) names() {
	if d.Old.Name != d.New.Name {
		d.add(Edit{Part: OfBatch, Kind: Renamed, Path: recipe.PathBatch, What: "the batch's name",
			Lines: []Line{{Name: "name", Old: d.Old.Name, New: d.New.Name}}})
	}
}

// at renumbers one edit; -1 is none.
func at(to []int, edit int) int {
	if edit < 0 {
		return -1
	}
	return to[edit]
}
