package search

import "fmt"

// Check says where a schedule breaks a rule of its problem. It is written apart from what
// makes schedules: it goes through all that is used, event by event.
func Check(p *Problem, s *Placed) error {
	type event struct{ at, amount int }
	uses := make([][]event, len(p.Resources))
	take := func(r, from, to, amount int) {
		if from < to {
			uses[r] = append(uses[r], event{from, amount}, event{to, -amount})
		}
	}
	there := make([]bool, len(p.Activities))
	for j, job := range p.Jobs {
		if !s.Present[j] {
			if !job.Optional {
				return fmt.Errorf("job %d is left out", j)
			}
			continue
		}
		for _, a := range job.Activities {
			there[a] = true
		}
		for _, c := range job.Choices {
			ok := false
			for _, o := range p.Choices[c].Options {
				ok = ok || o == s.Chosen[c]
			}
			if !ok {
				return fmt.Errorf("choice %d of job %d is none of its options", c, j)
			}
		}
	}
	of := func(w Which) int {
		if w < 0 {
			return s.Chosen[^w]
		}
		return int(w)
	}
	for a, act := range p.Activities {
		if !there[a] {
			continue
		}
		t := s.Start[a]
		if t < act.Earliest || act.Latest > 0 && t > act.Latest || t+act.Duration > p.Horizon {
			return fmt.Errorf("activity %d at %d is out of its time", a, t)
		}
		for _, u := range act.Uses {
			take(of(u.Of), t+u.From, t+u.To, u.Amount)
		}
		for _, d := range act.Within {
			inside := false
			for _, w := range p.Calendars[d.Calendar] {
				inside = inside || w.Open <= t+d.From && t+d.To <= w.Close
			}
			if !inside {
				return fmt.Errorf("activity %d at %d is in no window of calendar %d", a, t, d.Calendar)
			}
		}
	}
	for i, l := range p.Lags {
		if !there[l.From] {
			continue
		}
		if d := s.Start[l.To] - s.Start[l.From]; d < l.Least || d > l.Most {
			return fmt.Errorf("lag %d is %d", i, d)
		}
	}
	for _, h := range p.Holds {
		if there[h.From] {
			take(of(h.Of), s.Start[h.From]+h.FromTime, s.Start[h.To]+h.ToTime, h.Amount)
		}
	}
	for r, all := range uses {
		for _, x := range all { // the sum can only grow where something begins
			if x.amount <= 0 {
				continue
			}
			sum := 0
			for _, y := range all {
				if y.at <= x.at {
					sum += y.amount
				}
			}
			have := 0
			for _, c := range p.Resources[r].Capacity {
				if c.At <= x.at {
					have = c.Amount
				}
			}
			if sum > have {
				return fmt.Errorf("resource %d: %d of %d at %d", r, sum, have, x.at)
			}
		}
		for _, c := range p.Resources[r].Capacity { // or where there is less from then on
			sum := 0
			for _, y := range all {
				if y.at <= c.At {
					sum += y.amount
				}
			}
			if sum > c.Amount {
				return fmt.Errorf("resource %d: %d of %d at %d", r, sum, c.Amount, c.At)
			}
		}
	}
	var cost Vector
	end := 0
	for a, act := range p.Activities {
		if there[a] {
			end = max(end, s.Start[a]+act.Duration)
		}
	}
	for i := range p.Costs {
		c := &p.Costs[i]
		switch c.Kind {
		case Makespan:
			cost[c.Level] += c.Weight * int64(end)
		case Absent, Elsewhere:
			cost[c.Level] += p.priced(c, s.Present[c.Job], s.Start, s.Chosen)
		case Outside: // minute by minute
			for t := s.Start[c.A] + c.From; there[c.A] && t < s.Start[c.A]+c.To; t++ {
				inside := false
				for _, w := range p.Calendars[c.At] {
					inside = inside || w.Open <= t && t < w.Close
				}
				if !inside {
					cost[c.Level] += c.Weight
				}
			}
		case Unfed:
			if there[c.A] && !p.fed(s.Start[c.A], c.At, func(a int) bool { return there[a] }, s.Start) {
				cost[c.Level] += c.Weight
			}
		default:
			cost[c.Level] += p.priced(c, there[c.A], s.Start, s.Chosen)
		}
	}
	if cost != s.Cost {
		return fmt.Errorf("it costs %v and says %v", cost, s.Cost)
	}
	return nil
}
