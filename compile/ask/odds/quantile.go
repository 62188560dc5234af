package odds

import (
	"math"
	"slices"
)

// figures rounds a number to four significant figures, so that the last bits of a
// computation are in no answer.
func figures(x float64) float64 {
	if x == 0 {
		return 0
	}
	p := math.Pow10(3 - int(math.Floor(math.Log10(math.Abs(x)))))
	return math.Round(x*p) / p
}

// quantile is the value below which a share of some numbers lies, between the two
// nearest by a straight line. The numbers are sorted.
func quantile(sorted []float64, p float64) float64 {
	at := p * float64(len(sorted)-1)
	i := int(math.Floor(at))
	if i+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}

// spread is the 5, 50 and 95 % quantiles.
func spread(x []float64) (low, middle, high float64) {
	x = slices.Clone(x)
	slices.Sort(x)
	return quantile(x, 0.05), quantile(x, 0.5), quantile(x, 0.95)
}
