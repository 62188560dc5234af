// Package reconcile brings readings into accord with what must balance, by weighted
// least squares, and asks which reading or which loss would explain it where they do
// not: Narasimhan and Jordache, Data Reconciliation and Gross Error Detection (Gulf,
// 2000).
//
// A flow that was not read is found from the others, or is projected out where they
// do not tell it (Crowe, Garcia Campos and Hrymak, AIChE Journal 29 (1983) 881). A
// balance may be a product of flows, as of a mass and its strength: it is made linear
// about where the flows stand, and that is done again until they rest.
package reconcile

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Flow is something that the balances count.
type Flow struct {
	Name string
	Read float64 // as it was read; where it was not, about how much it is
	SD   float64 // of the reading
	// Unread says that it was not read.
	Unread bool
}

// Node is a place where what goes in must come out.
type Node struct {
	Name string
	// Over is what goes in less what comes out, and its derivative by each flow.
	Over func(flows []float64) (over float64, slopes []float64)
}

// Reconciled is a set of readings in accord.
type Reconciled struct {
	Flows  []float64
	SD     []float64 // NaN for one that was not read
	Known  []bool    // false for a flow that was not read and that the rest does not tell
	Rank   int       // how many balances check the readings
	Global float64   // scatter in the balances; chi-square of Rank degrees of freedom where no reading is wrong
	system *system
	nodes  []Node
	given  []Flow
}

const (
	mostPasses = 50
	rest       = 1e-9 // of a standard deviation: the flows no longer move
)

// ErrNothingToCheck says that the readings determine the flows and no more.
var ErrNothingToCheck = errors.New("no balance has all that it counts")

// Solve reconciles flows.
func Solve(flows []Flow, nodes []Node) (*Reconciled, error) {
	for _, f := range flows {
		if !f.Unread && !(f.SD > 0) {
			return nil, fmt.Errorf("%s: a reading wants a standard deviation above 0, not %g", f.Name, f.SD)
		}
		if math.IsNaN(f.Read) || math.IsInf(f.Read, 0) {
			return nil, fmt.Errorf("%s: %g is no reading", f.Name, f.Read)
		}
	}
	x := make([]float64, len(flows))
	for i, f := range flows {
		x[i] = f.Read
	}
	var s *system
	for pass := range mostPasses {
		var err error
		if s, err = linear(flows, nodes, x); err != nil {
			return nil, err
		}
		to := s.solved()
		far := 0.0
		for i, f := range flows {
			unit := f.SD
			if f.Unread {
				unit = max(math.Abs(f.Read), math.Abs(to[i])) + 1e-9 // it may begin at nothing
			}
			far = max(far, math.Abs(to[i]-x[i])/unit)
		}
		x = to
		if far < rest {
			break
		}
		if pass == mostPasses-1 || math.IsNaN(far) {
			return nil, errors.New("the balances do not come to rest")
		}
	}
	r := &Reconciled{Flows: x, SD: make([]float64, len(x)), Known: s.known, Rank: s.rank, Global: mat.Inner(s.r, s.inverse, s.r), system: s, nodes: nodes, given: flows}
	for i, f := range flows {
		if r.SD[i] = math.NaN(); !f.Unread {
			j := s.place[i]
			r.SD[i] = math.Sqrt(max(f.SD*f.SD-s.taken(j), 0))
		}
	}
	return r, nil
}

// Chi2 is what the scatter of a rank exceeds with a chance of alpha, where no reading
// is wrong.
func Chi2(rank int, alpha float64) float64 {
	return distuv.ChiSquared{K: float64(rank)}.Quantile(1 - alpha)
}

// Sidak is the level of each of m tests, so that all of them together have a false alarm
// with a chance of alpha (Šidák, JASA 62 (1967) 626).
func Sidak(alpha float64, m int) float64 { return 1 - math.Pow(1-alpha, 1/float64(m)) }

// Critical is what the size of a standard normal number exceeds with a chance of level.
func Critical(level float64) float64 { return distuv.UnitNormal.Quantile(1 - level/2) }

// system is the balances about where the flows stand, with what was not read
// projected out: reduced x = right, for the flows that were read.
type system struct {
	flows    []Flow
	place    []int      // of each flow among those read, or among those not read
	whole    *mat.Dense // nodes by flows
	wholeAt  []float64  // whole x must be this
	at       []float64  // where the flows stand
	project  *mat.Dense // reduced balances by nodes
	reduced  *mat.Dense // reduced balances by flows read
	variance []float64  // of the flows read
	y        []float64
	r        *mat.VecDense // by how much the readings are out of balance
	w        *mat.SymDense // covariance of r
	inverse  *mat.SymDense
	rank     int
	unread   *mat.Dense // nodes by flows not read
	known    []bool
}

func linear(flows []Flow, nodes []Node, x []float64) (*system, error) {
	s := &system{flows: flows, at: x, place: make([]int, len(flows)), known: make([]bool, len(flows))}
	var read, not []int
	for i, f := range flows {
		if f.Unread {
			s.place[i] = len(not)
			not = append(not, i)
			continue
		}
		s.place[i], s.known[i] = len(read), true
		read = append(read, i)
		s.y, s.variance = append(s.y, f.Read), append(s.variance, f.SD*f.SD)
	}
	if len(read) == 0 || len(nodes) == 0 {
		return nil, ErrNothingToCheck
	}
	s.whole = mat.NewDense(len(nodes), len(flows), nil)
	s.wholeAt = make([]float64, len(nodes))
	for k, n := range nodes {
		over, slopes := n.Over(x)
		s.wholeAt[k] = -over
		for i, v := range slopes {
			s.whole.Set(k, i, v)
			s.wholeAt[k] += v * x[i]
		}
	}
	s.project = identity(len(nodes))
	if len(not) > 0 {
		s.unread = columns(s.whole, not)
		var err error
		if s.project, err = s.withoutUnread(not); err != nil {
			return nil, err
		}
	}
	if s.project == nil {
		return nil, ErrNothingToCheck
	}
	s.reduced = new(mat.Dense)
	s.reduced.Mul(s.project, columns(s.whole, read))
	rows, _ := s.reduced.Dims()

	s.r = mat.NewVecDense(rows, nil)
	s.r.MulVec(s.reduced, mat.NewVecDense(len(s.y), s.y))
	var at mat.VecDense
	at.MulVec(s.project, mat.NewVecDense(len(nodes), s.wholeAt))
	s.r.SubVec(s.r, &at)

	s.w = mat.NewSymDense(rows, nil)
	for a := range rows {
		for b := range a + 1 {
			sum := 0.0
			for j, v := range s.variance {
				sum += s.reduced.At(a, j) * v * s.reduced.At(b, j)
			}
			s.w.SetSym(a, b, sum)
		}
	}
	var err error
	s.inverse, s.rank, err = pseudoInverse(s.w)
	if err == nil && s.rank == 0 {
		err = ErrNothingToCheck
	}
	return s, err
}

// withoutUnread are the combinations of balances in which no flow stands that was not
// read; nil if there are none. It marks the flows that the balances tell.
func (s *system) withoutUnread(not []int) (*mat.Dense, error) {
	var svd mat.SVD
	if !svd.Factorize(s.unread, mat.SVDFull) {
		return nil, errors.New("the balances could not be taken apart")
	}
	values := svd.Values(nil)
	rank := 0
	for _, v := range values {
		if v > 1e-10*values[0] {
			rank++
		}
	}
	var left, right mat.Dense
	svd.UTo(&left)
	svd.VTo(&right)
	for _, i := range not { // told if it has no part in what the balances leave open
		open := 0.0
		for c := rank; c < len(not); c++ {
			open += right.At(s.place[i], c) * right.At(s.place[i], c)
		}
		s.known[i] = open < 1e-16
	}
	n, _ := left.Dims()
	if rank == n {
		return nil, nil
	}
	var p mat.Dense
	p.CloneFrom(left.Slice(0, n, rank, n).T())
	return &p, nil
}

// solved are the flows in accord, as far as the balances are linear.
func (s *system) solved() []float64 {
	x := make([]float64, len(s.flows))
	change := s.change()
	for i, f := range s.flows {
		if x[i] = s.at[i]; !f.Unread {
			x[i] = f.Read - change[s.place[i]]
		}
	}
	if s.unread == nil {
		return x
	}
	n, m := s.unread.Dims()
	right := mat.NewVecDense(n, nil)
	for k := range n {
		v := s.wholeAt[k]
		for i, f := range s.flows {
			if !f.Unread {
				v -= s.whole.At(k, i) * x[i]
			} else { // what the balances leave open stays where it stands, as far as it can
				v -= s.whole.At(k, i) * s.at[i]
			}
		}
		right.SetVec(k, v)
	}
	var svd mat.SVD
	var found mat.VecDense
	if svd.Factorize(s.unread, mat.SVDThin) {
		if rank := svd.Rank(1e-10); rank > 0 {
			svd.SolveVecTo(&found, right, rank)
		}
	}
	if found.Len() != m {
		return x
	}
	for i, f := range s.flows {
		if f.Unread {
			x[i] += found.AtVec(s.place[i])
		}
	}
	return x
}

// change is what is taken off each reading.
func (s *system) change() []float64 {
	var pull mat.VecDense
	pull.MulVec(s.inverse, s.r)
	out := make([]float64, len(s.y))
	for j, v := range s.variance {
		for a := range pull.Len() {
			out[j] += v * s.reduced.At(a, j) * pull.AtVec(a)
		}
	}
	return out
}

// taken is by how much the variance of a reading is less once it is in accord; that of
// its change.
func (s *system) taken(j int) float64 {
	f := s.reduced.ColView(j)
	return s.variance[j] * s.variance[j] * mat.Inner(f, s.inverse, f)
}

func columns(m *mat.Dense, which []int) *mat.Dense {
	rows, _ := m.Dims()
	out := mat.NewDense(rows, len(which), nil)
	for c, i := range which {
		for k := range rows {
			out.Set(k, c, m.At(k, i))
		}
	}
	return out
}

func identity(n int) *mat.Dense {
	m := mat.NewDense(n, n, nil)
	for i := range n {
		m.Set(i, i, 1)
	}
	return m
}

// pseudoInverse of a covariance, and its rank: balances may say the same twice.
func pseudoInverse(w *mat.SymDense) (*mat.SymDense, int, error) {
	n := w.SymmetricDim()
	scale := make([]float64, n)
	scaled := mat.NewSymDense(n, nil)
	for a := range scale {
		scale[a] = 1
		if v := w.At(a, a); v > 0 {
			scale[a] = 1 / math.Sqrt(v)
		}
		for b := range a + 1 {
			scaled.SetSym(a, b, w.At(a, b)*scale[a]*scale[b])
		}
	}
	var eigen mat.EigenSym
	if !eigen.Factorize(scaled, true) {
		return nil, 0, errors.New("the balances could not be taken apart")
	}
	values := eigen.Values(nil)
	var vectors mat.Dense
	eigen.VectorsTo(&vectors)
	rank := 0
	out := mat.NewSymDense(n, nil)
	for c, v := range values {
		if v < 1e-10*values[n-1] || v <= 0 {
			continue
		}
		rank++
		for a := range n {
			for b := range a + 1 {
				out.SetSym(a, b, out.At(a, b)+vectors.At(a, c)*vectors.At(b, c)/v*scale[a]*scale[b])
			}
		}
	}
	return out, rank, nil
}
