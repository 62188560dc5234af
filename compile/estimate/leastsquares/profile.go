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
	w := &profile{Fit: f, post: post, j: j, rise: rise, u: make([]float64, len(f.Values)), curve: information(f.Slopes)}
	for k, c := range p.Constants {
		w.u[k] = (f.Values[k] - c.Value) / c.SD
		w.curve.SetSym(k, k, w.curve.At(k, k)+c.weight())
	}
	w.sd = post.SD[j] / p.Constants[j].SD
	if w.base, err = w.least(w.u, -1); err != nil {
		return 0, 0, err
	}
	if low, err = w.end(-1); err != nil {
		return 0, 0, err
	}
	high, err = w.end(1)
	return low, high, err
}

// profile is the sum of squares along constant j.
type profile struct {
	*Fit
	post  *Posterior
	j     int
	rise  float64
	u     []float64     // the constants at the fit, in standard deviations of what was known before
	curve *mat.SymDense // of the sum, there
	sd    float64       // of constant j by the posterior, in those before
	base  float64       // the sum at the fit
}

// least is the sum at a place, and from there least along the slopes of all constants but
// the one that is kept.
func (w *profile) least(u []float64, kept int) (float64, error) {
	p := w.Problem
	r, err := p.at(u)
	if err != nil {
		return 0, err
	}
	var grad mat.VecDense
	grad.MulVec(w.Slopes.T(), mat.NewVecDense(len(r), r))
	var free []int
	for k := range u {
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
			h.SetSym(a, b, w.curve.At(k, l))
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

// end is the end of the interval below (-1) or above (1), in the constant's own unit.
func (w *profile) end(sign float64) (float64, error) {
	own := w.Problem.Constants[w.j]
	one, err := w.risen(sign, 1)
	if err != nil {
		return 0, err
	}
	s := mostWay
	if one > 1/mostWay {
		s = max(1/one, leastWay)
	}
	if math.Abs(s-1) > asGood {
		two, err := w.risen(sign, s)
		if err != nil {
			return 0, err
		}
		if two != one { // the root of the rise is nearly straight
			s = 1 + (s-1)*(1-one)/(two-one)
		}
		s = min(max(s, leastWay), mostWay)
	}
	return own.Value + float64(own.SD*w.way(sign, s)), nil
}

// way is where constant j is, s times as far from the fit as the curvature has the end.
func (w *profile) way(sign, s float64) float64 {
	lowest, highest := w.Problem.Constants[w.j].bounds()
	return min(max(w.u[w.j]+sign*s*w.sd*math.Sqrt(w.rise), lowest), highest)
}

// risen is the root of how much the sum has risen there, in what it may rise.
func (w *profile) risen(sign, s float64) (float64, error) {
	constants := w.Problem.Constants
	own, to := constants[w.j], w.way(sign, s)
	at := make([]float64, len(w.u))
	for k, c := range constants {
		lo, hi := c.bounds()
		at[k] = min(max(w.u[k]+(to-w.u[w.j])*w.post.Covariance.At(k, w.j)/(c.SD*own.SD)/(w.sd*w.sd), lo), hi)
	}
	sum, err := w.least(at, w.j)
	return math.Sqrt(max(sum-w.base, 0) / w.rise), err
}
