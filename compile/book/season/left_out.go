package season

import (
	"cmp"
	"slices"

	"newmake/lang/record"
	asked "newmake/lang/season"
)

// LeftOut is a batch that cannot be planned. The others are planned as if nothing were
// asked of it.
type LeftOut struct {
	Batch string `json:"batch"`
	Why   string `json:"why"` // in words
	// Runs of it were begun, and are not in the plan: what they stand in is taken to be free.
	Runs []string `json:"runs"`
}

// ByBatch limits a line whose batch is left out.
const ByBatch = "batch"

// leaveOut takes the lines of batches that cannot be computed out of what is planned, and
// keeps them to be answered; and it names the runs of such batches that were begun. The
// error is of the first batch, where nothing else is asked for.
func (s *solver) leaveOut() error {
	s.whole = s.Asks
	var first error
	broken := func(name string) bool { return s.outOf(name) >= 0 }
	for _, name := range s.Asks.Batches() {
		if err := s.courseOf(name); err != nil {
			first = cmp.Or(first, err)
			s.leave(name, err)
		}
	}
	kept := *s.Asks
	kept.Casks = slices.DeleteFunc(slices.Clone(s.Asks.Casks), func(c asked.Casks) bool { return broken(c.Batch) })
	kept.Makes = slices.DeleteFunc(slices.Clone(s.Asks.Makes), func(m asked.Make) bool { return broken(m.Batch) })
	if first != nil && len(kept.Batches()) == 0 {
		return first
	}
	for _, r := range s.Problem.Runs {
		if !s.bears(r) || filled(r) {
			continue
		}
		if err := s.courseOf(r.Batch); err != nil {
			of := s.leave(r.Batch, err)
			of.Runs = append(of.Runs, r.Number)
		}
	}
	if first != nil {
		own := *s.Problem
		own.Asks, s.Problem = &kept, &own
	}
	return nil
}

// leave is a batch among those that are left out.
func (s *solver) leave(name string, err error) *LeftOut {
	if i := s.outOf(name); i >= 0 {
		return &s.leftOut[i]
	}
	s.leftOut = append(s.leftOut, LeftOut{Batch: name, Why: cmp.Or(s.Unread[name], err.(*BatchError).Err.Error()), Runs: []string{}})
	return &s.leftOut[len(s.leftOut)-1]
}

// outOf is where a batch stands among those that are left out; -1: it is not.
func (s *solver) outOf(name string) int {
	return slices.IndexFunc(s.leftOut, func(l LeftOut) bool { return l.Batch == name })
}

// filled says that a run's spirit was filled, by its record.
func filled(r *record.Run) bool {
	return slices.ContainsFunc(r.Visits, func(v record.Visit) bool { return r.Stages[v.Stage].Name == record.Fill })
}

// unanswered are the lines of the batches that are left out, in their order.
func (s *solver) unanswered() []Demanded {
	var out []Demanded
	for _, c := range s.whole.Casks {
		if s.outOf(c.Batch) >= 0 {
			out = append(out, Demanded{Batch: c.Batch, Wanted: WantedCasks, Amount: c.N, By: c.By.String(), For: c.For, Runs: []string{}, Limit: ByBatch})
		}
	}
	for _, m := range s.whole.Makes {
		if s.outOf(m.Batch) >= 0 {
			out = append(out, Demanded{Batch: m.Batch, Wanted: WantedMashes, Amount: len(s.slots(m, s.lastMinute())), Runs: []string{}, Limit: ByBatch})
		}
	}
	return out
}
