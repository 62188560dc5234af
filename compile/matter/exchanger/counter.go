package exchanger

import (
	"math"

	"newmake/compile/matter/fluid"
)

// CounterHotOutC is the temperature at which a hot stream leaves a counter-current
// cooler. Streams are counted by the heat capacity that flows, in W/K; surfaceWK is
// area times coefficient.
func CounterHotOutC(hotInC, hotWK, coldInC, coldWK, surfaceWK float64) float64 {
	least, most := min(hotWK, coldWK), max(hotWK, coldWK)
	if !(least > 0) {
		return hotInC
	}
	n, r := surfaceWK/least, least/most
	e := n / (1 + n) // two streams alike
	if x := n * (1 - r); x > 1e-9 {
		e = -math.Expm1(-x) / (1 - r*math.Exp(-x))
	}
	return hotInC - e*least/hotWK*(hotInC-coldInC)
}

// CounterWaterM3S is the flow of water, at most mostM3S, that brings a hot stream to
// toC; false if all of it does not.
func CounterWaterM3S(hotInC, hotWK, toC, waterC, mostM3S, surfaceWK float64) (m3S float64, ok bool) {
	perM3 := fluid.WaterDensity(waterC) * fluid.WaterHeatCapacity(waterC)
	out := func(m3S float64) float64 { return CounterHotOutC(hotInC, hotWK, waterC, m3S*perM3, surfaceWK) }
	if out(mostM3S) > toC {
		return mostM3S, false
	}
	low, high := 0.0, mostM3S
	for range 50 { // the more water, the colder
		if mid := (low + high) / 2; out(mid) > toC {
			low = mid
		} else {
			high = mid
		}
	}
	return high, true
}
