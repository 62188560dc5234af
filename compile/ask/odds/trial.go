package odds

import (
	"math"

	"newmake/compile"
	"newmake/compile/ask/compare"
	"newmake/compile/ask/size"
	"newmake/compile/constants"
	"newmake/compile/measure"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/lang/parallel"
	"newmake/lang/recipe"
)

// How many draws may be asked for, and how many are made if nobody says.
const (
	LeastDraws = 50
	UsualDraws = 400
	MostDraws  = 20000
)

// Trial is a batch tried: what came of each draw.
type Trial struct {
	Batch   *recipe.Batch
	Plan    *plan.Plan // as written, not rounded
	Numbers []compare.Measured
	Draws   constants.Draws
	Runs    []Run
	Failed  int // draws of which no batch came
}

// Run is what came of one draw.
type Run struct {
	OK     bool      // it could be computed
	Values []float64 // of Numbers, in their order
	Casks  int
	Fill   float64 // casks' worth of spirit at entry strength
	Kept   []bool  // the promises
}

// Try computes a batch n times. The error is of the batch as it is written.
func Try(b *recipe.Batch, n int, u measure.Units) (*Trial, error) {
	memo := numbers.Keeping(stagesKept)
	p, err := compile.Outcome(b, memo)
	if err != nil {
		return nil, err
	}
	t := &Trial{
		Batch: b, Plan: p, Numbers: compare.Summary(u), Runs: make([]Run, n),
		Draws: constants.Drawn(constants.Drawable(constants.Of(b)), n, b.Learned),
	}
	fill := size.Casks(1, b.Gauge).Of
	parallel.Each(n, func(i int) {
		p, err := compile.Outcome(constants.Set(b, t.Draws.Of, t.Draws.X[i]), memo)
		if err != nil {
			return // a draw of which nothing comes is counted as one
		}
		r := Run{OK: true, Casks: p.Cask.Casks, Fill: fill(p), Values: make([]float64, len(t.Numbers))}
		for k, m := range t.Numbers {
			r.Values[k] = m.Of(p)
		}
		for _, e := range p.Promises {
			r.Kept = append(r.Kept, e.Kept)
		}
		t.Runs[i] = r
	})
	for _, r := range t.Runs {
		if !r.OK {
			t.Failed++
		}
	}
	return t, nil
}

// stagesKept is how many results of each stage are kept: a draw is like no other, and
// only its own ferment is asked for twice.
const stagesKept = 8

// column is one number of all draws of which a batch came.
func (t *Trial) column(of func(r *Run) float64) []float64 {
	var out []float64
	for i := range t.Runs {
		if r := &t.Runs[i]; r.OK {
			out = append(out, of(r))
		}
	}
	return out
}

// odds counts the draws in which something is so. One of which nothing came is none
// of them.
func (t *Trial) odds(so func(r *Run) bool) Odds {
	n := 0
	for i := range t.Runs {
		if r := &t.Runs[i]; r.OK && so(r) {
			n++
		}
	}
	return oddsOf(n, len(t.Runs))
}

// scores are the draws of which a batch came in standard deviations, for the shares.
func (t *Trial) scores() [][]float64 {
	var out [][]float64
	for i, r := range t.Runs {
		if !r.OK {
			continue
		}
		z := make([]float64, len(t.Draws.Of))
		for k, c := range t.Draws.Of {
			if z[k] = c.Prior.Z(t.Draws.X[i][k]); math.IsInf(z[k], 0) {
				z[k] = 0 // a lognormal that was cut off at nothing
			}
		}
		out = append(out, z)
	}
	return out
}
