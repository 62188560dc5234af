package ferment

import "newmake/compile/matter/starch"

// Molar masses in g/mol, all from one set of atomic masses (IUPAC, abridged),
// so that the balances below close exactly.
const (
	massC, massH, massO, massN = 12.011, 1.008, 15.999, 14.007

	molGlucose  = 6*massC + 12*massH + 6*massO
	molEthanol  = 2*massC + 6*massH + massO
	molCO2      = massC + 2*massO
	molWater    = 2*massH + massO
	molGlycerol = 3*massC + 8*massH + 3*massO
	molAmmonia  = massN + 3*massH
	molLactic   = 3*massC + 6*massH + 3*massO
	// Yeast, one mole of carbon: CH1.8 O0.5 N0.2 (common practice in
	// biochemical engineering; e.g. Doran, Bioprocess Engineering Principles,
	// from memory). Ash is left out.
	molYeast = massC + 1.8*massH + 0.5*massO + 0.2*massN
)

// Gay-Lussac: C6H12O6 -> 2 C2H5OH + 2 CO2, kg per kg glucose.
const (
	ethanolPerGlucose = 2 * molEthanol / molGlucose // 0.5114
	co2PerGlucose     = 2 * molCO2 / molGlucose     // 0.4886
)

// Glucose that 1 kg of each sugar gives on hydrolysis; the rest of its mass is
// the water it takes up.
const (
	glucosePerMaltose     = starch.PerGlucose / starch.PerMaltose     // 1.0526
	glucosePerMaltotriose = starch.PerGlucose / starch.PerMaltotriose // 1.0714
	glucosePerDextrin     = starch.PerGlucose / starch.PerDextrin
)

// growthBalance is what it takes to grow 1 kg of dry yeast without air, kg.
//
// Nitrogen comes as ammonia out of the wort's solubles: amino acids count as
// that, their carbon with the sugar. Growth leaves more hydrogen than yeast
// can hold, and glycerol carries it off; how much is the one free figure.
// Glucose follows from the balance of available electrons (4.2 a mole of
// carbon in yeast with ammonia as the source, 24 in glucose, 14 in glycerol),
// carbon dioxide from carbon, water from oxygen.
type growthBalance struct {
	glucose, ammonia              float64 // taken
	glycerol, co2, water, hydrons float64 // given; hydrons in mol, one for each nitrogen
}

func growthOf(glycerolPerYeast float64) growthBalance {
	glycerol := glycerolPerYeast * molYeast / molGlycerol // mol a mole of carbon in yeast
	glucose := (4.2 + 14*glycerol) / 24
	co2 := 6*glucose - 1 - 3*glycerol
	water := 6*glucose - 0.5 - 3*glycerol - 2*co2
	return growthBalance{
		glucose:  glucose * molGlucose / molYeast,
		ammonia:  0.2 * molAmmonia / molYeast,
		glycerol: glycerolPerYeast,
		co2:      co2 * molCO2 / molYeast,
		water:    water * molWater / molYeast,
		hydrons:  0.2 / molYeast * 1000,
	}
}
