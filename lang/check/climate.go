package check

import (
	"newmake/lang/recipe"
)

// climate gives a named climate, temperate for "". What the house does not state
// is left at nothing, for the model to fill in.
func climate(name string) recipe.Climate {
	if name == "" {
		name = "temperate"
	}
	return recipe.Climate{Named: name}
}
