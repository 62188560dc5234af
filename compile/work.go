package compile

import (
	"newmake/compile/plan"
	"newmake/compile/stage/schedule"
)

// work is one piece of work: the task that the schedule places, and what a run
// sheet says of it.
type work struct {
	schedule.Task
	do       plan.Phrase
	read     []reading
	cautions []string
	path     string // of the line in the text that asks for it
	after    string // not in the line of work: done beside it, once this task has ended
}

// reading is what an instrument should say, at a time from the task's start;
// below 0, at its end.
type reading struct {
	plan.Reading
	atS float64
}

// How long work takes that no model computes (common practice, at this scale),
// and how far off a reading may be before one asks why (common practice: the
// instrument's own error and the model's).
const (
	minute = 60.0

	weighS      = 10 * minute
	millKgPerS  = 600.0 / 3600
	pumpM3PerS  = 6.0 / 3600
	pumpSetupS  = 10 * minute
	pitchS      = 10 * minute
	cleanS      = 45 * minute
	roundS      = 10 * minute
	dischargeS  = 30 * minute
	gaugeS      = 20 * minute
	reduceS     = 90 * minute
	settleS     = 24 * secondsPerH
	fillSetupS  = 15 * minute
	fillS       = 15 * minute // each cask
	bottleS     = 30.0        // each bottle, filled and closed by hand
	digKgPerS   = 600.0 / 3600
	roundMinute = 9 * 60      // of the day, at which the ferment is read
	readEveryS  = secondsPerH // on a still
	readHeartsS = 30 * minute // while the hearts run
	standsLongS = 72 * secondsPerH
	heavyCaskM3 = 0.100 // from here on two people fill it
	hotC        = 60    // a mash that scalds

	mashTolC    = 1.0
	fermentTolC = 2.0
	vapourTolC  = 1.0
	tolSG       = 0.003
	fermentSG   = 0.006
	tolPH       = 0.2
	tolSpout    = 0.5  // points of % vol, and
	tolSpoutOf  = 0.03 // of the strength
	tolWash     = 0.4  // points of % vol
	tolProof    = 2.0  // proof
	tolVolume   = 0.03 // of the volume
)

func temperature(c, tol float64) reading {
	return reading{plan.Reading{What: "temperature", Expect: plan.Of(c, plan.Celsius), Tolerance: plan.Of(tol, plan.CelsiusDiff)}, -1}
}

func volume(what string, litres float64) reading {
	return reading{plan.Reading{What: what, Expect: plan.Of(litres, plan.Litre), Tolerance: plan.Of(tolVolume*litres, plan.Litre)}, -1}
}

func gravity(sg, tol float64) reading {
	return reading{plan.Reading{What: "gravity", Expect: plan.Of(sg, plan.SG), Tolerance: plan.Of(tol, plan.SGDiff)}, -1}
}

func acidity(ph float64) reading {
	return reading{plan.Reading{What: "acidity", Expect: plan.Of(ph, plan.PH), Tolerance: plan.Of(tolPH, plan.PH)}, -1}
}

func spout(abv float64) reading {
	return reading{plan.Reading{What: "spout", Expect: strengthAbv(abv).ByVolume(), Tolerance: plan.Of(tolSpout+tolSpoutOf*100*abv, plan.AbvDiff)}, -1}
}

func vapour(c float64) reading {
	return reading{plan.Reading{What: "vapour", Expect: plan.Of(c, plan.Celsius), Tolerance: plan.Of(vapourTolC, plan.CelsiusDiff)}, -1}
}

// volumeOf is the volume of a lot of wash or spirit, as its gauge counts it.
func volumeOf(what string, l plan.Lot) reading {
	r := volume(what, l.VolumeL)
	r.Expect, r.Tolerance.Gallons = l.Volume(), tolVolume*l.WineGallons
	return r
}

// lotReadings are the volume and true proof of a lot of spirit.
func lotReadings(l plan.Lot) []reading {
	tol := plan.Of(tolProof/2, plan.AbvDiff)
	tol.Proof = tolProof
	return []reading{volumeOf("volume", l), {plan.Reading{What: "strength", Expect: l.Strength().At(), Tolerance: tol}, -1}}
}

// at moves a reading to a time from the task's start.
func (r reading) at(s float64) reading {
	r.atS = s
	return r
}

func (c *compiler) add(w work) { c.work = append(c.work, w) }
