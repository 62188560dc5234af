package still

import (
	"fmt"
	"math"

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
		return Volatilities{}, fmt.Errorf("the stock has no `model congener`")
	}
	v := Volatilities{uncertainty: m.Values["uncertainty"]}
	if u := v.uncertainty; !(u >= 0 && u < 10) {
		return v, fmt.Errorf("`model congener`: `uncertainty` is %g %%: it must be 0 to 1000 %%", 100*u)
	}
	for i, name := range congenerNames {
		of, err := readVolatility(m, name)
		if err != nil {
			return v, err
		}
		v.of[i] = of
	}
	return v, nil
}

// Congeners follows traces through the spirit run that SpiritRun gives for the
// same input. A trace moves nothing; it boils from the pot by its volatility
// against ethanol, condenses and returns with the head's liquid, and is carried
// over with the rest:
//
//	d ln m = -K dD/n
//
// Volatilities are those at 1 atm; against ethanol they are taken to be the same
// at any height. Low and High come from all of them low and all high by their
// uncertainty.
func Congeners(in SpiritInput, v Volatilities) ([]Congener, error) {
	b := in.boil()
	r, err := runSpirit(in, b, true)
	if err != nil {
		return nil, err
	}
	u := v.uncertainty
	lnK := b.spoutRatio(&v.of, 1, 1/(1+u), 1+u)
	out := r.follow(lnK[0])
	for _, k := range lnK[1:] {
		for i, c := range r.follow(k) {
			out[i].widen(c)
		}
	}
	return out, nil
}

// follow integrates the traces along the run's steps.
func (r *runner) follow(lnK *series) []Congener {
	out := make([]Congener, width)
	for i, name := range congenerNames {
		out[i].Name = name
		out[i].Fractions = make([]CongenerFraction, 0, len(r.fractions))
	}
	charged := r.charge.EthanolKg
	pot, before := row{}, row{} // ln of the share still in the pot
	step := 1
	var k row // K at the step's beginning
	if len(r.path) > 0 {
		k = ratios(lnK, r.path[0])
	}
	for i := range out {
		out[i].Spout = make([]CongenerPoint, 0, len(r.path))
	}
	for _, f := range r.fractions {
		for ; step < len(r.path) && r.path[step].timeS <= f.EndS; step++ {
			r.spout(out, r.path[step-1], &pot, &k)
			next := ratios(lnK, r.path[step])
			r.p.carry(&pot, r.path[step-1], r.path[step], lnK, &k, &next)
			k = next
		}
		for i := range out {
			c := CongenerFraction{Fraction: f.Name, Share: exact(math.Exp(before[i]) - math.Exp(pot[i]))}
			if f.EthanolKg > 0 {
				c.Relative = exact(c.Share.Value / (f.EthanolKg / charged))
			}
			out[i].Fractions = append(out[i].Fractions, c)
		}
		before = pot
	}
	if n := len(r.path); n > 0 {
		r.spout(out, r.path[n-1], &pot, &k)
	}
	for i := range out {
		c := &out[i]
		c.Left = exact(math.Exp(pot[i]))
		returned := 0.0
		for _, f := range c.Fractions {
			if f.Fraction == Heads || f.Fraction == Tails {
				returned += f.Share.Value
			}
		}
		c.Gain = exact(1 / max(1e-9, 1-returned))
	}
	return out
}

// ratios are K at a node.
func ratios(lnK *series, n node) row {
	k := lnK.at(place(n.x()))
	for i := range k {
		k[i] = exponential.Exp(k[i])
	}
	return k
}

// carry takes ln m over one step by Simpson's rule; the pot's content at the
// middle is that of the cubic through both ends.
func (p *pot) carry(m *row, a, b node, lnK *series, kA, kB *row) {
	h := b.u - a.u
	mid := node{u: (a.u + b.u) / 2}
	mid.pot = (a.pot+b.pot)/2 + h/8*(a.d.pot-b.d.pot)
	mid.timeS = (a.timeS + b.timeS) / 2
	mid.d = p.slope(mid.u, mid.level)
	kMid := ratios(lnK, mid)
	over := func(n *node) float64 { return (p.steam*n.d.timeS - n.d.pot) / n.pot }
	atA, atMid, atB := h/6*over(&a), 4*h/6*over(&mid), h/6*over(&b)
	for i := range m {
		m[i] -= atA*kA[i] + atMid*kMid[i] + atB*kB[i]
	}
}

// spout notes what comes over at a node.
func (r *runner) spout(out []Congener, n node, pot, k *row) {
	y := r.p.b.vapour(n.x())
	abv := fluid.ABVFromMassFrac(fluid.MassFrac(y))
	for i := range out {
		toEthanol := k[i] * exponential.Exp(pot[i]) / n.pot / y * r.hot.ethanol
		out[i].Spout = append(out[i].Spout, CongenerPoint{TimeS: n.timeS, ABV: abv, Relative: exact(toEthanol)})
	}
}

func exact(v float64) Estimate { return Estimate{v, v, v} }

// widen takes in another run's values.
func (c *Congener) widen(o Congener) {
	c.Left.widen(o.Left)
	c.Gain.widen(o.Gain)
	for i := range c.Fractions {
		c.Fractions[i].Share.widen(o.Fractions[i].Share)
		c.Fractions[i].Relative.widen(o.Fractions[i].Relative)
	}
	for i := range c.Spout {
		c.Spout[i].Relative.widen(o.Spout[i].Relative)
	}
}

func (e *Estimate) widen(o Estimate) {
	e.Low = min(e.Low, o.Low)
	e.High = max(e.High, o.High)
}
