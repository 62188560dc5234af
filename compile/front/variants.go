package front

import (
	"fmt"

	"newmake/compile/show/trial"
	"newmake/lang/diag"
	"newmake/lang/parallel"
	"newmake/lang/recipe"
)

// Trial is a batch and all that vary it, side by side.
type Trial struct {
	Name  string
	Plans trial.Trial // the batch first; of use unless Broken(Diags)
	Diags diag.List
	Note  string
}

// Variants computes a batch and its variants. The batch is the one named, or the
// first that others vary, or the first of all. All of them have to stand: a table
// with a hole in it is none.
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
	var batches []*recipe.Batch
	var said []diag.List
	for _, n := range append([]string{name}, s.House.Variants(name)...) {
		b, list := s.House.Batch(n)
		t.Diags = append(t.Diags, list...)
		batches, said = append(batches, b), append(said, list)
	}
	if t.Diags.HasErrors() {
		t.Diags = s.House.Ordered(t.Diags)
		return t, nil
	}
	system := batches[0].Units
	if units != nil {
		system = *units
	}
	t.Plans = make(trial.Trial, len(batches))
	parallel.Each(len(batches), func(i int) {
		t.Plans[i], said[i] = computed(inUnits(batches[i], &system), said[i])
	})
	t.Diags = nil
	for i := range said {
		for _, d := range said[i] {
			d.Summary = fmt.Sprintf("%s: %s", batches[i].Name, d.Summary)
			t.Diags.Add(d)
		}
	}
	t.Diags = s.House.Ordered(t.Diags)
	return t, nil
}
