package fluid

import "fmt"

// AirDensity is the density of the air in which apparent densities are
// weighed, in kg/m3 (20 C, 1 atm, half damp; common practice).
const AirDensity = 1.2

// MaxSugarFrac is the greatest mass fraction of sugar of the density formula.
const MaxSugarFrac = 0.85

// Density of sucrose solutions above that of water, in kg/m3: ICUMSA formula
// (Bubnik, Kadlec, Urban and Bruhns, "Sugar Technologists Manual", Bartens
// 1995, p. 164), 0 to 100 C; sum of c[i][k] s^(k+1) ((t-20)/100)^i. Read in
// two public codes that cite it.
var sucroseC = [5][6]float64{
	{385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890},
	{-46.2720, -7.1720, 1.1597, 5.1126, 17.5254},
	{59.7712, 7.2491, 12.3630, -35.4791},
	{-47.2207, -21.6977, 27.6301},
	{18.3184, 12.3081},
}

// SolutionDensity is the density in vacuum, in kg/m3, of a sucrose solution
// of a mass fraction 0..0.85 at 0..100 C; values outside are held at the ends.
func SolutionDensity(sugarMassFrac, tempC float64) float64 {
	s := clamp(sugarMassFrac, 0, MaxSugarFrac)
	t := clamp(tempC, 0, 100)
	return WaterDensity(tempC) + sucroseRise(s, (t-20)/100)
}

func sucroseRise(s, u float64) float64 {
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
	return SGAir(SolutionDensity(sugarMassFrac, 20))
}

// PlatoFromSG is the inverse of SGFromPlato: a mass fraction. Gravities below
// 1 give a negative apparent extract, as Plato tables do, to -0.10.
func PlatoFromSG(sg20 float64) (float64, error) {
	return platoFromDensity(sg20 * WaterDensity(20))
}

// PlatoFromSGAir is the inverse of SGAirFromPlato.
func PlatoFromSGAir(sgAir20 float64) (float64, error) {
	return platoFromDensity(AirDensity + sgAir20*(WaterDensity(20)-AirDensity))
}

func platoFromDensity(kgM3 float64) (float64, error) {
	target := kgM3 - WaterDensity(20)
	if !(target >= sucroseRise(-0.1, 0) && target <= sucroseRise(MaxSugarFrac, 0)) {
		return 0, fmt.Errorf("specific gravity %.4f is outside the sugar tables, which run to 85 %% sugar", kgM3/WaterDensity(20))
	}
	s := target / 400
	for range 50 {
		const h = 1e-5
		f := sucroseRise(s, 0) - target
		slope := (sucroseRise(s+h, 0) - sucroseRise(s-h, 0)) / (2 * h)
		step := f / slope
		s -= step
		if step < 1e-14 && step > -1e-14 {
			break
		}
	}
	return s, nil
}

// SG is the specific gravity 20/20 C in vacuum of a density at 20 C.
func SG(kgM3At20C float64) float64 { return kgM3At20C / WaterDensity(20) }

// SGAir is the apparent specific gravity 20/20 C, as weighed in air.
func SGAir(kgM3At20C float64) float64 {
	return (kgM3At20C - AirDensity) / (WaterDensity(20) - AirDensity)
}

// SG60F is the specific gravity 60/60 F in vacuum of a density at 60 F.
func SG60F(kgM3At60F float64) float64 { return kgM3At60F / WaterDensity(SixtyF) }

// SG60FAir is the apparent specific gravity 60/60 F, as weighed in air.
func SG60FAir(kgM3At60F float64) float64 {
	return (kgM3At60F - AirDensity) / (WaterDensity(SixtyF) - AirDensity)
}

// SugarHeatCapacity is the heat capacity of a sugar solution in J/(kg K):
// water's less s (2511 - 7.5 t), the form of Bubnik et al. (1995) at a purity
// of 100 %.
func SugarHeatCapacity(massFrac, tempC float64) float64 {
	s := clamp(massFrac, 0, 1)
	return WaterHeatCapacity(tempC) - s*(2511-7.5*clamp(tempC, 0, 120))
}
