package made

import (
	"newmake/compile/matter/fluid"
	"newmake/compile/stage/gauge"
	"newmake/lang/record"
)

// What a reading is less sure of where nobody wrote how warm its sample was: as one
// standard deviation, for a sample that may be 5 C off (common practice).
const (
	coldGravitySD  = 0.001 // a wort gains 0.001 in 4 C
	coldStrengthSD = 0.015 // spirit reads 0.3 % abv more a degree
	coldVolumeSD   = 0.004 // a share: spirit grows by 0.09 % a degree
)

// trueABV is the strength that an alcoholometer or a proof hydrometer means, as a fraction
// by volume at 20 C; and how unsure that is where the sample's temperature is not known.
func trueABV(r *record.Reading) (abv, unsure float64, ok bool) {
	v, ok := r.Holds()
	if !ok {
		return 0, 0, false
	}
	if r.At == nil {
		unsure = coldStrengthSD
	}
	if v.Unit == "proof" {
		proof := 200 * v.SI
		if r.At != nil {
			p, err := fluid.TrueProof(proof, 1.8*r.At.SI+32)
			if err != nil {
				return 0, 0, false
			}
			proof = p
		}
		w, err := fluid.MassFracFromProof(proof)
		return fluid.ABVFromMassFrac(w), unsure, err == nil
	}
	abv = v.SI
	if r.At != nil {
		t, err := gauge.TrueABV(abv, r.At.SI)
		if err != nil {
			return 0, 0, false
		}
		abv = t
	}
	return abv, unsure, true
}

// trueM3 is a volume brought to 20 C, of spirit of a strength by volume; and how unsure it is as a
// share where its temperature is not known.
func trueM3(r *record.Reading, abv float64) (m3, unsure float64, ok bool) {
	v, ok := r.Holds()
	if !ok {
		return 0, 0, false
	}
	if r.At == nil {
		return v.SI, coldVolumeSD, true
	}
	w, err := fluid.MassFracFromABV(min(max(abv, 0), 1))
	if err != nil {
		return 0, 0, false
	}
	return v.SI * fluid.Density(w, r.At.SI) / fluid.Density(w, 20), 0, true
}

// hydrometerC is at what a hydrometer reads true, where it does not say.
const hydrometerC = fluid.SixtyF

// glassPerC is the cubic expansion of soda-lime glass, of which hydrometers are blown.
const glassPerC = 25e-6

// trueSG is a gravity brought to 20 C: what swims there swims as in water, which grows as
// a wort does to within a tenth (common practice).
func trueSG(r *record.Reading, i *record.Instrument) (sg, unsure float64, ok bool) {
	v, ok := r.Holds()
	if !ok {
		return 0, 0, false
	}
	if r.At == nil {
		return v.SI, coldGravitySD, true
	}
	at := hydrometerC
	if i != nil && i.Scale.AtSaid {
		at = i.Scale.AtC
	}
	t := r.At.SI
	return v.SI * fluid.Density(0, at) / fluid.Density(0, t) * (1 - glassPerC*(t-at)), 0, true
}
