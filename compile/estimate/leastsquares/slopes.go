package leastsquares

import (
	"fmt"

	"gonum.org/v1/gonum/mat"

	"newmake/lang/parallel"
)

// slopes are the derivatives of the residuals by the constants, in prior standard
// deviations.
func (p *Problem) slopes(u, r []float64) (*mat.Dense, error) {
	if p.Slopes == nil {
		return p.differences(u, r)
	}
	jac, err := p.Slopes(p.values(u), r)
	if err != nil {
		return nil, err
	}
	jac.Apply(func(_, j int, v float64) float64 { return v * p.Constants[j].SD }, jac)
	return jac, nil
}

// differences are the slopes by central differences; by a difference to one side
// where the model cannot be computed, or a bound lies, on the other.
func (p *Problem) differences(u, r []float64) (*mat.Dense, error) {
	step := p.Step
	if step == 0 {
		step = usualStep
	}
	jac := mat.NewDense(len(r), len(u), nil)
	failed := make([]error, len(u))
	parallel.Each(len(u), func(j int) {
		low, high := p.Constants[j].bounds()
		up, upErr := p.beside(u, j, min(u[j]+step, high))
		down, downErr := p.beside(u, j, max(u[j]-step, low))
		from, to := max(u[j]-step, low), min(u[j]+step, high)
		switch {
		case upErr != nil && downErr != nil:
			failed[j] = fmt.Errorf("%s: the model cannot be computed on either side of %g: %w", p.Constants[j].Name, p.values(u)[j], upErr)
			return
		case upErr != nil:
			up, to = r, u[j]
		case downErr != nil:
			down, from = r, u[j]
		}
		for i := range r {
			jac.Set(i, j, (up[i]-down[i])/(to-from))
		}
	})
	for _, err := range failed {
		if err != nil {
			return nil, err
		}
	}
	return jac, nil
}

func (p *Problem) beside(u []float64, j int, at float64) ([]float64, error) {
	v := append([]float64(nil), u...)
	v[j] = at
	return p.at(v)
}

// mend brings slopes into accord with what a step has shown: Broyden's rank-one
// change, the least that does it.
func mend(jac *mat.Dense, h, before, after []float64) {
	length := squares(h)
	if length == 0 {
		return
	}
	for i := range after {
		row := jac.RawRowView(i)
		off := after[i] - before[i]
		for j, x := range h {
			off -= row[j] * x
		}
		off /= length
		for j, x := range h {
			row[j] += off * x
		}
	}
}
