package why

import (
	"strings"

	"newmake/compile/stage/still"
	sheet "newmake/compile/work"
	"newmake/lang/quantity"
	"newmake/lang/wording"
)

// Off is one cause for which a reading of a number is off, 9 times in 10 by no more
// than By, though every constant that moves the number were known.
type Off struct {
	By  string `json:"by"` // in the reader's units, as a sheet shows a tolerance
	Why string `json:"why"`
}

// read is what a sheet has read of a number.
var read = map[string]sheet.ReadingError{
	"original-gravity": sheet.WortSG, "hydrometer": sheet.WortSG, "ph": sheet.PH, "wort": sheet.MashVolume, "liquor": sheet.MashVolume,
	"wash": sheet.MashVolume, "wash-abv": sheet.WashStrength, "final-gravity": sheet.FermentSG, "peak": sheet.FermentC, "ferment-ph": sheet.PH,
	"low-wines": sheet.LowWinesVolume, "low-wines-abv": sheet.LowWinesStrength, "charge": sheet.LowWinesVolume,
	"proof": sheet.HeartsStrength, "feints": sheet.FeintsVolume, "feints-abv": sheet.FeintsStrength,
	"entry": sheet.SetStrength, "at-entry": sheet.SetVolume, "water-to-add": sheet.SetVolume,
}

// off tells why a reading of a value may be off: by the form of the models or the hand
// that measures, and by the instrument; nil for what no sheet has read.
func (a *asked) off(v value) []Off {
	of, ok := read[v.name]
	switch v.name {
	case still.Foreshots, still.Heads, still.Hearts, still.Tails:
		of, ok = sheet.VolumeOf(v.name, a.b.Spirit), true
	}
	if !ok {
		return nil
	}
	q, system := v.amount(a), quantity.SI
	if a.us() {
		system = quantity.US
	}
	by := func(much float64) string {
		off, unit := q.Off(much), ""
		if off.Proof > 0 && a.us() {
			unit = " proof"
		}
		return strings.TrimPrefix(a.u.Tolerance(off), "+/- ") + unit
	}
	var out []Off
	for _, p := range of.Parts {
		out = append(out, Off{by(p.Of(q.Value)), p.Why})
	}
	if much := of.Instrument(q.Value); much > 0 {
		out = append(out, Off{by(much), "the instrument, " + wording.Restated(of.InstrumentWhy(), system)})
	}
	return out
}
