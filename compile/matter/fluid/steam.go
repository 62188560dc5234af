package fluid

import (
	"math"

	"newmake/compile/matter/exponential"
)

// Saturated water and steam: IAPWS SR1-86(1992), "Revised Supplementary
// Release on Saturation Properties of Ordinary Water Substance"; Wagner and
// Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783. From the triple point to the
// critical point; used here from 0 to 200 C.
const (
	waterTcK     = 647.096
	waterPcPa    = 22.064e6
	waterRhoC    = 322.0
	steamAlphaJK = 1000.0
)

// waterLnP is ln(P/Pc) of saturated water at kelvin t, and its derivative
// with respect to t.
func waterLnP(t float64) (lnP, dLnPdT float64) {
	th := 1 - t/waterTcK
	s := math.Sqrt(th)
	th2 := th * th
	th3 := th2 * th
	sum := th*(-7.85951783+s*1.84408259) +
		th3*(-11.7866497+s*22.6807411+th*-15.9618719) +
		th3*th3*th*s*1.80122502
	// d(sum)/d(th)
	dSum := -7.85951783 + 1.5*1.84408259*s + th2*(3*-11.7866497+3.5*22.6807411*s+4*-15.9618719*th) +
		7.5*1.80122502*th3*th3*s
	lnP = waterTcK / t * sum
	return lnP, -(lnP + dSum) / t
}

// VapourPressureWaterPa is the vapour pressure of water; IAPWS.
func VapourPressureWaterPa(tempC float64) float64 {
	lnP, _ := waterLnP(tempC + KelvinOffset)
	return waterPcPa * exponential.Exp(lnP)
}

// WaterBoilC is the boiling point of water at a pressure: the inverse of
// VapourPressureWaterPa, from 1 kPa to 1.5 MPa.
func WaterBoilC(pressurePa float64) float64 {
	return invertLnP(waterLnP, math.Log(pressurePa/waterPcPa), 373.124, math.Log(101325/waterPcPa)) - KelvinOffset
}

// invertLnP solves lnP(T) = target by Newton's method in 1/T, in which ln P
// is nearly straight. It starts from a known point of the curve.
func invertLnP(f func(float64) (float64, float64), target, startK, startLnP float64) float64 {
	t := startK
	_, slope := f(t)
	t = 1 / (1/t - (target-startLnP)/(slope*t*t))
	for range 20 {
		lnP, slope := f(t)
		step := (target - lnP) / slope
		t = t * t / (t - step)
		if math.Abs(step) < 1e-10 {
			break
		}
	}
	return t
}

// saturatedWater gives the enthalpies of saturated liquid and steam in J/kg,
// zero for liquid at the triple point. The powers are those of the release,
// written with roots: th^(16/3) is th^5 c, th^(37/6) is th^6 sqrt(c).
func saturatedWater(tempC float64) (liquid, steam float64) {
	t := tempC + KelvinOffset
	th := 1 - t/waterTcK
	c := math.Cbrt(th)
	c2, s := c*c, math.Sqrt(c)
	lnP, dLnP := waterLnP(t)
	dPdT := waterPcPa * exponential.Exp(lnP) * dLnP
	rhoL := waterRhoC * (1 + 1.99274064*c + 1.09965342*c2 - 0.510839303*th*c2 -
		1.75493479*power(th, 5)*c - 45.5170352*power(th, 14)*c - 6.74694450e5*power(th, 36)*c2)
	rhoV := waterRhoC * exponential.Exp(-2.03150240*c-2.68302940*c2-5.38626492*th*c-
		17.2991605*power(th, 3)-44.7586581*power(th, 6)*s-63.9201063*power(th, 11)*c2*s)
	r := t / waterTcK
	rs := math.Sqrt(r)
	alpha := steamAlphaJK * (-1135.905627715 - 5.65134998e-8/power(r, 19) + 2690.66631*r +
		127.287297*power(r, 4)*rs - 135.003439*power(r, 5) + 0.981825814*power(r, 54)*rs)
	return alpha + t/rhoL*dPdT, alpha + t/rhoV*dPdT
}

// power is v to a whole power n >= 1, by squaring.
func power(v float64, n int) float64 {
	p := 1.0
	for ; n > 0; n >>= 1 {
		if n&1 == 1 {
			p *= v
		}
		v *= v
	}
	return p
}

// LatentHeatWater is the heat of vaporization of water in J/kg, 0 to 200 C.
func LatentHeatWater(tempC float64) float64 {
	liquid, steam := saturatedWater(clamp(tempC, 0, 200))
	return steam - liquid
}

// SteamEnthalpy is the enthalpy of saturated steam at tempC in J/kg, above
// liquid water at 0 C. Steam let into a mash at that temperature gives up
// SteamEnthalpy less WaterEnthalpy at the temperature of the mash.
func SteamEnthalpy(tempC float64) float64 {
	_, steam := saturatedWater(clamp(tempC, 0, 200))
	return steam
}

// SteamEnthalpyAtPressure is SteamEnthalpy at the boiling point for an
// absolute pressure.
func SteamEnthalpyAtPressure(pressurePa float64) float64 {
	return SteamEnthalpy(WaterBoilC(pressurePa))
}
