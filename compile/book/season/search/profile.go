package search

import (
	"slices"
	"sort"
)

// profile is how much of a resource is free, from time to time.
type profile struct {
	steps []level
}

// level is what is free from a time until that of the next; of the last, for ever.
type level struct {
	at, free int
}

func newProfile(r Resource) *profile {
	p := &profile{}
	for _, s := range r.Capacity {
		if n := len(p.steps); n > 0 && p.steps[n-1].free == s.Amount {
			continue
		}
		p.steps = append(p.steps, level{s.At, s.Amount})
	}
	return p
}

func (p *profile) equal(o *profile) bool {
	return slices.Equal(p.steps, o.steps)
}

// overdrawn says that at some time more is taken than there is.
func (p *profile) overdrawn() bool {
	return slices.ContainsFunc(p.steps, func(l level) bool { return l.free < 0 })
}

// find is the step that holds at a time; before 0 the first. It is most of what a search
// does, so nothing is called in it.
func (p *profile) find(t int) int {
	low, high := 0, len(p.steps) // the first step that begins later lies between them
	for low < high {
		if middle := int(uint(low+high) >> 1); p.steps[middle].at > t {
			high = middle
		} else {
			low = middle + 1
		}
	}
	return max(low-1, 0)
}

// split has a step begin at a time, and gives it; i is the step that holds then.
func (p *profile) split(i, t int) int {
	if p.steps[i].at >= t {
		return i
	}
	p.steps = append(p.steps, level{})
	copy(p.steps[i+2:], p.steps[i+1:])
	p.steps[i+1] = level{t, p.steps[i].free}
	return i + 1
}

// take takes an amount from one time to another; below 0 it gives it back.
func (p *profile) take(from, to, amount int) {
	if from >= to || amount == 0 {
		return
	}
	i := p.split(p.find(from), from)
	j := i
	for j+1 < len(p.steps) && p.steps[j+1].at <= to {
		j++
	}
	j = p.split(j, to)
	for k := i; k < j; k++ {
		p.steps[k].free -= amount
	}
	p.join(j)
	p.join(i)
}

// join drops the beginning of a step that is like the one before.
func (p *profile) join(i int) {
	if i > 0 && i < len(p.steps) && p.steps[i].free == p.steps[i-1].free {
		p.steps = append(p.steps[:i], p.steps[i+1:]...)
	}
}

// never is a time that does not come: five centuries of minutes. A sum of a few is a number
// on a machine of 32 bits too.
const never = 1 << 28

// blocked finds the first stretch from one time to another in which there is not enough,
// as far as it goes. ok says that there is none.
func (p *profile) blocked(from, to, amount int) (b Window, ok bool) {
	if from >= to || amount == 0 {
		return Window{}, true
	}
	for i := p.find(from); i < len(p.steps) && p.steps[i].at < to; i++ {
		if p.steps[i].free >= amount {
			continue
		}
		b := Window{p.steps[i].at, never}
		for i++; i < len(p.steps); i++ {
			if p.steps[i].free >= amount {
				b.Close = p.steps[i].at
				break
			}
		}
		return b, false
	}
	return Window{}, true
}

// lastBlocked is the same for the last stretch, from the other side.
func (p *profile) lastBlocked(from, to, amount int) (b Window, ok bool) {
	if from >= to || amount == 0 {
		return Window{}, true
	}
	for i := p.find(to - 1); i >= 0; i-- {
		end := never
		if i+1 < len(p.steps) {
			end = p.steps[i+1].at
		}
		if end <= from && i+1 < len(p.steps) {
			break
		}
		if p.steps[i].free >= amount {
			continue
		}
		for i > 0 && p.steps[i-1].free < amount {
			i--
		}
		open := p.steps[i].at
		if i == 0 {
			open = -never
		}
		return Window{open, end}, false
	}
	return Window{}, true
}

// fitting gives the first time not before t at which a part lies in one window; ok is
// false where there is none.
func fitting(calendar []Window, t int, d During) (int, bool) {
	i := sort.Search(len(calendar), func(i int) bool { return calendar[i].Close >= t+d.To })
	for ; i < len(calendar); i++ {
		w := calendar[i]
		if w.Close-w.Open < d.To-d.From {
			continue
		}
		return max(t, w.Open-d.From), true
	}
	return 0, false
}

// lastFitting gives the last time not after t at which it does.
func lastFitting(calendar []Window, t int, d During) (int, bool) {
	i := sort.Search(len(calendar), func(i int) bool { return calendar[i].Open > t+d.From }) - 1
	for ; i >= 0; i-- {
		w := calendar[i]
		if w.Close-w.Open < d.To-d.From {
			continue
		}
		return min(t, w.Close-d.To), true
	}
	return 0, false
}
