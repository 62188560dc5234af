package work

import "sort"

// around finds the points of a curve on either side of a time, and how far
// between them it lies, 0 to 1. Before the first and after the last point the
// curve stands still. A curve without points is all zero.
func around[P any](curve []P, timeOf func(P) float64, s float64) (a, b P, f float64) {
	if len(curve) == 0 {
		return a, b, 0
	}
	i := sort.Search(len(curve), func(i int) bool { return timeOf(curve[i]) >= s })
	switch {
	case i == 0:
		return curve[0], curve[0], 0
	case i == len(curve):
		return curve[i-1], curve[i-1], 0
	}
	a, b = curve[i-1], curve[i]
	return a, b, (s - timeOf(a)) / (timeOf(b) - timeOf(a))
}

func mix(a, b, f float64) float64 { return a + f*(b-a) }
