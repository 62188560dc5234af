package review

import (
	"math"
	"slices"
	"sync"

	"gonum.org/v1/gonum/mat"

	"newmake/compile"
	"newmake/compile/constants"
	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/lang/parallel"
	"newmake/lang/recipe"
)

// model is a batch as it was made, with what is not known of it: what each reading
// should have said, how sure that is, and what the readings make of the constants.
type model struct {
	recipe *recipe.Batch
	memo   *numbers.Memo
	of     []constants.Constant
	n      *numbers.Batch                        // in the middle of all constants
	beside func(i int, z float64) *numbers.Batch // with one constant so many prior standard deviations from there; nil where it cannot be computed
	sides  sync.Once                             // of computing low and high, which take nearly all the time, when something is asked of them
	low    []*numbers.Batch                      // each constant a step down
	high   []*numbers.Batch                      // and up
	// instruments are the keys of those that were read: what each is off by is in all its readings,
	// and is not known either. Their places are behind those of the constants.
	instruments []string
	center      []float64 // where the constants are in n, in prior standard deviations; nil in their middle
	step        float64   // how far low and high are from there
}

// newModel computes a batch.
func newModel(b *recipe.Batch) (*model, error) {
	m := &model{recipe: b, memo: numbers.Keeping(64), of: constants.Moving(constants.Of(b)), step: 1}
	var err error
	if m.n, err = m.at(nil, nil); err != nil {
		return nil, err
	}
	m.beside = func(i int, z float64) *numbers.Batch {
		c := m.of[i]
		n, err := m.at([]constants.Constant{c}, []float64{within(c, z)})
		if err != nil {
			return nil
		}
		return n
	}
	return m, nil
}

// stepped computes the batch a step to either side of each constant.
func (m *model) stepped() {
	m.low, m.high = make([]*numbers.Batch, len(m.of)), make([]*numbers.Batch, len(m.of))
	parallel.Each(2*len(m.of), func(k int) {
		if i := k / 2; k%2 == 0 {
			m.low[i] = m.beside(i, -m.step)
		} else {
			m.high[i] = m.beside(i, m.step)
		}
	})
}

// nearSD is how far on either side of a place a batch is computed, in prior standard deviations,
// once it is about known where the constants lie.
const nearSD = 0.3

// around is the model about where the constants are taken to be: numbers do not go in straight
// lines from the middle to there. It is nil where the batch cannot be computed there.
func (m *model) around(s state) *model {
	n := m.batch(s)
	if n == nil {
		return nil
	}
	near := &model{recipe: m.recipe, memo: m.memo, of: m.of, n: n, instruments: m.instruments, step: nearSD}
	for i := range m.of {
		near.center = append(near.center, s.z.AtVec(i))
	}
	near.beside = func(i int, z float64) *numbers.Batch {
		beside := state{mat.VecDenseCopyOf(s.z), s.cov}
		beside.z.SetVec(i, near.center[i]+z)
		return near.batch(beside)
	}
	return near
}

// within is a constant's figure so many prior standard deviations from its middle, in
// its bounds.
func within(c constants.Constant, z float64) float64 {
	return min(max(c.Prior.At(z), c.Low), c.High)
}

func (m *model) at(of []constants.Constant, x []float64) (*numbers.Batch, error) {
	return compile.Numbers(constants.Set(m.recipe, of, x), m.memo, compile.Calculated)
}

// says is a number of a batch, where the batch comes to it.
type says func(n *numbers.Batch) (float64, bool)

// slopes is what one prior standard deviation of each constant does to a number, and what it would
// be in the middle of all of them, in a straight line; NaN where the batch does not come to it.
func (m *model) slopes(of says) (middle float64, by []float64) {
	by = make([]float64, len(m.of))
	middle, ok := of(m.n)
	if !ok {
		return math.NaN(), by
	}
	m.sides.Do(m.stepped)
	for i := range m.of {
		low, okLow := m.number(of, m.low[i])
		high, okHigh := m.number(of, m.high[i])
		switch {
		case okLow && okHigh:
			by[i] = (high - low) / (2 * m.step)
		case okHigh:
			by[i] = (high - middle) / m.step
		case okLow:
			by[i] = (middle - low) / m.step
		}
	}
	for i, z := range m.center {
		middle -= by[i] * z
	}
	return middle, by
}

func (m *model) number(of says, n *numbers.Batch) (float64, bool) {
	if n == nil {
		return 0, false
	}
	return of(n)
}

// state is what is known of the constants: the best figures, in prior standard
// deviations from the middle, and how sure they are.
type state struct {
	z   *mat.VecDense
	cov *mat.SymDense
}

// prior is what is known before any reading.
func (m *model) prior() state {
	all := len(m.of) + len(m.instruments)
	s := state{mat.NewVecDense(max(all, 1), nil), mat.NewSymDense(max(all, 1), nil)}
	for i := range all {
		s.cov.SetSym(i, i, 1)
	}
	return s
}

// told is one reading as the constants see it.
type told struct {
	of     int     // among the readings
	off    float64 // said less what the model says in the middle
	sd     float64 // of the reading, without what its instrument may be off by
	slopes []float64
}

// with is the slopes of what an instrument of a key says that may be off by so much.
func (m *model) with(slopes []float64, key string, offBy float64) []float64 {
	out := append(slices.Clone(slopes), make([]float64, len(m.instruments))...)
	if i := slices.Index(m.instruments, key); i >= 0 {
		out[len(slopes)+i] = offBy
	}
	return out
}

// after is what is known after readings: the linear update of a normal state by normal
// readings, one after the other (R. E. Kalman, J. Basic Engineering 82 (1960) 35). It is
// right as far as numbers go in straight lines with the constants.
func (s state) after(all []told) state {
	n := s.z.Len()
	z, cov := mat.VecDenseCopyOf(s.z), mat.NewSymDense(n, nil)
	cov.CopySym(s.cov)
	for _, t := range all {
		g := mat.NewVecDense(n, nil)
		for i, v := range t.slopes {
			g.SetVec(i, v)
		}
		var p mat.VecDense
		p.MulVec(cov, g)
		spread := mat.Dot(g, &p) + t.sd*t.sd
		if !(spread > 0) {
			continue
		}
		z.AddScaledVec(z, (t.off-mat.Dot(g, z))/spread, &p)
		next := mat.NewSymDense(n, nil)
		for i := range n {
			for j := i; j < n; j++ {
				next.SetSym(i, j, cov.At(i, j)-p.AtVec(i)*p.AtVec(j)/spread)
			}
		}
		cov = next
	}
	return state{z, cov}
}

// of is a number by what is known: where it is, and how sure that is.
func (s state) of(middle float64, slopes []float64) (is, sd float64) {
	g := mat.NewVecDense(s.z.Len(), nil)
	for i, v := range slopes {
		g.SetVec(i, v)
	}
	return middle + mat.Dot(g, s.z), math.Sqrt(max(mat.Inner(g, s.cov, g), 0))
}

// batch is the batch with the constants where they are now taken to be. It is nil where
// that cannot be computed.
func (m *model) batch(s state) *numbers.Batch {
	x := make([]float64, len(m.of))
	for i, c := range m.of {
		x[i] = within(c, s.z.AtVec(i))
		if c.Unsaid { // the middle is what the recipe has, which says nothing, and not what is usual
			x[i] = max(c.AsWritten+x[i]-c.Prior.At(0), c.Low)
		}
	}
	n, err := m.at(m.of, x)
	if err != nil {
		return nil
	}
	return n
}

// offBy is what an instrument is off by that nobody has checked, for a value: the one of
// a key, or any of its kind.
func offBy(all []constants.Constant, key, kind string, si float64) float64 {
	for _, c := range all {
		if c.Owner != constants.Instrument || c.Key() != key && c.ID != kind {
			continue
		}
		if c.Form == constants.Times {
			return math.Abs(si) * (c.Prior.At(1) - c.Prior.At(0))
		}
		return c.Prior.At(1) - c.Prior.At(0)
	}
	return 0
}

// heartsLPA is the pure alcohol in the hearts, in litres: what a house lives by.
func heartsLPA(n *numbers.Batch) (float64, bool) {
	return n.Distilled.Hearts.PureAlcoholM3() * lot.LitresPerM3, n.Distilled.Hearts.MassKg() > 0
}
