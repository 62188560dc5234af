package learn

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// predicted foretells each run by all the others: one step along the line from the best
// constants of all runs to those without it.
func (s *solution) predicted() ([]Predicted, error) {
	all, effects := s.all(), s.effects()
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
		scatters := toCome(effects, k)
		for i, reading := range r.Readings {
			if !reading.Outcome || !r.used[i] {
				continue
			}
			slope := s.slopes[k].RowView(i)
			variance := mat.Inner(slope, covariance, slope) + r.sure(i)*r.sure(i)
			fourth := 0.0 // its cumulant, which adds up as variances do
			for j, c := range r.of {
				times, excess := scatters(c)
				v := math.Pow(times*r.shake.At(i, j), 2)
				variance += v
				fourth += excess * v * v
			}
			p.Outcomes = append(p.Outcomes, Outcome{
				Reading: i, Before: library[i], After: reading.Said + s.off[k][i] + mat.Dot(slope, move),
				SD: math.Sqrt(variance), DF: freedom(fourth / (variance * variance)),
			})
		}
		out = append(out, p)
	}
	return out, nil
}

// mostFreedom is from where on a t is a normal to four digits of its quantiles.
const mostFreedom = 1e5

// freedom are the degrees of freedom of Student's t that has so much kurtosis above a
// normal's: 6/(df-4) (Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7).
func freedom(excess float64) float64 {
	if excess <= 0 {
		return mostFreedom
	}
	return min(4+6/excess, mostFreedom)
}

// t is Student's distribution about After, of its standard deviation SD.
func (o Outcome) t() distuv.StudentsT {
	return distuv.StudentsT{Mu: o.After, Sigma: o.SD * math.Sqrt((o.DF-2)/o.DF), Nu: o.DF}
}

// margin holds the reading 9 times in 10, on either side of After.
func (o Outcome) margin() float64 { return o.t().Quantile(.95) - o.After }

func rms(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x * x
	}
	return math.Sqrt(sum / float64(len(v)))
}
