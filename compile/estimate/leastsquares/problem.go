// Package leastsquares finds the constants of a model from readings, with what is
// known of the constants beforehand.
//
// It minimises the sum of the squares of the readings' residuals, each divided by
// its standard deviation, and of the constants' distances from their prior means,
// each divided by its prior standard deviation: the most probable constants, if
// both are normal. All of it is done in units of the prior standard deviations, so
// that constants of any size go together.
//
// The method is that of Levenberg and Marquardt, with the damping of Nielsen
// (Damping parameter in Marquardt's method, IMM-REP-1999-05, Technical University
// of Denmark 1999) and with the scaling of Moré (The Levenberg-Marquardt algorithm,
// Lecture Notes in Mathematics 630 (1978) 105): each constant by the largest
// curvature it has shown. A search is over when the next step would be a small part of
// the constants' own uncertainty (Bates and Watts, Technometrics 23 (1981) 179).
//
// gonum has no fitter of least squares; its matrices are used.
package leastsquares

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
)

// Constant is a number to be found, and what is known of it beforehand.
type Constant struct {
	Name string
	// Value is the prior mean and where the search begins, SD the prior standard
	// deviation.
	Value, SD float64
	// Flat says that nothing is known beforehand. SD is then no more than a size
	// for steps and scales.
	Flat bool
	// Low and High bound it, where Low is below High.
	Low, High float64
}

// Problem is what is to be fitted.
type Problem struct {
	Constants []Constant
	// Residuals gives for constants what the model says less what was read, in
	// standard deviations of the reading. It is called from several goroutines. An
	// error, or a number that is none, says that the model cannot be computed there.
	Residuals func(values []float64) ([]float64, error)
	// Slopes gives the derivatives of the residuals, a row a residual and a column a
	// constant. Where it is nil they are formed by central differences of Step.
	Slopes func(values, residuals []float64) (*mat.Dense, error)
	// Step is the half width of a difference, in prior standard deviations; 1/30
	// where it is 0. A model with small kinks wants steps that are wider than these.
	Step float64
	// NoiseUnknown says that the residuals are in a unit of their own: their
	// scatter is then estimated from them, and scales the covariance.
	NoiseUnknown bool
}

// Options are how a search goes.
type Options struct {
	// Tolerance is how near to the least sum the search must come, in standard
	// deviations of the result; 0.01 where it is 0.
	Tolerance float64
	// Most is how many steps are tried; 100 where it is 0.
	Most int
	// Patience is after how many steps in a row that make nothing less the search is given
	// up, near the end of which a model with small kinks would have it creep; 0: only when
	// steps become nothing.
	Patience int
	// Start is where the search begins; the constants' Values where it is nil.
	Start []float64
	// Slopes are those of a place nearby, in prior standard deviations, to begin with: they are
	// formed anew only if a step goes wrong with them.
	Slopes *mat.Dense
	// SlopesFor is for how many steps the slopes are kept and mended by what each step
	// has shown (Broyden, Mathematics of Computation 19 (1965) 577); 1 where it is 0.
	SlopesFor int
}

const (
	usualStep      = 1.0 / 30
	usualTolerance = 0.01
	usualMost      = 100
)

// errNoStart says that the model cannot be computed where the search begins.
var errNoStart = errors.New("the model cannot be computed at the constants that the search begins with")

func (c Constant) bounds() (low, high float64) {
	if c.Low < c.High {
		return (c.Low - c.Value) / c.SD, (c.High - c.Value) / c.SD
	}
	return math.Inf(-1), math.Inf(1)
}

func (p *Problem) check() error {
	for _, c := range p.Constants {
		switch {
		case !(c.SD > 0) || math.IsInf(c.SD, 0) || math.IsNaN(c.Value):
			return fmt.Errorf("%s: wants a value and a standard deviation above 0, not %g and %g", c.Name, c.Value, c.SD)
		case c.Low < c.High && (c.Value < c.Low || c.Value > c.High):
			return fmt.Errorf("%s: %g is outside its bounds %g..%g", c.Name, c.Value, c.Low, c.High)
		}
	}
	return nil
}

// values are constants in their own units.
func (p *Problem) values(u []float64) []float64 {
	v := make([]float64, len(u))
	for j, c := range p.Constants {
		v[j] = c.Value + float64(c.SD*u[j])
	}
	return v
}

// weight is 1 for a constant of which something is known beforehand.
func (c Constant) weight() float64 {
	if c.Flat {
		return 0
	}
	return 1
}

func (p *Problem) at(u []float64) ([]float64, error) {
	r, err := p.Residuals(p.values(u))
	if err != nil {
		return nil, err
	}
	for i, x := range r {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return nil, fmt.Errorf("residual %d is no number", i)
		}
	}
	return r, nil
}

// prior is the part of the sum that the constants' distances from their prior
// means make.
func (p *Problem) prior(u []float64) float64 {
	sum := 0.0
	for j, c := range p.Constants {
		sum += c.weight() * u[j] * u[j]
	}
	return sum
}

func squares(r []float64) float64 {
	sum := 0.0
	for _, x := range r {
		sum += x * x
	}
	return sum
}
