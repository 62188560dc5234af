package learn

import (
	"math"
	"slices"

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

// toldScatter is what runs say of one cause of scatter by themselves, before each was drawn to the
// middle of its prior.
type toldScatter struct {
	constants.Constant
	y, sd []float64
}

// byCause sorts effects by their cause, where at least two runs tell it.
func byCause(effects []Effect) []toldScatter {
	var out []toldScatter
	for _, e := range effects {
		v := e.SD * e.SD
		if e.SD > leastTold || v <= 0 {
			continue
		}
		i := slices.IndexFunc(out, func(t toldScatter) bool { return t.Key() == e.Key() })
		if i < 0 {
			i, out = len(out), append(out, toldScatter{Constant: e.Constant})
		}
		out[i].y = append(out[i].y, e.Z/(1-v))
		out[i].sd = append(out[i].sd, math.Sqrt(v/(1-v)))
	}
	return slices.DeleteFunc(out, func(t toldScatter) bool { return len(t.y) < 2 })
}

// scattered is how much runs differ in each cause, where they tell it.
func scattered(effects []Effect) []Scatter {
	var out []Scatter
	for _, t := range byCause(effects) {
		pooled := shrink.WithPrior(t.y, t.sd, scatterWide)
		if len(t.y) >= fewRuns {
			pooled = shrink.DerSimonianLaird(t.y, t.sd)
		}
		out = append(out, Scatter{Constant: t.Constant, Times: pooled.Between, Runs: len(t.y)})
	}
	return out
}

// toCome is how a run to come scatters in a cause, by all runs but one; as its prior has it
// where they do not tell. times is in its prior standard deviations.
func toCome(effects []Effect, but int) func(c constants.Constant) (times, excess float64) {
	others := slices.DeleteFunc(slices.Clone(effects), func(e Effect) bool { return e.Run == but })
	pooled := map[string]shrink.Pooled{}
	for _, t := range byCause(others) {
		pooled[t.Key()] = shrink.WithPrior(t.y, t.sd, scatterWide)
	}
	return func(c constants.Constant) (times, excess float64) {
		if p, ok := pooled[c.Key()]; ok {
			return p.ToCome, p.Excess
		}
		return 1, 0
	}
}
