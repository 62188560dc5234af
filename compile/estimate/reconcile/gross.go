package reconcile

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"newmake/lang/sorting"
)

// Cause is what would explain that readings do not balance.
type Cause struct {
	Flow int     // that is read wrong; -1 if it is a loss
	Node int     // at which something is lost; -1 if it is a reading
	By   float64 // how much it reads too high, or is lost, in its own unit
	SD   float64 // how well that is known
	T    float64 // its test statistic, a chi-square of one degree of freedom where there is nothing
}

// causes are all single causes that the balances can show, the likeliest first, by the
// generalized likelihood ratio (Narasimhan and Mah, AIChE Journal 33 (1987) 1514).
func (r *Reconciled) causes() []Cause {
	var all []Cause
	s := r.system
	for i, f := range r.given {
		if !f.Unread {
			if c, ok := s.cause(s.reduced.ColView(s.place[i])); ok {
				c.Flow, c.Node = i, -1
				all = append(all, c)
			}
		}
	}
	for k := range r.nodes {
		if c, ok := s.cause(s.project.ColView(k)); ok {
			c.Flow, c.Node = -1, k
			all = append(all, c)
		}
	}
	sorting.Stable(all, func(a, b Cause) int { return -cmp.Compare(a.T, b.T) })
	return all
}

// cause is what a cause that throws the balances out in a direction would be.
func (s *system) cause(f mat.Vector) (Cause, bool) {
	weight := mat.Inner(f, s.inverse, f)
	if size := mat.Norm(f, 2); size == 0 || weight <= 1e-12*size*size*mat.Norm(s.inverse, 2) {
		return Cause{}, false
	}
	pull := mat.Inner(f, s.inverse, s.r)
	return Cause{By: pull / weight, SD: 1 / math.Sqrt(weight), T: pull * pull / weight}, true
}

// Finding is a gross error: the causes that explain it, the likeliest first. Of each
// kind, a reading or a loss, those stand in it that explain it about as well as the
// likeliest of the kind: which kind it is, the balances tell badly.
type Finding []Cause

// asWell is by how much less a cause's statistic may be than the best one's, to be named
// with it: no experiment could tell a difference of 1 (own rule; sets that cannot be told
// apart: Bagajewicz and Jiang, AIChE Journal 44 (1998) 2661, from memory).
const asWell = 1

// about are the causes that stand beside the best of their kind, of those above a level.
func about(causes []Cause, critical float64) (f Finding) {
	best := map[bool]float64{}
	for _, c := range causes {
		best[c.Flow < 0] = max(best[c.Flow < 0], c.T)
	}
	for _, c := range causes {
		if c.T > critical && c.T >= best[c.Flow < 0]-asWell {
			f = append(f, c)
		}
	}
	return f
}

// GrossErrors finds gross errors one after the other: the likeliest cause is taken out, and
// the rest is reconciled again, until nothing shows at the level alpha, for all causes
// tried together. Causes that cannot be are left out by can; nil leaves out none. Of causes
// that no reading tells apart the one is taken out that asks for the smallest change of what
// was read. What remains is the readings reconciled without them.
func GrossErrors(flows []Flow, nodes []Node, alpha float64, can func(Cause) bool) ([]Finding, *Reconciled, error) {
	flows, nodes = slices.Clone(flows), slices.Clone(nodes)
	var found []Finding
	var last *Reconciled
	out := 0 // the flow that was taken out last
	for {
		r, err := Solve(flows, nodes)
		switch {
		case errors.Is(err, ErrNothingToCheck) && last != nil:
			// The rest tells what was taken out, and checks nothing more. A reading of it that
			// weighs nothing comes to the same.
			flows[out].Unread, flows[out].SD = false, weightless*flows[out].SD
			r, err = Solve(flows, nodes)
			return found, r, err
		case err != nil:
			return found, last, err
		}
		last = r
		causes := slices.DeleteFunc(r.causes(), func(c Cause) bool { return can != nil && !can(c) })
		if len(causes) == 0 {
			return found, r, nil
		}
		z := Critical(Sidak(alpha, len(causes)))
		if causes[0].T <= z*z {
			return found, r, nil
		}
		found = append(found, about(causes, z*z))
		if c := smallest(causes, flows); c.Flow >= 0 {
			flows[c.Flow].Unread, out = true, c.Flow
		} else {
			flows = append(flows, Flow{Name: nodes[c.Node].Name, Read: c.By, SD: c.SD, Unread: true})
			out = len(flows) - 1
			at, whole := out, nodes[c.Node].Over
			nodes[c.Node].Over = func(x []float64) (float64, []float64) {
				over, slopes := whole(x)
				all := make([]float64, len(x))
				copy(all, slopes)
				all[at] = -1
				return over - x[at], all
			}
		}
	}
}

// weightless is how many standard deviations make a reading weigh nothing.
const weightless = 1e5

// alike is how near two statistics are that no reading tells apart, as a share.
const alike = 1e-6

// smallest is, of the causes that are as likely as the first to the last digits, the reading
// that would have to change by the smallest part of it; the first if none is a reading.
func smallest(causes []Cause, flows []Flow) Cause {
	best, least := causes[0], math.Inf(1)
	for _, c := range causes {
		if c.T < causes[0].T*(1-alike) {
			break
		}
		if part := math.Abs(c.By / flows[max(c.Flow, 0)].Read); c.Flow >= 0 && part < least {
			best, least = c, part
		}
	}
	return best
}
