// Package record holds what really happened: runs of a batch as people wrote them
// down, and the instruments that they read. It is plain data. Package logbook makes
// it of the trees of a house, and compile/blank finds which reading answers which
// blank of a plan.
//
// A value stays as it was read, in the unit in which it was written. Nothing is
// brought to another temperature here, and a correction stands beside what it
// corrects.
package record

import (
	"fmt"
	"time"

	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// Run is one occurrence of a batch: what was done, and what was read.
type Run struct {
	Number      string // "26-03"; no two runs of a house have one
	Batch       string // the batch that was run
	Date        Date   // of the mash day
	Sheet       string // the foot of the sheet that was worked from; "" if it does not say
	Zone        *time.Location
	Used        []Used
	Stages      []Stage       // those that were begun, in the order of the text
	Visits      []Visit       // in the order of the text
	Corrections []*Correction // in the order of the text
	Blank       int           // labels without a value: not yet filled in
	At          diag.Span
}

// Date is a day of the calendar. The zero Date is none.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// IsZero reports whether there is no date.
func (d Date) IsZero() bool { return d == Date{} }

// String is the date as it is written: 2026-03-03.
func (d Date) String() string { return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day) }

// Compare is below 0 for a date before another, 0 for the same, above 0 for one after.
func (d Date) Compare(o Date) int { return -d.DaysTo(o) }

// Weekday is its day of the week.
func (d Date) Weekday() time.Weekday { return d.noon().Weekday() }

// After is the date so many days later.
func (d Date) After(days int) Date { return DateOf(d.noon().AddDate(0, 0, days)) }

// Months is the same day so many months later; the last of the month where it has no such
// day. It is counted from the first month each time: the 31st is not lost on the way.
func (d Date) Months(n int) Date {
	first := time.Date(d.Year, d.Month+time.Month(n), 1, 12, 0, 0, 0, time.UTC)
	last := first.AddDate(0, 1, -1).Day()
	return Date{first.Year(), first.Month(), min(d.Day, last)}
}

// DaysTo is how many days later another date is.
func (d Date) DaysTo(o Date) int { return int(o.noon().Sub(d.noon()).Hours() / 24) }

func (d Date) noon() time.Time { return time.Date(d.Year, d.Month, d.Day, 12, 0, 0, 0, time.UTC) }

// ReadDate reads a date as it is written, 2026-03-03; the zero Date where it is none.
func ReadDate(text string) Date {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return Date{}
	}
	return DateOf(t)
}

// FirstYear and LastYear bound the days that can be planned for.
const FirstYear, LastYear = 1900, 2199

// Planned reports whether a day is one for which something can be planned.
func (d Date) Planned() bool { return d.Year >= FirstYear && d.Year <= LastYear }

// DateOf is the day of a moment, in its own zone.
func DateOf(t time.Time) Date {
	y, m, d := t.Date()
	return Date{y, m, d}
}

// Stage is one block of a run: the work in one vessel.
type Stage struct {
	Name   StageName
	Vessel string // where it was done; "" if it does not say: as planned
	At     diag.Span
}

// StageName is what is done in a stage.
type StageName string

// The stages, in the order of the work.
const (
	Mash    StageName = "mash"
	Ferment StageName = "ferment"
	Strip   StageName = "strip"
	Spirit  StageName = "spirit"
	Fill    StageName = "fill"
)

// InCask is no stage of a run: what is read of casks, vats and bottlings.
const InCask StageName = "cask"

// StageNames are those of a run, in the order of the work.
var StageNames = []StageName{Mash, Ferment, Strip, Spirit, Fill}

// Used is something that went in, as it was weighed or measured.
type Used struct {
	What   string // a grain, a yeast, an enzyme, backset, water
	Amount Reading
	Lot    string // as the sack says; "" if it does not say
	From   string // a run, a tank, a supplier; "" if it does not say
	By     string
	Note   string
	At     diag.Span
	// Moisture and Starch are those of its lot's certificate, as a store has it: shares of the
	// weight, and of what is dry. nil where none is written.
	Moisture, Starch *float64
	// BushelKg is what a trade bushel of it weighs, where it was measured by the bushel.
	BushelKg float64
}

// Visit is one line of a stage: somebody was at the vessel, did something or
// nothing, and read something or nothing.
type Visit struct {
	Stage int    // in Run.Stages
	Word  string // the step or moment: add, heat, first-drop, to, low-wines; "" of a round
	Nth   int    // which of its word in the stage, from 1: the second `cool`
	// Charge is which charge of its still it is of, from 1; 0 before the first, and in all
	// other stages.
	Charge int
	Of     string // of `to`: the fraction that begins; of `lost`: what of; of `charge`: what goes in
	Names  []string
	When   When
	None   bool    // it was not done, or nothing was read
	Why    string  // of a cut: nose, strength, volume; "" as the recipe
	From   string  // of a charge: which run, tank or cask it comes from
	To     string  // the tank that a fraction goes to, or the serial of a cask
	LastS  float64 // of `stopped`: for how long
	Read   []Reading
	By     string // who; "" if nobody said
	Note   string
	// Written is the day on which it was written down, of a late entry.
	Written Date
	At      diag.Span
}

// When is the time of a visit.
type When struct {
	Date  Date
	Clock string // as it is written, 15:04; "" if the line has none
	// Time is the moment, in the zone of the run, by the corrected clock where there is
	// one; zero where Clock is "", or is no time of that day.
	Time      time.Time
	Corrected *Correction
}

// Known reports whether the moment is.
func (w When) Known() bool { return !w.Time.IsZero() }

// What is the quantity that an instrument was read for. The words are those of the
// language and of a plan's readings.
type What string

// What can be read.
const (
	Gravity     What = "gravity"
	PH          What = "pH"
	Temperature What = "temperature" // of mash or ferment
	Vapour      What = "vapour"      // temperature in the head of a still
	Volume      What = "volume"      // in a vessel, or of a lot that was gauged
	Receiver    What = "receiver"    // volume that a fraction has come to
	Flow        What = "flow"        // at the spout
	Spout       What = "spout"       // strength there
	Strength    What = "strength"    // of a lot that was gauged
	Mass        What = "weight"
	Tare        What = "tare"   // a cask's own weight
	Gross       What = "gross"  // of a full cask
	Net         What = "net"    // of what is in it, which no record has: it is the one less the other
	Lost        What = "lost"   // spilt, leaked or poured away
	Water       What = "water"  // volume that was added to reduce
	Dip         What = "dip"    // volume in a cask or a vat
	Sampled     What = "sample" // volume that was taken out to be read
)

// State says whether there is a value.
type State uint8

const (
	Read  State = iota
	None        // it was not read, and that was written down
	Blank       // the label stands without a value: not yet filled in
)

// Reading is what an instrument said.
type Reading struct {
	What  What
	State State
	Value
	About bool   // it is less sure than the instrument
	At    *Value // temperature of the sample, nil if nobody wrote it
	True  *Value // strength that the person worked out; to be checked, not to be used
	With  string // the instrument, "" if none is named
	// ScaleC is the temperature, in C, at which the instrument says that it reads true;
	// nil where no instrument is named, or it does not say.
	ScaleC *float64
	// Corrected is the last correction of it. What was read stays in Value.
	Corrected   *Correction
	AtCorrected *Correction // likewise of At
	Doubt       string      // why the value is improbable, "" if it is not
	Place       diag.Span
}

// Holds is what holds of the reading: what was read, or what it was corrected to.
// It is false where there is none.
func (r *Reading) Holds() (Value, bool) {
	if r.Corrected != nil && !r.Corrected.IsClock() {
		return r.Corrected.New, !r.Corrected.Withdrawn
	}
	return r.Value, r.State == Read
}

// At60F reports whether a strength by volume was read on a scale that is true at 60 F, where
// % abv is half the proof (27 CFR 19.1), and not at 20 C (OIML R 44): by the instrument's
// own scale, or else by the degrees of the sample, or else by the units of the file. A
// scale that is true at 15 C counts as one of 60 F: they part by 0.02 % vol.
func (r *Reading) At60F() bool {
	at := r.At
	if r.AtCorrected != nil {
		at = &r.AtCorrected.New
	}
	switch {
	case r.ScaleC != nil:
		return *r.ScaleC < betweenScalesC
	case at != nil && at.Unit != "":
		return at.Unit == "F"
	}
	return r.Place.Units() == quantity.US
}

// betweenScalesC is the middle of 60 F and 20 C.
const betweenScalesC = ((60.0-32)/1.8 + 20) / 2

// Sample is what holds of the sample's temperature, in C. It is false where there is
// none: the sample was then at the instrument's own, as far as anybody knows.
func (r *Reading) Sample() (celsius float64, said bool) {
	switch {
	case r.AtCorrected != nil:
		return r.AtCorrected.New.SI, !r.AtCorrected.Withdrawn
	case r.At != nil:
		return r.At.SI, true
	}
	return 0, false
}

// Correction is a line that says what should have been written. It changes nothing
// above it.
type Correction struct {
	Old, New  Value
	OldClock  string // of a time that is corrected, "" of a value
	NewClock  string
	NewDate   Date // of NewClock, zero where the day stays
	Withdrawn bool // `to none`: nothing was read after all
	On        Date
	By        string
	Note      string
	Place     diag.Span
	Before    *Correction // the correction of the same value that this one puts right in turn
}

// AsOf is what held of a correction on a day: itself, or the one before it; nil before any.
func (c *Correction) AsOf(day Date) *Correction {
	for c != nil && c.On.Compare(day) > 0 {
		c = c.Before
	}
	return c
}

// AsOf is the reading as it was known on a day: later corrections are not made yet.
func (r Reading) AsOf(day Date) Reading {
	r.Corrected, r.AtCorrected = r.Corrected.AsOf(day), r.AtCorrected.AsOf(day)
	return r
}

// IsClock reports whether a time is corrected, not a value.
func (c *Correction) IsClock() bool { return c.OldClock != "" }
