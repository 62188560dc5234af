package learn

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"newmake/compile/constants"
	"newmake/compile/estimate/leastsquares"
)

// predicted foretells each run by all the others: one step along the line from the best
// constants of all runs to those without it.
func (s *solution) predicted() ([]Predicted, error) {
	all, effects := s.all(), s.effects()
	var out []Predicted
	for k := range s.m.runs {
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
		p, err := s.foretold(k, move, covariance, toCome(effects, k))
		if err != nil {
			return nil, err
		}
		out = append(out, p)
	}
	return out, nil
}

// foretoldAnew is predicted with constants that are found from all the other runs from the
// beginning: nothing of the run is in them, nor in what is known of how runs scatter. How its
// readings are weighed, and which are left out as wrong, is as all runs together have it.
func (s *solution) foretoldAnew(runs []Run, known []constants.Constant, o Options) ([]Predicted, error) {
	var out []Predicted
	for k, r := range s.m.runs {
		if r.count() == 0 {
			continue
		}
		z, covariance, scatters := map[string]float64{}, func(_, _ string) float64 { return 0 }, toCome(nil, -1)
		if rest := slices.Delete(slices.Clone(runs), k, k+1); len(rest) > 0 {
			m, _, err := newModel(rest, known)
			if err != nil {
				return nil, err
			}
			others, _, err := m.solve(&Learned{}, o)
			if err != nil {
				return nil, err
			}
			_, told, err := others.all().best()
			if err != nil {
				return nil, err
			}
			for j, key := range m.keys {
				z[key] = others.z[j]
			}
			covariance = func(a, b string) float64 {
				i, of := m.place[a]
				j, both := m.place[b]
				if !of || !both {
					return 0
				}
				return told.At(i, j)
			}
			scatters = toCome(others.effects(), -1)
		}
		p, err := r.foretoldBy(known, z, covariance, scatters)
		if err != nil {
			return nil, err
		}
		p.Run = k
		out = append(out, p)
	}
	return out, nil
}

// foretoldBy foretells a run by constants and their covariance, by their keys; one that they do
// not have stays where its prior is.
func (r *run) foretoldBy(known []constants.Constant, at map[string]float64, covariance func(a, b string) float64,
	scatters func(constants.Constant) (float64, float64),
) (p Predicted, err error) {
	m, _, err := newModel([]Run{r.Run}, known)
	if err != nil {
		return p, err
	}
	alone := m.runs[0]
	alone.used, alone.had, alone.shake, alone.late, alone.loose = slices.Clone(r.used), r.had, r.shake, r.late, r.loose
	z, c := make([]float64, len(m.of)), mat.NewSymDense(len(m.of), nil)
	for i, a := range m.keys {
		z[i] = at[a]
		for j, b := range m.keys[:i+1] {
			c.SetSym(i, j, covariance(a, b))
		}
		if _, is := at[a]; !is {
			c.SetSym(i, i, 1)
		}
	}
	said, err := alone.predict(m, z)
	if err != nil {
		return p, err
	}
	for i, v := range said { // by these constants the run may not come to it
		alone.used[i] = alone.used[i] && !math.IsNaN(v)
	}
	if err := m.weigh(); err != nil {
		return p, err
	}
	f := &leastsquares.Fit{Values: z}
	if f.Slopes, err = m.slopes(z, nil); err != nil {
		return p, err
	}
	if f.Residuals, err = m.residuals(z); err != nil {
		return p, err
	}
	return solved(m, f).foretold(0, mat.NewVecDense(len(z), nil), c, scatters)
}

// foretold foretells a run from constants that lie so far from where the solution stands, along
// the line, and are known so well.
func (s *solution) foretold(k int, move *mat.VecDense, covariance *mat.SymDense, scatters func(constants.Constant) (float64, float64)) (p Predicted, err error) {
	r := s.m.runs[k]
	jac, off := s.weighed(k)
	library, err := r.predict(s.m, make([]float64, len(s.m.of)))
	if err != nil {
		return p, err
	}
	before, err := r.off(library)
	if err != nil {
		return p, err
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
	p = Predicted{
		Run: k, Before: rms(r.white(before)), After: rms(after.RawVector().Data),
		Expected: math.Sqrt(1 + open/float64(n)),
	}
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
	return p, nil
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
