package fluid

import "math"

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

// bubble solves x1 K1 + x2 K2 = 1 for the temperature by Newton's method on
// the logarithm of the sum against 1/T, which is nearly straight: two or
// three steps from the guess.
func bubble(x, pressurePa float64) bubblePoint {
	x = clamp(x, 0, 1)
	t := bubbleGuess(x, pressurePa)
	lnPc1, lnPc2 := math.Log(ethanolPcPa/pressurePa), math.Log(waterPcPa/pressurePa)
	var b bubblePoint
	for range 30 {
		a := nrtl(x, t)
		p1, d1 := ethanolLnP(t)
		p2, d2 := waterLnP(t)
		b.k1 = math.Exp(a.lnG1 + p1 + lnPc1)
		b.k2 = math.Exp(a.lnG2 + p2 + lnPc2)
		f1, f2 := x*b.k1, (1-x)*b.k2
		sum := f1 + f2
		b.kelvin, b.y = t, f1/sum
		b.k1, b.k2 = b.k1/sum, b.k2/sum
		slope := (f1*(a.dLnG1+d1) + f2*(a.dLnG2+d2)) / sum
		step := -math.Log(sum) / slope
		t = t * t / (t - step)
		if math.Abs(step) < 1e-7 { // the next, quadratic, step is below 1e-12
			b.kelvin = t
			break
		}
	}
	return b
}

// bubbleGuess is good to about a kelvin from 50 to 110 kPa: a rational fit to
// the bubble line at 1 atm, moved along 1/T for the pressure.
func bubbleGuess(x, pressurePa float64) float64 {
	t := 351.3 + 21.8*(1-x)*(1-x)/(1+17*x)
	return 1 / (1/t - 2.06e-4*math.Log(pressurePa/101325))
}

// Azeotrope is the mole fraction of ethanol and the temperature at which
// vapour and liquid have the same composition. Below the pressure at which
// the azeotrope disappears (about 10 kPa) it is pure ethanol.
func Azeotrope(pressurePa float64) (x, tempC float64) {
	lo, hi := 0.5, 1.0
	if RelativeVolatility(hi, pressurePa) >= 1 {
		return 1, EthanolBoilC(pressurePa)
	}
	x = 0.9
	for range 60 {
		b := bubble(x, pressurePa)
		if b.k1 > b.k2 {
			lo = x
		} else {
			hi = x
		}
		if hi-lo < 1e-13 {
			break
		}
		x = (lo + hi) / 2
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
	balance := func(x float64) (float64, bubblePoint) {
		b := bubble(x, pressurePa)
		return liquidFrac*x + (1-liquidFrac)*b.y - yIn, b
	}
	// Both terms rise with x, from 0 at x = 0 to 1 at x = 1.
	lo, hi := 0.0, 1.0
	x := yIn
	if r := RelativeVolatility(yIn, pressurePa); r > 1 {
		x = yIn / (yIn + r*(1-yIn))
	}
	var b bubblePoint
	var v float64
	for range 100 {
		v, b = balance(x)
		if v == 0 {
			break
		}
		if v < 0 {
			lo = x
		} else {
			hi = x
		}
		h := 1e-6
		if x > 0.5 {
			h = -h
		}
		v2, _ := balance(x + h)
		next := x - v*h/(v2-v)
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		done := math.Abs(next-x) < 1e-12 || next == lo || next == hi
		x = next
		if done {
			b = bubble(x, pressurePa)
			break
		}
	}
	return b.kelvin - KelvinOffset, x, b.y
}
