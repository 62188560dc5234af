package fluid

// KelvinOffset is 0 C in kelvin.
const KelvinOffset = 273.15

// Liquid water at 0.1 MPa: IAPWS SR6-08(2011), "Revised Supplementary Release
// on Properties of Liquid Water at 0.1 MPa", equations for specific volume and
// isobaric heat capacity, 253.15 to 383.15 K. Used here to 120 C: at 120 C it
// is within 0.02 % in density and 0.1 % in heat capacity of IAPWS-95.
const (
	sr6R    = 461.51805 // J/(kg K)
	sr6Tr   = 10.0      // K
	sr6PoPa = 1e5
)

// sr6Alpha and sr6Beta are the reduced variables of the release.
func sr6Variables(tempC float64) (tau, alpha, beta float64) {
	t := tempC + KelvinOffset
	return t / sr6Tr, sr6Tr / (593 - t), sr6Tr / (t - 232)
}

// waterSpecificVolume is in m3/kg.
func waterSpecificVolume(tempC float64) float64 {
	_, a, b := sr6Variables(tempC)
	a2 := a * a
	a4 := a2 * a2
	sum := 1.93763157e-2 +
		a4*(6.74458446e3+a*(-2.22521604e5+a2*(1.00231247e8+a*(-1.63552118e9+a*8.32299658e9)))) +
		b*(5.78545292e-3+b*(-1.53195665e-2+b*(3.11337859e-2+b*(-4.23546241e-2+b*(3.38713507e-2+b*-1.19946761e-2)))))
	return sr6R * sr6Tr / sr6PoPa * sum
}

// WaterHeatCapacity is the heat capacity of liquid water at constant pressure
// near 1 atm, in J/(kg K); IAPWS SR6-08, -20 to 120 C (temperatures beyond are
// held at the ends).
func WaterHeatCapacity(tempC float64) float64 {
	tau, a, b := sr6Variables(clamp(tempC, -20, 120))
	sum := -8.983025854
	a3 := a * a * a
	alphaSum := a3 * a3 * (4*5*-1.661470539e5 + a*(5*6*2.708781640e6+a*a*7*8*-1.557191544e8))
	b2 := b * b
	betaSum := b2 * b2 * (2*3*-8.237426256e-1 + b*(3*4*1.908956353+b*(4*5*-2.017597384+b*5*6*8.546361348e-1)))
	return -sr6R * (sum + tau*(alphaSum+betaSum))
}

// WaterEnthalpy is the enthalpy of liquid water near 1 atm above liquid at
// 0 C, in J/kg: the integral of WaterHeatCapacity.
func WaterEnthalpy(tempC float64) float64 {
	return integrate(WaterHeatCapacity, 0, tempC)
}

// WaterDensity is the density of liquid water near 1 atm in kg/m3, 0 to 120 C:
// Density at no ethanol, so that water and weak spirit never disagree. It is
// OIML R 22 to 40 C and IAPWS SR6-08 above (see Density); both are within
// 0.01 kg/m3 of IAPWS-95.
func WaterDensity(tempC float64) float64 { return Density(0, tempC) }

// integrate is Gauss-Legendre with 5 nodes: exact for polynomials to degree
// 9, ample for the smooth heat capacities of this package.
func integrate(f func(float64) float64, a, b float64) float64 {
	mid, half := (a+b)/2, (b-a)/2
	sum := 0.5688888888888889 * f(mid)
	sum += 0.47862867049936647 * (f(mid-0.5384693101056831*half) + f(mid+0.5384693101056831*half))
	sum += 0.23692688505618908 * (f(mid-0.906179845938664*half) + f(mid+0.906179845938664*half))
	return sum * half
}

func clamp(v, lo, hi float64) float64 { return min(max(v, lo), hi) }
