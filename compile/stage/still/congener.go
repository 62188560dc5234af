package still

import (
	"fmt"

	"newmake/compile/matter/exponential"
	"newmake/compile/matter/fluid"
	"newmake/lang/recipe"
)

// Estimate is a value with what it could be, given the model's uncertainty.
type Estimate struct{ Value, Low, High float64 }

// Congener is where one congener goes in a spirit run: an estimate, relative to
// what is in the charge, for nothing here knows how much there is.
type Congener struct {
	Name      string
	Fractions []CongenerFraction // as the run's
	Left      Estimate           // share of the charge's that stays in the pot
	// Gain is how many times as much of it a steady charge holds as its low
	// wines bring: heads and tails return it.
	Gain  Estimate
	Spout []CongenerPoint
}

// CongenerFraction is one congener in one fraction.
type CongenerFraction struct {
	Fraction string
	Share    Estimate // of what the charge holds
	// Relative is its amount to a litre of pure alcohol, the charge's being 1;
	// zero in an empty fraction.
	Relative Estimate
}

// CongenerPoint is one congener at the spout at a moment.
type CongenerPoint struct {
	TimeS    float64 // from the fire
	ABV      float64 // at the spout
	Relative Estimate
}

// Volatilities are how volatile each trace is beside ethanol, and how far that
// may be out, as a share of it.
type Volatilities struct {
	of          [width]volatility
	uncertainty float64
}

// ReadVolatilities reads `model congener`. The error says which of its constants
// cannot be.
func ReadVolatilities(m *recipe.Model) (Volatilities, error) {
	if m == nil {
		return Volatilities{}, fmt.Errorf("the library has no `model congener`")
	}
	v := Volatilities{uncertainty: m.Values["uncertainty"]}
	if u := v.uncertainty; !(u >= 0 && u < 10) {
		return v, fmt.Errorf("`model congener`: `uncertainty` is %g %%: it must be 0 to 1000 %%", 100*u)
	}
	points, err := readPoints(m)
	for i := 0; i < width && err == nil; i++ {
		v.of[i], err = volatilityThrough(congenerNames[i], points[i], m)
	}
	return v, err
}

// Congeners follows traces through a spirit run. A trace moves nothing; it boils
// from the pot by its volatility against ethanol, condenses and returns with the
// head's liquid, and is carried over with the rest:
//
//	d ln m = -K dD/n
//
// Volatilities are those at 1 atm; against ethanol they are taken to be the same
// at any height. Low and High come from all of them low and all high by their
// uncertainty.
func Congeners(run Run, v Volatilities) []Congener {
	u := v.uncertainty
	factors := []factor{factorOf(1), factorOf(1 / (1 + u)), factorOf(1 + u)}
	var s spout
	if len(run.path) > 0 {
		s = run.pot.b.spoutRatio(&v.of)
	}
	return run.follow(s, factors)
}

// traces are K, or ln of the share still in the pot, for each factor of the
// volatilities.
type traces []row

// followed is the way of traces through a run.
type followed struct {
	*Run
	s       spout
	factors []factor
	inPot   traces
	k, next traces // K at a step's beginning and its end
	out     []Congener
}

// follow integrates the traces along the run's steps. The first factor gives the
// values, the others how far they reach.
func (r *Run) follow(s spout, factors []factor) []Congener {
	n := len(factors)
	room := make(traces, 5*n)
	w := followed{r, s, factors, room[:n], room[n : 2*n], room[2*n : 3*n], make([]Congener, width)}
	before, returned := room[3*n:4*n], room[4*n:]
	fractions := make([]CongenerFraction, width*len(r.Fractions))
	points := make([]CongenerPoint, width*len(r.path))
	for i, name := range congenerNames {
		c := &w.out[i]
		c.Name = name
		c.Fractions, fractions = fractions[:0:len(r.Fractions)], fractions[len(r.Fractions):]
		c.Spout, points = points[:0:len(r.path)], points[len(r.path):]
	}
	if len(r.path) > 0 {
		s.ratios(r.path[0].x(), factors, w.k)
	}
	step := 1
	for _, f := range r.Fractions {
		for ; step < len(r.path) && r.path[step].timeS <= f.EndS; step++ {
			if r.path[step].u >= r.path[step-1].u {
				continue // a new heat at the same place
			}
			w.spout(r.path[step-1])
			w.carry(r.path[step-1], r.path[step])
		}
		for i := range w.out {
			c := CongenerFraction{Fraction: f.Name}
			for j := range factors {
				share := exponential.Exp(before[j][i]) - exponential.Exp(w.inPot[j][i])
				c.Share.take(j, share)
				if f.Name == Heads || f.Name == Tails {
					returned[j][i] += share
				}
				if f.EthanolKg > 0 {
					c.Relative.take(j, share/(f.EthanolKg/r.Charge.EthanolKg))
				}
			}
			w.out[i].Fractions = append(w.out[i].Fractions, c)
		}
		copy(before, w.inPot)
	}
	if n := len(r.path); n > 0 {
		w.spout(r.path[n-1])
	}
	for i := range w.out {
		c := &w.out[i]
		for j := range factors {
			c.Left.take(j, exponential.Exp(w.inPot[j][i]))
			c.Gain.take(j, 1/max(1e-9, 1-returned[j][i]))
		}
	}
	return w.out
}

// middle is the value half way along a span h of the cubic through the values and
// slopes at both its ends.
func middle(h, a, slopeA, b, slopeB float64) float64 { return (a+b)/2 + h/8*(slopeA-slopeB) }

// carry takes ln m over one step by Simpson's rule; the pot's content at the
// middle is that of the cubic through both ends.
func (w *followed) carry(a, b node) {
	p := w.pot
	h := b.u - a.u
	mid := node{u: (a.u + b.u) / 2}
	mid.pot = middle(h, a.pot, a.d.pot, b.pot, b.d.pot)
	mid.timeS = (a.timeS + b.timeS) / 2
	if p.steam > 0 { // with the heat of the two ends; with a jacket it does not matter
		q := *p
		q.flowM3S, q.heatW = 0, (a.d.heatJ/a.d.timeS+b.d.heatJ/b.d.timeS)/2
		p = &q
	}
	mid.d = p.slope(mid.u, mid.level)
	over := func(n *node) float64 { return (p.steam*n.d.heatJ - n.d.pot) / n.pot }
	atA, atMid, atB := h/6*over(&a), 4*h/6*over(&mid), h/6*over(&b)
	w.inPot.lose(atA, w.k)
	w.s.ratios(mid.x(), w.factors, w.next)
	w.inPot.lose(atMid, w.next)
	w.s.ratios(b.x(), w.factors, w.next)
	w.inPot.lose(atB, w.next)
	w.k, w.next = w.next, w.k
}

// lose takes so many times K from ln m.
func (m traces) lose(times float64, k traces) {
	for j := range m {
		for i := range m[j] {
			m[j][i] -= times * k[j][i]
		}
	}
}

// spout notes what comes over at a node.
func (w *followed) spout(n node) {
	y := w.pot.b.vapour(n.x())
	abv := fluid.ABVFromMassFrac(fluid.MassFrac(y))
	for i := range w.out {
		p := CongenerPoint{TimeS: n.timeS, ABV: abv}
		for j := range w.factors {
			p.Relative.take(j, w.k[j][i]*exponential.Exp(w.inPot[j][i])/n.pot/y*w.pot.ethanol0)
		}
		w.out[i].Spout = append(w.out[i].Spout, p)
	}
}

// take takes in the value for one of the factors: the first is the value itself.
func (e *Estimate) take(factor int, v float64) {
	if factor == 0 {
		*e = Estimate{v, v, v}
		return
	}
	e.Low = min(e.Low, v)
	e.High = max(e.High, v)
}
