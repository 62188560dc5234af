package made

import (
	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/stage/gauge"
	"newmake/lang/record"
)

// Corrected is a reading brought to 20 C, in SI.
type Corrected struct {
	SI float64
	// Unsure is what is not known of the correction, as one standard deviation: 0 where
	// somebody wrote how warm the sample was.
	Unsure float64
}

// strangeC is how far from an instrument's own temperature a sample may have been that
// nobody took the temperature of, as one standard deviation (common practice: a still
// house stands between 15 and 25 C).
const strangeC = 4.0

// What a degree is worth.
const (
	abvPerC   = 0.0035  // 0.3 to 0.4 % vol between 20 and 60 % (OIML R 22, tables)
	sgPerC    = 0.00025 // of a wort (common practice)
	sharePerC = 0.0009  // of a volume of spirit (OIML R 22, tables)
)

// Strength is the strength that an alcoholometer or a proof hydrometer means, as a
// fraction by volume at 20 C. A scale of % abv that is true at 60 F shows half the proof
// (record.Reading.At60F). It is not ok where no spirit reads that at that
// temperature: such a reading is a slip of the pen, and tells nothing of the spirit.
func Strength(r *record.Reading) (Corrected, bool) {
	v, ok := r.Holds()
	if !ok {
		return Corrected{}, false
	}
	var err error
	is := Corrected{SI: v.SI}
	at, warm := r.Sample()
	if !warm {
		is.Unsure = abvPerC * strangeC
	}
	switch proof := 200 * v.SI; {
	case v.Unit == "proof", r.At60F():
		if warm {
			if proof, err = fluid.TrueProof(proof, 1.8*at+32); err != nil {
				return Corrected{}, false
			}
		}
		var w float64
		w, err = fluid.MassFracFromProof(proof)
		is.SI = fluid.ABVFromMassFrac(w)
	case warm:
		is.SI, err = gauge.TrueABV(v.SI, at)
	}
	return is, err == nil
}

// gallons are the units of gallons, whose volumes are meant at 60 F.
var gallons = map[string]bool{"gal": true, "qt": true, "pt": true, "fl oz": true}

// MeantAt is the temperature at which a volume is meant that was written in a unit, in C:
// 60 F of gallons, as the US gauger counts, 20 C of all else.
func MeantAt(unit string) float64 {
	if gallons[unit] {
		return fluid.SixtyF
	}
	return lot.ReferenceC
}

// Volume is a volume, in m3, of what has a strength by volume (0 where that is not known),
// brought to 20 C from the temperature that stands with it. strength is the reading of the
// lot's strength, nil if there is none: the lot is taken to be as warm as its sample where
// nothing stands with the volume, and as its unit is meant where nothing stands there either.
func Volume(r *record.Reading, abv float64, strength *record.Reading) (Corrected, bool) {
	v, ok := r.Holds()
	if !ok {
		return Corrected{}, false
	}
	at, warm := r.Sample()
	if !warm && strength != nil {
		at, warm = strength.Sample()
	}
	unsure := 0.0
	if !warm {
		at, unsure = MeantAt(v.Unit), v.SI*sharePerC*strangeC
	}
	w, err := fluid.MassFracFromABV(min(max(abv, 0), 1))
	if err != nil {
		return Corrected{}, false
	}
	return Corrected{v.SI * fluid.Density(w, at) / fluid.Density(w, lot.ReferenceC), unsure}, true
}

// hydrometerC is at what a hydrometer reads true, where it does not say.
const hydrometerC = fluid.SixtyF

// glassPerC is the cubic expansion of soda-lime glass, of which hydrometers are blown.
const glassPerC = 25e-6

// Gravity is what a hydrometer means, brought to 20 C: what swims there swims as in water,
// which grows as a wort does to within a tenth (common practice).
func Gravity(r *record.Reading, i *record.Instrument) (Corrected, bool) {
	v, ok := r.Holds()
	if !ok {
		return Corrected{}, false
	}
	t, warm := r.Sample()
	if !warm {
		return Corrected{v.SI, sgPerC * strangeC}, true
	}
	at := hydrometerC
	if i != nil && i.Scale.AtSaid {
		at = i.Scale.AtC
	}
	return Corrected{SI: v.SI * fluid.Density(0, at) / fluid.Density(0, t) * (1 - glassPerC*(t-at))}, true
}
