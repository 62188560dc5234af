package learn

import (
	"errors"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"newmake/compile/estimate/leastsquares"
	"newmake/compile/estimate/reconcile"
)

// solution is the model as a line about its best constants: slopes and residuals of the
// readings, with no weights, so that a reading or a run can be left out without
// computing anything anew.
type solution struct {
	m      *model
	z      []float64
	slopes []*mat.Dense // of each run: all readings by constants; 0 of those that are not used
	off    [][]float64  // of each run: model less reading
}

// solved takes the weights off a fit.
func solved(m *model, f *leastsquares.Fit) *solution {
	s := &solution{m: m, z: zOf(f)}
	for _, r := range m.runs {
		slopes := mat.NewDense(max(len(r.Readings), 1), len(m.of), nil)
		off := make([]float64, len(r.Readings))
		if n := r.count(); n > 0 {
			var raw mat.Dense
			raw.Mul(r.lower, f.Slopes.Slice(r.first, r.first+n, 0, len(m.of)))
			var d mat.VecDense
			d.MulVec(r.lower, mat.NewVecDense(n, slices.Clone(f.Residuals[r.first:r.first+n])))
			for a, i := range r.use() {
				slopes.SetRow(i, raw.RawRowView(a))
				off[i] = d.AtVec(a)
			}
		}
		s.slopes, s.off = append(s.slopes, slopes), append(s.off, off)
	}
	return s
}

func zOf(f *leastsquares.Fit) []float64 { return slices.Clone(f.Values) }

// weighed is a run's slopes and residuals in independent standard deviations, of the
// readings that are used.
func (s *solution) weighed(k int) (jac *mat.Dense, off *mat.VecDense) {
	r := s.m.runs[k]
	use := r.use()
	if len(use) == 0 {
		return nil, nil
	}
	jac = mat.NewDense(len(use), len(s.m.of), nil)
	column := make([]float64, len(use))
	for j := range s.m.of {
		for a, i := range use {
			column[a] = s.slopes[k].At(i, j)
		}
		jac.SetCol(j, r.white(column))
	}
	for a, i := range use {
		column[a] = s.off[k][i]
	}
	return jac, mat.NewVecDense(len(use), r.white(column))
}

// slopesWeighed are the slopes of all runs, in independent standard deviations.
func (s *solution) slopesWeighed() *mat.Dense {
	all := mat.NewDense(s.m.rows(), len(s.m.of), nil)
	for k, r := range s.m.runs {
		if jac, _ := s.weighed(k); jac != nil {
			all.Slice(r.first, r.first+r.count(), 0, len(s.m.of)).(*mat.Dense).Copy(jac)
		}
	}
	return all
}

// told is what runs and priors tell together of the constants: half the second and half
// the first derivative of the sum of squares.
type told struct {
	curve *mat.SymDense
	grad  *mat.VecDense
}

// nothing is told: the priors alone, as seen from z.
func (s *solution) nothing() told {
	n := len(s.m.of)
	t := told{mat.NewSymDense(n, nil), mat.NewVecDense(n, slices.Clone(s.z))}
	for j := range n {
		t.curve.SetSym(j, j, 1)
	}
	return t
}

// add counts a run in; with sign -1, out again.
func (t told) add(jac *mat.Dense, off *mat.VecDense, sign float64) {
	if jac == nil {
		return
	}
	var square mat.SymDense
	square.SymOuterK(sign, jac.T())
	t.curve.AddSym(t.curve, &square)
	var g mat.VecDense
	g.MulVec(jac.T(), off)
	t.grad.AddScaledVec(t.grad, sign, &g)
}

func (t told) clone() told {
	var c mat.SymDense
	c.CopySym(t.curve)
	full := mat.NewSymDense(t.curve.SymmetricDim(), nil)
	full.CopySym(t.curve)
	return told{full, mat.VecDenseCopyOf(t.grad)}
}

// best is how far the best constants lie from where one stands, and their covariance.
func (t told) best() (move *mat.VecDense, covariance *mat.SymDense, err error) {
	var c mat.Cholesky
	if !c.Factorize(t.curve) {
		return nil, nil, errors.New("the constants are not determined")
	}
	move, covariance = new(mat.VecDense), new(mat.SymDense)
	if err = c.SolveVecTo(move, t.grad); err != nil {
		return nil, nil, err
	}
	move.ScaleVec(-1, move)
	return move, covariance, c.InverseTo(covariance)
}

// all is what all runs tell.
func (s *solution) all() told {
	t := s.nothing()
	for k := range s.m.runs {
		jac, off := s.weighed(k)
		t.add(jac, off, 1)
	}
	return t
}

// move goes to other constants, along the line.
func (s *solution) move(by *mat.VecDense) {
	for j := range s.z {
		s.z[j] += by.AtVec(j)
	}
	for k := range s.m.runs {
		var d mat.VecDense
		d.MulVec(s.slopes[k], by)
		for i := range s.off[k] {
			s.off[k][i] += d.AtVec(i)
		}
	}
}

// mostGross is the greatest part of a run's readings that is left out. Where more seem
// wrong it is the run, or the model.
const mostGross = 0.25

// gross finds the readings that no constants explain, the grossest first, and leaves
// them out. After each the constants are found anew, along the line. Where a constant that has
// not stayed explains more than a reading that was wrong, it is that, and the search goes on
// with it: of an instrument that was dropped every later reading would be called wrong. The
// solution itself does not change.
func (s *solution) gross() (out []Gross, drifts []Drift, err error) {
	s = s.clone()
	looked := 0 // for drifts
	for {
		move, covariance, err := s.all().best()
		if err != nil {
			return nil, nil, err
		}
		s.move(move)
		worst := Gross{}
		tried := 0
		for k, r := range s.m.runs {
			left := 0
			for i := range r.Readings {
				if !r.used[i] {
					left++
				}
			}
			use := r.use()
			if len(use) == 0 {
				continue
			}
			jac, off := s.weighed(k)
			tried += len(use)
			if float64(left+1) > mostGross*float64(len(r.Readings)) {
				continue
			}
			for a, i := range use {
				// A reading that is wrong by one throws the residuals out by f.
				unit := make([]float64, len(use))
				unit[a] = 1
				f := mat.NewVecDense(len(use), r.white(unit))
				var pull mat.VecDense
				pull.MulVec(jac.T(), f)
				weight := mat.Dot(f, f) - mat.Inner(&pull, covariance, &pull)
				if weight <= 1e-6*mat.Dot(f, f) {
					continue // nothing else tells what it should be
				}
				over := -mat.Dot(f, off) / weight
				if times := math.Abs(over) * math.Sqrt(weight); times > math.Abs(worst.Times) {
					worst = Gross{Run: k, Reading: i, Over: over, Times: math.Copysign(times, over)}
				}
			}
		}
		if tried == 0 || math.Abs(worst.Times) <= reconcile.Critical(reconcile.Sidak(falseAlarm, tried)) {
			return out, drifts, nil
		}
		if d, found := s.drifted(worst.Times, mat.NewVecDense(len(s.m.of), nil), covariance); found && looked < mostDrifts {
			looked++
			drifts = with(drifts, d)
			s.without(d)
			continue
		}
		worst.slopes = slices.Clone(s.slopes[worst.Run].RawRowView(worst.Reading))
		out = append(out, worst)
		r := s.m.runs[worst.Run]
		r.used[worst.Reading] = false
		s.off[worst.Run][worst.Reading] = 0
		for j := range s.m.of {
			s.slopes[worst.Run].Set(worst.Reading, j, 0)
		}
		if err := s.m.weigh(); err != nil {
			return nil, nil, err
		}
	}
}

// clone is the solution, to be changed.
func (s *solution) clone() *solution {
	c := &solution{m: s.m, z: slices.Clone(s.z)}
	for k := range s.m.runs {
		c.slopes, c.off = append(c.slopes, mat.DenseCopyOf(s.slopes[k])), append(c.off, slices.Clone(s.off[k]))
	}
	return c
}

// hopeless reports whether of each run as much was left out as may be.
func (s *solution) hopeless() bool {
	for _, r := range s.m.runs {
		if left := len(r.Readings) - len(r.use()); float64(left+1) <= mostGross*float64(len(r.Readings)) {
			return false
		}
	}
	return true
}

// grossAnew uses the readings again that were left out, and finds from here, along the line,
// which are wrong. The solution stays as it is.
func (s *solution) grossAnew(left []Gross) ([]Gross, []Drift, error) {
	c := s.clone()
	for _, g := range left {
		r := s.m.runs[g.Run]
		said, err := r.predict(s.m, s.z)
		if err != nil {
			return nil, nil, err
		}
		if math.IsNaN(said[g.Reading]) {
			continue // by these constants the run does not come to it
		}
		r.used[g.Reading] = true
		c.off[g.Run][g.Reading] = said[g.Reading] - r.Readings[g.Reading].Said
		c.slopes[g.Run].SetRow(g.Reading, g.slopes)
	}
	if err := s.m.weigh(); err != nil {
		return nil, nil, err
	}
	return c.gross()
}

// sameReadings reports whether the same readings are said to be wrong.
func sameReadings(a, b []Gross) bool {
	return len(a) == len(b) && !slices.ContainsFunc(a, func(g Gross) bool {
		return !slices.ContainsFunc(b, func(o Gross) bool { return o.Run == g.Run && o.Reading == g.Reading })
	})
}
