package still

import (
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
)

// Enthalpies are in J/mol above the pure liquids at 0 C. Liquids are
// fluid.LiquidEnthalpy, whose path does not matter, so that heat-up, boil and
// condensation form one account. From 20 C to the boil it asks up to 3 % more
// heat than Perry's heat capacities, which fluid.HeatCapacity follows
// (TestHeatUpAgainstHeatCapacity).

// liquidEnthalpy is that of ethanol-water of mole fraction x.
func liquidEnthalpy(x, tempC float64) float64 {
	return fluid.MolarMass(x) * fluid.LiquidEnthalpy(fluid.MassFrac(x), tempC)
}

// vapourEnthalpy is that of vapour of mole fraction y, an ideal gas mixture:
// the pure vapours', each its liquid's and its latent heat.
func vapourEnthalpy(y, tempC float64) float64 {
	ethanol := fluid.LiquidEnthalpy(1, tempC) + fluid.LatentHeatEthanol(tempC)
	water := fluid.WaterEnthalpy(tempC) + fluid.LatentHeatWater(tempC)
	return y*fluid.MolarMassEthanol*ethanol + (1-y)*fluid.MolarMassWater*water
}

func waterEnthalpy(tempC float64) float64 {
	return fluid.MolarMassWater * fluid.WaterEnthalpy(tempC)
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
	return solidsHeatCapacity(charge) + s.metalKg()*copperCp
}

// solidsHeatCapacity is that of what is dissolved and what is suspended, in J/K.
func solidsHeatCapacity(charge stream.Stream) float64 {
	dissolved := charge.DissolvedKg() * fluid.SugarHeatCapacity(1, 60) // halfway to the boil
	return dissolved + charge.SuspendedKg()*fluid.GrainHeatCapacity(0)
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
