package learn

import (
	"math"

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

// leastSeen is how much a run must tell of a constant to count in the search for its
// drift: less than a prior standard deviation is told where the weight is above 1.
const leastSeen = 0.1

// seen follows the runs in their order. What each is off from what came before is
// independent from run to run where nothing drifts (Brown, Durbin and Evans, Journal of the
// Royal Statistical Society B 37 (1975) 149). The first run is where the house begins:
// what it is off from the library is no drift.
func (s *solution) seen() (of [][]seen, err error) {
	of = make([][]seen, len(s.m.of))
	known := s.nothing()
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

// drifts looks for constants that do not stay, by a cumulative sum of what each run says of
// them.
func (s *solution) drifts() ([]Drift, error) {
	of, err := s.seen()
	if err != nil {
		return nil, err
	}
	total := 0
	for _, row := range of {
		total += len(row)
	}
	sums := limit(total)
	var out []Drift
	for j, row := range of {
		z := make([]float64, len(row))
		for i, v := range row {
			z[i] = v.z
		}
		shift, found := sums.First(z)
		if !found {
			continue
		}
		var sum, weight float64
		for _, v := range row[shift.Since : shift.At+1] {
			sum += v.by * v.weight
			weight += v.weight
		}
		out = append(out, Drift{Constant: j, Since: row[shift.Since].run, At: row[shift.At].run, By: sum / weight})
	}
	return out, nil
}
