package fluid

import (
	"math"

	"newmake/compile/matter/exponential"
)

// Pressures at which the equilibrium has been tested; the functions work
// outside, without a claim.
const (
	MinPressurePa = 50e3
	MaxPressurePa = 110e3
)

// BubblePointC is the temperature at which liquid of mole fraction xEthanol
// begins to boil at pressurePa, and the mole fraction of ethanol in the vapour
// that rises from it: modified Raoult's law with NRTL activities, ideal
// vapour, and the vapour pressures of this package. Within 0.013 in y and
// 0.9 C of Carey and Lewis (1932) at 1 atm.
func BubblePointC(xEthanol, pressurePa float64) (tempC, yEthanol float64) {
	b := bubble(xEthanol, pressurePa)
	return b.kelvin - KelvinOffset, b.y
}

// RelativeVolatility of ethanol to water, (y/x)/((1-y)/(1-x)), of liquid
// boiling at mole fraction x. It is finite for all x from 0 to 1.
func RelativeVolatility(x, pressurePa float64) float64 {
	b := bubble(x, pressurePa)
	return b.k1 / b.k2
}

// bubblePoint is the full answer: K values y/x of ethanol and water too.
type bubblePoint struct {
	kelvin, y, k1, k2 float64
}

func bubble(x, pressurePa float64) bubblePoint {
	x = clamp(x, 0, 1)
	return bubbleFrom(x, pressurePa, bubbleGuess(x, pressurePa))
}

// bubbleFrom solves x1 K1 + x2 K2 = 1 for the temperature, from a guess in
// kelvin, by Newton's method on the logarithm of the sum against 1/T, which is
// nearly straight. The last step is taken in T and, to first order, in K, so
// that an error of 1e-4 K before it leaves one below 1e-10 K and 1e-11 in K.
func bubbleFrom(x, pressurePa, t float64) bubblePoint {
	lnPc1, lnPc2 := math.Log(ethanolPcPa/pressurePa), math.Log(waterPcPa/pressurePa)
	var b bubblePoint
	for range 30 {
		a := nrtl(x, t)
		p1, d1 := ethanolLnP(t)
		p2, d2 := waterLnP(t)
		k1, k2 := exponential.Exp(a.lnG1+p1+lnPc1), exponential.Exp(a.lnG2+p2+lnPc2)
		d1, d2 = d1+a.dLnG1, d2+a.dLnG2
		sum := x*k1 + (1-x)*k2
		step := -math.Log(sum) * sum / (x*k1*d1 + (1-x)*k2*d2)
		next := t * t / (t - step)
		k1, k2 = k1*(1+d1*(next-t)), k2*(1+d2*(next-t))
		sum = x*k1 + (1-x)*k2
		t = next
		b = bubblePoint{kelvin: t, y: x * k1 / sum, k1: k1 / sum, k2: k2 / sum}
		if math.Abs(step) < 1e-4 {
			break
		}
	}
	return b
}

// bubbleGuess is within 0.4 K of bubble from 50 to 110 kPa: a fit to it at
// 1 atm, moved along 1/T for the pressure. It only saves steps.
func bubbleGuess(x, pressurePa float64) float64 {
	z := 1 - x
	t := 351.14 + 22.14*z*z/(1+14.54*x) + x*z*(15*z*z*z+3.02*x)
	return 1 / (1/t - (1.983e-4+5.8e-6*x)*math.Log(pressurePa/StandardPressurePa))
}

// Azeotrope is the mole fraction of ethanol and the temperature at which
// vapour and liquid have the same composition. Measured, it is gone below
// about 10 kPa (from memory); the model keeps one, so ask from 50 to 110 kPa.
func Azeotrope(pressurePa float64) (x, tempC float64) {
	lo, hi := 0.5, 1.0
	for hi-lo > 1e-13 {
		x = (lo + hi) / 2
		if RelativeVolatility(x, pressurePa) > 1 {
			lo = x
		} else {
			hi = x
		}
	}
	tempC, _ = BubblePointC(x, pressurePa)
	return x, tempC
}

// DewPointC is the temperature at which vapour of mole fraction y begins to
// condense at pressurePa, and the mole fraction x of the first liquid.
func DewPointC(y, pressurePa float64) (tempC, x float64) {
	tempC, x, _ = PartialCondenser(y, 0, pressurePa)
	return tempC, x
}

// PartialCondenser condenses the mole fraction liquidFrac of a vapour of mole
// fraction yIn, the two phases leaving in equilibrium at pressurePa. It gives
// the temperature and the mole fractions of ethanol in the liquid that runs
// back and the vapour that goes on. With liquidFrac 0 it is the dew point,
// with 1 the bubble point.
func PartialCondenser(yIn, liquidFrac, pressurePa float64) (tempC, xLiquid, yVapour float64) {
	yIn, liquidFrac = clamp(yIn, 0, 1), clamp(liquidFrac, 0, 1)
	if yIn == 0 || yIn == 1 || liquidFrac == 1 {
		b := bubble(yIn, pressurePa)
		return b.kelvin - KelvinOffset, yIn, b.y
	}
	// Solve r x + (1-r) y(x) = yIn. Both terms rise from 0 to 1 with x, so the
	// bracket holds; the secant is started by two guesses of x, each with the
	// relative volatility of the one before.
	guess := func(b bubblePoint) float64 {
		a := b.k1 / b.k2
		return clamp(yIn/(a*(1-yIn)+yIn)*(1-liquidFrac)+yIn*liquidFrac, 1e-12*yIn, 1)
	}
	excess := func(x float64, b bubblePoint) float64 { return liquidFrac*x + (1-liquidFrac)*b.y - yIn }
	lo, hi := 0.0, 1.0
	x0 := guess(bubble(yIn, pressurePa))
	b := bubble(x0, pressurePa)
	v0 := excess(x0, b)
	x := guess(b)
	if x == x0 {
		x = 0.99 * x0
	}
	for range 100 {
		b = bubbleFrom(x, pressurePa, b.kelvin)
		v := excess(x, b)
		if v <= 0 {
			lo = x
		}
		if v >= 0 {
			hi = x
		}
		next := x - v*(x-x0)/(v-v0)
		if !(next >= lo && next <= hi) {
			next = (lo + hi) / 2
		}
		moved := math.Abs(next - x)
		x0, v0, x = x, v, next
		if moved <= 1e-11*x {
			break
		}
	}
	b = bubbleFrom(x, pressurePa, b.kelvin)
	return b.kelvin - KelvinOffset, x, b.y
}
