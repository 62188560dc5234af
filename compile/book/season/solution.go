package season

import (
	"slices"

	"newmake/compile/book/season/search"
	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

// solution is a season as it is planned so far: which runs there are, when each block of them
// begins, where, and what flows from run to run.
type solution struct {
	*Problem
	axis    *axis
	house   *house
	courses map[string]*course // by batch, in a house at work
	begun   []*made
	list    []*want
	from    int // the first minute that can still be decided
	built   *built
	placed  *search.Placed
	flows   *flows
}

// start is when a block of a want begins.
func (s *solution) start(j, block int) int { return s.placed.Start[s.built.first[j]+block] }

// filledBy says that a want's casks are full by a minute.
func (s *solution) filledBy(j, minute int) bool { return s.filled(j) <= minute }

// filled is when a want's casks are full.
func (s *solution) filled(j int) int {
	c := s.list[j].course
	return s.start(j, c.fill) + c.blocks[c.fill].minutes
}

// lastMinute is the end of the season's last day.
func (s *solution) lastMinute() int { return s.axis.on(s.Asks.To).to }

// end of a task of a want.
func (s *solution) at(j int, where [2]int) int { return s.start(j, where[0]) + where[1] }

// ways are the runs that are placed, on the clock; those that are not come last and do
// nothing.
func (s *solution) ways() []way {
	var out []way
	for _, j := range s.present() {
		w := s.list[j]
		c := w.course
		x := way{batch: s.Batches[c.batch.Name], mash: s.start(j, 0), pitched: s.start(j, 0) + c.blocks[0].minutes, filled: s.filled(j)}
		x.charged = s.start(j, max(c.strip, 0))
		x.stands = float64(x.charged-x.pitched) * 60
		if to, ok := c.lastEnd("strip", "stop"); ok {
			x.stripped = s.at(j, to)
		}
		if from, ok := c.begins("spirit", "charge"); ok {
			x.spirit = s.at(j, from)
		}
		if to, ok := c.lastEnd("spirit", "stop"); ok {
			x.spirits = s.at(j, to)
		}
		out = append(out, x)
	}
	return out
}

// present are the wants that are placed, by the start of their mash.
func (s *solution) present() []int {
	var out []int
	for j := range s.list {
		if s.placed.Present[j] {
			out = append(out, j)
		}
	}
	slices.SortStableFunc(out, func(a, b int) int { return s.start(a, 0) - s.start(b, 0) })
	return out
}

func (s *solution) today() recipe.Today { return s.Asks.Today }

// steady is the feints of a house at work.
func (s *solution) steady(b *recipe.Batch) stream.Stream {
	n := s.courses[b.Name].n
	return n.Distilled.Feints().Scale(float64(n.Distilled.Charges))
}

// vessel is the name of what is meant, or of what was chosen.
func (s *solution) vessel(which search.Which) string {
	if which < 0 {
		return s.built.names[s.placed.Chosen[^which]]
	}
	return s.built.names[which]
}

// tanksOf are the tanks of a run, chosen or the only ones.
func (s *solution) tanksOf(j int) []string {
	var out []string
	for _, h := range s.built.Jobs[j].Holds {
		name := s.vessel(s.built.Holds[h].Of)
		if slices.ContainsFunc(s.Plant.Tanks, func(t *recipe.Tank) bool { return t.Name == name }) {
			out = append(out, name)
		}
	}
	return out
}

// fermenting is from when to when a run ferments, until its wash is stripped.
func (s *solution) fermenting(j int) (from, end int) {
	c := s.list[j].course
	return s.start(j, 0) + c.blocks[0].minutes, s.start(j, c.strip)
}

// outside is how many minutes lie in no shift.
func (s *solution) outside(from, to int) int {
	n := to - from
	for _, w := range s.house.windows {
		if lo, hi := max(from, w.Open), min(to, w.Close); hi > lo {
			n -= hi - lo
		}
	}
	return max(n, 0)
}

// crewMost is the most that are ever there; 0 where nobody says.
func (s *solution) crewMost() int {
	if s.Plant.Crew == 0 && !s.house.named() {
		return 0
	}
	most := 0
	for _, x := range s.axis.staff() {
		most = max(most, x.amount)
	}
	return most
}

// holdIs says what a hold of a tank is for: it begins in the wash still, or in the spirit
// still.
func (s *solution) holdIs(j int, h search.Hold) recipe.Contents {
	block := h.From - s.built.first[j]
	if from, ok := s.list[j].course.begins("strip", "collect"); ok && from == [2]int{block, h.FromTime} {
		return recipe.OfLowWines
	}
	return recipe.OfSpirit
}
