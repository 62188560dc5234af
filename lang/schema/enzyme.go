package schema

import "newmake/lang/quantity"

// Enzyme is the declaration of an enzyme preparation.
var Enzyme = &Field{
	Name: "enzyme", Shape: libraryName, Repeat: true, Key: "name", Example: "enzyme alpha-amylase",
	Doc: "An enzyme preparation as it comes in a drum.",
	Block: &Block{Fields: []*Field{
		{Name: "does", Shape: `"liquefying"|"saccharifying"|"viscosity"`, Need: true, Example: "does liquefying", Doc: "Starch to dextrins; dextrins to glucose; or it thins gums."},
		{Name: "activity", Shape: "NUMBER", Need: true, Example: "activity 40", Doc: "Model units a kg, see the library.", Limits: []Limit{mustBe(0, 1e9, "from none to more than any preparation has")}},
		{Name: "optimum", Shape: "TEMP", Need: true, Example: "optimum 88 C", Doc: "Where it works fastest.", Limits: []Limit{mustBe(0, 130, "no enzyme of the trade works hotter")}},
		{Name: "range", Shape: "TEMP..TEMP", Need: true, Example: "range 55..100 C", Doc: "Where it works.", Limits: []Limit{mustBe(0, 130, "no enzyme of the trade works hotter")}},
		{Name: "dies-above", Shape: "TEMP", Need: true, Example: "dies-above 108 C", Doc: "It is gone quickly above this.", Limits: []Limit{mustBe(20, 140, "no enzyme of the trade lives hotter")}},
		{Name: "half-life", Shape: `DURATION "at" TEMP`, Need: true, Example: "half-life 60 min at 95 C", Doc: "How long half of it lasts.", Limits: []Limit{mustBe(1, 100*quantity.YearS, "from a second to a hundred years").of("duration"), mustBe(-5, 150, "from freezing to steam under pressure").of("temp")}},
		{Name: "death-energy", Shape: "MOLARENERGY", Need: true, Example: "death-energy 250 kJ/mol", Doc: "Activation energy of its loss.", Limits: []Limit{anEnergy}},
		{Name: "pH", Shape: "PH..PH", Example: "pH 5.5..6.5 pH", Doc: "Where it works well.", Limits: []Limit{mustBe(2, 12, "a pH of a mash")}},
		{Name: "dose", Shape: "SHARE..SHARE|DOSE..DOSE", Need: true, Example: "dose 0.02..0.06 %", Doc: "How much is dosed as a rule, of the weight of grain.", Limits: []Limit{mustBe(1e-9, 0.1, "a preparation is dosed in parts per thousand")}},
	}},
}
