package work

import (
	"math"

	"newmake/compile/constants"
	"newmake/compile/plan"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// ReadingError is how far off a reading may be, 9 times in 10, even if every constant of the
// batch were known: by the form of the models, which no constant moves, by the hand that
// measures, and by the instrument. They are independent, and are added as squares. What the
// constants do is the band's part (package bands).
type ReadingError struct {
	Of    string      // what is read
	Unit  plan.Unit   // of a part's Abs and of the values
	Kind  record.What // by which the instrument is known
	Parts []Part      // all but the instrument
}

// Part is one cause: so much, and such a share of the value, and why.
type Part struct {
	Abs, Share float64
	Why        string
}

// Of is how far off a value may be by it alone.
func (p Part) Of(value float64) float64 { return p.Abs + p.Share*math.Abs(value) }

// At is how far off a value may be.
func (t ReadingError) At(value float64) float64 {
	sum := t.Instrument(value)
	for _, p := range t.Parts {
		sum = math.Hypot(sum, p.Of(value))
	}
	return sum
}

// percentPoints is what a strength in % vol is in fractions.
const percentPoints = 100

// Instrument is the instrument's part of it: how it is read, and what one of its kind
// that nobody has checked is always off by. A review of a run has the same.
func (t ReadingError) Instrument(value float64) float64 {
	scale := 1.0
	if t.Unit == plan.AbvPct {
		scale = percentPoints
	}
	sd := math.Hypot(record.Common(t.Kind).Of(value/scale), constants.OffBy(instruments[t.Kind], value/scale))
	return constants.NineInTen * sd * scale
}

// InstrumentWhy says what the instrument's part is taken from.
func (t ReadingError) InstrumentWhy() string { return record.Common(t.Kind).Said }

// instruments are the constants of those that a quantity is read with.
var instruments = map[record.What]string{
	record.Temperature: "thermometer", record.Vapour: "thermometer", record.Gravity: "hydrometer", record.Volume: "dip", record.Receiver: "dip",
	record.Spout: "alcoholometer", record.Strength: "alcoholometer", record.Mass: "scale", record.Gross: "scale",
}

const (
	asPublished = "vapour of Carey and Lewis (1932) or Kirschbaum (1939) in place of the model's"
	ofGrain     = "room that the grain takes up, and what boils off: common practice"
	ofOneSize   = "casks and cans of one size differ: common practice"
)

// The errors of readings, in the units of a plan.
var (
	MashC     = ReadingError{"temperature of a mash", plan.Celsius, record.Temperature, []Part{{0.8, 0, "a mash that is not alike throughout: common practice"}}}
	FermentC  = ReadingError{"temperature of a ferment", plan.Celsius, record.Temperature, nil}
	VapourC   = ReadingError{"temperature of the vapour", plan.Celsius, record.Vapour, []Part{{0.9, 0, "boiling points of two published sets: ACCURACY, Equilibrium"}}}
	WortSG    = ReadingError{"original gravity", plan.SG, record.Gravity, nil}
	FermentSG = ReadingError{"gravity of a ferment", plan.SG, record.Gravity, []Part{{0.003, 0, "half the range of final gravities in common practice, where no constant moves what yeast leaves: ACCURACY, Ferment"}}}
	PH        = ReadingError{"pH", plan.PH, record.PH, []Part{{0.2, 0, "buffering of the grain: common practice"}}}

	MashVolume     = ReadingError{"volume of a mash, wort or wash", plan.Litre, record.Volume, []Part{{0, 0.02, ofGrain}}}
	LowWinesVolume = ReadingError{"volume of low wines", plan.Litre, record.Volume, []Part{{0, 0.04, asPublished}}}
	HeartsVolume   = ReadingError{"volume of hearts", plan.Litre, record.Volume, []Part{{0, 0.012, asPublished}}}
	FeintsVolume   = ReadingError{"volume of heads, tails or feints", plan.Litre, record.Volume, []Part{{0, 0.08, asPublished}}}
	SetVolume      = ReadingError{"a volume that is measured out", plan.Litre, record.Volume, []Part{{0, 0.02, ofOneSize}, {0.01, 0, "a jug is read to 10 mL: common practice"}}}

	WashStrength     = ReadingError{"strength of a wash", plan.AbvPct, record.Strength, nil}
	LowWinesStrength = ReadingError{"strength of low wines", plan.AbvPct, record.Strength, []Part{{0, 0.04, asPublished}}}
	FeintsStrength   = ReadingError{"strength of feints", plan.AbvPct, record.Strength, []Part{{1, 0, asPublished}}}
	HeartsStrength   = ReadingError{"strength of hearts", plan.AbvPct, record.Strength, []Part{{0.7, 0, asPublished}}}
	SetStrength      = ReadingError{"strength that spirit is brought to", plan.AbvPct, record.Strength, []Part{{0.2, 0, "reduced by steps: common practice"}}}
	Spout            = ReadingError{"strength at the spout", plan.AbvPct, record.Spout, []Part{{0.5, 0.03, asPublished}}}
	Flow             = ReadingError{"flow at the spout", plan.LitrePerH, record.Flow, []Part{{0, 0.1, "a valve that is set by hand: common practice"}}}
	Net              = ReadingError{"net weight of a cask", plan.Kilogram, record.Gross, []Part{{0, 0.01, "the volume that a hand fills to: common practice"}}}
	Tare             = ReadingError{"weight of an empty cask", plan.Kilogram, record.Gross, []Part{{0, 0.1, "the wood of coopers differs: common practice"}}}
)

// VolumeOf is the error of the volume of a full receiver. What is measured out is as good as
// the measure: foreshots, and what lies between two cuts by volume.
func VolumeOf(fraction string, cuts recipe.Spirit) ReadingError {
	measured := func(c recipe.Cut) bool { return c.By == recipe.ByVolume }
	switch {
	case fraction == still.LowWines:
		return LowWinesVolume
	case fraction == still.Tails, fraction == still.Heads && !measured(cuts.HeartsFrom):
		return FeintsVolume
	case fraction == still.Hearts && !(measured(cuts.HeartsFrom) && measured(cuts.HeartsTo)):
		return HeartsVolume
	}
	return SetVolume
}

// ReadingErrors are all of them, for the page of accuracy.
func ReadingErrors() []ReadingError {
	return []ReadingError{
		MashC, FermentC, VapourC, WortSG, FermentSG, PH,
		MashVolume, LowWinesVolume, HeartsVolume, FeintsVolume, SetVolume,
		WashStrength, LowWinesStrength, FeintsStrength, HeartsStrength, SetStrength, Spout, Flow, Net, Tare,
	}
}
