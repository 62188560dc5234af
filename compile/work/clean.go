package work

import (
	"fmt"
	"strings"

	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// cleaningS is how long a vessel's cleaning takes, as the house says or as is usual.
func cleaningS(v *recipe.Vessel) float64 {
	if v.Clean.DurationS > 0 {
		return v.Clean.DurationS
	}
	return cleanS
}

// cleaning is what is done to clean a vessel, with the house's own recipe and what is
// due after so many charges.
func cleaning(text string, v *recipe.Vessel) plan.Phrase {
	house := strings.NewReplacer("{", "(", "}", ")") // a phrase's blanks are its own
	if v.Clean.With != "" {
		text += ": " + house.Replace(v.Clean.With)
	}
	text = strings.TrimSuffix(text, ".") + "."
	if v.Clean.Every == 0 {
		return plan.Say(text)
	}
	return plan.Say(text+fmt.Sprintf(" Every %d charges, {} besides: ", v.Clean.Every)+strings.TrimSuffix(house.Replace(v.Clean.Deep), ".")+".", plan.Of(v.Clean.DeepS/60, plan.Minute))
}
