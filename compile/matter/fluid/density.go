package fluid

import "math"

// Limits of Density in degrees Celsius; temperatures beyond are held at them.
const (
	minTempC = oimlMinTempC
	maxTempC = 120.0
)

// Density is the density in vacuum, in kg/m3, of liquid ethanol-water of a
// mass fraction 0..1 of ethanol at -20..120 C.
//
// From -20 to 40 C it is DensityOIML. Above, the specific volume starts from
// OIML at 40 C and grows with the pure liquids and with the excess volume:
//
//	v(w,T) = v(w,40) + (1-w)[vW(T)-vW(40)] + w[vE(T)-vE(40)] + s(w)(T-40)
//
// where vW is water by IAPWS SR6-08, vE is saturated ethanol by Schroeder,
// Penoncello and Schroeder, J. Phys. Chem. Ref. Data 43 (2014) 043102, and
// s(w) is the rate at which OIML's own excess volume changes from 20 to 40 C.
// It joins OIML at 40 C without a step.
//
// Mass fractions and temperatures outside the limits are held at them, so
// that the result is always a number for a number.
func Density(ethanolMassFrac, tempC float64) float64 {
	rho, _ := densitySlope(ethanolMassFrac, tempC)
	return rho
}

// densitySlope is Density and its derivative with respect to mass fraction.
func densitySlope(w, tempC float64) (rho, dRhoDw float64) {
	w = clamp(w, 0, 1)
	tempC = clamp(tempC, minTempC, maxTempC)
	if tempC <= oimlMaxTempC {
		return oiml(w, tempC)
	}
	rho40, slope40 := oiml(w, 40)
	rho20, slope20 := oiml(w, 20)
	v40, dV40 := 1/rho40, -slope40/(rho40*rho40)
	v20, dV20 := 1/rho20, -slope20/(rho20*rho20)
	// Excess volume gained from 20 to 40 C: the total less the pure liquids.
	excess := (v40 - v20) - (1-w)*oimlWaterGain - w*oimlEthanolGain
	dExcess := (dV40 - dV20) + oimlWaterGain - oimlEthanolGain
	waterGain := waterSpecificVolume(tempC) - waterVolume40
	ethanolGain := ethanolSpecificVolume(tempC) - ethanolVolume40
	f := (tempC - 40) / 20
	v := v40 + (1-w)*waterGain + w*ethanolGain + f*excess
	dV := dV40 - waterGain + ethanolGain + f*dExcess
	return 1 / v, -dV / (v * v)
}

// Constants of the hot regime, from the formulas themselves.
var (
	waterVolume40   = waterSpecificVolume(40)
	ethanolVolume40 = ethanolSpecificVolume(40)
	oimlWaterGain   = oimlVolume(0, 40) - oimlVolume(0, 20)
	oimlEthanolGain = oimlVolume(1, 40) - oimlVolume(1, 20)
)

func oimlVolume(w, tempC float64) float64 {
	rho, _ := oiml(w, tempC)
	return 1 / rho
}

// ethanolSpecificVolume is that of saturated liquid ethanol in m3/kg:
// ancillary equation of Schroeder et al. (2014), Tc 514.71 K,
// critical density 273.195 kg/m3.
func ethanolSpecificVolume(tempC float64) float64 {
	th := 1 - (tempC+KelvinOffset)/514.71
	s := math.Sqrt(th)
	return 1 / (273.195 * (1 + 9.00921*s - 23.1668*math.Pow(th, 0.8) + 30.9092*math.Pow(th, 1.1) -
		16.5459*th*s + 3.64294*math.Pow(th, 3.3)))
}
