package learn

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// predicted foretells each run by all the others: one step along the line from the best
// constants of all runs to those without it.
func (s *solution) predicted() ([]Predicted, error) {
	all := s.all()
	var out []Predicted
	for k, r := range s.m.runs {
		jac, off := s.weighed(k)
		if jac == nil {
			continue
		}
		without := all.clone()
		without.add(jac, off, -1)
		move, covariance, err := without.best()
		if err != nil {
			return nil, err
		}
		library, err := r.predict(s.m, make([]float64, len(s.m.of)))
		if err != nil {
			return nil, err
		}
		before, err := r.off(library)
		if err != nil {
			return nil, err
		}
		var after mat.VecDense
		after.MulVec(jac, move)
		after.AddVec(&after, off)
		n, _ := jac.Dims()
		open := 0.0
		for a := range n {
			row := jac.RowView(a)
			open += mat.Inner(row, covariance, row)
		}
		p := Predicted{
			Run: k, Before: rms(r.white(before)), After: rms(after.RawVector().Data),
			Expected: math.Sqrt(1 + open/float64(n)),
		}
		for i, reading := range r.Readings {
			if !reading.Outcome || !r.used[i] {
				continue
			}
			slope := s.slopes[k].RowView(i)
			shake := r.shake.RowView(i)
			p.Outcomes = append(p.Outcomes, Outcome{
				Reading: i, Before: library[i], After: reading.Said + s.off[k][i] + mat.Dot(slope, move),
				SD: math.Sqrt(mat.Inner(slope, covariance, slope) + mat.Dot(shake, shake) + reading.SD*reading.SD),
			})
		}
		out = append(out, p)
	}
	return out, nil
}

func rms(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x * x
	}
	return math.Sqrt(sum / float64(len(v)))
}
