package still

import "math"

// Mixture is a binary mixture: at a mole fraction of the more volatile part,
// the temperature at which it boils and the mole fraction of the vapour.
type Mixture func(x float64) (tempC, y float64)

func (m Mixture) bubble(x float64) (tempC, y float64) { return m(x) }

// Simple boils a mixture down from mole fraction x0 to x, with no head and no
// thought of heat: simple distillation. It gives the share of the moles that is
// left, and the mole fraction of all that came over. It goes the way of a run,
// by the same series and the same integrator, laid open for mixtures whose
// answer is known from elsewhere.
//
// The mixture must be smooth, its boiling point must fall as x rises, and its
// vapour must be the stronger from x to x0.
func Simple(m Mixture, x0, x float64) (left, over float64) {
	p := &pot{b: newBoil(m, 0), heatW: 1e5, ethanol0: x0, water0: 1 - x0, maxStep: maxStep, tolerance: tolerance}
	end, _ := p.walk(p.node(math.Log(x0), level{pot: 1}), math.Log(x), nil, nil)
	return end.pot, (x0 - end.pot*x) / (1 - end.pot)
}
