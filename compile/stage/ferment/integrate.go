package ferment

import (
	"math"

	"newmake/compile/matter/starch"
)

const (
	longestStepS = 600
	stepPerTime  = 1.8 // step over the shortest answer time; RK4 is stable to 2.78
)

// rk4 moves s on by h with the classical Runge-Kutta method. d1 is the
// derivative at s.
func (y *system) rk4(s, d1 *vector, h float64) {
	var d2, d3, d4, p vector
	along(&p, s, d1, h/2)
	y.derivative(&p, &d2)
	along(&p, s, &d2, h/2)
	y.derivative(&p, &d3)
	along(&p, s, &d3, h)
	y.derivative(&p, &d4)
	for i := range s {
		s[i] += h / 6 * (d1[i] + 2*(d2[i]+d3[i]) + d4[i])
	}
}

func along(p, s, d *vector, h float64) {
	for i := range p {
		p[i] = s[i] + h*d[i]
	}
}

// saccharification is what the enzymes from the mash still do.
type saccharification struct {
	k           *starch.Constants
	state       starch.State
	enzymes     *starch.Enzymes
	maltotriose float64 // share of it that the yeast takes
	atS         float64 // up to where it has been reckoned
}

// to brings the starch and its sugars up to the time untilS.
func (c *saccharification) to(s *vector, pH, untilS float64) {
	dt := untilS - c.atS
	if dt <= 0 {
		return
	}
	c.atS = untilS
	z := &c.state
	z.WaterKg, z.GlucoseKg, z.MaltoseKg = s[water], s[glucose], s[maltose]
	three := s[maltotriose] + s[maltotrioseLeft]
	z.MaltotrioseKg = three
	if all := z.DextrinKg + z.LimitDextrinKg; all > 0 { // less what the bacteria ate
		left := s[dextrin] / all
		z.DextrinKg *= left
		z.LimitDextrinKg *= left
	}
	c.k.Step(z, c.enzymes, s[tempC], pH, dt)
	s[water], s[glucose], s[maltose] = z.WaterKg, z.GlucoseKg, z.MaltoseKg
	s[dextrin] = z.DextrinKg + z.LimitDextrinKg
	if made := z.MaltotrioseKg - three; made >= 0 {
		s[maltotriose] += made * c.maltotriose
		s[maltotrioseLeft] += made * (1 - c.maltotriose)
	} else if three > 0 {
		left := z.MaltotrioseKg / three
		s[maltotriose] *= left
		s[maltotrioseLeft] *= left
	}
}

// between is the time at which a quantity that went from a to b between t and
// t+h passed at, on the straight line.
func between(t, h, a, b, at float64) float64 {
	if b == a {
		return t + h
	}
	return t + h*math.Min(1, math.Max(0, (at-a)/(b-a)))
}
