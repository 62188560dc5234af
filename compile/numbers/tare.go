package numbers

import (
	"math"

	"newmake/lang/recipe"
)

// TareKg is what an empty cask weighs: as the batch says, or that of a cask of 200 L of
// its wood, by the surface. Staves are thinner in small casks, and each differs by a
// tenth (common practice): weigh it.
func TareKg(k recipe.Cask) float64 {
	if k.TareKg > 0 || k.Kind == nil {
		return k.TareKg
	}
	const usualM3 = 0.2
	return k.Kind.TareKg * math.Pow(k.SizeM3/usualM3, 2.0/3)
}
