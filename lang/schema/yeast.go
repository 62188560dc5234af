package schema

import (
	"newmake/lang/quantity"
)

// Yeast is the declaration of a strain.
var Yeast = &Field{
	Name: "yeast", Shape: libraryName, Repeat: true, Key: "name", Example: "yeast distillers-yeast",
	Doc: "A strain, and the constants of its growth.",
	Block: &Block{Fields: []*Field{
		{Name: "form", Shape: `"dry"|"pressed"`, Default: "dry", Example: "form dry", Doc: "How it is bought."},
		{Name: "solids", Shape: "SHARE", Default: "94 % dry, 30 % pressed", Example: "solids 94 %", Doc: "Dry matter of the yeast as bought.", Limits: []Limit{mustBe(0.01, 1, "it is part of the weight")}},
		{Name: "viable", Shape: "SHARE", Default: "80 % dry, 95 % pressed", Example: "viable 80 %", Doc: "Share of the cells that wake.", Limits: []Limit{mustBe(0.01, 1, "dead yeast ferments nothing")}},
		{Name: "lag", Shape: "DURATION", Default: "2 h", Example: "lag 2.5 h", Doc: "Time before it sets to work.", Limits: []Limit{mustBe(0, 2*quantity.DayS, "after two days it is not coming")}},
		{Name: "growth", Shape: "RATE", Need: true, Example: "growth 0.427 /h", Doc: "Greatest specific rate of growth.", Limits: []Limit{mustBe(least, 0.01, "no yeast doubles within two minutes")}},
		{Name: "growth-at", Shape: "TEMP", Default: "30 C", Example: "growth-at 30 C", Doc: "The temperature at which the rates hold.", Limits: []Limit{mustBe(0, 50, "no yeast of the trade ferments outside")}},
		{Name: "half-saturation", Shape: "CONC", Need: true, Example: "half-saturation 0.245 g/L", Doc: "Sugar at which it grows at half the rate.", Limits: []Limit{mustBe(least, 1000, "no wort holds more sugar")}},
		{Name: "ethanol-limit", Shape: "CONC", Need: true, Example: "ethanol-limit 101.6 g/L", Doc: "Ethanol at which growth stops.", Limits: []Limit{mustBe(20, 250, "strains stand 5 to 20 % vol")}},
		{Name: "inhibition-power", Shape: "NUMBER", Default: "1", Example: "inhibition-power 1.95", Doc: "How sharply ethanol slows it.", Limits: []Limit{mustBe(0.1, 10, "fits lie between 0.4 and 3")}},
		{Name: "yield-biomass", Shape: "SHARE", Need: true, Example: "yield-biomass 15.2 %", Doc: "Yeast grown of the sugar taken, without ethanol.", Limits: []Limit{mustBe(0.001, 0.6, "more would be more carbon than the sugar has")}},
		{Name: "yield-biomass-ethanol", Shape: "CONC", Need: true, Example: "yield-biomass-ethanol 302.3 g/L", Doc: "Ethanol at which that falls to nothing.", Limits: []Limit{mustBe(1, 1e4, "from there on the yield hardly falls")}},
		{Name: "biomass-per-ethanol", Shape: "NUMBER", Need: true, Example: "biomass-per-ethanol 0.291", Doc: "Yeast grown per ethanol made, kg a kg.", Limits: []Limit{mustBe(1e-4, 100, "from hardly any yeast to a hundred times the ethanol")}},
		{Name: "growth-energy", Shape: "MOLARENERGY", Need: true, Example: "growth-energy 34.6 kJ/mol", Doc: "Activation energy of growth.", Limits: []Limit{anEnergy}},
		{Name: "ethanol-energy", Shape: "MOLARENERGY", Need: true, Example: "ethanol-energy 35.0 kJ/mol", Doc: "Activation energy of making ethanol.", Limits: []Limit{anEnergy}},
		{Name: "death", Shape: "RATE", Default: "0 /h", Example: "death 0.0008 /h", Doc: "Rate of dying, without ethanol.", Limits: []Limit{mustBe(0, 0.01, "half of it would be dead in a minute")}},
		{Name: "death-energy", Shape: "MOLARENERGY", Need: true, Example: "death-energy 177.7 kJ/mol", Doc: "Activation energy of death.", Limits: []Limit{anEnergy}},
		{Name: "range", Shape: "TEMP..TEMP", Need: true, Example: "range 20..34 C", Doc: "Temperatures between which it is well.", Limits: []Limit{mustBe(0, 50, "no yeast of the trade ferments outside")}},
		{Name: "dies-above", Shape: "TEMP", Need: true, Example: "dies-above 43 C", Doc: "It dies quickly above this.", Limits: []Limit{mustBe(20, 60, "yeast is dead at 60 C")}},
		{Name: "pitch", Shape: "CONC..CONC", Need: true, Example: "pitch 0.4..1.2 g/L", Doc: "How much is pitched as a rule, as bought.", Limits: []Limit{mustBe(least, 100, "that is a tenth of the wort already")}},
		{Name: "maltotriose", Shape: "SHARE", Default: "100 %", Example: "maltotriose 40 %", Doc: "Share of the maltotriose that it takes.", Limits: []Limit{aShare}},
		{Name: "ethanol-yield", Shape: "SHARE", Default: "98 %", Example: "ethanol-yield 98 %", Doc: "Share of the sugar not built into yeast that becomes ethanol and CO2.", Limits: []Limit{mustBe(0.3, 1, "more would be more carbon than the sugar has")}},
	}},
}
