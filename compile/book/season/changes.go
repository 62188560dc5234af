package season

import "slices"

// changes are what is otherwise than printed.
func (s *answer) changes() []Change {
	if s.Printed == nil {
		return nil
	}
	var out []Change
	runs := s.out.Runs
	first := func(r *Run, key string) string {
		for _, t := range r.Tasks {
			if t.Key == key {
				return t.Start
			}
		}
		return ""
	}
	for i := range s.Printed.Runs {
		was := &s.Printed.Runs[i]
		k := slices.IndexFunc(runs, func(r Run) bool { return r.Number == was.Number })
		if k < 0 {
			out = append(out, Change{Run: was.Number, Batch: was.Batch, What: ChangeDropped, Was: was.Mash})
			continue
		}
		for _, stage := range []struct{ what, key string }{{"mash", "mash.mill"}, {"strip", "strip.charge"}, {"spirit", "spirit.charge"}, {"fill", "fill.cask"}} {
			if a, b := first(was, stage.key), first(&runs[k], stage.key); a != b {
				out = append(out, Change{Run: was.Number, Batch: was.Batch, What: stage.what, Was: a, Is: b})
			}
		}
		if was.Fermenter != runs[k].Fermenter {
			out = append(out, Change{Run: was.Number, Batch: was.Batch, What: ChangeFermenter, Was: was.Fermenter, Is: runs[k].Fermenter})
		}
	}
	for _, r := range runs {
		if !slices.ContainsFunc(s.Printed.Runs, func(w Run) bool { return w.Number == r.Number }) {
			out = append(out, Change{Run: r.Number, Batch: r.Batch, What: ChangeNew, Is: r.Mash})
		}
	}
	return out
}

// What of a run can be otherwise, besides the words of its stages.
const (
	ChangeDropped   = "dropped"
	ChangeNew       = "new"
	ChangeFermenter = "fermenter"
)
