package work

import (
	"newmake/compile/lot"
	"newmake/compile/plan"
	"newmake/lang/record"
)

// read is a reading, with its error.
func read(kind record.What, what string, should plan.Quantity, b ReadingError) Reading {
	return Reading{plan.Reading{Kind: kind, What: what, Should: should, Besides: b.At(should.Value)}, -1}
}

func temperature(c float64, b ReadingError) Reading {
	return read(record.Temperature, "temperature", plan.Of(c, plan.Celsius), b)
}

func volume(what string, litres float64, b ReadingError) Reading {
	return read(record.Volume, what, plan.Of(litres, plan.Litre), b)
}

func gravity(sg float64, b ReadingError) Reading {
	return read(record.Gravity, "gravity", plan.Of(sg, plan.SG), b)
}

func pH(ph float64) Reading { return read(record.PH, "pH", plan.Of(ph, plan.PH), PH) }

func spout(abv float64) Reading {
	return read(record.Spout, "spout", lot.AtABV(abv).ByVolume(), Spout)
}

// flow is the rate at which spirit runs from the spout.
func flow(m3S float64) Reading { return read(record.Flow, "flow", flowOf(m3S), Flow) }

func flowOf(m3S float64) plan.Quantity {
	return plan.Of(m3S*lot.LitresPerM3*lot.SecondsPerHour, plan.LitrePerH)
}

func vapour(c float64) Reading {
	return read(record.Vapour, "vapour", plan.Of(c, plan.Celsius), VapourC)
}

// volumeOf is the volume of a lot of wash or spirit, as its gauge counts it.
func volumeOf(what string, l plan.Lot, b ReadingError) Reading {
	return read(record.Volume, what, l.Volume(), b)
}

// strengthOf is the true strength of a lot of spirit.
func strengthOf(l plan.Lot, b ReadingError) Reading {
	return read(record.Strength, "strength", l.Strength().At(), b)
}

// lotReadings are the volume and true strength of a lot of spirit.
func lotReadings(l plan.Lot, volume, strength ReadingError) []Reading {
	return []Reading{volumeOf("volume", l, volume), strengthOf(l, strength)}
}

// setReadings are those of spirit that was measured out and brought to strength.
func setReadings(l plan.Lot) []Reading { return lotReadings(l, SetVolume, SetStrength) }

// at moves a Reading to a time from the task's start.
func (r Reading) at(s float64) Reading {
	r.AtS = s
	return r
}

// byVolume says that a Reading is judged by what has come over.
func (r Reading) byVolume() Reading {
	r.ByVolume = true
	return r
}
