package leastsquares

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
)

const (
	leastWay = 0.4 // an end is looked for between so many times as far as the curvature has it
	mostWay  = 2.5 // and so many
	asGood   = 0.1 // of the way: nearer, it is not tried again
)

// Profile is the interval of a constant outside of which the sum, least over all other constants,
// has risen by more than rise (2.71 for 9 times in 10): the profile of the likelihood, of which
// Posterior takes the curvature alone (Bates and Watts, Nonlinear Regression Analysis and Its
// Applications, Wiley 1988, section 6.1, from memory). The model is computed anew at each end, and
// the others go where their slopes have them, in one step. In the constant's own unit; an end
// beyond which a bound lies is that bound. The residuals must be in standard deviations.
func (f *Fit) Profile(post *Posterior, j int, rise float64) (low, high float64, err error) {
	p := f.Problem
	if p.NoiseUnknown {
		return 0, 0, errors.New("the noise of the residuals is not known")
	}
	n := len(f.Values)
	u := make([]float64, n)
	for k, c := range p.Constants {
		u[k] = (f.Values[k] - c.Value) / c.SD
	}
	curve := information(f.Slopes)
	for k, c := range p.Constants {
		curve.SetSym(k, k, curve.At(k, k)+c.weight())
	}
	// least is the sum at a place, and least along the slopes of all constants but the one that is kept.
	least := func(u []float64, kept int) (float64, error) {
		r, err := p.at(u)
		if err != nil {
			return 0, err
		}
		var grad mat.VecDense
		grad.MulVec(f.Slopes.T(), mat.NewVecDense(len(r), r))
		var free []int
		for k := range n {
			if k != kept {
				free = append(free, k)
			}
		}
		sum := squares(r) + p.prior(u)
		if len(free) == 0 {
			return sum, nil
		}
		h, g := mat.NewSymDense(len(free), nil), mat.NewVecDense(len(free), nil)
		for a, k := range free {
			g.SetVec(a, grad.AtVec(k)+p.Constants[k].weight()*u[k])
			for b, l := range free[:a+1] {
				h.SetSym(a, b, curve.At(k, l))
			}
		}
		var root mat.Cholesky
		if !root.Factorize(h) {
			return 0, errors.New("the other constants are not determined")
		}
		var step mat.VecDense
		if err := root.SolveVecTo(&step, g); err != nil {
			return 0, err
		}
		return sum - mat.Dot(g, &step), nil
	}
	base, err := least(u, -1)
	if err != nil {
		return 0, 0, err
	}
	own := p.Constants[j]
	sd := post.SD[j] / own.SD
	lowest, highest := own.bounds()
	end := func(sign float64) (float64, error) {
		way := func(s float64) float64 { return min(max(u[j]+sign*s*sd*math.Sqrt(rise), lowest), highest) }
		risen := func(s float64) (float64, error) {
			at := make([]float64, n)
			for k, c := range p.Constants {
				lo, hi := c.bounds()
				at[k] = min(max(u[k]+(way(s)-u[j])*post.Covariance.At(k, j)/(c.SD*own.SD)/(sd*sd), lo), hi)
			}
			sum, err := least(at, j)
			return math.Sqrt(max(sum-base, 0) / rise), err
		}
		one, err := risen(1)
		if err != nil {
			return 0, err
		}
		s := mostWay
		if one > 1/mostWay {
			s = max(1/one, leastWay)
		}
		if math.Abs(s-1) > asGood {
			two, err := risen(s)
			if err != nil {
				return 0, err
			}
			if two != one { // the root of the rise is nearly straight
				s = 1 + (s-1)*(1-one)/(two-one)
			}
			s = min(max(s, leastWay), mostWay)
		}
		return own.Value + float64(own.SD*way(s)), nil
	}
	if low, err = end(-1); err != nil {
		return 0, 0, err
	}
	high, err = end(1)
	return low, high, err
}
