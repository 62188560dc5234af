package review

import (
	"math"

	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/stage/gauge"
	"newmake/lang/record"
)

// number is what a reading comes to, with one standard deviation. One that was not
// made has none.
type number struct {
	is, sd float64
}

func (n number) read() bool { return n.sd > 0 }

// gauged is a lot of spirit or wash as it was gauged, brought to 20 C: litres, and
// per cent by volume.
type gauged struct {
	volumeL, abvPct number
	given           bool // something was written of it at all
}

// bench brings readings to what they would have been at 20 C. What a sample's
// temperature is not known of is taken to be at the instrument's own, less sure.
type bench struct {
	instruments map[string]*record.Instrument
	gallons     bool // % abv beside gallons is at 60 F
}

// strangeC is how far from its own temperature a sample may have been that nobody
// took the temperature of, as one standard deviation (common practice: a still house
// stands between 15 and 25 C).
const strangeC = 4.0

// slopePerC is by how much an alcoholometer reads too high for each degree that the
// sample is warmer than the instrument's own temperature, as a fraction by volume: 0.3
// to 0.4 % vol a degree between 20 and 60 % (OIML R 22, tables).
const slopePerC = 0.0035

// lot reads what a line says of a lot.
func (b *bench) lot(read []record.Reading, volume, strength record.What) gauged {
	var out gauged
	var at *record.Value
	if r := find(read, strength); r != nil {
		out.given, at = true, r.At
		out.abvPct = b.strength(r)
	}
	if r := find(read, volume); r != nil {
		out.given = true
		if v, ok := r.Holds(); ok {
			if r.At != nil {
				at = r.At
			}
			sd := record.AccuracyOf(r, b.instruments[r.With]).Of(v.SI)
			litres := v.SI * lot.LitresPerM3
			if at != nil && out.abvPct.read() {
				litres *= expansion(out.abvPct.is/100, at.SI)
			}
			out.volumeL = number{litres, sd * lot.LitresPerM3}
		}
	}
	return out
}

// strength is the true strength of a reading, in per cent at 20 C.
func (b *bench) strength(r *record.Reading) number {
	v, ok := r.Holds()
	if !ok {
		return number{}
	}
	sd := record.AccuracyOf(r, b.instruments[r.With]).Of(v.SI)
	proof := v.Unit == "proof" || b.gallons
	var abv float64
	var err error
	switch {
	case r.At == nil && proof:
		abv, err = at20(v.SI)
	case r.At == nil:
		abv = v.SI
	case proof:
		var true60 float64
		if true60, err = fluid.TrueProof(200*v.SI, 32+1.8*r.At.SI); err == nil {
			abv, err = at20(true60 / 200)
		}
	default:
		abv, err = gauge.TrueABV(v.SI, r.At.SI)
	}
	if err != nil { // no spirit reads that there: it is kept as it was said, and hardly trusted
		abv, sd = v.SI, math.Max(sd, 0.05)
	}
	if r.At == nil {
		sd = math.Hypot(sd, slopePerC*strangeC)
	}
	return number{100 * abv, 100 * sd}
}

// at20 brings a fraction by volume at 60 F to one at 20 C.
func at20(abv60 float64) (float64, error) {
	w, err := fluid.MassFracFromABV60F(abv60)
	if err != nil {
		return 0, err
	}
	return fluid.ABVFromMassFrac(w), nil
}

// expansion is the volume at 20 C of what has a volume of 1 at a temperature.
func expansion(abv, tempC float64) float64 {
	w, err := fluid.MassFracFromABV(abv)
	if err != nil {
		return 1
	}
	return fluid.Density(w, tempC) / fluid.Density(w, lot.ReferenceC)
}

func find(read []record.Reading, what record.What) *record.Reading {
	for i := range read {
		if read[i].What == what && read[i].State == record.Read {
			return &read[i]
		}
	}
	return nil
}

// volume is a reading in litres, as it was read.
func (b *bench) volume(r *record.Reading) number {
	v, ok := r.Holds()
	if !ok {
		return number{}
	}
	return number{v.SI * lot.LitresPerM3, record.AccuracyOf(r, b.instruments[r.With]).Of(v.SI) * lot.LitresPerM3}
}

// gravity is a hydrometer's, brought to the temperature at which it reads true by the
// water that it would displace.
func (b *bench) gravity(r *record.Reading) number {
	v, ok := r.Holds()
	if !ok {
		return number{}
	}
	own := fluid.SixtyF
	in := b.instruments[r.With]
	if in != nil && in.Scale.AtSaid {
		own = in.Scale.AtC
	}
	sg := v.SI
	if r.At != nil {
		sg *= fluid.WaterDensity(own) / fluid.WaterDensity(r.At.SI)
	}
	return number{sg, record.AccuracyOf(r, in).Of(v.SI)}
}
