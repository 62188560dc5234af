package mash

import "newmake/lang/recipe"

// acidity is the pH by mixing of buffers: each grain and the backset pulls
// towards its own pH with its own strength, and the alkalinity of the water
// lifts the whole. Common practice; good to about 0.1 to 0.2 pH.
type acidity struct {
	buffer   float64 // mEq per pH
	weighted float64 // buffer x pH
	alkali   float64 // mEq
}

func (a *acidity) addGrain(c *constants, g *recipe.Grain, massKg float64) {
	pH, perKg := c.rawPH, c.rawBuffer
	switch {
	case g.Roasted:
		pH, perKg = c.roastedPH, c.roastBuffer
	case g.Malted:
		pH, perKg = c.maltPH, c.maltBuffer
	}
	a.add(pH, perKg*massKg)
}

func (a *acidity) add(pH, buffer float64) {
	a.buffer += buffer
	a.weighted += buffer * pH
}

// addWater counts the residual alkalinity of the supply: its hardness is in mg
// of CaCO3 per kg, of which 50.04 g makes an equivalent.
func (a *acidity) addWater(c *constants, hardnessPPM, massKg float64) {
	a.alkali += c.hardnessToAlkali * hardnessPPM / 50.04 * massKg
}

func (a *acidity) pH() float64 {
	if a.buffer == 0 {
		return 7
	}
	return min(9, max(3, (a.weighted+a.alkali)/a.buffer))
}
