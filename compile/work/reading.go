package work

import (
	"newmake/compile/lot"
	"newmake/compile/plan"
)

func temperature(c, tol float64) Reading {
	return Reading{plan.Reading{What: "temperature", Expect: plan.Of(c, plan.Celsius), Tolerance: plan.Of(tol, plan.CelsiusDiff)}, -1}
}

func volume(what string, litres float64) Reading {
	return Reading{plan.Reading{What: what, Expect: plan.Of(litres, plan.Litre), Tolerance: plan.Of(tolVolume*litres, plan.Litre)}, -1}
}

func gravity(sg, tol float64) Reading {
	return Reading{plan.Reading{What: "gravity", Expect: plan.Of(sg, plan.SG), Tolerance: plan.Of(tol, plan.SGDiff)}, -1}
}

func acidity(ph float64) Reading {
	return Reading{plan.Reading{What: "acidity", Expect: plan.Of(ph, plan.PH), Tolerance: plan.Of(tolPH, plan.PH)}, -1}
}

func spout(abv float64) Reading {
	return Reading{plan.Reading{What: "spout", Expect: lot.AtABV(abv).ByVolume(), Tolerance: plan.Of(tolSpout+tolSpoutOf*100*abv, plan.AbvDiff)}, -1}
}

func vapour(c float64) Reading {
	return Reading{plan.Reading{What: "vapour", Expect: plan.Of(c, plan.Celsius), Tolerance: plan.Of(vapourTolC, plan.CelsiusDiff)}, -1}
}

// volumeOf is the volume of a lot of wash or spirit, as its gauge counts it.
func volumeOf(what string, l plan.Lot) Reading {
	r := volume(what, l.VolumeL)
	r.Expect, r.Tolerance.Gallons = l.Volume(), tolVolume*l.WineGallons
	return r
}

// lotReadings are the volume and true proof of a lot of spirit.
func lotReadings(l plan.Lot) []Reading {
	tol := plan.Of(tolProof/2, plan.AbvDiff)
	tol.Proof = tolProof
	return []Reading{volumeOf("volume", l), {plan.Reading{What: "strength", Expect: l.Strength().At(), Tolerance: tol}, -1}}
}

// at moves a Reading to a time from the task's start.
func (r Reading) at(s float64) Reading {
	r.AtS = s
	return r
}
