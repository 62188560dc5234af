package edit

import (
	"math"

	"newmake/lang/quantity"
	"newmake/lang/wording"
)

// What can be measured out, whatever the amount: common practice of a floor scale,
// a flow meter and a dipped tank.
const (
	stepPoundKg  = quantity.PoundKg          // one pound
	stepKg       = 0.5                       // half a kilogram
	stepGallonM3 = 0.5 * quantity.USGallonM3 // half a gallon
	stepLitreM3  = 1e-3                      // one litre
)

// How finely a small amount is measured, as a part of it: the scale and the
// measure are chosen for the amount.
const (
	partsOfMass   = 50
	partsOfVolume = 25
)

// Step is what an amount is measured to, in its unit: a pound or half a kilogram of
// grain, half a gallon or a litre of liquor, and 1, 2 or 5 of a smaller place where
// that is too coarse for it. It is 0 for a unit of neither mass nor volume.
func Step(v float64, unit string) float64 {
	u, ok := quantity.Lookup(unit)
	if !ok || v <= 0 {
		return 0
	}
	si, kind, parts := stepKg, quantity.Mass, float64(partsOfMass)
	switch {
	case sameKind(unit, "lb") && u.System == quantity.US:
		si = stepPoundKg
	case sameKind(unit, "lb"):
	case u.System == quantity.US:
		si, kind, parts = stepGallonM3, quantity.Volume, partsOfVolume
	default:
		si, kind, parts = stepLitreM3, quantity.Volume, partsOfVolume
	}
	most, err := quantity.FromSI(si, unit, kind)
	if err != nil {
		return 0
	}
	if v/parts >= most {
		return most
	}
	return quantity.RoundDown(v / parts)
}

// inSteps writes a number in whole steps.
func inSteps(v, step float64, round func(float64) float64) string {
	if v == 0 || step == 0 {
		return wording.Trimmed(v, 4)
	}
	return wording.Trimmed(round(v/step)*step, max(0, int(math.Ceil(-math.Log10(step)-1e-9))))
}

// floor rounds down, and leaves a whole number that arithmetic has made a hair less.
func floor(x float64) float64 { return math.Floor(x + 1e-6) }
