package fluid

import (
	"math"

	"newmake/compile/matter/monotone"
)

// Specific heat of ethanol-water in cal/(g C): Perry's Chemical Engineers'
// Handbook, 7th ed., p. 2-184, at 3, 23 and 41 C.
const caloriePerG = 4184.0 // J/kg, thermochemical

var (
	perryTempsC = [3]float64{3, 23, 41}
	perryMole   = [5]float64{0.0416, 0.115, 0.37, 0.61, 1}
	perryCp     = [3][5]float64{
		{1.05, 1.02, 0.805, 0.67, 0.54},
		{1.02, 1.03, 0.86, 0.727, 0.577},
		{1.02, 1.03, 0.875, 0.748, 0.621},
	}
	// perryExcess is the table less the mass average of the pure liquids, by
	// mass fraction, one curve for each temperature.
	perryExcess = fitPerry()
)

func fitPerry() (curves [3]monotone.Curve) {
	w := make([]float64, 1, 1+len(perryMole))
	for _, x := range perryMole {
		w = append(w, MassFrac(x))
	}
	for i, tempC := range perryTempsC {
		excess := make([]float64, 1, len(w))
		for k, cp := range perryCp[i] {
			excess = append(excess, cp*caloriePerG-averageHeatCapacity(w[k+1], tempC))
		}
		curves[i] = monotone.Must(w, excess)
	}
	return curves
}

func averageHeatCapacity(w, tempC float64) float64 {
	return (1-w)*WaterHeatCapacity(tempC) + w*ethanolHeatCapacity(tempC)
}

// larkinFromC is where HeatCapacity rests on Larkin alone.
const larkinFromC = 70.0

// HeatCapacity is the heat capacity of liquid ethanol-water in J/(kg K) at
// mass fraction w, -20 to 120 C: the mass average of the pure liquids and an
// excess. From 3 to 41 C the excess is Perry's table, met at every cell,
// interpolated by a monotone cubic in mass fraction and straight in
// temperature; below 3 C it stays. From 41 to 70 C it passes evenly to the
// slope of Larkin's excess enthalpy, measured to 110 C, and is that above. The
// two sources part by up to 5 % in weak spirit: that is its uncertainty.
func HeatCapacity(w, tempC float64) float64 {
	w, tempC = clamp(w, 0, 1), clamp(tempC, minTempC, maxTempC)
	edge := clamp(tempC, perryTempsC[0], perryTempsC[2])
	i := 0
	if edge > perryTempsC[1] {
		i = 1
	}
	f := (edge - perryTempsC[i]) / (perryTempsC[i+1] - perryTempsC[i])
	excess := (1-f)*perryExcess[i].At(w) + f*perryExcess[i+1].At(w)
	if tempC > edge {
		g := min(1, (tempC-edge)/(larkinFromC-edge))
		excess = (1-g)*excess + g*specificExcessCp(w, tempC)
	}
	return averageHeatCapacity(w, tempC) + excess
}

// ethanolHeatCapacity is that of liquid ethanol in J/(kg K): Perry, 8th ed.,
// Table 2-153 (DIPPR equation 100), 159 to 390 K, as two public codes carry
// it. It is within 1 % of the table of mixtures at 100 % ethanol.
func ethanolHeatCapacity(tempC float64) float64 {
	t := tempC + KelvinOffset
	return (102640 + t*(-139.63+t*(-0.030341+t*0.0020386))) / (1000 * MolarMassEthanol)
}

// ethanolEnthalpy is the integral of ethanolHeatCapacity from 0 C, in J/kg.
func ethanolEnthalpy(tempC float64) float64 {
	h := func(t float64) float64 { return t * (102640 + t*(-139.63/2+t*(-0.030341/3+t*0.0020386/4))) }
	return (h(tempC+KelvinOffset) - h(KelvinOffset)) / (1000 * MolarMassEthanol)
}

// LiquidEnthalpy is the enthalpy of liquid ethanol-water in J/kg above the
// pure liquids at 0 C: the pure liquids' and Larkin's excessEnthalpy. It is
// for the heat of mixing, where the path must not matter. Its slope is up to
// 7 % above HeatCapacity in cold weak spirit, where the sources disagree; above
// 70 C it is HeatCapacity.
func LiquidEnthalpy(w, tempC float64) float64 {
	w = clamp(w, 0, 1)
	return (1-w)*WaterEnthalpy(tempC) + w*ethanolEnthalpy(tempC) + specificExcess(w, tempC)
}

// enthalpySlope is the derivative of LiquidEnthalpy with temperature.
func enthalpySlope(w, tempC float64) float64 {
	return averageHeatCapacity(w, tempC) + specificExcessCp(w, tempC)
}

// LatentHeatEthanol is the heat of vaporization of ethanol in J/kg: Perry,
// 8th ed., Table 2-150, 55.789 (1-Tr)^0.31245 kJ/mol, Tc 514 K.
func LatentHeatEthanol(tempC float64) float64 {
	return 55789 * math.Pow(1-(tempC+KelvinOffset)/514, 0.31245) / MolarMassEthanol
}

// VapourLatentHeat is the heat that condensing 1 kg of vapour with mass
// fraction yMassFrac of ethanol gives up at tempC, in J/kg: the mass average
// of the pure liquids' heats. It leaves out the heat of mixing of the liquid,
// less than 1 % near the boil.
func VapourLatentHeat(yMassFrac, tempC float64) float64 {
	y := clamp(yMassFrac, 0, 1)
	return y*LatentHeatEthanol(tempC) + (1-y)*LatentHeatWater(tempC)
}
