package bands

import (
	"math"
	"sort"
)

// line is a curve through points, which rise in x or stand.
type line struct {
	n int
	x func(i int) float64
}

// same is how near two places are one.
const same = 1e-6

// at is y at an x, on the line between two points; before the first and after the last
// point it stands still. Where y jumps at an x it is what was before, or what comes
// after.
func (l line) at(x float64, after bool, y func(i int) float64) float64 {
	i := sort.Search(l.n, func(i int) bool {
		if after {
			return l.x(i) > x+same
		}
		return l.x(i) >= x-same
	})
	switch {
	case l.n == 0:
		return math.NaN()
	case i == 0:
		return y(0)
	case i == l.n:
		return y(l.n - 1)
	}
	a, b := l.x(i-1), l.x(i)
	return y(i-1) + min(max((x-a)/(b-a), 0), 1)*(y(i)-y(i-1))
}

// box is where a point of a curve may come: about a time, so much sooner or later, and
// between a low and a high.
type box struct {
	at, from, to float64
	low, high    float64
}

// ends are those of a band.
type ends struct{ low, high float64 }

// covered is what boxes cover at the time of each: the lowest low and the highest high
// of all that reach it. The boxes of a curve stand close to one another.
func covered(all []box) []ends {
	out := make([]ends, len(all))
	for i, t := range all {
		low, high := t.low, t.high
		for _, b := range all {
			if b.from <= t.at && t.at <= b.to {
				low, high = min(low, b.low), max(high, b.high)
			}
		}
		out[i] = ends{low, high}
	}
	return out
}
