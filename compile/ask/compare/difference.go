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

	say   say
	bill  billMix
	steps stepMix
	stock stockMix
}

// Find compares two batches by meaning. The words are in the given units.
func Find(old, new *recipe.Batch, units measure.Units) *Difference {
	d := &Difference{Old: old, New: new, say: say{units}}
	d.names()
	d.findBill()
	d.findSteps()
	d.fields()
	d.plant()
	d.findStock()
	d.sort()
	d.tellApart()
	return d
}

// Same says that nothing of meaning changed, a name apart.
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
		return slices.Index(Parts, d.Edits[a].Part) - slices.Index(Parts, d.Edits[b].Part)
	})
	to := make([]int, len(order))
	sorted := make([]Edit, len(order))
	for new, old := range order {
		to[old], sorted[new] = new, d.Edits[old]
	}
	d.Edits = sorted
	d.bill.renumber(to)
	d.steps.renumber(to)
	d.stock.renumber(to)
}

// tellApart gives edits that read the same the place they stand at.
func (d *Difference) tellApart() {
	seen := map[string]int{}
	for _, e := range d.Edits {
		seen[e.What]++
	}
	for i := range d.Edits {
		if e := &d.Edits[i]; seen[e.What] > 1 && e.Path != "" {
			e.What += " (" + e.Path + ")"
		}
	}
}

// names says what is called otherwise.
func (d *Difference) names() {
	if d.Old.Name != d.New.Name {
		d.add(Edit{Part: OfBatch, Kind: Renamed, Path: "batch", What: "the batch's name",
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
