package leastsquares

import (
	"fmt"
	"math"
)

// Interval holds a constant between two values. An end that is open was not found:
// its bound, or 20 standard deviations, came first.
type Interval struct {
	Low, High         float64
	LowOpen, HighOpen bool
}

// Rise95 is by how much the sum rises at the ends of an interval of 95 %: chi-square
// of one degree of freedom.
const Rise95 = 3.841458820694124

const (
	farthest    = 20   // standard deviations out, where a profile that has not risen is called flat
	nearEnough  = 0.01 // of the root of the rise
	mostRefits  = 12
	profileNear = 0.05 // tolerance of a refit, in standard deviations
)

// Profile is the interval of a constant by its profile likelihood: where the sum,
// made least over all other constants, has risen by so much (Raue et al.,
// Bioinformatics 25 (2009) 1923). A side that does not rise is open: the readings
// and what was known do not hold the constant there.
func (f *Fit) Profile(j int, rise float64) (Interval, error) {
	post, err := f.Posterior()
	if err != nil {
		return Interval{}, err
	}
	var i Interval
	if i.Low, i.LowOpen, err = f.side(post, j, -1, rise); err != nil {
		return i, err
	}
	i.High, i.HighOpen, err = f.side(post, j, 1, rise)
	return i, err
}

// side searches one end. The root of the rise is nearly a straight line, so the
// secant on it is quick.
func (f *Fit) side(post *Posterior, j int, sign, rise float64) (end float64, open bool, err error) {
	c := f.Problem.Constants[j]
	noise := 1.0
	if f.Problem.NoiseUnknown {
		noise = math.Sqrt(f.ReadingsSum / float64(max(len(f.Residuals)-len(f.u), 1)))
	}
	want := math.Sqrt(rise)
	sd := post.SD[j] / c.SD
	low, high := c.bounds()
	room := f.u[j] - low
	if sign > 0 {
		room = high - f.u[j]
	}
	var inner, outer, innerRoot, outerRoot = 0.0, math.Inf(1), 0.0, math.Inf(1)
	out := want * sd
	for range mostRefits {
		out = min(out, room, farthest*sd)
		root, err := f.rootAt(post, j, sign*out, noise)
		if err != nil {
			return 0, false, fmt.Errorf("%s: %w", c.Name, err)
		}
		if math.Abs(root-want) <= nearEnough*want {
			return c.Value + (f.u[j]+sign*out)*c.SD, false, nil
		}
		if root < want {
			if out >= min(room, farthest*sd) {
				return c.Value + (f.u[j]+sign*out)*c.SD, true, nil
			}
			inner, innerRoot = out, root
		} else {
			outer, outerRoot = out, root
		}
		switch {
		case !math.IsInf(outerRoot, 0):
			out = inner + (outer-inner)*(want-innerRoot)/(outerRoot-innerRoot)
		case root > 0:
			out *= min(max(want/root, 1.05), 3)
		default:
			out *= 3
		}
	}
	return c.Value + (f.u[j]+sign*out)*c.SD, false, nil
}

// rootAt is the root of the rise of the sum where a constant is held away from its
// best value, and all others are fitted again.
func (f *Fit) rootAt(post *Posterior, j int, away, noise float64) (float64, error) {
	u := append([]float64(nil), f.u...)
	held := make([]bool, len(u))
	held[j] = true
	u[j] += away
	for k, c := range f.Problem.Constants { // where the others go, if all is normal
		if k == j {
			continue
		}
		low, high := c.bounds()
		along := post.Covariance.At(k, j) / post.Covariance.At(j, j) * f.Problem.Constants[j].SD / c.SD
		u[k] = min(max(u[k]+along*away, low), high)
	}
	best, err := f.Problem.search(Options{Tolerance: profileNear, SlopesFor: 4, Slopes: f.Slopes}, u, held)
	if err != nil {
		return 0, err
	}
	return math.Sqrt(max(best.Sum()-f.Sum(), 0)) / noise, nil
}
