package ode

import "math"

// System is what is integrated.
type System interface {
	// Slopes writes dy/dt at y and time t into d.
	Slopes(t float64, y, d []float64)
}

// preparer is a System that keeps what hardly changes within a step: Prepare is
// called with the state and its slopes before each step of length h is tried.
// It may change the slopes from t on, and not those at t.
type preparer interface {
	System
	Prepare(t, h float64, y, d []float64)
}

// settler is a System that mends a state after a step, such as a quantity that
// has come out below nothing by less than the tolerance.
type settler interface {
	System
	Settle(y []float64)
}

// Options say how finely to integrate.
type Options struct {
	Base      float64   // a length of step, in the unit of time: the ladder's rung 0
	First     int       // rung to begin with: steps are Base x 2^(rung/perDoubling)
	Most      int       // longest rung
	Tolerance float64   // error of a step, as a share of each quantity or its floor
	Floors    []float64 // below which a quantity counts no less; one for each
	Weights   []float64 // by which the error of each counts more; nil: all alike
	Fast      []int     // quantities whose columns of the Jacobian are formed
	Keep      int       // steps for which the columns are kept, if they do not fail
	MostTries int       // steps tried, after which it gives up; 0: it never does
}

// Solver integrates one system. It may be used again for other spans of the
// same system, and goes on with the length of step that it ended with.
type Solver struct {
	sys     System
	prepare func(t, h float64, y, d []float64)
	settle  func(y []float64)
	o       Options
	n, m    int
	rung    int
	t       float64
	age     int // of the columns, in steps

	// The step before: its error and its length.
	lastPower float64
	lastRungs int

	y, d    []float64 // the state and its slopes
	next    []float64
	dNext   []float64
	work    []float64
	u       [stages][]float64
	columns [][]float64 // of the Jacobian, one for each fast quantity
	lu      [][]float64
	rhs     []float64
	weights []float64
	step    Step
	room    []float64 // of all these
	rows    [][]float64

	// Steps and Tries count the steps taken and those tried.
	Steps, Tries int
}

// leastRung bounds how short a step may become, whatever the error: a billionth
// of the base.
const leastRung = -240

// New makes a solver for a system of n quantities.
func New(sys System, n int, o Options) *Solver {
	s := new(Solver)
	s.Anew(sys, n, o)
	return s
}

// Anew makes the solver one for another system, in the room that it has.
func (s *Solver) Anew(sys System, n int, o Options) {
	m := len(o.Fast)
	room, rows := s.room, s.rows
	*s = Solver{sys: sys, o: o, n: n, m: m, rung: min(o.First, o.Most), weights: o.Weights}
	if p, ok := sys.(preparer); ok {
		s.prepare = p.Prepare
	}
	if p, ok := sys.(settler); ok {
		s.settle = p.Settle
	}
	if size := (6+stages+m)*n + m*m + m; cap(room) < size {
		room = make([]float64, size)
	}
	room = room[:cap(room)]
	s.room = room
	take := func(k int) []float64 {
		part := room[:k:k]
		room = room[k:]
		return part
	}
	s.y, s.d, s.next, s.dNext, s.work = take(n), take(n), take(n), take(n), take(n)
	for i := range s.u {
		s.u[i] = take(n)
	}
	if cap(rows) < 2*m {
		rows = make([][]float64, 2*m)
	}
	rows = rows[:2*m]
	s.rows = rows
	s.columns, s.lu = rows[:m:m], rows[m:]
	for j := range m {
		s.columns[j], s.lu[j] = take(n), take(m)
	}
	s.rhs = take(m)
	if s.weights == nil {
		s.weights = take(n)
		for i := range s.weights {
			s.weights[i] = 1
		}
	}
}

// Y is the state. The caller writes it before the first span and may change it
// between spans.
func (s *Solver) Y() []float64 { return s.y }

// Rung is that of the next step, for a solver that goes on from here.
func (s *Solver) Rung() int { return s.rung }

// Span integrates from time t to end and calls each, if not nil, after every
// step. A span that ends before it begins is none. It tells whether it came to
// the end: not if that takes more than MostTries, or the state is no number.
func (s *Solver) Span(t, end float64, each func(*Step)) bool {
	if !(end > t) {
		return true
	}
	s.Start(t)
	for s.t < end {
		p, ok := s.advance(end)
		if !ok {
			return false
		}
		if each != nil {
			each(p)
		}
	}
	return true
}

// Start begins to integrate from time t, for Next to go on.
func (s *Solver) Start(t float64) {
	s.t = t
	s.sys.Slopes(t, s.y, s.d)
	s.age = s.o.Keep + 1
}

// Next takes one step, as long as the error allows: it knows of no end. What is
// asked between its ends, the step tells. It gives nothing for the reasons for
// which Span does not come to its end.
func (s *Solver) Next() (*Step, bool) { return s.advance(math.Inf(1)) }

// advance takes one step, and none beyond the end.
func (s *Solver) advance(end float64) (*Step, bool) {
	t := s.t
	for {
		h, last := s.length(end - t)
		if s.prepare != nil {
			s.prepare(t, h, s.y, s.d)
		}
		if s.age > s.o.Keep {
			s.jacobian(t)
			s.age = 0
		}
		e := s.try(t, h)
		if s.Tries++; s.o.MostTries > 0 && s.Tries > s.o.MostTries {
			return nil, false
		}
		change := rungs(e)
		if change < 0 && s.rung <= leastRung && !(e < math.Inf(1)) {
			return nil, false // no step is short enough
		} else if change < 0 && s.rung > leastRung {
			s.rung = max(leastRung, s.rung+min(change, s.below(h)))
			if s.age > 0 && e > 2 { // perhaps for their sake
				s.age = s.o.Keep + 1
			}
			continue
		}
		s.t = t + h
		if last {
			s.t = end
		}
		if s.settle != nil {
			s.settle(s.next)
		}
		s.sys.Slopes(s.t, s.next, s.dNext)
		s.Steps++
		s.y, s.next, s.d, s.dNext = s.next, s.y, s.dNext, s.d
		s.step = Step{T: t, H: s.t - t, Y0: s.next, D0: s.dNext, Y1: s.y, D1: s.d}
		s.rung = max(leastRung, min(s.o.Most, s.rung+min(change, perDoubling*2, s.trend(e, h))))
		s.age++
		return &s.step, true
	}
}

// trend is by how many rungs the next step changes if its error goes on to grow as
// it did from the step before to this one (the predictive control of Gustafsson,
// ACM Trans. Math. Softw. 20 (1994) 496): where a quantity runs out, steps become
// shorter before they fail.
func (s *Solver) trend(e, h float64) int {
	power, rungs := powerOf(e), int(math.Round(perDoubling*math.Log2(h)))
	change := math.MaxInt
	if s.Steps > 1 {
		change = int(math.Floor(perDoubling*(s.lastPower-2*power-margin)/3)) + rungs - s.lastRungs
	}
	s.lastPower, s.lastRungs = power, rungs
	return change
}

// length is the next step's: the rung's, or what is left of the span, evenly in
// two where one step would leave a crumb.
func (s *Solver) length(left float64) (h float64, last bool) {
	h = s.o.Base * ladder(s.rung)
	switch n := left / h; {
	case n <= 1+1e-6:
		return left, true
	case n < 2:
		return left / 2, false
	}
	return h, false
}

// below is how many rungs a step cut to the span's end lies below the solver's
// own, so that a failed step always becomes shorter.
func (s *Solver) below(h float64) int {
	return min(-1, int(math.Floor(perDoubling*math.Log2(h/(s.o.Base*ladder(s.rung)))+1e-6))-1)
}

// perDoubling is how many rungs double a step.
const perDoubling = 8

var roots = func() (r [perDoubling]float64) {
	for i := range r {
		r[i] = math.Exp2(float64(i) / perDoubling)
	}
	return r
}()

func ladder(rung int) float64 { return math.Ldexp(roots[rung&(perDoubling-1)], rung>>3) }

// rungs is by how many rungs to change the step when its error is e, 1 being
// the tolerance: below nothing if the step fails. The error goes with the cube
// of the step. It is rounded first, so that no last bit decides.
func rungs(e float64) int {
	const most = 4 * perDoubling
	if math.IsNaN(e) || math.IsInf(e, 0) {
		return -most
	}
	if e < 1e-12 {
		return most
	}
	power := powerOf(e)
	if power > 0 {
		return max(-most, -int(math.Ceil(perDoubling*(power+0.25)/3)))
	}
	return max(0, int(math.Floor(perDoubling*(-power-margin)/3)))
}

// margin is left of the tolerance, as a power of two, so that the next step does not
// fail.
const margin = 0.125

// powerOf is the power of two that an error is, rounded to an eighth.
func powerOf(e float64) float64 { return math.Round(8*math.Log2(max(e, 1e-12))) / 8 }

// jacobian forms the columns of the fast quantities by differences.
func (s *Solver) jacobian(t float64) {
	for c, j := range s.o.Fast {
		was := s.y[j]
		little := 1e-7 * max(math.Abs(was), s.o.Floors[j])
		s.y[j] = was + little
		little = s.y[j] - was
		s.sys.Slopes(t, s.y, s.columns[c])
		s.y[j] = was
		inv := 1 / little
		col := s.columns[c]
		for i := range col {
			col[i] = (col[i] - s.d[i]) * inv
		}
	}
}

// try takes one step of length h from t into next and gives its error, 1 being
// the tolerance.
func (s *Solver) try(t, h float64) float64 {
	s.factor(1 / (h * gamma))
	for i := range stages {
		u := s.u[i]
		if i == 0 {
			copy(u, s.d)
		} else {
			s.sum(s.work, s.y, i, &along[i], 1)
			s.sys.Slopes(t+at[i]*h, s.work, u)
			s.sum(u, u, i, &carried[i], 1/h)
		}
		s.solve(u, h*gamma)
	}
	worst := 0.0
	n := len(s.y)
	u0, u1, u2, u3 := s.u[0][:n], s.u[1][:n], s.u[2][:n], s.u[3][:n]
	next, weights, floors := s.next[:n], s.weights[:n], s.o.Floors[:n]
	for k, y := range s.y {
		y += result[0]*u0[k] + result[1]*u1[k] + result[2]*u2[k] + result[3]*u3[k]
		next[k] = y
		e := math.Abs(omitted[0]*u0[k]+omitted[1]*u1[k]+omitted[2]*u2[k]+omitted[3]*u3[k]) * weights[k]
		of := math.Abs(y)
		if of < floors[k] {
			of = floors[k]
		}
		if !(e <= worst*of) { // what is not a number stays to the end
			worst = e / of
		}
	}
	return worst / s.o.Tolerance
}

// sum is y and the first stages' sums by weight, written to out.
func (s *Solver) sum(out, y []float64, first int, weight *[stages]float64, scale float64) {
	n := len(out)
	y = y[:n]
	u0, u1, u2 := s.u[0][:n], s.u[1][:n], s.u[2][:n]
	w0, w1, w2 := weight[0]*scale, weight[1]*scale, weight[2]*scale
	switch first {
	case 1:
		for k := range out {
			out[k] = y[k] + w0*u0[k]
		}
	case 2:
		for k := range out {
			out[k] = y[k] + w0*u0[k] + w1*u1[k]
		}
	default:
		for k := range out {
			out[k] = y[k] + w0*u0[k] + w1*u1[k] + w2*u2[k]
		}
	}
}

// factor makes the triangular factors of (1/(h gamma) - J) among the fast
// quantities. It does not exchange rows: the first term dominates, or J takes
// away and adds to it. The pivots are kept as their inverses.
func (s *Solver) factor(diagonal float64) {
	for r, i := range s.o.Fast {
		for c := range s.m {
			s.lu[r][c] = -s.columns[c][i]
		}
		s.lu[r][r] += diagonal
	}
	for p := range s.m {
		row := s.lu[p]
		row[p] = 1 / row[p]
		for r := p + 1; r < s.m; r++ {
			below := s.lu[r]
			if below[p] == 0 {
				continue
			}
			f := below[p] * row[p]
			below[p] = f
			for c := p + 1; c < len(below); c++ {
				below[c] -= f * row[c]
			}
		}
	}
}

// solve puts the solution of (1/hg - J) x = u in u's place.
func (s *Solver) solve(u []float64, hg float64) {
	rhs := s.rhs
	for r, i := range s.o.Fast {
		x := u[i]
		for c, l := range s.lu[r][:r] {
			x -= l * rhs[c]
		}
		rhs[r] = x
	}
	for r := s.m - 1; r >= 0; r-- {
		x, row := rhs[r], s.lu[r]
		for c := r + 1; c < len(row); c++ {
			x -= row[c] * rhs[c]
		}
		rhs[r] = x * row[r]
	}
	// Two columns at a time, and the factor with the first, save half the passes.
	n, c := len(u), 0
	switch {
	case s.m == 0:
		for i := range u {
			u[i] *= hg
		}
	case s.m%2 == 1:
		col, x := s.columns[0][:n], rhs[0]
		for i := range u {
			u[i] = hg * (u[i] + col[i]*x)
		}
		c = 1
	default:
		a, b, x, z := s.columns[0][:n], s.columns[1][:n], rhs[0], rhs[1]
		for i := range u {
			u[i] = hg * (u[i] + (a[i]*x + b[i]*z))
		}
		c = 2
	}
	for ; c < s.m; c += 2 {
		a, b := s.columns[c][:n], s.columns[c+1][:n]
		x, z := hg*rhs[c], hg*rhs[c+1]
		if x == 0 && z == 0 {
			continue
		}
		for i := range u {
			u[i] += a[i]*x + b[i]*z
		}
	}
}
