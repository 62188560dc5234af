package work

import (
	"newmake/compile/lot"
	"newmake/compile/plan"
	"newmake/lang/record"
)

func temperature(c float64, tol Tolerance, besides ...float64) Reading {
	return Reading{plan.Reading{Kind: record.Temperature, What: "temperature", Should: plan.Of(c, plan.Celsius), Tolerance: plan.Of(tol.of(c, besides...), plan.CelsiusDiff)}, -1}
}

func volume(what string, litres float64, tol Tolerance) Reading {
	return Reading{plan.Reading{Kind: record.Volume, What: what, Should: plan.Of(litres, plan.Litre), Tolerance: plan.Of(tol.of(litres), plan.Litre)}, -1}
}

// gravity is a gravity whose tolerance goes by its points.
func gravity(sg float64, tol Tolerance, besides ...float64) Reading {
	return Reading{plan.Reading{Kind: record.Gravity, What: "gravity", Should: plan.Of(sg, plan.SG), Tolerance: plan.Of(tol.of(sg-1, besides...), plan.SGDiff)}, -1}
}

func pH(ph float64, besides ...float64) Reading {
	return Reading{plan.Reading{Kind: record.PH, What: "pH", Should: plan.Of(ph, plan.PH), Tolerance: plan.Of(tolPH.of(ph, besides...), plan.PH)}, -1}
}

func spout(abv float64, besides ...float64) Reading {
	return Reading{plan.Reading{Kind: record.Spout, What: "spout", Should: lot.AtABV(abv).ByVolume(), Tolerance: plan.Of(tolSpout.of(100*abv, besides...), plan.AbvDiff)}, -1}
}

// flow is what runs from the spout.
func flow(m3S float64) Reading {
	q := flowOf(m3S)
	return Reading{plan.Reading{Kind: record.Flow, What: "flow", Should: q, Tolerance: plan.Of(tolFlow.of(q.Value), plan.LitrePerH)}, -1}
}

func flowOf(m3S float64) plan.Quantity {
	return plan.Of(m3S*lot.LitresPerM3*lot.SecondsPerHour, plan.LitrePerH)
}

func vapour(c float64, besides ...float64) Reading {
	return Reading{plan.Reading{Kind: record.Vapour, What: "vapour", Should: plan.Of(c, plan.Celsius), Tolerance: plan.Of(tolVapourC.of(c, besides...), plan.CelsiusDiff)}, -1}
}

// volumeOf is the volume of a lot of wash or spirit, as its gauge counts it.
func volumeOf(what string, l plan.Lot, tolL float64) Reading {
	r := Reading{plan.Reading{Kind: record.Volume, What: what, Should: l.Volume(), Tolerance: plan.Of(tolL, plan.Litre)}, -1}
	if l.VolumeL > 0 {
		r.Tolerance.Gallons = tolL * l.WineGallons / l.VolumeL
	}
	return r
}

// strengthOf is the true strength of a lot of spirit.
func strengthOf(l plan.Lot, tol Tolerance) Reading {
	points := tol.of(l.AbvPct)
	off := plan.Of(points, plan.AbvDiff)
	off.Proof = 2 * points
	return Reading{plan.Reading{Kind: record.Strength, What: "strength", Should: l.Strength().At(), Tolerance: off}, -1}
}

// lotReadings are the volume and true strength of a lot of spirit.
func lotReadings(l plan.Lot, volume, strength Tolerance) []Reading {
	return []Reading{volumeOf("volume", l, volume.of(l.VolumeL)), strengthOf(l, strength)}
}

// setReadings are those of spirit that was measured out and brought to strength.
func setReadings(l plan.Lot) []Reading { return lotReadings(l, tolSetVolume, tolSetStrength) }

// at moves a Reading to a time from the task's start.
func (r Reading) at(s float64) Reading {
	r.AtS = s
	return r
}
