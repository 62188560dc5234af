package quantity

// Sources of the factors. SP 811 is NIST Special Publication 811 (2008), whose
// appendix B lists factors to SI; those it prints in bold are exact by
// definition, and are given here in full.
const (
	sp811    = "NIST SP 811 (2008), appendix B.8"
	sp811T6  = "NIST SP 811 (2008), table 6"
	siBroch  = "BIPM SI Brochure, 9th ed."
	byDef    = "by definition"
	imperial = "UK Weights and Measures Act 1985, schedule 1"
	cfr191   = "27 CFR 19.1"
	alcText  = "The Alcohol Textbook, 4th ed. (2003)"
)

const (
	lbKg      = PoundKg
	ozKg      = lbKg / 16
	tonKg     = 2000 * lbKg
	galM3     = USGallonM3
	impGalM3  = 4.54609e-3
	ftM       = FootM
	btuJ      = 1055.05585262     // International Table BTU
	boilerHpW = 9809.50           // horsepower (boiler)
	psiPa     = 6894.757293168361 // lbf/in2
	hourS     = HourS
	dayS      = DayS
	// yearS is the mean year of 365.25 days. A plan that needs a calendar date
	// counts months and years on the calendar instead.
	yearS  = YearS
	monthS = yearS / 12
	// bushelM3 is the US (Winchester) bushel, 2150.42 cubic inches.
	bushelM3 = 3.523907016688e-2
)

func linear(k Kind, factor float64) Measure { return Measure{Kind: k, Factor: factor} }

func one(k Kind, factor float64) []Measure { return []Measure{linear(k, factor)} }

// table is every unit, grouped by what it measures, the customary one first.
var table = []Unit{
	{"lb", []string{"lbs", "pound", "pounds"}, US, one(Mass, lbKg), sp811},
	{"oz", []string{"ounce", "ounces"}, US, one(Mass, ozKg), sp811},
	{"ton", []string{"tons"}, US, one(Mass, tonKg), sp811},
	{"distillers-bushel", []string{"distillers-bushels"}, US, one(Mass, 56*lbKg), alcText},
	{"kg", nil, SI, one(Mass, 1), siBroch},
	{"g", nil, SI, one(Mass, 1e-3), siBroch},
	{"mg", nil, SI, one(Mass, 1e-6), siBroch},
	{"tonne", []string{"tonnes", "t"}, SI, one(Mass, 1000), sp811T6},

	{"gal", []string{"gallon", "gallons"}, US, one(Volume, galM3), sp811},
	{"qt", []string{"quart", "quarts"}, US, one(Volume, galM3/4), sp811},
	{"pt", []string{"pint", "pints"}, US, one(Volume, galM3/8), sp811},
	{"fl oz", []string{"fl-oz"}, US, one(Volume, galM3/128), sp811},
	{"L", []string{"l", "litre", "litres", "liter", "liters"}, SI, one(Volume, 1e-3), sp811T6},
	{"mL", []string{"ml"}, SI, one(Volume, 1e-6), sp811T6},
	{"cL", []string{"cl"}, SI, one(Volume, 1e-5), sp811T6},
	{"hL", []string{"hl"}, SI, one(Volume, 0.1), sp811T6},
	{"m3", []string{"m³"}, SI, one(Volume, 1), siBroch},
	{"imp-gal", []string{"imp gal"}, Both, one(Volume, impGalM3), imperial},

	{"F", []string{"°F", "ºF"}, US, []Measure{{Kind: Temperature, Factor: 5.0 / 9, Shift: -32}, linear(TempDifference, 5.0/9)}, sp811},
	{"C", []string{"°C", "ºC"}, SI, []Measure{linear(Temperature, 1), linear(TempDifference, 1)}, siBroch},
	{"K", nil, SI, []Measure{linear(TempDifference, 1), {Kind: Temperature, Factor: 1, Shift: -273.15}}, siBroch},
	{"F/min", []string{"°F/min", "ºF/min"}, US, one(HeatingRate, 5.0/9/60), byDef},
	{"C/min", []string{"°C/min", "ºC/min", "K/min"}, SI, one(HeatingRate, 1.0/60), byDef},
	{"F/h", []string{"°F/h", "ºF/h"}, US, one(HeatingRate, 5.0/9/hourS), byDef},
	{"C/h", []string{"°C/h", "ºC/h", "K/h"}, SI, one(HeatingRate, 1/hourS), byDef},

	{"min", []string{"minute", "minutes"}, Both, one(Duration, 60), sp811T6},
	{"h", []string{"hour", "hours", "hr", "hrs"}, Both, one(Duration, hourS), sp811T6},
	{"day", []string{"days", "d"}, Both, one(Duration, dayS), sp811T6},
	{"week", []string{"weeks"}, Both, one(Duration, 7*dayS), byDef},
	{"month", []string{"months"}, Both, one(Duration, monthS), "mean month, a twelfth of 365.25 days"},
	{"year", []string{"years", "y", "yr", "yrs"}, Both, one(Duration, yearS), "mean year of 365.25 days"},
	{"s", []string{"second", "seconds", "sec"}, Both, one(Duration, 1), siBroch},

	{"ft", []string{"foot", "feet"}, US, one(Length, ftM), sp811},
	{"m", []string{"metre", "metres", "meter", "meters"}, SI, one(Length, 1), siBroch},

	{"sqft", []string{"ft2", "ft²", "sq-ft"}, US, one(Area, ftM*ftM), sp811},
	{"m2", []string{"m²"}, SI, one(Area, 1), siBroch},

	{"gal/min", []string{"gpm"}, US, one(Flow, galM3/60), sp811},
	{"gal/h", nil, US, one(Flow, galM3/hourS), sp811},
	{"L/min", []string{"l/min"}, SI, one(Flow, 1e-3/60), siBroch},
	{"L/h", []string{"l/h"}, SI, one(Flow, 1e-3/hourS), siBroch},
	{"m3/h", []string{"m³/h"}, SI, one(Flow, 1/hourS), siBroch},

	{"lb/min", nil, US, one(MassFlow, lbKg/60), sp811},
	{"lb/h", nil, US, one(MassFlow, lbKg/hourS), sp811},
	{"kg/min", nil, SI, one(MassFlow, 1.0/60), siBroch},
	{"kg/h", nil, SI, one(MassFlow, 1/hourS), siBroch},
	{"t/h", nil, SI, one(MassFlow, 1000/hourS), siBroch},

	{"W/m2/K", []string{"W/m²/K", "W/m2/C"}, SI, one(HeatTransfer, 1), siBroch},
	{"BTU/h/ft2/F", []string{"BTU/h/ft²/F", "BTU/h/sqft/F"}, US, one(HeatTransfer, btuJ/hourS/(ftM*ftM)*9/5), sp811},

	{"kW", nil, SI, one(Power, 1e3), siBroch},
	{"MW", nil, SI, one(Power, 1e6), siBroch},
	{"W", nil, SI, one(Power, 1), siBroch},
	{"BTU/h", nil, US, one(Power, btuJ/hourS), sp811},
	{"boiler-hp", []string{"bhp", "BHP"}, US, one(Power, boilerHpW), sp811},

	{"kWh", nil, Both, one(Energy, 3.6e6), sp811},
	{"MJ", nil, SI, one(Energy, 1e6), siBroch},
	{"kJ", nil, SI, one(Energy, 1e3), siBroch},
	{"J", nil, SI, one(Energy, 1), siBroch},
	{"BTU", nil, US, one(Energy, btuJ), sp811},

	{"% abv", []string{"% vol", "%abv", "%vol"}, Both, one(Strength, 1e-2), byDef},
	{"proof", nil, US, one(Strength, 1.0/200), cfr191},
	{"% abw", []string{"%abw"}, Both, one(Strength, 1e-2), byDef},

	{"sg", []string{"SG"}, Both, one(Gravity, 1), byDef},
	{"plato", []string{"°P", "ºP"}, Both, []Measure{{Kind: Gravity, Curve: &platoCurve}}, platoSource},

	{"%", []string{"percent"}, Both, one(Share, 1e-2), byDef},
	{"% of grain", nil, Both, []Measure{linear(Share, 1e-2), linear(Dose, 1e-2)}, byDef},

	{"g/L", []string{"g/l", "kg/m3", "kg/m³"}, SI, one(Concentration, 1), siBroch},
	{"g/hL", []string{"g/hl"}, SI, one(Concentration, 1e-2), siBroch},
	{"mg/L", []string{"mg/l"}, SI, []Measure{linear(Concentration, 1e-3), linear(PartsPerMillion, 1)}, "mg/L as ppm: water of 1 kg/L"},
	{"ppm", nil, Both, one(PartsPerMillion, 1), sp811},
	{"g/gal", nil, US, one(Concentration, 1e-3/galM3), sp811},
	{"oz/gal", nil, US, one(Concentration, ozKg/galM3), sp811},
	{"lb/gal", nil, US, one(Concentration, lbKg/galM3), sp811},

	{"g/kg", []string{"kg/t", "kg/tonne"}, SI, one(Dose, 1e-3), siBroch},
	{"g/t", []string{"g/tonne"}, SI, one(Dose, 1e-6), siBroch},
	{"lb/ton", nil, US, one(Dose, 1.0/2000), byDef},

	{"psi", nil, US, one(Pressure, psiPa), sp811},
	{"inHg", nil, US, one(Pressure, 3386.389), sp811},
	{"kPa", nil, SI, one(Pressure, 1e3), siBroch},
	{"Pa", nil, SI, one(Pressure, 1), siBroch},
	{"bar", nil, SI, one(Pressure, 1e5), sp811},

	{"/s", nil, Both, one(Rate, 1), siBroch},
	{"/min", nil, Both, one(Rate, 1.0/60), byDef},
	{"/h", nil, Both, one(Rate, 1/hourS), byDef},
	{"/day", nil, Both, one(Rate, 1/dayS), byDef},

	{"kJ/mol", nil, SI, one(MolarEnergy, 1e3), siBroch},
	{"J/mol", nil, SI, one(MolarEnergy, 1), siBroch},

	{"lintner", []string{"Lintner", "°Lintner", "ºLintner", "°lintner", "ºlintner"}, Both, one(DiastaticPower, 1), byDef},
	{"wk", []string{"WK", "°WK", "ºWK"}, Both, []Measure{{Kind: DiastaticPower, Factor: 1 / 3.5, Shift: 16}}, "lintner = (WK + 16) / 3.5: European Brewery Convention, Analytica, from memory"},
	{"DU", nil, Both, one(DextrinizingUnit, 1), byDef},

	{"lb/bushel", []string{"lb/bu"}, US, one(TestWeight, lbKg), byDef},
	{"kg/bushel", []string{"kg/bu"}, SI, one(TestWeight, 1), byDef},
	{"kg/hL", []string{"kg/hl"}, SI, []Measure{linear(TestWeight, bushelM3/0.1), linear(Concentration, 10)}, "by definition, and the US bushel of NIST SP 811 (2008), appendix B.8"},
	{"bushel", []string{"bushels", "bu"}, US, one(Bushel, 1), byDef},

	{"gal/lb", nil, US, one(SpecificVolume, galM3/lbKg), sp811},
	{"qt/lb", nil, US, one(SpecificVolume, galM3/4/lbKg), sp811},
	{"gal/distillers-bushel", nil, US, one(SpecificVolume, galM3/(56*lbKg)), alcText},
	{"L/kg", []string{"l/kg"}, SI, one(SpecificVolume, 1e-3), siBroch},
	{"mL/g", []string{"ml/g"}, SI, one(SpecificVolume, 1e-3), siBroch},

	{"kJ/kg", []string{"J/g"}, SI, one(SpecificEnergy, 1e3), siBroch},
	{"J/kg", nil, SI, one(SpecificEnergy, 1), siBroch},
	{"BTU/lb", nil, US, one(SpecificEnergy, btuJ/lbKg), sp811},

	{"kJ/kg/K", []string{"kJ/kg/C"}, SI, one(HeatCapacity, 1e3), siBroch},
	{"J/kg/K", []string{"J/kg/C"}, SI, one(HeatCapacity, 1), siBroch},
	{"BTU/lb/F", nil, US, one(HeatCapacity, btuJ/lbKg*9/5), sp811},

	{"pH", nil, Both, one(PH, 1), byDef},
	{"proof-gal", []string{"PG", "pg", "proof gal", "proof-gallon", "proof-gallons"}, US, one(ProofGallons, 1), cfr191},

	{"LPA", []string{"lpa"}, SI, one(PureAlcohol, 1e-3), byDef},
	{"LPA/t", []string{"LPA/tonne", "lpa/t", "lpa/tonne"}, SI, one(SpiritYield, 1e-6), byDef},

	{"%/year", []string{"%/y", "%/yr"}, Both, one(PerYear, 1e-2), byDef},
	{"proof/year", []string{"proof/y", "proof/yr"}, US, one(StrengthPerYear, 1), byDef},
}
