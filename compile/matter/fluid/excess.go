package fluid

import "math"

// Excess enthalpy of ethanol-water: Larkin, J. Chem. Thermodyn. 7 (1975) 137,
// 298 to 383 K,
//
//	HE = x(1-x) sum a_i x^e_i J/mol,  a = b + c T + d T^2.
var larkin = [5]struct{ exponent, b, c, d float64 }{
	{0, -3.63868e5, 1.83829e3, -2.32763},
	{0.5, 9.25982e5, -4.83586e3, 6.37228},
	{1.5, -14.04894e5, 7.51661e3, -10.11280},
	{2.5, 10.91318e5, -5.89498e3, 7.98868},
	{4.5, -2.79986e5, 1.50557e3, -2.03127},
}

// excessEnthalpy is the heat taken up in mixing ethanol and water to mole
// fraction x at tempC, in J per mole of mixture; negative when the mixture
// warms. Larkin, 25 to 110 C; below 25 C it is the same curve carried on.
func excessEnthalpy(x, tempC float64) float64 {
	hE, _ := excess(x, tempC)
	return hE
}

// excessHeatCapacity is the derivative of excessEnthalpy with respect to
// temperature, in J/(mol K).
func excessHeatCapacity(x, tempC float64) float64 {
	_, cpE := excess(x, tempC)
	return cpE
}

func excess(x, tempC float64) (hE, cpE float64) {
	x = clamp(x, 0, 1)
	t := tempC + KelvinOffset
	s := math.Sqrt(x)
	powers := [5]float64{1, s, x * s, x * x * s, x * x * x * x * s}
	for i, k := range larkin {
		hE += (k.b + k.c*t + k.d*t*t) * powers[i]
		cpE += (k.c + 2*k.d*t) * powers[i]
	}
	return x * (1 - x) * hE, x * (1 - x) * cpE
}

// specificExcessCp is the excess heat capacity in J/(kg K) at mass fraction w.
func specificExcessCp(w, tempC float64) float64 {
	x := MoleFrac(w)
	return excessHeatCapacity(x, tempC) / MolarMass(x)
}

// specificExcess is the excess enthalpy in J/kg at mass fraction w.
func specificExcess(w, tempC float64) float64 {
	x := MoleFrac(w)
	return excessEnthalpy(x, tempC) / MolarMass(x)
}
