package learn

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"newmake/compile/constants"
	"newmake/compile/numbers"
	"newmake/lang/parallel"
)

// step is the half width of a difference, in prior standard deviations: wide, for the
// steps of the integrators and of a run that settles are in the model's answers.
const step = 0.1

// scatterStep is the same of a cause of scatter.
const scatterStep = 0.25

// model is all runs with all constants.
type model struct {
	of    []constants.Constant // house and instruments
	keys  []string
	place map[string]int
	runs  []*run
	at    []float64 // the constants at which it was found what scatter does
	least float64   // the sum of all squares there
}

// run is one run in the model.
type run struct {
	Run
	own     []constants.Constant // of the house, that this recipe has
	at      []int                // their places
	bias    []int                // of each reading the place of its instrument, -1
	used    []bool               // of each reading
	memo    *numbers.Memo
	of      []constants.Constant // what scatters from run to run
	had     []float64            // where each of these is taken to be, in prior standard deviations
	watched []int                // of these, those that are looked at where they are taken to be
	shake   *mat.Dense           // readings by these: what one prior standard deviation does, there
	late    []float64            // of each reading: what one standard deviation of each of its clocks does
	loose   []float64            // of each reading: by how much it is taken to be less sure; nil where each counts whole
	lower   *mat.TriDense        // root of the covariance of the readings that are used
	first   int                  // row of its first reading that is used
}

// learnable reports whether a constant can be told by what is read in a run at all.
func learnable(c constants.Constant) bool { return c.Stage != numbers.Filling }

// instruments are the constants of instruments, by the kind of instrument; a batch has
// all of them.
func newModel(runs []Run, known []constants.Constant) (*model, []Gross, error) {
	m := &model{place: map[string]int{}}
	var unused []Gross
	put := func(c constants.Constant, key string) int {
		if i, ok := m.place[key]; ok {
			return i
		}
		m.place[key] = len(m.of)
		m.of, m.keys = append(m.of, c), append(m.keys, key)
		return len(m.of) - 1
	}
	m.runs = make([]*run, len(runs))
	for k := range runs {
		r := &run{Run: runs[k], memo: numbers.Keeping(200)}
		for _, c := range r.constants() {
			switch {
			case !learnable(c):
			case c.Owner == constants.House:
				r.own, r.at = append(r.own, c), append(r.at, put(c, c.Key()))
			case c.Owner == constants.Run:
				r.of = append(r.of, c)
			}
		}
		m.runs[k] = r
	}
	for _, r := range m.runs {
		for _, reading := range r.Readings {
			i := slices.IndexFunc(known, func(c constants.Constant) bool { return c.Key() == reading.Instrument })
			if i < 0 {
				r.bias = append(r.bias, -1)
				continue
			}
			r.bias = append(r.bias, put(known[i], known[i].Key()))
		}
	}
	m.at, m.least = make([]float64, len(m.of)), math.Inf(1)
	err := m.each(func(r *run) error {
		said, err := r.predict(m, make([]float64, len(m.of)))
		if err != nil {
			return err
		}
		r.used = make([]bool, len(said))
		for i, v := range said {
			r.used[i] = !math.IsNaN(v)
		}
		r.had = make([]float64, len(r.of))
		r.shake = mat.NewDense(max(len(r.Readings), 1), max(len(r.of), 1), nil)
		if err := r.timed(make([]float64, len(m.of))); err != nil {
			return err
		}
		return r.scatter(m, make([]float64, len(m.of)), nil)
	})
	if err != nil {
		return nil, nil, err
	}
	for k, r := range m.runs {
		for i, used := range r.used {
			if !used {
				unused = append(unused, Gross{Run: k, Reading: i})
			}
		}
	}
	return m, unused, m.weigh()
}

// each does something for every run, on all processors.
func (m *model) each(do func(r *run) error) error {
	errs := make([]error, len(m.runs))
	parallel.Each(len(m.runs), func(k int) { errs[k] = do(m.runs[k]) })
	for k, err := range errs {
		if err != nil {
			return fmt.Errorf("run %q: %w", m.runs[k].Number, err)
		}
	}
	return nil
}

// scatter finds what each cause of scatter does to the readings of a run, about where
// constants and causes are taken to be; of the causes in which, or of all.
func (r *run) scatter(m *model, z []float64, which []int) error {
	if which == nil {
		for j := range r.of {
			which = append(which, j)
		}
	}
	for _, j := range which {
		c := r.of[j]
		low, high := max(r.had[j]-scatterStep, c.Prior.Z(c.Low)), min(r.had[j]+scatterStep, c.Prior.Z(c.High))
		beside := func(at float64) ([]float64, error) {
			by := slices.Clone(r.had)
			by[j] = at
			return r.shaken(m, z, by)
		}
		up, upErr := beside(high)
		down, downErr := beside(low)
		if err := cmp.Or(upErr, downErr); err != nil {
			return err
		}
		for i := range r.Readings {
			if d := (up[i] - down[i]) / (high - low); !math.IsNaN(d) {
				r.shake.Set(i, j, d)
			}
		}
	}
	return nil
}

// strong says that a cause of scatter does more to a reading than is lost in reading it: it
// is worth being looked at where it is, and not in its middle alone.
const strong = 0.5

func (r *run) strong() []int {
	var out []int
	for j := range r.of {
		for i := range r.Readings {
			if math.Abs(r.shake.At(i, j)) > strong*r.sure(i) {
				out = append(out, j)
				break
			}
		}
	}
	return out
}

// mostHad is how far out a cause of scatter is taken to be at most, in prior standard
// deviations.
const mostHad = 3

// look takes the causes of scatter of each run to be where the fit has them, and finds anew
// what they do there (Lindstrom and Bates, Biometrics 46 (1990) 673, whose alternation this is).
// It goes so far as makes the sum of all squares less, and gives from where to search on, and how
// far the farthest of causes and constants went: nowhere, where there is nothing left to gain.
func (m *model) look(z []float64, effects []Effect) (from []float64, moved float64, err error) {
	to := make([][]float64, len(m.runs))
	for k, r := range m.runs {
		to[k] = slices.Clone(r.had)
		for _, j := range r.strong() {
			if !slices.Contains(r.watched, j) {
				r.watched, m.least = append(r.watched, j), math.Inf(1)
			}
		}
		for _, e := range effects {
			if e.Run != k {
				continue
			}
			for _, j := range r.watched {
				if c := r.of[j]; c.Key() == e.Key() {
					to[k][j] = min(max(e.Z, -mostHad, c.Prior.Z(c.Low)), mostHad, c.Prior.Z(c.High))
				}
			}
		}
	}
	z = slices.Clone(z)
	for try := 0; ; try++ {
		sum, err := m.sum(z, to)
		if err != nil {
			return nil, 0, err
		}
		if sum < m.least-worthIt {
			m.least = sum
			break
		}
		if try == halvings {
			return slices.Clone(z), 0, nil
		}
		for j := range z {
			z[j] = (z[j] + m.at[j]) / 2
		}
		for k, r := range m.runs {
			for j := range to[k] {
				to[k][j] = (to[k][j] + r.had[j]) / 2
			}
		}
	}
	for j := range z {
		moved = max(moved, math.Abs(z[j]-m.at[j]))
	}
	for k, r := range m.runs {
		for j := range to[k] {
			moved = max(moved, math.Abs(to[k][j]-r.had[j]))
		}
		r.had = to[k]
	}
	m.at = z
	err = m.each(func(r *run) error {
		if moved >= atRest {
			if err := cmp.Or(r.timed(z), r.scatter(m, z, r.watched)); err != nil {
				return err
			}
		}
		said, err := r.predict(m, z)
		for i, v := range said {
			r.used[i] = r.used[i] && !math.IsNaN(v)
		}
		return err
	})
	if err != nil {
		return nil, moved, err
	}
	return slices.Clone(z), moved, m.weigh()
}

const (
	worthIt  = 0.02 // of the sum of squares: less is not worth a look at another place
	halvings = 2    // of a step that does not make the sum less
)

// sum is the sum of all squares: of readings, constants and the causes of scatter that are
// watched, each run computed with these where they are taken to be. What is not watched is in the
// covariance.
func (m *model) sum(z []float64, had [][]float64) (float64, error) {
	parts := make([]float64, len(m.runs))
	place := map[*run]int{}
	for k, r := range m.runs {
		place[r] = k
	}
	err := m.each(func(r *run) error {
		if r.count() == 0 {
			return nil
		}
		k := place[r]
		said, err := r.shaken(m, z, had[k])
		if err != nil {
			return err
		}
		off, err := r.off(said)
		if err != nil {
			return err
		}
		root, err := r.covariance(r.watched)
		if err != nil {
			return err
		}
		d := mat.NewVecDense(len(off), off)
		var x mat.VecDense
		if err := root.SolveVecTo(&x, d); err != nil {
			return err
		}
		parts[k] = mat.Dot(d, &x)
		return nil
	})
	var sum float64
	for k, part := range parts {
		sum += part
		for _, j := range m.runs[k].watched {
			sum += had[k][j] * had[k][j]
		}
	}
	for _, u := range z {
		sum += u * u
	}
	return sum, err
}

// alike takes what scatters to do what the house's constant does that it goes with (the vigor of
// the yeast, and its rate): a run by itself must not tell the two apart, and the least difference
// of their slopes would.
func (s *solution) alike() error {
	for k, r := range s.m.runs {
		for e, c := range r.of {
			j, ok := s.m.place[c.As]
			if !ok {
				continue
			}
			part := perZ(c, r.had[e]) / perZ(s.m.of[j], s.z[j])
			if math.IsNaN(part) || math.IsInf(part, 0) {
				continue // the house's stands at a bound of nothing
			}
			for i := range r.Readings {
				if r.used[i] {
					r.shake.Set(i, e, part*s.slopes[k].At(i, j))
				}
			}
		}
	}
	return s.m.weigh()
}

// perZ is by how much of itself a figure grows with a prior standard deviation.
func perZ(c constants.Constant, z float64) float64 {
	return (c.Prior.At(z+step) - c.Prior.At(z-step)) / (2 * step * figure(c, z))
}

func (m *model) rows() int {
	last := m.runs[len(m.runs)-1]
	return last.first + last.count()
}
