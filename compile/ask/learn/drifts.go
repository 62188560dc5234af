package learn

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"newmake/compile/estimate/drift"
	"newmake/compile/estimate/reconcile"
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
// them, beside those that explained what had seemed to be gross errors. One that drifts drags
// others with it, so they are taken one after the other: the plainest, and then what is left
// once its runs are computed with it.
func (s *solution) drifts(known []Drift) ([]Drift, error) {
	rest := s.clone()
	out := slices.Clone(known)
	for _, d := range out {
		rest.without(d)
	}
	for range mostDrifts - len(out) {
		d, found, err := rest.plainest()
		if err != nil || !found {
			return out, err
		}
		out = with(out, d)
		rest.without(d)
	}
	return out, nil
}

// with is a list with a drift more; what is more of one that it has is added to that.
func with(all []Drift, d Drift) []Drift {
	if i := slices.IndexFunc(all, func(o Drift) bool { return o.Constant == d.Constant && o.Since == d.Since }); i >= 0 {
		all[i].By += d.By
		return all
	}
	return append(all, d)
}

// without takes a drift out of what the readings are off.
func (s *solution) without(d Drift) {
	for k := d.Since; k < len(s.m.runs); k++ {
		for i := range s.off[k] {
			s.off[k][i] += s.slopes[k].At(i, d.Constant) * d.By
		}
	}
}

// changed is a constant that has been higher since a run; how is in standard deviations of it.
type changed struct {
	by, how float64
	runs    int // from there on that tell of it
}

// steps are those of a constant, by the run that they begin with, by all runs before and after
// together and all other constants with them: the maximum of the likelihood for a change at that
// run. What the sums themselves have is less: they hold each run against all before it, and so
// against runs that had drifted. move and covariance are the best of all runs.
func (s *solution) steps(j int, move *mat.VecDense, covariance *mat.SymDense) []changed {
	out := make([]changed, len(s.m.runs))
	var told, pulled float64
	runs := 0
	both := mat.NewVecDense(len(s.m.of), nil)
	for k := len(s.m.runs) - 1; k >= 0; k-- {
		jac, off := s.weighed(k)
		if jac != nil {
			column := jac.ColView(j)
			own := mat.Dot(column, column)
			var part, ahead mat.VecDense
			part.MulVec(jac.T(), column)
			both.AddVec(both, &part)
			ahead.MulVec(jac, move)
			ahead.AddVec(&ahead, off)
			told, pulled = told+own, pulled-mat.Dot(column, &ahead)
			if own > leastSeen {
				runs++
			}
		}
		if left := told - mat.Inner(both, covariance, both); left > 1e-9*told { // else what was before tells nothing of it
			out[k] = changed{pulled / left, math.Abs(pulled) / math.Sqrt(left), runs}
		}
	}
	return out
}

// plainly is by how much, in the sum of squares, a drift has to explain more than a reading
// that was called wrong, to be said in its place.
const plainly = 4

// drifted is the step that explains more than calling a reading wrong would that is so many
// standard deviations off, if there is one: of all constants and runs, such a one as chance
// shows as seldom as a gross error.
func (s *solution) drifted(times float64, move *mat.VecDense, covariance *mat.SymDense) (Drift, bool) {
	best, how := Drift{}, 0.0
	tried := 0
	for j := range s.m.of {
		for since, x := range s.steps(j, move, covariance)[1:] {
			if x.runs == 0 {
				continue
			}
			if tried++; x.how > how {
				best, how = Drift{Constant: j, Since: since + 1, At: since + 1, By: x.by}, x.how
			}
		}
	}
	return best, tried > 0 && how*how > times*times+plainly && how > reconcile.Critical(reconcile.Sidak(falseAlarm, tried))
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
	move, covariance, err := s.all().best()
	if err != nil {
		return best, false, err
	}
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
		steps := s.steps(j, move, covariance)
		for _, v := range row[:shift.At+1] {
			if x := steps[v.run]; x.how > plain {
				plain, found = x.how, true
				best = Drift{Constant: j, Since: v.run, At: row[shift.At].run, By: x.by}
			}
		}
	}
	return best, found, nil
}
