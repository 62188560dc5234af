package still

import (
	"math"

	"newmake/compile/matter/exponential"
	"newmake/compile/matter/fluid"
)

// equilibrium is a liquid that boils: the temperature at which it does, and
// the mole fraction of the vapour that rises. The stage uses ethanolWater; the
// tests put ideal mixtures in its place.
type equilibrium interface {
	bubble(x float64) (tempC, y float64)
}

// ethanolWater is fluid's equilibrium at a pressure.
type ethanolWater struct{ pressurePa float64 }

func (e ethanolWater) bubble(x float64) (tempC, y float64) {
	return fluid.BubblePointC(x, e.pressurePa)
}

// Functions of the pot's mole fraction that a run is made of.
const (
	lnAlpha    = iota // ln of the volatility of the spout's vapour against the pot: (yD/(1-yD))/(x/(1-x))
	potC              // the pot's temperature
	dPotC             // its derivative on the series' axis
	potH              // enthalpy of the pot's liquid, J/mol
	dPotH             // its derivative on the series' axis
	overH             // enthalpy that leaves pot and head per mole of distillate, the head's loss included
	headH             // the head's loss, per mole of distillate
	vapourC           // temperature of the vapour that leaves the head
	_functions        // must be width
)

var _ = [1]struct{}{}[width-_functions]

// dLnAlpha is the derivative of lnAlpha on the series' axis, in the series of
// the pot without its head, which has no other use for this place.
const dLnAlpha = dPotC

// boil is a boiling pot under a head.
type boil struct {
	mixture equilibrium
	reflux  float64
	s       *series
	left    leaving
	// Those that are wanted alone.
	lnAlpha, dLnAlpha, tempC single
	// The same without its head, and the way through the head from each node, for
	// what passes through it.
	pot   *boil
	paths [order][]float64
}

// state is a boil at one mole fraction of the pot.
type state struct {
	x, y           float64 // pot; vapour at the spout
	potC, vapourC  float64
	dPotC          float64 // by x
	potH, dPotH    float64
	overH, headH   float64
	equilibriumGap float64 // y - x, without cancellation
}

// newBoil makes the functions of a boil: the equilibrium at the nodes, then
// the head's differential condensation from each node, then the enthalpies.
func newBoil(mixture equilibrium, reflux float64) *boil { return newPot(mixture).under(reflux) }

// newPot makes the functions of a pot without a head: only what under needs.
func newPot(mixture equilibrium) *boil {
	var rows [order]row
	for k, x := range nodeX {
		t, y := mixture.bubble(x)
		rows[k][lnAlpha], rows[k][potC] = logit(y)-logit(x), t
	}
	pot := &boil{mixture: mixture, s: fit(&rows)}
	pot.s.differentiate(lnAlpha, dLnAlpha)
	pot.alone()
	return pot
}

// alone takes the functions that are wanted alone out of the series.
func (b *boil) alone() {
	for j := range order {
		b.lnAlpha[j], b.dLnAlpha[j], b.tempC[j] = b.s[j][lnAlpha], b.s[j][dLnAlpha], b.s[j][potC]
	}
}

// under puts a pot under a head.
func (pot *boil) under(reflux float64) *boil {
	var rows [order]row
	var paths [order][]float64
	room := make([]float64, 0, order*(headSteps(reflux)+1))
	for k, x := range nodeX {
		room = pot.headPath(room, x, reflux)
		path := room[len(room)-headSteps(reflux)-1:]
		paths[k] = path
		rows[k][potC] = sumOf(&pot.tempC, nodeT[k])
		xHead := path[len(path)-1]
		y0, y := pot.vapour(x), pot.vapour(xHead)
		rows[k][vapourC] = sumOf(&pot.tempC, place(xHead))
		rows[k][lnAlpha] = logit(y) - logit(x)
		rows[k][potH] = liquidEnthalpy(x, rows[k][potC])
		leaves := vapourEnthalpy(y, rows[k][vapourC])
		rows[k][overH] = leaves
		if reflux > 0 {
			// The condensate returns at the boil of its mean composition.
			condensate := max(0, (y0-(1-reflux)*y)/reflux)
			tC := sumOf(&pot.tempC, place(condensate))
			rises := vapourEnthalpy(y0, rows[k][potC])
			rows[k][headH] = (rises-reflux*liquidEnthalpy(condensate, tC))/(1-reflux) - leaves
			rows[k][overH] += rows[k][headH]
		}
	}
	b := &boil{mixture: pot.mixture, reflux: reflux, s: fit(&rows), pot: pot, paths: paths}
	b.s.differentiate(potC, dPotC)
	b.s.differentiate(potH, dPotH)
	b.alone()
	b.left = b.leaves()
	return b
}

// at is the boil at mole fraction x of the pot.
func (b *boil) at(x float64) state {
	v := b.s.at(place(x))
	alpha := exponential.Exp(v[lnAlpha])
	below := 1 + x*(alpha-1)
	d := dPlace(x)
	return state{
		x: x, y: alpha * x / below, equilibriumGap: x * (1 - x) * (alpha - 1) / below,
		potC: v[potC], vapourC: v[vapourC], dPotC: v[dPotC] * d,
		potH: v[potH], dPotH: v[dPotH] * d, overH: v[overH], headH: v[headH],
	}
}

// vapour is the mole fraction at the spout.
func (b *boil) vapour(x float64) float64 {
	alpha := exponential.Exp(sumOf(&b.lnAlpha, place(x)))
	return alpha * x / (1 + x*(alpha-1))
}

// headSteps is the number of steps through the head: even, for the congeners'
// sake, and fine enough for the series (TestHeadAgainstFineSteps).
func headSteps(reflux float64) int {
	if reflux == 0 {
		return 0
	}
	return 2 * max(2, int(math.Ceil(-math.Log1p(-reflux)/0.06)))
}

// headPath follows the vapour of a pot of mole fraction x through the head as
// the share reflux of it condenses. With l = ln(V0/V), the liquid in
// equilibrium with the vapour follows
//
//	d ln x / dl = (y/x - 1) / (dy/dx)
//
// taken along the series' own axis. It is appended to path at each of even steps
// in l, the pot's own first. It is for the series of the pot itself, before the
// head is in it.
func (b *boil) headPath(path []float64, x, reflux float64) []float64 {
	steps := headSteps(reflux)
	t := place(x)
	h := -math.Log1p(-reflux) / float64(max(1, steps))
	path = append(path, x)
	for range steps {
		k1 := b.headSlope(t)
		k2 := b.headSlope(t + h/2*k1)
		k3 := b.headSlope(t + h/2*k2)
		k4 := b.headSlope(t + h*k3)
		t += h / 6 * (k1 + 2*k2 + 2*k3 + k4)
		path = append(path, placed(t))
	}
	return path
}

// headSlope is the change of place with l.
func (b *boil) headSlope(t float64) float64 {
	x := placed(t)
	// y = a x / (1 + x (a-1)), differentiated with a = exp(lnAlpha(x)).
	lnA, dLnA := sumsOf(&b.lnAlpha, &b.dLnAlpha, t)
	a := exponential.Exp(lnA)
	below := 1 + x*(a-1)
	dydx := a * (1 + x*(1-x)*dLnA*dPlace(x)) / (below * below)
	return (a/below - 1) / dydx * x * dPlace(x)
}

func logit(v float64) float64 { return math.Log(v / (1 - v)) }
