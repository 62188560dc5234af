package search

import (
	"fmt"
	"slices"
)

// Check says where a schedule breaks a rule of its problem. It is written apart from what
// makes schedules: it goes through all that is used, event by event.
func Check(p *Problem, s *Placed) error {
	c := &checking{Problem: p, s: s, there: make([]bool, len(p.Activities)), uses: make([][]use, len(p.Resources))}
	for _, rule := range []func() error{c.jobs, c.activities, c.lags, c.holds, c.capacities, c.costs} {
		if err := rule(); err != nil {
			return err
		}
	}
	return nil
}

// checking is a schedule beside its problem: which activities are in it, and what they use.
type checking struct {
	*Problem
	s     *Placed
	there []bool  // by activity
	uses  [][]use // by resource
}

// use is a change of how much of a resource is in use.
type use struct{ at, amount int }

// take writes down that some of a resource is in use from one minute to another.
func (c *checking) take(r, from, to, amount int) {
	if from < to {
		c.uses[r] = append(c.uses[r], use{from, amount}, use{to, -amount})
	}
}

// inUse is how much of a resource is in use at a minute.
func (c *checking) inUse(r, at int) int {
	sum := 0
	for _, u := range c.uses[r] {
		if u.at <= at {
			sum += u.amount
		}
	}
	return sum
}

// has is how much there is of a resource at a minute.
func (c *checking) has(r, at int) int {
	amount := 0
	for _, s := range c.Resources[r].Capacity {
		if s.At <= at {
			amount = s.Amount
		}
	}
	return amount
}

// resource is the one that is meant, or the one that was chosen.
func (c *checking) resource(w Which) int {
	if w < 0 {
		return c.s.Chosen[^w]
	}
	return int(w)
}

// open says that one window of a calendar holds all the minutes from one to another.
func (c *checking) open(calendar, from, to int) bool {
	return slices.ContainsFunc(c.Calendars[calendar], func(w Window) bool { return w.Open <= from && to <= w.Close })
}

// jobs: only an optional one is left out, and what is chosen is among the options.
func (c *checking) jobs() error {
	for j, job := range c.Jobs {
		if !c.s.Present[j] {
			if !job.Optional {
				return fmt.Errorf("job %d is left out", j)
			}
			continue
		}
		for _, a := range job.Activities {
			c.there[a] = true
		}
		for _, choice := range job.Choices {
			if !slices.Contains(c.Choices[choice].Options, c.s.Chosen[choice]) {
				return fmt.Errorf("choice %d of job %d is none of its options", choice, j)
			}
		}
	}
	return nil
}

// activities lie in their time and in the windows of their calendars.
func (c *checking) activities() error {
	for a, act := range c.Activities {
		if !c.there[a] {
			continue
		}
		t := c.s.Start[a]
		if t < act.Earliest || act.Latest > 0 && t > act.Latest || t+act.Duration > c.Horizon {
			return fmt.Errorf("activity %d at %d is out of its time", a, t)
		}
		for _, u := range act.Uses {
			c.take(c.resource(u.Of), t+u.From, t+u.To, u.Amount)
		}
		for _, d := range act.Within {
			if !c.open(d.Calendar, t+d.From, t+d.To) {
				return fmt.Errorf("activity %d at %d is in no window of calendar %d", a, t, d.Calendar)
			}
		}
	}
	return nil
}

// lags are as long as they may be.
func (c *checking) lags() error {
	for i, l := range c.Lags {
		if !c.there[l.From] {
			continue
		}
		if d := c.s.Start[l.To] - c.s.Start[l.From]; d < l.Least || d > l.Most {
			return fmt.Errorf("lag %d is %d", i, d)
		}
	}
	return nil
}

// holds use a resource from one activity to another.
func (c *checking) holds() error {
	for _, h := range c.Holds {
		if c.there[h.From] {
			c.take(c.resource(h.Of), c.s.Start[h.From]+h.FromTime, c.s.Start[h.To]+h.ToTime, h.Amount)
		}
	}
	return nil
}

// capacities are never exceeded. That can begin only where more is taken, or where there is
// less from then on.
func (c *checking) capacities() error {
	for r := range c.uses {
		var at []int
		for _, u := range c.uses[r] {
			if u.amount > 0 {
				at = append(at, u.at)
			}
		}
		for _, s := range c.Resources[r].Capacity {
			at = append(at, s.At)
		}
		for _, t := range at {
			if sum, have := c.inUse(r, t), c.has(r, t); sum > have {
				return fmt.Errorf("resource %d: %d of %d at %d", r, sum, have, t)
			}
		}
	}
	return nil
}

// costs come to what the schedule says.
func (c *checking) costs() error {
	var sum Vector
	for i := range c.Costs {
		sum[c.Costs[i].Level] += c.cost(&c.Costs[i])
	}
	if sum != c.s.Cost {
		return fmt.Errorf("it costs %v and says %v", sum, c.s.Cost)
	}
	return nil
}

func (c *checking) cost(k *Cost) int64 {
	switch k.Kind {
	case Makespan:
		return k.Weight * int64(c.end())
	case Absent, Elsewhere:
		return c.priced(k, c.s.Present[k.Job], c.s.Start, c.s.Chosen)
	case Outside: // minute by minute
		var sum int64
		for t := c.s.Start[k.A] + k.From; c.there[k.A] && t < c.s.Start[k.A]+k.To; t++ {
			if !c.open(k.At, t, t+1) {
				sum += k.Weight
			}
		}
		return sum
	case Unfed:
		if c.there[k.A] && !c.fed(c.s.Start[k.A], k.At, func(a int) bool { return c.there[a] }, c.s.Start) {
			return k.Weight
		}
		return 0
	}
	return c.priced(k, c.there[k.A], c.s.Start, c.s.Chosen)
}

// end is when the last activity ends.
func (c *checking) end() int {
	end := 0
	for a, act := range c.Activities {
		if c.there[a] {
			end = max(end, c.s.Start[a]+act.Duration)
		}
	}
	return end
}
