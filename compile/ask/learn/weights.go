package learn

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"newmake/compile"
	"newmake/compile/constants"
)

// atRest is how far a cause may still go, in prior standard deviations, for the fit to stand.
const atRest = 0.25

// weigh finds the covariance of each run's readings: of reading them, and of what
// scatters from run to run.
func (m *model) weigh() error {
	rows := 0
	for _, r := range m.runs {
		r.first = rows
		rows += r.count()
		if r.count() == 0 {
			continue
		}
		root, err := r.covariance(nil)
		if err != nil {
			return err
		}
		r.lower = new(mat.TriDense)
		root.LTo(r.lower)
	}
	if rows == 0 {
		return errors.New("the runs hold no reading that the model predicts")
	}
	return nil
}

// covariance is that of the readings that are used, as its root: of reading them, and of what
// scatters from run to run but for some causes.
func (r *run) covariance(but []int) (*mat.Cholesky, error) {
	use := r.use()
	w := mat.NewSymDense(len(use), nil)
	for a, i := range use {
		for b, k := range use[:a+1] {
			sum := r.together(i, k)
			for j := range r.of {
				if !slices.Contains(but, j) {
					sum += r.shake.At(i, j) * r.shake.At(k, j)
				}
			}
			w.SetSym(a, b, sum)
		}
		w.SetSym(a, a, w.At(a, a)+r.Readings[i].SD*r.Readings[i].SD+r.eased(i))
	}
	var root mat.Cholesky
	if !root.Factorize(w) {
		return nil, fmt.Errorf("run %q: its readings cannot be weighed", r.Number)
	}
	return &root, nil
}

// together is the covariance of two readings by the clocks that both go by.
func (r *run) together(i, j int) (sum float64) {
	for clock, sign := range r.Readings[i].Clocks {
		sum += sign * r.Readings[j].Clocks[clock] // whole numbers: any order gives the same
	}
	return sum * r.late[i] * r.late[j]
}

// sure is one standard deviation of a reading by itself, of reading it and of the clock.
func (r *run) sure(i int) float64 {
	return math.Sqrt(r.Readings[i].SD*r.Readings[i].SD + r.together(i, i))
}

// timed finds what the clocks do to the readings of a run.
func (r *run) timed(z []float64) error {
	if r.late == nil {
		r.late = make([]float64, len(r.Readings))
	}
	if r.Reduced != nil || !slices.ContainsFunc(r.Readings, func(rd Reading) bool { return rd.ByClock != nil }) {
		return nil
	}
	of, x := r.figures(z, r.had)
	n, err := compile.Numbers(constants.Set(r.Recipe, of, x), r.memo, compile.Calculated)
	if err != nil {
		return err
	}
	for i, rd := range r.Readings {
		if rd.ByClock != nil {
			r.late[i] = rd.ByClock(n)
		}
	}
	return nil
}

// use are the readings that are used.
func (r *run) use() []int {
	var use []int
	for i, used := range r.used {
		if used {
			use = append(use, i)
		}
	}
	return use
}

func (r *run) count() int { return len(r.use()) }

// white is a vector of the readings that are used, in independent standard deviations.
func (r *run) white(v []float64) []float64 {
	out := slices.Clone(v)
	for a := range out {
		for b := range a {
			out[a] -= r.lower.At(a, b) * out[b]
		}
		out[a] /= r.lower.At(a, a)
	}
	return out
}

// off is what a run's readings are off, model less reading.
func (r *run) off(said []float64) ([]float64, error) {
	var out []float64
	for _, i := range r.use() {
		d := said[i] - r.Readings[i].Said
		if math.IsNaN(d) {
			return nil, fmt.Errorf("%s: not reached", r.Readings[i].Words)
		}
		out = append(out, d)
	}
	return out, nil
}
