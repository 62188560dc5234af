package learn

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"newmake/compile/estimate/drift"
)

// seen is what one run says of a constant, held against all runs before it.
type seen struct {
	run    int
	z      float64 // in standard deviations of what is to be expected
	by     float64 // how far the constant lies from where it was, in prior standard deviations
	weight float64 // how much is told: one over the variance of by
}

// vague is how much the library's word counts in the search for a drift: as if its
// standard deviations were five times as wide.
const vague = 1.0 / 25

// leastSeen is how much a run must tell of a constant to count in the search for its
// drift: less than a prior standard deviation is told where the weight is above 1.
const leastSeen = 0.1

// seen follows the runs in their order. What each is off from what came before is
// independent from run to run where nothing drifts (Brown, Durbin and Evans, Journal of the
// Royal Statistical Society B 37 (1975) 149). The first run is where the house begins:
// what it is off from the library is no drift, and so the library's word counts for
// little here.
func (s *solution) seen() (of [][]seen, err error) {
	of = make([][]seen, len(s.m.of))
	known := s.nothing()
	known.curve.ScaleSym(vague, known.curve)
	known.grad.ScaleVec(vague, known.grad)
	begun := false
	for k := range s.m.runs {
		jac, off := s.weighed(k)
		if jac == nil {
			continue
		}
		if begun {
			move, covariance, err := known.best()
			if err != nil {
				return nil, err
			}
			rows, _ := jac.Dims()
			var spread mat.Dense
			spread.Product(jac, covariance, jac.T())
			w := mat.NewSymDense(rows, nil)
			for a := range rows {
				for b := range a {
					w.SetSym(a, b, (spread.At(a, b)+spread.At(b, a))/2)
				}
				w.SetSym(a, a, spread.At(a, a)+1)
			}
			var root mat.Cholesky
			if !root.Factorize(w) {
				continue
			}
			var ahead, pull mat.VecDense
			ahead.MulVec(jac, move)
			ahead.AddVec(&ahead, off)
			if err := root.SolveVecTo(&pull, &ahead); err != nil {
				return nil, err
			}
			for j := range of {
				column := jac.ColView(j)
				var part mat.VecDense
				if err := root.SolveVecTo(&part, column); err != nil {
					return nil, err
				}
				if told := mat.Dot(column, &part); told > leastSeen {
					x := -mat.Dot(column, &pull)
					of[j] = append(of[j], seen{k, x / math.Sqrt(told), x / told, told})
				}
			}
		}
		begun = true
		known.add(jac, off, 1)
	}
	return of, nil
}

const (
	usualSlack = 0.5  // tuned to a shift of one standard deviation
	leastLimit = 5    // Montgomery's usual limit
	mostLimit  = 12   // beyond it nothing would ever be found
	alarms     = 0.05 // chance of a drift said where there is none, of all constants together
)

// limit is that of a cumulative sum at which so many readings, of all charts together, have a
// false alarm with the chance that is allowed.
func limit(readings int) drift.Cusum {
	c := drift.Cusum{Slack: usualSlack, Limit: leastLimit}
	for c.Limit < mostLimit && c.RunLength(0) < float64(readings)/alarms {
		c.Limit += 0.1
	}
	return c
}

// mostDrifts is how many are said: more are a model that does not fit.
const mostDrifts = 4

// drifts looks for constants that do not stay, by a cumulative sum of what each run says of
// them. One that drifts drags others with it, so they are taken one after the other: the
// plainest, and then what is left once its runs are computed with it.
func (s *solution) drifts() ([]Drift, error) {
	rest := &solution{m: s.m, z: s.z, slopes: s.slopes}
	for _, off := range s.off {
		rest.off = append(rest.off, slices.Clone(off))
	}
	var out []Drift
	for len(out) < mostDrifts {
		d, found, err := rest.plainest()
		if err != nil || !found {
			return out, err
		}
		out = append(out, d)
		for k := d.Since; k < len(s.m.runs); k++ {
			for i := range rest.off[k] {
				rest.off[k][i] += rest.slopes[k].At(i, d.Constant) * d.By
			}
		}
	}
	return out, nil
}

// plainest is the drift that the runs show most plainly.
func (s *solution) plainest() (best Drift, found bool, err error) {
	of, err := s.seen()
	if err != nil {
		return best, false, err
	}
	total := 0
	for _, row := range of {
		total += len(row)
	}
	sums := limit(total)
	plain := 0.0
	for j, row := range of {
		z := make([]float64, len(row))
		for i, v := range row {
			z[i] = v.z
		}
		shift, signal := sums.First(z)
		if !signal {
			continue
		}
		var sum, weight float64
		for _, v := range row[shift.Since : shift.At+1] {
			sum += v.by * v.weight
			weight += v.weight
		}
		if how := math.Abs(sum) / math.Sqrt(weight); how > plain {
			plain, found = how, true
			best = Drift{Constant: j, Since: row[shift.Since].run, At: row[shift.At].run, By: sum / weight}
		}
	}
	return best, found, nil
}
