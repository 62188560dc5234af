package still

import (
	"newmake/compile/fluid"
	"newmake/compile/stream"
)

// Enthalpies are in J/mol above the pure liquids at 0 C. The mixture's heat
// capacity is the pure liquids' and the excess heat capacity that goes with
// the heat of mixing, so that heat-up, boil and condensation form one account.
// At 41 C and 11.5 % mol it is 4 % above Perry's table of heat capacities,
// which fluid.HeatCapacity follows; over a heat-up the two differ by less
// (TestHeatUpAgainstHeatCapacity).

// liquidEnthalpy is that of ethanol-water of mole fraction x.
func liquidEnthalpy(x, tempC float64) float64 {
	return x*ethanolEnthalpy(tempC) + (1-x)*waterEnthalpy(tempC) + fluid.ExcessEnthalpy(x, tempC)
}

// vapourEnthalpy is that of vapour of mole fraction y, an ideal gas mixture:
// the pure vapours', each its liquid's and its latent heat.
func vapourEnthalpy(y, tempC float64) float64 {
	ethanol := ethanolEnthalpy(tempC) + fluid.MolarMassEthanol*fluid.LatentHeatEthanol(tempC)
	water := waterEnthalpy(tempC) + fluid.MolarMassWater*fluid.LatentHeatWater(tempC)
	return y*ethanol + (1-y)*water
}

func waterEnthalpy(tempC float64) float64 {
	return fluid.MolarMassWater * fluid.WaterEnthalpy(tempC)
}

// ethanolEnthalpy integrates the heat capacity of pure ethanol by Simpson's
// rule, piece by piece between the kinks of fluid.HeatCapacity: in each piece
// it is nearly straight.
func ethanolEnthalpy(tempC float64) float64 {
	sum, from := 0.0, 0.0
	for _, to := range [...]float64{3, 23, 41, tempC} {
		if to = min(to, tempC); to == from {
			continue
		}
		sum += (to - from) / 6 * (fluid.HeatCapacity(1, from) + 4*fluid.HeatCapacity(1, (from+to)/2) + fluid.HeatCapacity(1, to))
		from = to
	}
	return fluid.MolarMassEthanol * sum
}

const (
	copperCp = 385.0 // J/(kg K), near 25 C; CRC Handbook, from memory
	// Defaults for a still that states neither metal nor loss, common
	// practice: 4 mm of copper over 1.5 times the area of a sphere of the
	// still's volume (head and lyne arm are the half), and 10 W/m2K from the
	// bare pot alone to the air; what the head gives off is its reflux.
	sphereArea  = 4.836 // m2 for 1 m3
	plateM      = 0.004
	copperKgM3  = 8960.0
	headAndArm  = 1.5
	bareWallWM2 = 10.0 // W/(m2 K)
)

// inertHeatCapacity is that of everything but ethanol and water, in J/K: the
// solids of the charge and the metal.
func (s Setting) inertHeatCapacity(charge stream.Stream) float64 {
	dissolved := charge.DissolvedKg() * fluid.SugarHeatCapacity(1, 60) // halfway to the boil
	suspended := charge.SuspendedKg() * fluid.GrainHeatCapacity(0)
	return dissolved + suspended + s.metalKg()*copperCp
}

func (s Setting) metalKg() float64 {
	if s.Still.MetalKg > 0 {
		return s.Still.MetalKg
	}
	return copperKgM3 * plateM * headAndArm * s.area()
}

// lossW is the pot's loss at a temperature: what the still states for the
// boil, less in proportion while it warms.
func (s Setting) lossW(tempC, boilC float64) float64 {
	if s.Still.LossW > 0 {
		return s.Still.LossW * (tempC - s.AmbientC) / (boilC - s.AmbientC)
	}
	return bareWallWM2 * s.area() * (tempC - s.AmbientC)
}

func (s Setting) area() float64 { return sphereArea * cbrtSquared(s.Still.HoldsM3) }

// heatW is the still's heat, held to what the boiler can give.
func (s Setting) heatW() float64 {
	if s.BoilerW > 0 {
		return min(s.Still.HeatsW, s.BoilerW)
	}
	return s.Still.HeatsW
}
