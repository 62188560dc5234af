package search

import (
	"errors"
	"fmt"
)

// Valid says what is wrong with a problem that cannot be meant.
func (p *Problem) Valid() error {
	jobOf, err := p.jobs()
	if err != nil {
		return err
	}
	order := make([]int, len(p.Activities))
	for _, j := range p.Jobs {
		for i, a := range j.Activities {
			order[a] = i
		}
	}
	for i, l := range p.Lags {
		if !p.isActivity(l.From) || !p.isActivity(l.To) || jobOf[l.From] != jobOf[l.To] || order[l.From] >= order[l.To] || l.Least > l.Most {
			return fmt.Errorf("lag %d", i)
		}
	}
	for i, a := range p.Activities {
		if a.Duration < 0 {
			return fmt.Errorf("activity %d lasts less than nothing", i)
		}
		for _, u := range a.Uses {
			if !p.isResource(u.Of) || u.Amount < 0 || u.From > u.To {
				return fmt.Errorf("activity %d uses", i)
			}
		}
		for _, d := range a.Within {
			if d.Calendar < 0 || d.Calendar >= len(p.Calendars) || d.From > d.To {
				return fmt.Errorf("activity %d within", i)
			}
		}
	}
	for i, h := range p.Holds {
		if !p.isResource(h.Of) || !p.isActivity(h.From) || !p.isActivity(h.To) || h.Amount < 0 || jobOf[h.From] != jobOf[h.To] {
			return fmt.Errorf("hold %d", i)
		}
	}
	for i, c := range p.Costs {
		if c.Level < 0 || c.Level >= levels || c.Weight < 0 || (c.Kind == Absent || c.Kind == Elsewhere) && (c.Job < 0 || c.Job >= len(p.Jobs)) ||
			c.Kind == Elsewhere && (c.A < 0 || c.A >= len(p.Choices)) || c.Kind != Absent && c.Kind != Elsewhere && c.Kind != Makespan && !p.isActivity(c.A) || c.Kind == Over && (!p.isActivity(c.B) || jobOf[c.A] != jobOf[c.B]) ||
			c.Kind == Outside && (c.At < 0 || c.At >= len(p.Calendars) || c.From > c.To) {
			return fmt.Errorf("cost %d", i)
		}
	}
	for i, s := range p.Sources {
		if s.A >= len(p.Activities) {
			return fmt.Errorf("source %d", i)
		}
	}
	return nil
}

func (p *Problem) jobs() ([]int, error) {
	jobOf := make([]int, len(p.Activities))
	for i := range jobOf {
		jobOf[i] = -1
	}
	for j, job := range p.Jobs {
		for _, a := range job.Activities {
			if !p.isActivity(a) || jobOf[a] >= 0 {
				return nil, fmt.Errorf("activity %d of job %d is none, or of two jobs", a, j)
			}
			jobOf[a] = j
		}
	}
	for a, j := range jobOf {
		if j < 0 {
			return nil, fmt.Errorf("activity %d is of no job", a)
		}
	}
	for i, r := range p.Resources {
		if len(r.Capacity) == 0 || r.Capacity[0].At != 0 {
			return nil, fmt.Errorf("resource %d has no capacity at 0", i)
		}
		for _, s := range r.Capacity {
			if s.Amount < 0 {
				return nil, fmt.Errorf("resource %d has less than nothing", i)
			}
		}
	}
	for _, c := range p.Choices {
		if len(c.Options) == 0 {
			return nil, errors.New("a choice of nothing")
		}
		for _, r := range c.Options {
			if r < 0 || r >= len(p.Resources) {
				return nil, errors.New("a choice of no resource")
			}
		}
	}
	return jobOf, nil
}

func (p *Problem) isActivity(a int) bool { return a >= 0 && a < len(p.Activities) }

func (p *Problem) isResource(w Which) bool {
	if w >= 0 {
		return int(w) < len(p.Resources)
	}
	return int(^w) < len(p.Choices)
}
