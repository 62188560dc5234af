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
	Is, SD float64
}

// Read says that there is one.
func (n number) Read() bool { return n.SD > 0 }

// gauged is a lot of spirit or wash as it was gauged, brought to 20 C: litres, and
// per cent by volume.
type gauged struct {
	VolumeL, AbvPct number
	Given           bool // something was written of it at all
}

// bench brings readings to what they would have been at 20 C. What a sample's
// temperature is not known of is taken to be at the instrument's own, less sure.
type bench struct {
	Instruments func(name string) *record.Instrument
	// Off is what an instrument of a kind is off by that nobody has checked, as one
	// standard deviation of a value in SI: of a dip, an alcoholmeter, a hydrometer.
	Off func(kind string, si float64) float64
}

// strangeC is how far from its own temperature a sample may have been that nobody
// took the temperature of, as one standard deviation (common practice: a still house
// stands between 15 and 25 C).
const strangeC = 4.0

// slopePerC is by how much an alcoholometer reads too high for each degree that the
// sample is warmer than the instrument's own temperature, as a fraction by volume: 0.3
// to 0.4 % vol a degree between 20 and 60 % (OIML R 22, tables).
const slopePerC = 0.0035

// Lot reads what a line says of a lot.
func (b *bench) Lot(read []record.Reading, volume, strength record.What) gauged {
	var out gauged
	var at *record.Value
	if r := Find(read, strength); r != nil {
		out.Given, at = true, r.At
		out.AbvPct = b.Strength(r)
	}
	if r := Find(read, volume); r != nil {
		out.Given = true
		if v, ok := r.Holds(); ok {
			if r.At != nil {
				at = r.At
			}
			sd := b.sd(r, "dip", v.SI)
			litres := v.SI * lot.LitresPerM3
			if at != nil && out.AbvPct.Read() {
				litres *= expansion(out.AbvPct.Is/100, at.SI)
			}
			out.VolumeL = number{litres, sd * lot.LitresPerM3}
		}
	}
	return out
}

// Strength is the true strength of a reading, in per cent at 20 C.
func (b *bench) Strength(r *record.Reading) number {
	v, ok := r.Holds()
	if !ok {
		return number{}
	}
	sd := b.sd(r, "alcoholmeter", v.SI)
	proof := v.Unit == "proof"
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

// Find gives the reading of a quantity that was made, nil if there is none.
func Find(read []record.Reading, what record.What) *record.Reading {
	for i := range read {
		if read[i].What == what && read[i].State == record.Read {
			return &read[i]
		}
	}
	return nil
}

// Volume is a reading in litres, as it was read.
func (b *bench) Volume(r *record.Reading) number {
	v, ok := r.Holds()
	if !ok {
		return number{}
	}
	return number{v.SI * lot.LitresPerM3, b.sd(r, "dip", v.SI) * lot.LitresPerM3}
}

// Gravity is a hydrometer's, brought to the temperature at which it reads true by the
// water that it would displace.
func (b *bench) Gravity(r *record.Reading) number {
	v, ok := r.Holds()
	if !ok {
		return number{}
	}
	own := fluid.SixtyF
	in := b.Instruments(r.With)
	if in != nil && in.Scale.AtSaid {
		own = in.Scale.AtC
	}
	sg := v.SI
	if r.At != nil {
		sg *= fluid.WaterDensity(own) / fluid.WaterDensity(r.At.SI)
	}
	return number{sg, b.sd(r, "hydrometer", v.SI)}
}

// And adds a lot that was gauged apart: two charges of one run. A strength that is
// not known of one is that of the other.
func (g gauged) And(o gauged) gauged {
	switch {
	case !g.Given:
		return o
	case !o.Given:
		return g
	case !g.VolumeL.Read() || !o.VolumeL.Read():
		return gauged{AbvPct: g.AbvPct, Given: true} // how much in all is not known
	}
	volume := number{g.VolumeL.Is + o.VolumeL.Is, math.Hypot(g.VolumeL.SD, o.VolumeL.SD)}
	switch {
	case !g.AbvPct.Read():
		return gauged{volume, o.AbvPct, true}
	case !o.AbvPct.Read():
		return gauged{volume, g.AbvPct, true}
	}
	share := g.VolumeL.Is / volume.Is
	return gauged{volume, number{
		share*g.AbvPct.Is + (1-share)*o.AbvPct.Is,
		math.Hypot(share*g.AbvPct.SD, (1-share)*o.AbvPct.SD),
	}, true}
}

// sd is how sure a reading is, with what its instrument may be off by.
func (b *bench) sd(r *record.Reading, kind string, si float64) float64 {
	return math.Hypot(record.AccuracyOf(r, b.Instruments(r.With)).Of(si), b.Off(kind, si))
}
