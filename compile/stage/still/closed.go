package still

import (
	"math"

	"newmake/compile/matter/exponential"
)

// panel is how far apart, in u, a run's nodes stand at most where leaving tells
// what is in the pot. Between them time and heat are summed by the
// Gauss-Lobatto rule of five points, exact to degree 7: to 1e-9 of the run
// (TestLeavingAgainstTheIntegrator).
const panel = 0.125

// closes tells that a run has nothing coming into the pot, and a strength that
// leaving covers: what is in the pot is known without a walk to it.
func (p *pot) closes(x0 float64) bool { return p.steam == 0 && x0 <= closedX }

// potAt is the node at u with what is in the pot, and nothing else.
func (p *pot) potAt(u float64) node {
	x := exponential.Exp(u)
	return node{u: u, level: level{pot: (p.ethanol0 + p.water0) * exponential.Exp(p.b.left.lnPot(u, x)-p.lnPot0)}}
}

// goTo finds where the event comes to zero on the way from a down to u = end,
// or is end, and tells whether the event was met. Only the pot of what it gives
// is filled in. The zero is found by the Illinois method.
func (p *pot) goTo(a node, end float64, stop event) (node, bool) {
	fLo := stop(a)
	if fLo >= 0 {
		return a, true
	}
	b := p.potAt(end)
	fHi := stop(b)
	if fHi < 0 || end >= a.u {
		return b, false
	}
	lo, side := a.u, 0
	for range 100 {
		if fHi < 1e-13 || lo-b.u < 1e-15 {
			break
		}
		c := p.potAt((fLo*b.u - fHi*lo) / (fLo - fHi))
		switch f := stop(c); {
		case f >= 0:
			b, fHi = c, f
			if side > 0 {
				fLo /= 2
			}
			side = 1
		case f > -1e-13:
			return c, true
		default:
			lo, fLo = c.u, f
			if side < 0 {
				fHi /= 2
			}
			side = -1
		}
	}
	return b, true
}

// sum fills in the time and heats of b, going there from a, and calls each, if
// not nil, for every panel.
func (p *pot) sum(a, b node, each func(from, to node)) node {
	const inner = 0.17267316464601143 // (1 - sqrt(3/7))/2
	if a.u == b.u {
		return a
	}
	n := max(1, math.Ceil((a.u-b.u)/panel-1e-6)) // a fraction of a drop has its panel too
	h := (b.u - a.u) / n
	for i := 1.0; i <= n; i++ {
		c := b
		if i < n {
			c = p.potAt(a.u + h)
		}
		c.d = p.slope(c.u, c.level)
		over := c.u - a.u
		sum := level{timeS: 9 * (a.d.timeS + c.d.timeS), heatJ: 9 * (a.d.heatJ + c.d.heatJ), headJ: 9 * (a.d.headJ + c.d.headJ), vapourJ: 9 * (a.d.vapourJ + c.d.vapourJ)}
		for _, at := range [...]struct{ place, weight float64 }{{inner, 49}, {0.5, 64}, {1 - inner, 49}} {
			m := p.potAt(a.u + at.place*over)
			d := p.slope(m.u, m.level)
			sum.timeS += at.weight * d.timeS
			sum.heatJ += at.weight * d.heatJ
			sum.headJ += at.weight * d.headJ
			sum.vapourJ += at.weight * d.vapourJ
		}
		c.timeS = a.timeS + over/180*sum.timeS
		c.heatJ = a.heatJ + over/180*sum.heatJ
		c.headJ = a.headJ + over/180*sum.headJ
		c.vapourJ = a.vapourJ + over/180*sum.vapourJ
		if each != nil {
			each(a, c)
		}
		a = c
	}
	return a
}
