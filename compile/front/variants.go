package front

import (
	"fmt"

	"newmake/compile/show/trial"
	"newmake/compile/work"
	"newmake/lang/diag"
	"newmake/lang/parallel"
	"newmake/lang/recipe"
)

// Trial is a batch and all that vary it, side by side.
type Trial struct {
	Name  string
	Plans trial.Trial // the batch first; empty if that cannot be planned
	Left  []Left      // variants that cannot be planned
	Diags diag.List   // of the plans; of the batch itself where there are none
	Note  string
}

// Left is a variant that cannot be planned, and why.
type Left struct {
	Name  string
	Diags diag.List
}

// Variants computes a batch and its variants. The batch is the one named, or the
// first that others vary, or the first of all. A variant that cannot be planned is left
// out, and named.
func (s *Source) Variants(name string, units *recipe.System) (*Trial, error) {
	if name == "" {
		for _, own := range s.House.BatchesIn(s.Path) {
			if len(s.House.Variants(own)) > 0 {
				name = own
				break
			}
		}
	}
	name, note, err := s.Choose(name)
	if err != nil {
		return nil, err
	}
	t := &Trial{Name: name, Note: note}
	if name == "" {
		t.Diags = s.nothing()
		return t, nil
	}
	if t.Diags, _ = s.otherBatches(name, nil); len(t.Diags) > 0 {
		return t, nil
	}
	names := append([]string{name}, s.House.Variants(name)...)
	batches, said := make([]*recipe.Batch, len(names)), make([]diag.List, len(names))
	for i, n := range names {
		batches[i], said[i] = s.House.Batch(n)
	}
	if batches[0] == nil {
		t.Diags = said[0]
		return t, nil
	}
	system := batches[0].Units
	if units != nil {
		system = *units
	}
	plans := make(trial.Trial, len(names))
	parallel.Each(len(names), func(i int) {
		if batches[i] != nil {
			plans[i], said[i] = computed(inUnits(batches[i], &system), said[i], work.Hours{})
		}
	})
	for i, p := range plans {
		switch {
		case p != nil && !Broken(said[i]):
			t.Plans = append(t.Plans, p)
		case i == 0:
			t.Diags = said[0]
			return t, nil
		default:
			t.Left = append(t.Left, Left{names[i], said[i]})
			continue
		}
		for _, d := range said[i] {
			d.Summary = fmt.Sprintf("%s: %s", names[i], d.Summary)
			t.Diags.Add(d)
		}
	}
	t.Diags = s.House.Ordered(t.Diags)
	return t, nil
}
