package learn

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"newmake/compile/constants"
	"newmake/compile/estimate/leastsquares"
	"newmake/lang/parallel"
)

func (m *model) residuals(z []float64) ([]float64, error) {
	out := make([]float64, m.rows())
	return out, m.each(func(r *run) error {
		said, err := r.predict(m, z)
		if err != nil || r.count() == 0 {
			return err
		}
		off, err := r.off(said)
		if err != nil {
			return err
		}
		copy(out[r.first:], r.white(off))
		return nil
	})
}

// slopes are the derivatives of the residuals. A run costs two evaluations for each
// constant of the house that it has; stages before the one that a constant bears on
// are remembered. Instruments cost nothing.
func (m *model) slopes(z, _ []float64) (*mat.Dense, error) {
	jac := mat.NewDense(m.rows(), len(m.of), nil)
	type task struct {
		r    *run
		j    int // in z
		bias bool
	}
	var tasks []task
	for _, r := range m.runs {
		for _, j := range r.at {
			tasks = append(tasks, task{r, j, false})
		}
		tasks = append(tasks, task{r, 0, true})
	}
	errs := make([]error, len(tasks))
	parallel.Each(len(tasks), func(t int) {
		r := tasks[t].r
		if r.count() == 0 {
			return
		}
		if tasks[t].bias {
			errs[t] = m.biasSlopes(r, z, jac)
			return
		}
		j := tasks[t].j
		errs[t] = m.houseSlopes(r, z, j, jac)
	})
	for t, err := range errs {
		if err != nil {
			return nil, fmt.Errorf("run %q: %w", tasks[t].r.Number, err)
		}
	}
	return jac, nil
}

func (m *model) houseSlopes(r *run, z []float64, j int, jac *mat.Dense) error {
	c := m.of[j]
	beside := func(at float64) ([]float64, error) {
		v := slices.Clone(z)
		v[j] = at
		return r.predict(m, v)
	}
	low, high := max(z[j]-step, c.Prior.Z(c.Low)), min(z[j]+step, c.Prior.Z(c.High))
	up, upErr := beside(high)
	down, downErr := beside(low)
	if err := cmp.Or(upErr, downErr); err != nil {
		return fmt.Errorf("%s: %w", c.Words, err)
	}
	use := r.use()
	d := make([]float64, len(use))
	for a, i := range use {
		if d[a] = (up[i] - down[i]) / (high - low); math.IsNaN(d[a]) {
			return fmt.Errorf("%s, %s: not reached", c.Words, r.Readings[i].Words)
		}
	}
	for a, v := range r.white(d) {
		jac.Set(r.first+a, j, v)
	}
	return nil
}

func (m *model) biasSlopes(r *run, z []float64, jac *mat.Dense) error {
	said, err := r.predict(m, z)
	if err != nil {
		return err
	}
	use := r.use()
	for j := range m.of {
		d := make([]float64, len(use))
		found := false
		for a, i := range use {
			if r.bias[i] != j {
				continue
			}
			found = true
			c := m.of[j]
			perZ := (c.Prior.At(z[j]+step) - c.Prior.At(z[j]-step)) / (2 * step)
			if d[a] = perZ; c.Form == constants.Times {
				d[a] = perZ * said[i] / figure(c, z[j])
			}
		}
		if !found {
			continue
		}
		for a, v := range r.white(d) {
			jac.Set(r.first+a, j, v)
		}
	}
	return nil
}

// problem is the model as one of least squares. A constant is its place in its prior,
// in standard deviations.
func (m *model) problem() *leastsquares.Problem {
	p := &leastsquares.Problem{Residuals: m.residuals, Slopes: m.slopes}
	for i, c := range m.of {
		k := leastsquares.Constant{Name: m.keys[i], SD: 1}
		low, high := c.Prior.Z(c.Low), c.Prior.Z(c.High)
		k.Low, k.High = max(low, -farthest), min(high, farthest)
		if k.Value = 0; k.Value < k.Low || k.Value > k.High {
			k.Value = min(max(0, k.Low), k.High)
		}
		p.Constants = append(p.Constants, k)
	}
	return p
}

// farthest is how far out a constant is searched, in prior standard deviations: a
// prior that is further off is wrong, and the bound says so.
const farthest = 8
