package ledger

import (
	"math"

	"newmake/compile/matter/fluid"
)

// cents is alcohol in hundredths: of a proof gallon, and of a litre of pure alcohol at
// 20 C. Each movement is rounded once, as a gauge record is, and sums of whole numbers
// balance to the last digit.
type cents struct{ pg, lpa int64 }

func (a cents) plus(b cents) cents  { return cents{a.pg + b.pg, a.lpa + b.lpa} }
func (a cents) minus(b cents) cents { return cents{a.pg - b.pg, a.lpa - b.lpa} }
func (a cents) zero() bool          { return a == cents{} }

// share is a's part of b, 0 where b is nothing.
func (a cents) share(b cents) float64 {
	if b.pg == 0 {
		return 0
	}
	return float64(a.pg) / float64(b.pg)
}

// alcohol counts ethanol both ways: a proof gallon is a gallon at 60 F of which half is
// ethanol (27 CFR 19.1), so both counts are in proportion to the mass.
func alcohol(ethanolKg float64) cents {
	pg := 2 * ethanolKg / fluid.Density(1, fluid.SixtyF) / fluid.USGallonM3
	return cents{int64(math.Round(100 * pg)), int64(math.Round(100 * fluid.PureAlcoholLitres(ethanolKg, 1)))}
}

// Amount is an amount of alcohol, counted both ways.
type Amount struct {
	ProofGallons float64 `json:"proofGallons"`
	PureL        float64 `json:"pureAlcoholL"` // at 20 C
}

func (a cents) amount() Amount { return Amount{float64(a.pg) / 100, float64(a.lpa) / 100} }
