package check

import "newmake/lang/recipe"

var climateField = &Field{
	Name: "climate", Shape: `"cool"|"temperate"|"warm"|"hot"`, Example: "climate temperate", Default: "temperate",
	Doc: "Where the casks lie, which sets what they lose: cool and damp, temperate, warm, or hot. The figures stand in the stock, `model cask`.",
}

// climate gives a named climate, temperate for "". What the house does not state
// is left at nothing, for the model to fill in.
func climate(name string) recipe.Climate {
	if name == "" {
		name = "temperate"
	}
	return recipe.Climate{Named: name}
}
