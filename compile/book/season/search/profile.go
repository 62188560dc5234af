package search

import (
	"slices"
	"sort"
)

// profile is how much of a resource is free, from time to time.
type profile struct {
	at   []int
	free []int // from at[i] until at[i+1]; of the last, for ever
}

func newProfile(r Resource) *profile {
	p := &profile{}
	for _, s := range r.Capacity {
		if n := len(p.at); n > 0 && p.free[n-1] == s.Amount {
			continue
		}
		p.at, p.free = append(p.at, s.At), append(p.free, s.Amount)
	}
	return p
}

func (p *profile) equal(o *profile) bool {
	return slices.Equal(p.at, o.at) && slices.Equal(p.free, o.free)
}

// find is the step that holds at a time; before 0 the first.
func (p *profile) find(t int) int {
	return max(sort.Search(len(p.at), func(i int) bool { return p.at[i] > t })-1, 0)
}

// split has a step begin at a time, and gives it.
func (p *profile) split(t int) int {
	i := p.find(t)
	if p.at[i] >= t {
		return i
	}
	p.at, p.free = append(p.at, 0), append(p.free, 0)
	copy(p.at[i+2:], p.at[i+1:])
	copy(p.free[i+2:], p.free[i+1:])
	p.at[i+1], p.free[i+1] = t, p.free[i]
	return i + 1
}

// take takes an amount from one time to another; below 0 it gives it back.
func (p *profile) take(from, to, amount int) {
	if from >= to || amount == 0 {
		return
	}
	i := p.split(from)
	j := p.split(to)
	for k := i; k < j; k++ {
		p.free[k] -= amount
	}
	p.join(j)
	p.join(i)
}

// join drops the beginning of a step that is like the one before.
func (p *profile) join(i int) {
	if i > 0 && i < len(p.at) && p.free[i] == p.free[i-1] {
		p.at, p.free = append(p.at[:i], p.at[i+1:]...), append(p.free[:i], p.free[i+1:]...)
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
	for i := p.find(from); i < len(p.at) && p.at[i] < to; i++ {
		if p.free[i] >= amount {
			continue
		}
		b := Window{p.at[i], never}
		for i++; i < len(p.at); i++ {
			if p.free[i] >= amount {
				b.Close = p.at[i]
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
		if i+1 < len(p.at) {
			end = p.at[i+1]
		}
		if end <= from && i+1 < len(p.at) {
			break
		}
		if p.free[i] >= amount {
			continue
		}
		for i > 0 && p.free[i-1] < amount {
			i--
		}
		open := p.at[i]
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
