package bands

import (
	"math"

	"newmake/compile"
	"newmake/compile/constants"
	"newmake/compile/plan"
	"newmake/lang/parallel"
	"newmake/lang/recipe"
)

// bench is a batch computed at either end of each constant.
type bench struct {
	of        []constants.Constant
	middle    *plan.Plan
	low, high []*plan.Plan // nil where nothing came of it
	computed  int
	failed    int
	pairs     []constants.Pair
}

// newBench computes a batch. Nil if it cannot be computed as it is written.
func newBench(b *recipe.Batch) *bench {
	memo := new(compile.Memo)
	k := &bench{of: constants.Drawable(constants.Of(b))}
	if k.middle, _ = memo.Compile(b); k.middle == nil {
		return nil
	}
	k.pairs = constants.Together(k.of, b.Learned)
	ends := make([]*plan.Plan, 2*len(k.of))
	parallel.Each(len(ends), func(i int) {
		c := k.of[i/2]
		low, high := c.Range()
		x := [...]float64{low, high}[i%2]
		if x == c.AsWritten {
			ends[i] = k.middle
			return
		}
		ends[i], _ = memo.Compile(constants.Set(b, []constants.Constant{c}, []float64{x}))
	})
	for i, p := range ends {
		if p == nil {
			k.failed++
		}
		if i%2 == 0 {
			k.low = append(k.low, p)
		} else {
			k.high = append(k.high, p)
		}
	}
	k.computed = len(ends)
	return k
}

// figure is a number of a plan; NaN where the plan has none.
type figure func(p *plan.Plan) float64

// moves is what each constant does to a figure at its ends.
type moves struct{ low, high []float64 }

// moves computes a figure at every end. An end at which there is none counts as the
// other turned round.
func (k *bench) moves(of figure) (middle float64, m moves) {
	middle = of(k.middle)
	m = moves{make([]float64, len(k.of)), make([]float64, len(k.of))}
	if math.IsNaN(middle) {
		return middle, m
	}
	by := func(p *plan.Plan) float64 {
		if p == nil {
			return math.NaN()
		}
		return of(p) - middle
	}
	for i := range k.of {
		low, high := by(k.low[i]), by(k.high[i])
		switch {
		case math.IsNaN(low) && math.IsNaN(high):
			low, high = 0, 0
		case math.IsNaN(low):
			low = -high
		case math.IsNaN(high):
			high = -low
		}
		m.low[i], m.high[i] = low, high
	}
	return middle, m
}

// spread is how far below and above its middle a number may come.
type spread struct{ down, up float64 }

// spread adds up what the constants do. What both ends do on one side is on that side
// alone.
func (k *bench) spread(m moves) spread {
	var down, up float64
	for i := range m.low {
		down += square(min(m.low[i], m.high[i], 0))
		up += square(max(m.low[i], m.high[i], 0))
	}
	for _, p := range k.pairs {
		both := p.Correlation * (m.high[p.One] - m.low[p.One]) * (m.high[p.Two] - m.low[p.Two]) / 2
		down, up = down+both, up+both
	}
	return spread{math.Sqrt(max(down, 0)), math.Sqrt(max(up, 0))}
}

// around is how far a figure may come from its middle.
func (k *bench) around(of figure) (middle float64, s spread) {
	middle, m := k.moves(of)
	return middle, k.spread(m)
}

// and adds what has nothing to do with the constants.
func (s spread) and(besides float64) spread {
	return spread{math.Hypot(s.down, besides), math.Hypot(s.up, besides)}
}

func square(x float64) float64 { return x * x }
