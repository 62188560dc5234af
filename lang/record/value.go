package record

import (
	"math"
	"strings"

	"newmake/lang/quantity"
)

// Value is a number as it was written, and what it comes to.
type Value struct {
	Num    string  // as it was written: 1.034, 4,200
	Number float64 // the same
	Unit   string  // as it was written
	Kind   quantity.Kind
	// SI is the value in the unit of its kind. Of a strength it is the fraction on
	// the basis of its unit: proof is at 60 F, % abv at 20 C (60 F beside gallons).
	SI float64
}

// Same reports whether two values are one as they are written, whatever their commas.
func (v Value) Same(o Value) bool { return v.Unit == o.Unit && v.Number == o.Number }

// String is the value as it was written.
func (v Value) String() string { return strings.TrimSpace(v.Num + " " + v.Unit) }

// PlaceSI is what the last digit that was written stands for, in the unit of the
// kind: 0.001 of 1.034, 0.56 (C) of 158 F.
func (v Value) PlaceSI() float64 {
	step := 1.0
	if _, frac, ok := strings.Cut(v.Num, "."); ok {
		step = math.Pow10(-len(frac))
	}
	return StepSI(v.Number, step, v.Unit, v.Kind)
}

// StepSI is how much a step of a scale is, at a value on it, in the unit of the
// kind.
func StepSI(at, step float64, unit string, k quantity.Kind) float64 {
	low, err := quantity.ToSI(at-step/2, unit, k)
	if err != nil {
		return 0
	}
	high, err := quantity.ToSI(at+step/2, unit, k)
	if err != nil {
		return 0
	}
	return math.Abs(high - low)
}
