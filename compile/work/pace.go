package work

import "newmake/lang/recipe"

// rates are the house's, and where it does not say those that are usual for a
// cooker of its size: equal times at every size, down to what a person does by hand
// (common practice).
func rates(b *recipe.Batch) recipe.Rates {
	r, m3 := b.Plant.Rates, b.Mash.Cooker.HoldsM3
	usual := func(rate *float64, perM3, least float64) {
		if *rate == 0 {
			*rate = max(perM3*m3, least)
		}
	}
	usual(&r.MillKgS, 300.0/3600, 60.0/3600)
	usual(&r.PumpM3S, 0.050/minute, 0.010/minute)
	usual(&r.DigKgS, 5/minute, 5/minute)
	return r
}
