package fluid

import (
	"math"

	"newmake/compile/matter/exponential"
)

// NRTL activity model for ethanol (1) and water (2) with temperature-dependent
// parameters, as several public codes give them from Gmehling and Onken,
// DECHEMA Chemistry Data Series vol. I/1 (read in those codes, not in the
// book): tau = a + b/T, T in kelvin, alpha 0.30.
const (
	nrtlA12, nrtlB12 = -0.8009, 246.18
	nrtlA21, nrtlB21 = 3.4578, -586.0809
	nrtlAlpha        = 0.30
)

// activity is what the bubble-point solver needs at one temperature.
type activity struct {
	lnG1, lnG2   float64 // logarithms of the activity coefficients
	dLnG1, dLnG2 float64 // and their derivatives with respect to kelvin
}

// nrtl evaluates the model at mole fraction x of ethanol and kelvin t.
func nrtl(x, t float64) activity {
	inv := 1 / t
	tau12, tau21 := nrtlA12+nrtlB12*inv, nrtlA21+nrtlB21*inv
	d12, d21 := -nrtlB12*inv*inv, -nrtlB21*inv*inv
	g12, g21 := exponential.Exp(-nrtlAlpha*tau12), exponential.Exp(-nrtlAlpha*tau21)
	dg12, dg21 := -nrtlAlpha*d12*g12, -nrtlAlpha*d21*g21
	x1, x2 := x, 1-x
	s1, s2 := 1/(x1+x2*g21), 1/(x2+x1*g12)
	ds1, ds2 := -x2*dg21*s1*s1, -x1*dg12*s2*s2

	// ln g1 = x2^2 [tau21 (G21 s1)^2 + tau12 G12 s2^2]
	q1 := g21 * s1
	dq1 := dg21*s1 + g21*ds1
	p1 := g12 * s2 * s2
	dp1 := dg12*s2*s2 + 2*g12*s2*ds2
	// ln g2 = x1^2 [tau12 (G12 s2)^2 + tau21 G21 s1^2]
	q2 := g12 * s2
	dq2 := dg12*s2 + g12*ds2
	p2 := g21 * s1 * s1
	dp2 := dg21*s1*s1 + 2*g21*s1*ds1

	return activity{
		lnG1:  x2 * x2 * (tau21*q1*q1 + tau12*p1),
		lnG2:  x1 * x1 * (tau12*q2*q2 + tau21*p2),
		dLnG1: x2 * x2 * (d21*q1*q1 + 2*tau21*q1*dq1 + d12*p1 + tau12*dp1),
		dLnG2: x1 * x1 * (d12*q2*q2 + 2*tau12*q2*dq2 + d21*p2 + tau21*dp2),
	}
}

// ActivityCoefficients are those of ethanol and water in the liquid at mole
// fraction x of ethanol; NRTL.
func ActivityCoefficients(x, tempC float64) (ethanol, water float64) {
	a := nrtl(clamp(x, 0, 1), tempC+KelvinOffset)
	return exponential.Exp(a.lnG1), exponential.Exp(a.lnG2)
}

// Vapour pressure of ethanol: Wagner equation, Poling, Prausnitz and O'Connell,
// "The Properties of Gases and Liquids", 5th ed., appendix A.
const (
	ethanolTcK  = 513.92
	ethanolPcPa = 6.132e6
)

// ethanolLnP is ln(P/Pc) at kelvin t and its derivative.
func ethanolLnP(t float64) (lnP, dLnPdT float64) {
	th := 1 - t/ethanolTcK
	s := math.Sqrt(th)
	th4 := th * th * th * th
	sum := th*(-8.68587+s*(1.17831+th*-4.8762)) + 1.588*th4*th
	dSum := -8.68587 + s*(1.5*1.17831+2.5*-4.8762*th) + 5*1.588*th4
	lnP = ethanolTcK / t * sum
	return lnP, -(lnP + dSum) / t
}

// VapourPressureEthanolPa is the vapour pressure of ethanol.
func VapourPressureEthanolPa(tempC float64) float64 {
	lnP, _ := ethanolLnP(tempC + KelvinOffset)
	return ethanolPcPa * exponential.Exp(lnP)
}
