package record

import "math"

// Accuracy is how sure a reading is, before anything else is known of it.
type Accuracy struct {
	// SI is one standard deviation, in the unit of the reading's kind: of a strength
	// a fraction, of a temperature a difference.
	SI    float64
	Share float64 // the same as a share of the value; the two are added as squares
	Said  string  // what it is taken from
	// Assumed says that nothing was declared of the instrument.
	Assumed bool
}

// Of is one standard deviation of a value.
func (a Accuracy) Of(si float64) float64 { return math.Hypot(a.SI, a.Share*math.Abs(si)) }

// common is the accuracy of the instruments of a small house that states none: the
// division, and all else that keeps a reading from being true as one standard deviation.
// All of it is common practice.
var common = map[What]struct {
	divisionSI, besideSI, share float64
	said                        string
}{
	Temperature: {0.5, 0.3, 0, "a thermometer with a division of half a degree Celsius"},
	Vapour:      {0.5, 0.5, 0, "a thermometer in the head"},
	Gravity:     {0.001, 0.0005, 0, "a hydrometer with a division of 0.001"},
	PH:          {0.1, 0.05, 0, "a meter or papers, read to 0.1"},
	Volume:      {0, 0, 0.01, "a dipstick or gauge glass"},
	Receiver:    {0, 0, 0.01, "a dipstick or gauge glass"},
	Water:       {0, 0, 0.01, "a dipstick or a measure"},
	Flow:        {0, 0, 0.03, "timed in a measure"},
	Spout:       {0.01, 0.005, 0, "a hydrometer in a stream that is warm and moves"},
	Strength:    {0.002, 0.001, 0, "a hydrometer with a division of 0.2 % abv"},
	Mass:        {0.2, 0, 0.001, "a floor scale"},
	Tare:        {0.5, 0, 0.001, "a floor scale"},
	Gross:       {0.5, 0, 0.001, "a floor scale"},
}

// AccuracyOf is how sure a reading is: by the instrument that it names, if that is
// declared, else by common practice. What was rounded more coarsely when it was
// written down is no surer than that. instrument may be nil.
func AccuracyOf(r *Reading, instrument *Instrument) Accuracy {
	v, _ := r.Holds()
	c := common[r.What]
	a := Accuracy{Share: c.share, Said: c.said + ": common practice", Assumed: true}
	division, beside := c.divisionSI, c.besideSI
	if instrument != nil && instrument.Scale.Kind == v.Kind {
		division, beside = instrument.DivisionSI(instrument.Scale.Low), 0
		a = Accuracy{Said: "the division of " + instrument.Name + ", read to the nearest"}
		if instrument.ToleranceSI > 0 { // it may lie anywhere within (JCGM 100:2008, 4.3.7)
			beside = instrument.ToleranceSI / math.Sqrt(3)
			a.Said += ", and its tolerance"
		}
	}
	a.SI = math.Hypot(ReadingSI(max(division, v.PlaceSI())), beside)
	if r.About {
		a.SI, a.Share = aboutTimes*a.SI, max(aboutTimes*a.Share, aboutShare)
		a.Said += "; written as about"
	}
	return a
}

// Common is how sure a reading of a kind is where nothing is declared of its instrument.
func Common(kind What) Accuracy {
	c := common[kind]
	return Accuracy{SI: math.Hypot(ReadingSI(c.divisionSI), c.besideSI), Share: c.share, Said: c.said + ": common practice", Assumed: true}
}

// What is written with `about` is a third as sure, and no surer than a tenth of it
// (common practice).
const (
	aboutTimes = 3
	aboutShare = 0.1
)
