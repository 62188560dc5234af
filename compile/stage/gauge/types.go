// Package gauge reduces spirit to a strength and counts it as the trade and
// the revenue do.
package gauge

// Reduction is spirit brought down to a strength with water.
type Reduction struct {
	FromABV, ToABV     float64 // 20 C
	FromProof, ToProof float64
	SpiritM3, SpiritKg float64 // volume at 20 C
	WaterM3, WaterKg   float64 // to add
	ResultM3, ResultKg float64
	ContractionM3      float64 // spirit + water - result
	TempRiseC          float64
	ProofGallons       float64
	PureAlcoholM3      float64
}
