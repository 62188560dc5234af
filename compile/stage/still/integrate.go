package still

import "math"

// A run's integrator: its error a step, as a share of what is there, and its
// greatest step in u. With these a run takes some forty steps.
const (
	tolerance = 1e-11
	maxStep   = 0.25
)

// Dormand and Prince, J. Comput. Appl. Math. 6 (1980) 19: order 5 with an
// error estimate of order 4. The last slope of a step is the first of the next.
var (
	dpC = [7]float64{0, 1.0 / 5, 3.0 / 10, 4.0 / 5, 8.0 / 9, 1, 1}
	dpA = [7][6]float64{
		{},
		{1.0 / 5},
		{3.0 / 40, 9.0 / 40},
		{44.0 / 45, -56.0 / 15, 32.0 / 9},
		{19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729},
		{9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656},
		{35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84},
	}
	dpE = [7]float64{71.0 / 57600, 0, -71.0 / 16695, 71.0 / 1920, -17253.0 / 339200, 22.0 / 525, -1.0 / 40}
)

// plus is l and a weighted sum of slopes.
func (l level) plus(h float64, weights []float64, k []level) level {
	for i, w := range weights {
		w *= h
		l.pot += w * k[i].pot
		l.timeS += w * k[i].timeS
		l.heatJ += w * k[i].heatJ
		l.headJ += w * k[i].headJ
		l.vapourJ += w * k[i].vapourJ
	}
	return l
}

// step goes from a by h in u. The error is that of moles and of time, each as
// a share of what there is: of the pot's content, and of the time that boiling
// it away would take.
func (p *pot) step(a node, h float64) (node, float64) {
	var k [7]level
	k[0] = a.d
	var l level
	for i := 1; i < 7; i++ {
		l = a.level.plus(h, dpA[i][:i], k[:i])
		k[i] = p.slope(a.u+dpC[i]*h, l)
	}
	e := level{}.plus(h, dpE[:], k[:])
	wholeS := (p.ethanol0 + p.water0) * 40e3 / (p.heatW - p.lossW)
	return node{u: a.u + h, level: l, d: k[6]}, max(math.Abs(e.pot/l.pot), math.Abs(e.timeS/wholeS))
}

// event tells how far a run is beyond a mark: negative before it, zero at it,
// positive past it.
type event func(node) float64

// maxSteps bounds a run; one from 70 % to 0.01 % takes less than a hundred.
const maxSteps = 5000

// walk goes from a down to u = end, or to the place where the event comes to
// zero, whichever is first, calling each (if not nil) for every step. It tells
// whether the event stopped it.
func (p *pot) walk(a node, end float64, stop event, each func(from, to node)) (node, bool) {
	if stop != nil && stop(a) >= 0 {
		return a, true
	}
	h := -min(p.maxStep, (a.u-end)/4)
	for range maxSteps {
		if a.u <= end {
			return a, false
		}
		last := a.u+h <= end
		if last {
			h = end - a.u
		}
		b, err := p.step(a, h)
		grow := min(4, 0.9*math.Pow(p.tolerance/max(err, 1e-30), 0.2))
		if err > p.tolerance && -h > 1e-9 {
			h *= max(0.1, grow)
			continue
		}
		if last {
			b.u = end
		}
		reached := stop != nil && stop(b) >= 0
		if reached {
			b = p.locate(a, b, stop)
		}
		if each != nil && b.u < a.u {
			each(a, b)
		}
		if reached || last {
			return b, reached
		}
		a = b
		h = -min(p.maxStep, -h*max(1, grow))
	}
	return a, false
}

// locate finds the zero of an event between two nodes one step apart, by the
// Illinois method on the length of the step: every trial is a step of its own
// from a, so the place is as good as any other node.
func (p *pot) locate(a, b node, stop event) node {
	lo, hi := 0.0, b.u-a.u
	fLo, fHi := stop(a), stop(b)
	side := 0
	for range 100 {
		if fHi < 1e-13 || math.Abs(hi-lo) < 1e-15 {
			break
		}
		h := (fLo*hi - fHi*lo) / (fLo - fHi)
		c, _ := p.step(a, h)
		if f := stop(c); f >= 0 {
			b, hi, fHi = c, h, f
			if side > 0 {
				fLo /= 2
			}
			side = 1
		} else {
			if f > -1e-13 {
				return c
			}
			lo, fLo = h, f
			if side < 0 {
				fHi /= 2
			}
			side = -1
		}
	}
	return b
}
