// Package quantity knows units: which words name them, what they measure, and
// how to bring them to SI. It never guesses: a unit that it does not know is an
// error for the caller to report with the nearest known one.
package quantity

// Kind is what a quantity measures. A field of the language asks for one Kind;
// a unit may serve several (F is a point on a scale in a temperature field and
// a difference in a tolerance).
type Kind uint8

// The SI unit of each kind, in which values are handed on, stands beside it.
const (
	None             Kind = iota
	Number                // a bare number
	Mass                  // kg
	Volume                // m3
	Temperature           // C, a point on the scale
	TempDifference        // C, a distance on the scale
	Duration              // s
	Length                // m
	Power                 // W
	Energy                // J
	Strength              // volume fraction of ethanol at 20 C, 0..1 (proof is at 60 F)
	Gravity               // specific gravity 20/20 C in vacuum
	Share                 // fraction 0..1, written in %
	Concentration         // kg/m3: pitch and dose by volume
	Dose                  // kg/kg: of grain (g/kg, lb/ton, "% of grain" is a Share)
	Pressure              // Pa
	Rate                  // 1/s: growth, decay
	MolarEnergy           // J/mol: activation energies
	DiastaticPower        // degrees Lintner
	DextrinizingUnit      // DU (20 C), alpha-amylase
	PartsPerMillion       // mass fraction x 1e6
	TestWeight            // kg per trade bushel
	Bushel                // trade bushels: a mass only once the grain is known
	SpecificVolume        // m3/kg: liquor to grist, displacement
	SpecificEnergy        // J/kg
	HeatCapacity          // J/(kg K)
	PH                    // pH
	ProofGallons          // proof gallons (27 CFR 19.1)
	Money                 // in the house's currency
	UnitPrice             // money per unit, see Price
	PerYear               // fraction per year, written in %/y
)

// Kinds that came later stand at the end, so that numbers stay what they were.
const (
	StrengthPerYear Kind = PerYear + 1 + iota // proof a year in the wood
	HeatingRate                               // K/s: how fast a vessel warms or cools
	Area                                      // m2, of a surface that heat passes
	Flow                                      // m3/s
	HeatTransfer                              // W/(m2 K)
	MassFlow                                  // kg/s: how fast grain is milled or dug out
	PureAlcohol                               // m3 of pure alcohol at 20 C
	SpiritYield                               // m3 of pure alcohol at 20 C per kg of grain as it is weighed out
	kindCount
)

var kindText = [kindCount]string{
	None:             "nothing",
	Number:           "a bare number",
	Mass:             "a weight",
	Volume:           "a volume",
	Temperature:      "a temperature",
	TempDifference:   "a temperature difference",
	Duration:         "a length of time",
	Length:           "a height or length",
	Power:            "a power",
	Energy:           "an amount of energy",
	Strength:         "an alcoholic strength",
	Gravity:          "a gravity",
	Share:            "a share",
	Concentration:    "a weight per volume",
	Dose:             "a dose by weight of grain",
	Pressure:         "a pressure",
	Rate:             "a rate",
	MolarEnergy:      "an activation energy",
	DiastaticPower:   "a diastatic power",
	DextrinizingUnit: "an alpha-amylase activity",
	PartsPerMillion:  "parts per million",
	TestWeight:       "a test weight",
	Bushel:           "a number of trade bushels",
	SpecificVolume:   "a volume per weight",
	SpecificEnergy:   "an energy per weight",
	HeatCapacity:     "a heat capacity",
	PH:               "a pH",
	ProofGallons:     "a number of proof gallons",
	Money:            "an amount of money",
	UnitPrice:        "a price",
	PerYear:          "a share per year",
	StrengthPerYear:  "a change of proof per year",
	HeatingRate:      "a rate of heating or cooling",
	Area:             "an area",
	Flow:             "a flow",
	HeatTransfer:     "a coefficient of heat transfer",
	MassFlow:         "a weight per time",
	PureAlcohol:      "an amount of pure alcohol",
	SpiritYield:      "pure alcohol by the weight of grain",
}

// String names the kind in plain English, with its article.
func (k Kind) String() string {
	if k >= kindCount {
		return "an unknown kind"
	}
	return kindText[k]
}
