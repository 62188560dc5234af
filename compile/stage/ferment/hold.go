package ferment

import "slices"

// holdMarginK is how far from the temperatures of its hold a wash may be and still be held:
// a regulator takes half a degree to open (control-band), and a thermometer is good to
// another. From memory.
const holdMarginK = 1.0

// Leaving is where a ferment leaves the temperatures at which it is held.
type Leaving struct {
	First    Point // more than holdMarginK outside
	Farthest Point // on that side
}

// Leaves is where a ferment leaves its hold, upwards and downwards; nil where it does not.
// What it is on its way to the hold does not count.
func (r *Result) Leaves(lowC, highC float64) (above, below *Leaving) {
	if highC == 0 {
		return nil, nil
	}
	// One that never comes to it is outside all along.
	reached := !slices.ContainsFunc(r.Curve, func(p Point) bool { return p.TempC >= lowC })
	for _, p := range r.Curve {
		reached = reached || p.TempC >= lowC
		switch {
		case p.TempC > highC+holdMarginK:
			above = above.farther(p, above != nil && p.TempC > above.Farthest.TempC)
		case reached && p.TempC < lowC-holdMarginK:
			below = below.farther(p, below != nil && p.TempC < below.Farthest.TempC)
		}
	}
	return above, below
}

func (l *Leaving) farther(p Point, is bool) *Leaving {
	if l == nil {
		return &Leaving{p, p}
	}
	if is {
		l.Farthest = p
	}
	return l
}
