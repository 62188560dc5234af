package learn

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"newmake/compile/estimate/drift"
)

// seen is what one run says of a constant, held against all runs before it.
type seen struct {
	run int
	z   float64 // in standard deviations of what is to be expected
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
					of[j] = append(of[j], seen{k, x / math.Sqrt(told)})
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

// stepped is by how much a constant has been higher since a run, by all runs before and after
// together and all other constants with them; how is in standard deviations of it. It is the
// maximum of the likelihood for a change at that run. What the sums themselves have is less:
// they hold each run against all before it, and so against runs that had drifted.
func (s *solution) stepped(j, since int) (by, how float64, err error) {
	move, covariance, err := s.all().best()
	if err != nil {
		return 0, 0, err
	}
	var told, pulled float64
	both := mat.NewVecDense(len(s.m.of), nil)
	for k := since; k < len(s.m.runs); k++ {
		jac, off := s.weighed(k)
		if jac == nil {
			continue
		}
		column := jac.ColView(j)
		told += mat.Dot(column, column)
		var part, ahead mat.VecDense
		part.MulVec(jac.T(), column)
		both.AddVec(both, &part)
		ahead.MulVec(jac, move)
		ahead.AddVec(&ahead, off)
		pulled -= mat.Dot(column, &ahead)
	}
	left := told - mat.Inner(both, covariance, both)
	if left <= 1e-9*told {
		return 0, 0, nil // what was before tells nothing of it
	}
	return pulled / left, math.Abs(pulled) / math.Sqrt(left), nil
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
		// The sums notice it; since when and how far is what all runs together say.
		for _, v := range row[:shift.At+1] {
			by, how, err := s.stepped(j, v.run)
			if err != nil {
				return best, false, err
			}
			if how > plain {
				plain, found = how, true
				best = Drift{Constant: j, Since: v.run, At: row[shift.At].run, By: by}
			}
		}
	}
	return best, found, nil
}
