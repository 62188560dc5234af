package fluid

import (
	"fmt"
	"math"

	"newmake/compile/matter/monotone"
)

// airDensity is the density of the air in which apparent densities are
// weighed, in kg/m3 (20 C, 1 atm, half damp; common practice).
const airDensity = 1.2

// maxSugarFrac is the greatest mass fraction of sugar of the density formula.
const maxSugarFrac = 0.85

// nbs440 is the apparent specific gravity 20/20 C in air of sucrose solutions
// of 0 to 30 % by mass, NBS Circular 440 (1942), "Polarimetry, Saccharimetry
// and the Sugars", Table 114: the scale of Brix and Plato hydrometers.
var nbs440 = [31]float64{
	1.00000, 1.00390, 1.00780, 1.01173, 1.01569, 1.01968, 1.02369, 1.02773,
	1.03180, 1.03590, 1.04003, 1.04418, 1.04837, 1.05259, 1.05683, 1.06111,
	1.06542, 1.06976, 1.07413, 1.07853, 1.08297, 1.08744, 1.09194, 1.09647,
	1.10104, 1.10564, 1.11027, 1.11493, 1.11963, 1.12436, 1.12913,
}

const nbs440End = 0.30

// sucroseC is the density of sucrose solutions above that of water, in kg/m3,
// by the ICUMSA formula (Bubnik, Kadlec, Urban and Bruhns, "Sugar
// Technologists Manual", Bartens 1995, p. 164), 0 to 100 C: the sum of
// c[i][k] s^(k+1) ((t-20)/100)^i. Read in two public codes that cite it.
var sucroseC = [5][6]float64{
	{385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890},
	{-46.2720, -7.1720, 1.1597, 5.1126, 17.5254},
	{59.7712, 7.2491, 12.3630, -35.4791},
	{-47.2207, -21.6977, 27.6301},
	{18.3184, 12.3081},
}

// rise20 is the density at 20 C above water's, in kg/m3, to 30 % sugar: a
// monotone cubic through every row of nbs440.
var rise20 = fitRise20()

func fitRise20() monotone.Curve {
	var s, rise [len(nbs440)]float64
	for i, sg := range nbs440 {
		s[i], rise[i] = float64(i)/100, (sg-1)*(WaterDensity(20)-airDensity)
	}
	return monotone.Must(s[:], rise[:])
}

// SolutionDensity is the density in vacuum, in kg/m3, of a sucrose solution
// of a mass fraction 0..0.85 at 0..100 C. More sugar counts as 0.85; beyond those
// temperatures the density goes on as that of water does.
// At 20 C it is NBS Circular 440 to 30 %, and above the ICUMSA formula less
// their difference there (0.09 kg/m3); the change with temperature is
// ICUMSA's.
func SolutionDensity(sugarMassFrac, tempC float64) float64 {
	s := clamp(sugarMassFrac, 0, maxSugarFrac)
	u := (clamp(tempC, 0, 100) - 20) / 100
	return WaterDensity(tempC) + rise(s) + icumsaRise(s, u) - icumsaRise(s, 0)
}

// rise carries rise20 on: above 30 % by ICUMSA, below 0 (an apparent extract)
// straight.
func rise(s float64) float64 {
	switch {
	case s < 0:
		return s * rise20.StartSlope()
	case s > nbs440End:
		return icumsaRise(s, 0) + rise20.At(nbs440End) - icumsaRise(nbs440End, 0)
	}
	return rise20.At(s)
}

func icumsaRise(s, u float64) float64 {
	sum := 0.0
	for i := len(sucroseC) - 1; i >= 0; i-- {
		row := 0.0
		for k := len(sucroseC[i]) - 1; k >= 0; k-- {
			row = (row + sucroseC[i][k]) * s
		}
		sum = sum*u + row
	}
	return sum
}

// SGFromPlato is the specific gravity 20/20 C in vacuum of a solution with a
// mass fraction of sugar (12 Plato is 0.12).
func SGFromPlato(sugarMassFrac float64) float64 { return SG(SolutionDensity(sugarMassFrac, 20)) }

// SGAirFromPlato is the same weighed in air, as NBS Circular 440 Table 114.
func SGAirFromPlato(sugarMassFrac float64) float64 {
	return sgAir(SolutionDensity(sugarMassFrac, 20))
}

// PlatoFromSG is the inverse of SGFromPlato: a mass fraction. Gravities below
// 1 give a negative apparent extract, as Plato tables do, to -0.10.
func PlatoFromSG(sg20 float64) (float64, error) {
	return platoFromDensity(sg20 * WaterDensity(20))
}

func platoFromDensity(kgM3 float64) (float64, error) {
	const lo, hi = -0.1, maxSugarFrac
	target := kgM3 - WaterDensity(20)
	const slack = 1e-9 // kg/m3, so that the ends survive a round trip
	if !(target >= rise(lo)-slack && target <= rise(hi)+slack) {
		return 0, fmt.Errorf("specific gravity %.4f is outside the sugar tables, %.4f to %.4f",
			SG(kgM3), SG(WaterDensity(20)+rise(lo)), SG(WaterDensity(20)+rise(hi)))
	}
	// Newton's method; the rise is smooth and its slope near 400 all along.
	s := clamp(target/400, lo, hi)
	for range 60 {
		const h = 1e-6
		step := (rise(s) - target) * 2 * h / (rise(s+h) - rise(s-h))
		s -= step
		if math.Abs(step) < 1e-15 {
			break
		}
	}
	return s, nil
}

// SG is the specific gravity 20/20 C in vacuum of a density at 20 C.
func SG(kgM3At20C float64) float64 { return kgM3At20C / WaterDensity(20) }

// sgAir is the apparent specific gravity 20/20 C, as weighed in air.
func sgAir(kgM3At20C float64) float64 {
	return (kgM3At20C - airDensity) / (WaterDensity(20) - airDensity)
}

// sg60F is the specific gravity 60/60 F in vacuum of a density at 60 F.
func sg60F(kgM3At60F float64) float64 { return kgM3At60F / WaterDensity(SixtyF) }

// sg60FAir is the apparent specific gravity 60/60 F, as weighed in air.
func sg60FAir(kgM3At60F float64) float64 {
	return (kgM3At60F - airDensity) / (WaterDensity(SixtyF) - airDensity)
}

// SugarHeatCapacity is the heat capacity of a sugar solution in J/(kg K):
// water's less s (2511 - 7.5 t), the form of Bubnik et al. (1995) at a purity
// of 100 %.
func SugarHeatCapacity(massFrac, tempC float64) float64 {
	s := clamp(massFrac, 0, 1)
	return WaterHeatCapacity(tempC) - s*(2511-7.5*clamp(tempC, 0, 120))
}
