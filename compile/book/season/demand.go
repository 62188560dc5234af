package season

import (
	"math"

	"newmake/compile/book/season/search"
	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/lang/record"
	asked "newmake/lang/season"
)

// wants are the batches that the season asks for, those that were begun first. Of casks it
// is as many runs as fill them in a house at work, less those that are made anyway.
func (s *solver) wants() {
	for _, m := range s.begun {
		s.list = append(s.list, &want{demand: -1, course: s.courses[m.run.Batch], done: m, number: m.run.Number})
	}
	free := map[string][]*want{} // begun runs that answer no demand yet
	for _, w := range s.list {
		free[w.course.batch.Name] = append(free[w.course.batch.Name], w)
	}
	from, to := s.axis.on(s.Asks.From).from, s.lastMinute()
	if !s.On.IsZero() {
		if d := s.axis.on(s.On); d != nil {
			from = max(from, d.from)
		}
	}
	add := func(demand int, name string, from, to, due int, on []search.Window) {
		s.list = append(s.list, &want{demand: demand, course: s.courses[name], from: max(from, s.from), to: to, on: on, due: due})
	}
	s.from = from
	// What is mashed by the days comes first, since it answers for casks too.
	for i, m := range s.Asks.Makes {
		demand := len(s.Asks.Casks) + i
		for _, slot := range s.slots(m, to) {
			if w := taken(free, m.Batch, slot); w != nil {
				w.demand = demand
				continue
			}
			add(demand, m.Batch, slot.from, slot.to, 0, slot.on)
		}
	}
	for i := range s.Asks.Casks {
		s.wantCasks(i, to)
	}
	for i, w := range s.list {
		if w.done == nil {
			w.kind = 1 + s.kindOf(i)
		}
	}
}

// kindOf is the first want that is like another in all that matters.
func (s *solver) kindOf(i int) int {
	w := s.list[i]
	for k, o := range s.list[:i] {
		if o.done == nil && o.course == w.course && o.from == w.from && o.to == w.to && o.due == w.due && len(o.on) == len(w.on) && (len(w.on) == 0 || o.on[0] == w.on[0]) && o.printed == nil && w.printed == nil {
			return k
		}
	}
	return i
}

// slot is when one mash may begin.
type slot struct {
	from, to int
	on       []search.Window
}

func taken(free map[string][]*want, batch string, in slot) *want {
	for i, w := range free[batch] {
		if w.done.mash >= in.from && w.done.mash <= in.to {
			free[batch] = append(free[batch][:i:i], free[batch][i+1:]...)
			return w
		}
	}
	return nil
}

// slots are the mashes that a line asks for.
func (s *solver) slots(m asked.Make, to int) []slot {
	var out []slot
	dayOf := func(d record.Date) *day {
		if !s.Asks.Has(d) {
			return nil
		}
		return s.axis.on(d)
	}
	exactly := func(d *day) slot {
		return slot{d.from, d.to - 1, []search.Window{{Open: d.from, Close: d.to - 1}}}
	}
	switch {
	case m.Times > 0:
		for range m.Times {
			out = append(out, slot{s.axis.on(s.Asks.From).from, to - 1, nil})
		}
	case len(m.Dates) > 0:
		for _, d := range m.Dates {
			if d := dayOf(d); d != nil {
				out = append(out, exactly(d))
			}
		}
	case m.EveryDays > 0:
		for at := s.Asks.From; s.Asks.Has(at); at = at.After(m.EveryDays) {
			last := at.After(m.EveryDays - 1)
			if !m.OnWeekdays() {
				if !s.Asks.Has(last) {
					last = s.Asks.To
				}
				out = append(out, slot{s.axis.on(at).from, s.axis.on(last).to - 1, nil})
				continue
			}
			// One on each of the weekdays, on whichever of them in the span.
			of := [7]slot{}
			for d := at; d.Compare(last) <= 0 && s.Asks.Has(d); d = d.After(1) {
				k := d.Weekday()
				if !m.Weekdays[k] || s.Asks.ClosedOn(d) != nil {
					continue
				}
				x := exactly(s.axis.on(d))
				if of[k].on == nil {
					of[k].from = x.from
				}
				of[k].to, of[k].on = x.to, append(of[k].on, x.on...)
			}
			for _, x := range of {
				if x.on != nil {
					out = append(out, x)
				}
			}
		}
	default:
		for d := s.Asks.From; s.Asks.Has(d); d = d.After(1) {
			if m.Weekdays[d.Weekday()] && s.Asks.ClosedOn(d) == nil {
				out = append(out, exactly(s.axis.on(d)))
			}
		}
	}
	return out
}

// wantCasks asks for the runs that fill the casks of a line, beyond what lines before it
// and runs that are mashed anyway will have filled by then.
func (s *solver) wantCasks(i, to int) {
	c := s.Asks.Casks[i]
	name := c.Batch
	due := s.axis.on(c.By).to
	casks := 0
	for k, o := range s.Asks.Casks {
		if o.Batch == name && (o.By.Compare(c.By) < 0 || o.By == c.By && k <= i) {
			casks += o.N
		}
	}
	need := runsFor(s.courses[name].n, casks)
	have := 0
	if s.Printed != nil { // runs that were printed are wanted, where there is nothing against it
		n := 0
		for _, r := range s.Printed.Runs {
			if r.Batch == name {
				n++
			}
		}
		for _, w := range s.list {
			if w.course.batch.Name == name && w.due == 0 {
				n--
			}
		}
		need = max(need, min(n, need+1))
	}
	for _, w := range s.list {
		if w.course.batch.Name == name && (w.due > 0 && w.due <= due || w.due == 0 && max(w.from, doneAt(w))+shortest(w.course) <= due) {
			have++
		}
	}
	for range max(0, need-have) {
		s.list = append(s.list, &want{demand: i, course: s.courses[name], from: s.from, to: to - 1, due: due})
	}
}

func doneAt(w *want) int {
	if w.done != nil {
		return w.done.mash
	}
	return 0
}

// shortest is how long a batch takes at the least from its mash to its casks.
func shortest(c *course) int {
	at := make([]int, len(c.blocks))
	for i, b := range c.blocks {
		if b.after >= 0 {
			at[i] = at[b.after] + b.least
		}
		if b.also >= 0 {
			at[i] = max(at[i], at[b.also]+c.blocks[b.also].minutes)
		}
	}
	return at[c.fill] + c.blocks[c.fill].minutes
}

// runsFor is how many runs fill so many casks in a house at work.
func runsFor(n *numbers.Batch, casks int) int {
	if !n.Reduced.Done || !numbers.InWood(n.Batch) {
		return casks
	}
	per := lot.Of(n.Reduced.Spirit).VolumeL / lot.LitresPerM3 / numbers.CaskM3(n.Batch, n.Reduced.Spirit)
	if per <= 0 {
		return casks
	}
	for k := 1; ; k++ {
		pool, filled := 0.0, 0
		for range k {
			pool += per
			filled += int(math.Floor(pool + 1e-9))
			pool -= math.Floor(pool + 1e-9)
			if pool >= leastFill {
				filled, pool = filled+1, 0
			}
		}
		if filled >= casks || k >= mostRuns {
			return k
		}
	}
}

// mostRuns is more than any season has days.
const mostRuns = 400
