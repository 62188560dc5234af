package fluid

// maltHeat is a row of the table of malt by moisture in Murphy and Son,
// "Appendix 4: Calculation of Initial Mash Temperature", after the Pauls and
// Whites Brewing Room Book 1984/85: specific heat relative to water, and the
// slaking correction in Fahrenheit degrees (the Celsius column is rounded
// unevenly).
type maltHeat struct{ moisturePct, specificHeat, slakingF float64 }

var maltHeats = [7]maltHeat{
	{0, 0.38, 5.5}, {1, 0.38, 5}, {2, 0.39, 4}, {3, 0.40, 3.5},
	{4, 0.40, 3}, {6, 0.41, 2.5}, {8, 0.42, 2},
}

const (
	waterCpForMalt = 4186.8 // J/(kg K), water of the table: 1 Btu/(lb F)
	// slakingThickness is the liquor, in kg per kg of malt, of the table's
	// own example (2.68 hL per 100 kg, 2.5 barrels a quarter). The table
	// gives a rise of temperature, and this turns it into heat.
	slakingThickness = 2.68
)

// GrainHeatCapacity is the heat capacity of grain as it is, in J/(kg K), at a
// moisture as a fraction of its mass: malt, from the table to 8 %; above, the
// line from there to water at 1, for raw grain and spent grain (common
// practice: the table has no raw grain).
func GrainHeatCapacity(moistureFrac float64) float64 {
	relative, _ := maltAt(100 * clamp(moistureFrac, 0, 1))
	return relative * waterCpForMalt
}

// SlakingHeat is the heat that 1 kg of grain as it is gives out when water
// wets it, in J/kg. The table ends at 8 % moisture; above, it falls on a
// straight line at the table's last slope, to nothing at 16 %.
func SlakingHeat(moistureFrac float64) float64 {
	relative, riseF := maltAt(100 * clamp(moistureFrac, 0, 1))
	return riseF / 1.8 * (relative + slakingThickness) * waterCpForMalt
}

func maltAt(moisturePct float64) (specificHeat, slakingF float64) {
	last := maltHeats[len(maltHeats)-1]
	if moisturePct >= last.moisturePct {
		beyond := moisturePct - last.moisturePct
		return last.specificHeat + (1-last.specificHeat)*beyond/(100-last.moisturePct),
			max(0, last.slakingF-0.25*beyond)
	}
	i := 1
	for moisturePct > maltHeats[i].moisturePct {
		i++
	}
	a, b := maltHeats[i-1], maltHeats[i]
	f := (moisturePct - a.moisturePct) / (b.moisturePct - a.moisturePct)
	return a.specificHeat + f*(b.specificHeat-a.specificHeat), a.slakingF + f*(b.slakingF-a.slakingF)
}
