package leastsquares

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
)

// Posterior is what is known of the constants once they are fitted: normal about
// the most probable ones, by the curvature of the sum there (the approximation of
// Laplace). It is only as good as the sum is quadratic; a Profile tries that.
type Posterior struct {
	Covariance *mat.SymDense // in the constants' own units
	SD         []float64
	// Told is the part of the prior standard deviation that is left; not above 1. NaN
	// where nothing was known beforehand.
	Left []float64
	// Eigenvalues of the readings' information in prior units, falling. One below 1
	// is a combination of constants that the readings tell less of than was known.
	Eigenvalues []float64
}

// Posterior is what is known of the constants after the fit.
func (f *Fit) Posterior() (*Posterior, error) {
	n := len(f.Values)
	data := information(f.Slopes)
	full := mat.NewSymDense(n, nil)
	full.CopySym(data)
	for j, c := range f.Problem.Constants {
		full.SetSym(j, j, full.At(j, j)+c.weight())
	}
	scale, err := unit(full)
	if err != nil {
		return nil, err
	}
	var chol mat.Cholesky
	if !chol.Factorize(full) || chol.Cond() > most {
		return nil, errors.New("the readings leave some constants undetermined")
	}
	var inverse mat.SymDense
	if err := chol.InverseTo(&inverse); err != nil {
		return nil, err
	}
	p := &Posterior{Covariance: mat.NewSymDense(n, nil), SD: make([]float64, n), Left: make([]float64, n)}
	noise := 1.0
	if f.Problem.NoiseUnknown {
		noise = f.ReadingsSum / float64(max(len(f.Residuals)-n, 1))
	}
	for j, c := range f.Problem.Constants {
		for k, d := range f.Problem.Constants[:j+1] {
			p.Covariance.SetSym(j, k, noise*inverse.At(j, k)*scale[j]*scale[k]*c.SD*d.SD)
		}
		p.SD[j] = math.Sqrt(p.Covariance.At(j, j))
		if p.Left[j] = min(p.SD[j]/c.SD, 1); c.Flat {
			p.Left[j] = math.NaN()
		}
	}
	var eigen mat.EigenSym
	if !eigen.Factorize(data, false) {
		return nil, errors.New("no eigenvalues of the information were found")
	}
	p.Eigenvalues = eigen.Values(nil)
	for a, b := 0, n-1; a < b; a, b = a+1, b-1 {
		p.Eigenvalues[a], p.Eigenvalues[b] = p.Eigenvalues[b], p.Eigenvalues[a]
	}
	return p, nil
}

// Correlation of two constants.
func (p *Posterior) Correlation(j, k int) float64 {
	return p.Covariance.At(j, k) / (p.SD[j] * p.SD[k])
}

const (
	untold     = 0.7 // of the prior standard deviation left: the readings told nothing to speak of (own rule)
	confounded = 0.9 // correlation from which two constants cannot be told apart (own rule)
)

// Untold reports whether the readings have not told a constant: more than 70 % of its
// prior standard deviation is left.
func (p *Posterior) Untold(j int) bool { return p.Left[j] > untold }

// Pair is two constants, by their places.
type Pair struct {
	A, B        int
	Correlation float64
}

// Confounded are the pairs that the readings cannot tell apart: correlated by more
// than 0.9 either way.
func (p *Posterior) Confounded() (pairs []Pair) {
	for j := range p.SD {
		for k := range j {
			if c := p.Correlation(k, j); math.Abs(c) > confounded {
				pairs = append(pairs, Pair{k, j, c})
			}
		}
	}
	return pairs
}
