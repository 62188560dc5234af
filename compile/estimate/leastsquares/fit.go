package leastsquares

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
)

// Status is how a search ended.
type Status uint8

// How a search can end. Only Converged is a result to rely on.
const (
	Converged    Status = iota
	Stalled             // no step makes the sum less, and yet the slopes say that one should
	Exhausted           // the steps allowed were used up
	Undetermined        // some constants do not bear on the residuals at all, or only together
)

func (s Status) String() string {
	return [...]string{"converged", "stalled", "exhausted", "undetermined"}[s]
}

// Fit is what a search found.
type Fit struct {
	Problem     *Problem
	Values      []float64 // the constants, in their own units
	Residuals   []float64 // in standard deviations of the readings
	ReadingsSum float64   // of their squares
	PriorSum    float64   // of the squares of the constants' distances from their prior means
	Status      Status
	// OffsetSD is how far the least sum still lies, by the slopes, in standard
	// deviations of the result.
	OffsetSD     float64
	AtBound      []int // -1 at its lower bound, 1 at its upper one, 0 between
	Steps, Evals int
	// Slopes are the derivatives of the residuals by the constants, in prior
	// standard deviations.
	Slopes *mat.Dense
}

// Fit searches for the constants. An error says that there is no result at all;
// how good a result is says its Status.
func (p *Problem) Fit(o Options) (*Fit, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	u := make([]float64, len(p.Constants))
	for j, v := range o.Start {
		low, high := p.Constants[j].bounds()
		u[j] = min(max((v-p.Constants[j].Value)/p.Constants[j].SD, low), high)
	}
	return p.search(o, u)
}

// search begins at u.
func (p *Problem) search(o Options, u []float64) (*Fit, error) {
	if o.Tolerance == 0 {
		o.Tolerance = usualTolerance
	}
	if o.Most == 0 {
		o.Most = usualMost
	}
	s := &searching{p: p, o: o, u: u, damping: 1e-3, growth: 2, widest: make([]float64, len(u))}
	var err error
	if s.r, err = p.at(u); err != nil {
		return nil, fmt.Errorf("%w: %w", errNoStart, err)
	}
	s.evals++
	s.sum = squares(s.r) + p.prior(u)
	if o.Slopes != nil {
		s.jac, s.age, s.lent = mat.DenseCopyOf(o.Slopes), 1, true
	} else if err = s.anew(); err != nil {
		return nil, err
	}
	status, steps := Exhausted, 0
	for ; steps < o.Most; steps++ {
		over, err := s.step()
		if err != nil {
			return nil, err
		}
		if over != nil {
			status = *over
			break
		}
	}
	f := &Fit{
		Problem: p, Values: p.values(s.u), Residuals: s.r, ReadingsSum: squares(s.r), PriorSum: p.prior(s.u),
		Status: status, OffsetSD: s.offset, AtBound: make([]int, len(u)), Steps: steps, Evals: s.evals, Slopes: s.jac,
	}
	for j, c := range p.Constants {
		switch low, high := c.bounds(); {
		case s.u[j] <= low:
			f.AtBound[j] = -1
		case s.u[j] >= high:
			f.AtBound[j] = 1
		}
	}
	return f, nil
}

// searching is where a search stands.
type searching struct {
	p       *Problem
	o       Options
	u, r    []float64
	sum     float64
	jac     *mat.Dense
	age     int  // steps since the slopes were formed; 0: they are those of u
	lent    bool // the slopes came from elsewhere, and every step has gone well with them
	widest  []float64
	damping float64
	growth  float64
	offset  float64
	evals   int
	vain    int // steps that made nothing less, since the last good one
}

const (
	near     = 1.0 // what a step may still be foreseen to gain, of the sum of squares, for patience to be lost
	mostVain = 12  // steps in a row that make nothing less, after which it is lost anyway
)

// worthwhile is how much of what is foreseen a good step makes good.
const worthwhile = 0.1

func (s *searching) anew() error {
	jac, err := s.p.slopes(s.u, s.r)
	if err != nil {
		return err
	}
	s.evals += 2 * len(s.u)
	s.jac, s.age, s.lent = jac, 0, false
	return nil
}

// step tries one step. What it gives is how the search ended, if it has.
func (s *searching) step() (*Status, error) {
	curve, grad := s.normal()
	for j := range s.widest {
		s.widest[j] = max(s.widest[j], curve.At(j, j))
	}
	free := s.free(grad)
	newton, determined := solved(curve, grad, free, nil)
	if determined {
		s.offset = math.Sqrt(max(-dot(grad, newton), 0)) / s.noise()
		if s.offset <= s.o.Tolerance {
			return s.ending(Converged)
		}
	}
	damped := make([]float64, len(s.u))
	for j := range damped {
		damped[j] = s.damping * s.widest[j]
	}
	h, ok := solved(curve, grad, free, damped)
	if !ok { // flat in some direction, and has always been
		if s.damping > 1e10 {
			return s.ending(Undetermined)
		}
		s.damp()
		return nil, nil
	}
	to := s.clipped(h)
	short := true
	for j := range h {
		h[j] = to[j] - s.u[j]
		short = short && math.Abs(h[j]) <= 1e-13*(math.Abs(s.u[j])+1e-3)
	}
	if short {
		if !determined {
			return s.ending(Undetermined)
		}
		return s.ending(Stalled)
	}
	r, err := s.p.at(to)
	s.evals++
	sum := math.Inf(1)
	if err == nil {
		sum = squares(r) + s.p.prior(to)
	}
	foreseen := -2*dot(grad, h) - quadratic(curve, h)
	gain := (s.sum - sum) / foreseen
	if foreseen <= rounding*s.sum && sum <= s.sum*(1+rounding) {
		gain = 1 // what there is to gain is less than the sum is known to
	}
	if !(foreseen > 0) || !(gain > 0) {
		if s.age > 0 {
			return nil, s.anew()
		}
		if s.vain++; s.o.Patience > 0 && s.vain >= s.o.Patience && (foreseen < near || s.vain >= mostVain) {
			return s.ending(Stalled)
		}
		s.damp()
		return nil, nil
	}
	if gain > worthwhile {
		s.vain = 0
	}
	before := s.r
	s.u, s.r, s.sum = to, r, sum
	s.damping *= max(1.0/3, 1-math.Pow(2*gain-1, 3))
	s.growth = 2
	if s.lent || s.age+1 < s.o.SlopesFor {
		mend(s.jac, h, before, r)
		s.age++
		return nil, nil
	}
	return nil, s.anew()
}

// ending is how a search ends. With slopes that are not those of the place it goes
// on with new ones instead, unless the slopes that were lent have done well.
func (s *searching) ending(status Status) (*Status, error) {
	if s.age > 0 && !(s.lent && status == Converged) {
		return nil, s.anew()
	}
	return &status, nil
}

func (s *searching) damp() {
	s.damping *= s.growth
	s.growth *= 2
}

// normal is half the second and half the first derivative of the sum, as the slopes
// have it.
func (s *searching) normal() (*mat.SymDense, []float64) {
	curve := information(s.jac)
	grad := make([]float64, len(s.u))
	for i, x := range s.r {
		for j, slope := range s.jac.RawRowView(i) {
			grad[j] += slope * x
		}
	}
	for j, c := range s.p.Constants {
		curve.SetSym(j, j, curve.At(j, j)+c.weight())
		grad[j] += c.weight() * s.u[j]
	}
	return curve, grad
}

// information is what the readings tell of the constants: JᵀJ.
func information(jac *mat.Dense) *mat.SymDense {
	_, n := jac.Dims()
	m := mat.NewSymDense(n, nil)
	m.SymOuterK(1, jac.T())
	return m
}

// free are the constants that may move: not at a bound beyond which
// the sum would be less.
func (s *searching) free(grad []float64) []int {
	var free []int
	for j, c := range s.p.Constants {
		low, high := c.bounds()
		if s.u[j] <= low && grad[j] > 0 || s.u[j] >= high && grad[j] < 0 {
			continue
		}
		free = append(free, j)
	}
	return free
}

func (s *searching) clipped(h []float64) []float64 {
	to := make([]float64, len(h))
	for j, c := range s.p.Constants {
		low, high := c.bounds()
		to[j] = min(max(s.u[j]+h[j], low), high)
	}
	return to
}

// noise is the standard deviation of a residual.
func (s *searching) noise() float64 {
	if !s.p.NoiseUnknown {
		return 1
	}
	return math.Sqrt(max(s.sum, math.SmallestNonzeroFloat64) / float64(max(len(s.r)-len(s.u), 1)))
}

// solved is the step -(curve + damped)⁻¹ grad of the free constants. It is not ok
// where the curve leaves one undetermined.
func solved(curve *mat.SymDense, grad []float64, free []int, damped []float64) (h []float64, ok bool) {
	h = make([]float64, len(grad))
	if len(free) == 0 {
		return h, true
	}
	m, right := mat.NewSymDense(len(free), nil), mat.NewVecDense(len(free), nil)
	for a, j := range free {
		for b, k := range free[:a+1] {
			m.SetSym(a, b, curve.At(j, k))
		}
		if damped != nil {
			m.SetSym(a, a, curve.At(j, j)+damped[j])
		}
		right.SetVec(a, -grad[j])
	}
	scale, err := unit(m)
	if err != nil {
		return h, false
	}
	var c mat.Cholesky
	if !c.Factorize(m) || c.Cond() > most {
		return h, false
	}
	for a := range free {
		right.SetVec(a, right.AtVec(a)*scale[a])
	}
	var x mat.VecDense
	if err := c.SolveVecTo(&x, right); err != nil {
		return h, false
	}
	for a, j := range free {
		h[j] = x.AtVec(a) * scale[a]
	}
	return h, true
}

// rounding is how exactly the sum is known, as a part of it.
const rounding = 1e-12

// most is the condition beyond which a matrix is taken for singular.
const most = 1e14

// unit scales a matrix so that its diagonal is 1, and gives the scales.
func unit(m *mat.SymDense) ([]float64, error) {
	n := m.SymmetricDim()
	scale := make([]float64, n)
	for j := range scale {
		if scale[j] = 1 / math.Sqrt(m.At(j, j)); math.IsInf(scale[j], 0) || math.IsNaN(scale[j]) {
			return nil, errors.New("nothing is known of a constant")
		}
	}
	for j := range n {
		for k := range j + 1 {
			m.SetSym(j, k, m.At(j, k)*scale[j]*scale[k])
		}
	}
	return scale, nil
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}

func quadratic(m *mat.SymDense, h []float64) float64 {
	v := mat.NewVecDense(len(h), h)
	return mat.Inner(v, m, v)
}
