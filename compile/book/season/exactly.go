package season

import "newmake/compile/book/season/search"

// exactNodes is how many nodes of the tree of plans are looked at. A tiny season needs few;
// where it takes more, the bound says how much better a plan could be.
const exactNodes = 400

// exactly looks for a plan that has more of what is wanted in time, where the search found
// none that has all, and notes it where there is no such plan.
func (s *solver) exactly(effort int) {
	s.best = false
	if s.placed.Cost[tooLate] == 0 {
		return
	}
	p := s.built.Problem
	p.Costs = nil
	for _, c := range s.built.Costs {
		if c.Level == tooLate {
			p.Costs = append(p.Costs, c)
		}
	}
	begin := *s.placed
	begin.Cost = search.Vector{s.placed.Cost[tooLate]}
	proof := search.Exact(&p, &begin, exactNodes)
	s.best = proof.Proved
	if proof.Best != &begin {
		s.placed, _ = search.Improve(&s.built.Problem, proof.Best, effort)
	}
}
