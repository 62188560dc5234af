package review

import (
	"math"

	"newmake/compile/lot"
	"newmake/compile/made"
	"newmake/lang/record"
)

// number is what a reading comes to, with one standard deviation. One that was not
// made has none.
type number struct {
	Is, SD float64
}

// Read reports whether there is one.
func (n number) Read() bool { return n.SD > 0 }

// gauged is a lot of spirit or wash as it was gauged, brought to 20 C: litres, and
// per cent by volume.
type gauged struct {
	VolumeL, AbvPct number
	Given           bool // something was written of it at all
}

// bench brings readings to what they would have been at 20 C, and says how sure they are.
type bench struct {
	Instruments func(name string) *record.Instrument
	// Off is what an instrument of a kind is off by that nobody has checked, as one
	// standard deviation of a value in SI: of a dip, an alcoholometer, a hydrometer.
	Off func(kind string, si float64) float64
}

// Lot reads what a line says of a lot.
func (b *bench) Lot(read []record.Reading) gauged {
	var out gauged
	var sample *record.Reading
	if r := find(read, record.Strength); r != nil {
		out.Given, sample = true, r
		is, ok := made.Strength(r)
		out.AbvPct = b.number(r, "alcoholometer", 100, is, ok)
	}
	if r := find(read, record.Volume); r != nil {
		out.Given = true
		is, ok := made.Volume(r, out.AbvPct.Is/100, sample)
		out.VolumeL = b.number(r, "dip", lot.LitresPerM3, is, ok)
	}
	return out
}

// Volume is a volume in litres, of what has a strength in per cent; 0 where that is not
// known.
func (b *bench) Volume(r *record.Reading, abvPct float64) number {
	is, ok := made.Volume(r, abvPct/100, nil)
	return b.number(r, "dip", lot.LitresPerM3, is, ok)
}

// Net is a volume in litres by what a cask weighs full and empty, of what has a strength in
// per cent; none where that was not read.
func (b *bench) Net(read []record.Reading, abvPct float64) number {
	full, empty := find(read, record.Gross), find(read, record.Tare)
	if full == nil || empty == nil {
		return number{}
	}
	f, _ := full.Holds()
	e, _ := empty.Holds()
	_, perLitre, _ := massKg(1, abvPct)
	sd := math.Hypot(record.AccuracyOf(full, b.Instruments(full.With)).Of(f.SI), record.AccuracyOf(empty, b.Instruments(empty.With)).Of(e.SI))
	return number{(f.SI - e.SI) / perLitre, sd / perLitre}
}

// Gravity is a hydrometer's.
func (b *bench) Gravity(r *record.Reading) number {
	is, ok := made.Gravity(r, b.Instruments(r.With))
	return b.number(r, "hydrometer", 1, is, ok)
}

// number is a reading that was brought to 20 C, in a unit of which an SI unit has so many:
// as sure as it was read, as its instrument is, and as the correction is.
func (b *bench) number(r *record.Reading, kind string, perSI float64, is made.Corrected, ok bool) number {
	if !ok {
		return number{}
	}
	v, _ := r.Holds()
	sd := math.Hypot(record.AccuracyOf(r, b.Instruments(r.With)).Of(v.SI), b.Off(kind, v.SI))
	return number{perSI * is.SI, perSI * math.Hypot(sd, is.Unsure)}
}

// find gives the reading of a quantity that was made, nil if there is none.
func find(read []record.Reading, what record.What) *record.Reading {
	for i := range read {
		if read[i].What == what && read[i].State == record.Read {
			return &read[i]
		}
	}
	return nil
}

// And adds a lot that was gauged apart: two charges of one run. A strength that is
// not known of one is that of the other.
func (g gauged) And(o gauged) gauged {
	switch {
	case !g.Given:
		return o
	case !o.Given:
		return g
	case !g.VolumeL.Read() && !o.AbvPct.Read(): // how strong on one line, and how much on another
		return gauged{o.VolumeL, g.AbvPct, true}
	case !o.VolumeL.Read() && !g.AbvPct.Read():
		return gauged{g.VolumeL, o.AbvPct, true}
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
