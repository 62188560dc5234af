package quantity

import "math"

// RoundUp is the next of 1, 2 and 5 times a power of ten that is not below x, and
// RoundDown the last that is not above it: steps that people count in. A billionth is
// forgiven, by which arithmetic misses a round number. Both are 0 for what is not a
// finite number above 0.
func RoundUp(x float64) float64 {
	ten, ok := tenBelow(x)
	if !ok {
		return 0
	}
	for _, m := range []float64{1, 2, 5} {
		if x <= m*ten*(1+roundOff) {
			return m * ten
		}
	}
	return 10 * ten
}

// RoundDown is described with RoundUp.
func RoundDown(x float64) float64 {
	ten, ok := tenBelow(x)
	if !ok {
		return 0
	}
	for _, m := range []float64{10, 5, 2} {
		if x >= m*ten*(1-roundOff) {
			return m * ten
		}
	}
	return ten
}

const roundOff = 1e-9

func tenBelow(x float64) (ten float64, ok bool) {
	if !(x > 0) || math.IsInf(x, 0) {
		return 0, false
	}
	return math.Pow(10, math.Floor(math.Log10(x))), true
}
