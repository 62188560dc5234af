package learn

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"newmake/compile/constants"
	"newmake/compile/estimate/shrink"
)

// effects are what each run had of its own: the most probable place of each cause of
// scatter, once the constants are known.
func (s *solution) effects() []Effect {
	_, covariance, err := s.all().best()
	if err != nil {
		return nil
	}
	var out []Effect
	for k, r := range s.m.runs {
		jac, off := s.weighed(k)
		if jac == nil {
			continue
		}
		use := r.use()
		column := make([]float64, len(use))
		for j, c := range r.of {
			for a, i := range use {
				column[a] = r.shake.At(i, j)
			}
			g := mat.NewVecDense(len(use), r.white(column))
			var pull mat.VecDense
			pull.MulVec(jac.T(), g)
			told := mat.Dot(g, g) - mat.Inner(&pull, covariance, &pull)
			z := -mat.Dot(g, off)
			out = append(out, Effect{Run: k, Constant: c, Z: z, SD: math.Sqrt(max(1-told, 0)), Value: figure(c, z)})
		}
	}
	return out
}

const (
	leastTold   = 0.9 // of the prior standard deviation left, up to which a run tells an effect at all
	fewRuns     = 5   // below which the scatter's own prior is needed
	scatterWide = 1   // of the prior's standard deviations: scale of the prior of the scatter
)

// scattered is how much runs differ in each cause, where they tell it.
func scattered(effects []Effect) []Scatter {
	var out []Scatter
	y, sd := map[string][]float64{}, map[string][]float64{}
	var order []constants.Constant
	for _, e := range effects {
		v := e.SD * e.SD
		if e.SD > leastTold || v <= 0 {
			continue
		}
		key := e.Key()
		if y[key] == nil {
			order = append(order, e.Constant)
		}
		// What the run says by itself, before it was drawn to the middle of its prior.
		y[key] = append(y[key], e.Z/(1-v))
		sd[key] = append(sd[key], math.Sqrt(v/(1-v)))
	}
	for _, c := range order {
		key := c.Key()
		n := len(y[key])
		if n < 2 {
			continue
		}
		pooled := shrink.WithPrior(y[key], sd[key], scatterWide)
		if n >= fewRuns {
			pooled = shrink.DerSimonianLaird(y[key], sd[key])
		}
		out = append(out, Scatter{Constant: c, Times: pooled.Between, Runs: n})
	}
	return out
}
