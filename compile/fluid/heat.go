package fluid

import "math"

// cpNode is one composition of Perry's table, in J/(kg K) at 3, 23 and 41 C.
type cpNode struct {
	w  float64
	cp [3]float64
}

const calorie = 4184.0 // J/kg per cal/g, thermochemical

var cpTempsC = [3]float64{3, 23, 41}

// Specific heat of ethanol-water: Perry's Chemical Engineers' Handbook, 7th
// ed., p. 2-184, by mole percent; the row of pure water is this package's.
var perryCp = [6]cpNode{
	{0, [3]float64{WaterHeatCapacity(3), WaterHeatCapacity(23), WaterHeatCapacity(41)}},
	{MassFrac(0.0416), [3]float64{1.05 * calorie, 1.02 * calorie, 1.02 * calorie}},
	{MassFrac(0.115), [3]float64{1.02 * calorie, 1.03 * calorie, 1.03 * calorie}},
	{MassFrac(0.37), [3]float64{0.805 * calorie, 0.86 * calorie, 0.875 * calorie}},
	{MassFrac(0.61), [3]float64{0.67 * calorie, 0.727 * calorie, 0.748 * calorie}},
	{1, [3]float64{0.54 * calorie, 0.577 * calorie, 0.621 * calorie}},
}

// HeatCapacity is the heat capacity of liquid ethanol-water in J/(kg K) at
// mass fraction w, -20 to 120 C. Between 3 and 41 C it interpolates Perry's
// table, straight in mass fraction and in temperature. Outside, it starts
// from the table's edge and follows the pure liquids and Larkin's excess heat
// capacity; below 3 C it follows the pure liquids alone.
func HeatCapacity(w, tempC float64) float64 {
	w, tempC = clamp(w, 0, 1), clamp(tempC, MinTempC, MaxTempC)
	edge := clamp(tempC, cpTempsC[0], cpTempsC[2])
	i := 1
	for i < len(perryCp)-1 && w > perryCp[i].w {
		i++
	}
	a, b := perryCp[i-1], perryCp[i]
	f := (w - a.w) / (b.w - a.w)
	cp := (1-f)*a.at(edge) + f*b.at(edge)
	if tempC != edge {
		cp += (1-w)*(WaterHeatCapacity(tempC)-WaterHeatCapacity(edge)) +
			w*(ethanolHeatCapacity(tempC)-ethanolHeatCapacity(edge))
	}
	if tempC > edge {
		x := MoleFrac(w)
		cp += (ExcessHeatCapacity(x, tempC) - ExcessHeatCapacity(x, edge)) / MolarMass(x)
	}
	return cp
}

func (n cpNode) at(tempC float64) float64 {
	if n.w == 0 {
		return WaterHeatCapacity(tempC)
	}
	i := 0
	if tempC > cpTempsC[1] {
		i = 1
	}
	f := (tempC - cpTempsC[i]) / (cpTempsC[i+1] - cpTempsC[i])
	return (1-f)*n.cp[i] + f*n.cp[i+1]
}

// ethanolHeatCapacity is that of liquid ethanol in J/(kg K): Perry, 8th ed.,
// Table 2-153 (DIPPR equation 100), 159 to 390 K. From memory; it is used
// only for its change outside the 3 to 41 C of the table.
func ethanolHeatCapacity(tempC float64) float64 {
	t := tempC + KelvinOffset
	return (102640 + t*(-139.63+t*(-0.030341+t*0.0020386))) / (1000 * MolarMassEthanol)
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
