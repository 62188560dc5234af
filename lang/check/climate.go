package check

import "newmake/lang/recipe"

const climateShape = `"cool"|"temperate"|"warm"|"hot"`

var climateField = &Field{
	Name: "climate", Shape: climateShape, Example: "climate temperate", Default: "temperate",
	Doc: "Where the casks lie, which sets what they lose: cool and damp, temperate, warm, or hot.",
}

// climates are the words for what evaporates. Losses: 2 % a year cool and damp,
// 3 to 5 warm; one published rule has 10 % in the first year and 4 % after
// (common practice). In a cool damp house strength falls, in a warm dry one it
// rises about 1 proof a year (Schoeneman & Dyer, J. AOAC 54 (1971) 1247); the
// mean temperatures, and the strengths between, are common practice.
var climates = map[string]recipe.Climate{
	"cool":      {Named: "cool", MeanTempC: 9, LossFirstYear: 0.02, LossYearly: 0.02, ProofPerYear: -0.8},
	"temperate": {Named: "temperate", MeanTempC: 13, LossFirstYear: 0.04, LossYearly: 0.03, ProofPerYear: 0.5},
	"warm":      {Named: "warm", MeanTempC: 18, LossFirstYear: 0.07, LossYearly: 0.04, ProofPerYear: 1},
	"hot":       {Named: "hot", MeanTempC: 25, LossFirstYear: 0.1, LossYearly: 0.06, ProofPerYear: 1.5},
}

// climate gives a named climate, temperate for "".
func climate(name string) recipe.Climate {
	if c, ok := climates[name]; ok {
		return c
	}
	return climates["temperate"]
}
