package plan

import (
	"strconv"

	"newmake/lang/record"
)

// Schedule is the work on the clock.
type Schedule struct {
	Start string `json:"start"` // RFC 3339, in the plant's zone
	End   string `json:"end"`   // when the last cask is filled
	Steps []Step `json:"steps"`
	Days  []Day  `json:"days"` // on which somebody is wanted
	// Samples are the days on which the casks are sampled: twice a year until the rest
	// ends.
	Samples      []string    `json:"samples,omitempty"` // 2026-09-12
	Vessels      []Occupancy `json:"vessels"`
	PeopleHours  float64     `json:"peopleHours" places:"1"`
	OutOfShiftH  float64     `json:"outOfShiftHours" places:"2"`
	ElapsedHours float64     `json:"elapsedHours" places:"1"`
}

// Step is one line of the run sheet.
type Step struct {
	ID    string `json:"id"`    // stable: mash.4, strip.first-drop
	Title Phrase `json:"title"` // a few words: "Tails at 62 % abv"
	// Mark is what the start of a step that decides the day is called in a line about
	// that day: a word, or its figure alone.
	Mark        *Phrase   `json:"mark,omitempty"`
	Stage       string    `json:"stage"` // mash, ferment, strip, spirit, fill, cask
	Vessel      string    `json:"vessel,omitempty"`
	Start       string    `json:"start"` // RFC 3339, in the plant's zone
	End         string    `json:"end"`
	DurationMin float64   `json:"durationMin" places:"1"`
	When        *Phrase   `json:"when,omitempty"` // what shows that it is time, where more than the clock does
	Do          Phrase    `json:"do"`
	Read        []Reading `json:"read,omitempty"`
	Attend      string    `json:"attend"` // stay, start, alone
	People      int       `json:"people"`
	Cautions    []string  `json:"cautions,omitempty"` // keys of Plan.Cautions
	WaitMin     float64   `json:"waitMin,omitempty" places:"1"`
	WaitWhy     string    `json:"waitWhy,omitempty"`
	OutOfShift  float64   `json:"outOfShiftMin,omitempty" places:"1"`
	Line        int       `json:"line,omitempty"` // of the batch's file
}

// Day is a day on which somebody is wanted.
type Day struct {
	Date   string   `json:"date"`   // 2026-03-03, in the plant's zone
	From   string   `json:"from"`   // RFC 3339: the first step that wants somebody
	To     string   `json:"to"`     // the end of the last that starts on this day
	People int      `json:"people"` // the most that are wanted at one moment
	Stages []string `json:"stages"` // of its steps, in order
	Work   []string `json:"work"`   // what is done, in a word or two each
}

// Who must be there, as Step.Attend says it.
const (
	Stay  = "stay"  // somebody is there all along
	Start = "start" // somebody starts it and may go
	Alone = "alone" // it needs nobody
)

// Reading is what the instrument should say, and room to write what it says.
type Reading struct {
	ID     string      `json:"id"`           // stable: strip.collect.spout.1, see Blanks
	Kind   record.What `json:"kind"`         // what it is in a record of the run
	What   string      `json:"what"`         // temperature, gravity, strength at the spout
	At     string      `json:"at,omitempty"` // RFC 3339; empty: at the end of the step
	Should Quantity    `json:"should"`
	// Between Low and High it lies 9 times in 10: further off, find out why. Tolerance is
	// the farther of the two from Should. None has any in a plan without bands.
	Low       *Quantity `json:"low,omitempty"`
	High      *Quantity `json:"high,omitempty"`
	Tolerance Quantity  `json:"tolerance,omitzero"`
	// ByVolume says that Low and High are for when the receiver says what it should,
	// whatever the clock says.
	ByVolume bool `json:"byVolume,omitempty"`
	// Besides is what of the tolerance no constant of the batch makes: the form of the
	// models and the instrument, in the unit of Should's value.
	Besides float64 `json:"besides,omitempty" places:"4"`
}

// Phrase is a sentence with quantities in it. Each {} in Text stands for the
// next of Values, which a renderer shows in the reader's units. Words of the trade are the
// Scottish ones, as the names of streams are; a renderer says them as its reader does.
type Phrase struct {
	Text   string     `json:"text"`
	Values []Quantity `json:"values,omitempty"`
}

// Say makes a Phrase.
func Say(text string, values ...Quantity) Phrase { return Phrase{Text: text, Values: values} }

// Occupancy is a vessel in use.
type Occupancy struct {
	Vessel string  `json:"vessel"`
	Use    string  `json:"use"`
	From   string  `json:"from"`
	To     string  `json:"to"`
	Hours  float64 `json:"hours" places:"1"`
}

// Unit names what a Quantity is in. SI always; a renderer converts.
type Unit string

// The units of a Quantity, and the decimals to which each is rounded.
const (
	Litre       Unit = "L"
	Kilogram    Unit = "kg"
	Celsius     Unit = "C"       // a point on the scale
	CelsiusDiff Unit = "delta_C" // a distance on the scale
	Minute      Unit = "min"
	Hour        Unit = "h"
	Year        Unit = "y"
	SG          Unit = "SG"
	SGDiff      Unit = "delta_SG"
	Plato       Unit = "plato"
	PlatoDiff   Unit = "delta_plato"
	PH          Unit = "pH"
	AbvPct      Unit = "abvPct"       // at 20 C; Proof beside it is at 60 F
	AbvDiff     Unit = "delta_abvPct" // points of strength
	LitrePerH   Unit = "L/h"
	GramPerL    Unit = "g/L"
	Percent     Unit = "%"
	KilowattH   Unit = "kWh"
	Kilowatt    Unit = "kW"
	CubicMetre  Unit = "m3"
	ProofGallon Unit = "PG"
	PureLitre   Unit = "LPA"
	PurePerT    Unit = "LPA/t"
	Each        Unit = "each"
)

var unitPlaces = map[Unit]int{
	Litre: 2, Kilogram: 3, Celsius: 1, CelsiusDiff: 1, Minute: 1, Hour: 2, Year: 2, SG: 4, SGDiff: 4, Plato: 2, PlatoDiff: 2,
	PH: 2, AbvPct: 2, AbvDiff: 2, LitrePerH: 1, GramPerL: 2, Percent: 2, KilowattH: 1, Kilowatt: 1, CubicMetre: 2,
	ProofGallon: 2, PureLitre: 2, PurePerT: 1, Each: 0,
}

// Quantity is a number with its unit.
type Quantity struct {
	Value float64 `json:"value" places:"unit"`
	Unit  Unit    `json:"unit"`
	// Proof is the strength at 60 F, and Gallons the volume there, where the
	// quantity is of spirit and the US gauge is not a factor of the SI one.
	Proof   float64 `json:"proof,omitempty" places:"1"`
	Gallons float64 `json:"wineGallons,omitempty" places:"3"`
	// Abv60F is a strength at 60 F where proof is not spoken: of a wash, at the
	// spout.
	Abv60F float64 `json:"abvPctAt60F,omitempty" places:"2"`
}

// Of makes a Quantity.
func Of(value float64, unit Unit) Quantity { return Quantity{Value: value, Unit: unit} }

// At is the strength as a Quantity.
func (s Strength) At() Quantity { return Quantity{Value: s.AbvPct, Unit: AbvPct, Proof: s.Proof} }

// ByVolume is the strength as a Quantity that is spoken in % abv.
func (s Strength) ByVolume() Quantity {
	return Quantity{Value: s.AbvPct, Unit: AbvPct, Abv60F: s.Proof / 2}
}

// Volume is the lot's volume as a Quantity.
func (l Lot) Volume() Quantity {
	return Quantity{Value: l.VolumeL, Unit: Litre, Gallons: l.WineGallons}
}

// Strength is the lot's strength, said both ways.
func (l Lot) Strength() Strength { return Strength{AbvPct: l.AbvPct, Proof: l.Proof} }

// ProofPerPct is degrees of proof to a percent by volume.
const ProofPerPct = 2

// differences are the units in which quantities are apart.
var differences = map[Unit]Unit{Celsius: CelsiusDiff, SG: SGDiff, AbvPct: AbvDiff}

// Off is how far off a quantity may be, by so much of its Value, counted as it is.
func (q Quantity) Off(by float64) Quantity {
	out := Of(by, q.Unit)
	if d, ok := differences[q.Unit]; ok {
		out.Unit = d
	}
	if q.Proof > 0 {
		out.Proof = ProofPerPct * by
	}
	if q.Gallons > 0 && q.Value > 0 {
		out.Gallons = by * q.Gallons / q.Value
	}
	return out
}

// MashStepID is the key of a step of the mash, from 0.
func MashStepID(step int) string { return "mash." + strconv.Itoa(step+1) }

// ChargeID is the key of charge i of n, from 0, of a still: its steps' keys begin so.
func ChargeID(use string, i, n int) string {
	if n == 1 {
		return use
	}
	return use + "." + strconv.Itoa(i+1)
}
