package numbers

import (
	"newmake/compile/lot"
	"newmake/lang/recipe"
)

// Rates are the house's, and where it does not say those that are usual for a
// cooker of its size: equal times at every size, down to what a person does by hand
// (common practice).
func Rates(b *recipe.Batch) recipe.Rates {
	r, m3 := b.Plant.Rates, b.Mash.Cooker.HoldsM3
	usual := func(rate *float64, perM3, least float64) {
		if *rate == 0 {
			*rate = max(perM3*m3, least)
		}
	}
	usual(&r.MillKgS, 300.0/3600, 60.0/3600)
	usual(&r.PumpM3S, 0.050/lot.SecondsPerMin, 0.010/lot.SecondsPerMin)
	usual(&r.DigKgS, 5/lot.SecondsPerMin, 5/lot.SecondsPerMin)
	return r
}
