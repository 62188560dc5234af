// Package recipe holds what a checked text means: plain data in SI, every name
// resolved, every variant applied. lang/check makes it; compile turns it into a
// plan. It knows neither text nor physics.
package recipe

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// System is the family of units a person writes and reads.
type System uint8

const (
	US System = iota // US customary: gal, lb, F, proof
	SI               // L, kg, C, % vol
)

// Strength is an alcoholic strength as written. Proof and % vol stand at
// different temperatures (60 F and 20 C), so bringing one to the other takes
// density tables, which are compile's business. What % abv means beside gallons
// is for Batch.Gauge to say.
type Strength struct {
	Value float64 // fraction 0..1: volume for ABV and Proof, mass for ABW
	Basis StrengthBasis
}

// StrengthBasis says what a Strength's fraction is of, and at what temperature.
type StrengthBasis uint8

const (
	ABV   StrengthBasis = iota // volume of ethanol per volume at 20 C
	Proof                      // US: twice the volume percent at 60 F; Value is proof/200
	ABW                        // mass of ethanol per mass
)

// Batch is one batch, ready to be computed.
type Batch struct {
	Name    string
	Parent  string   // name of the batch it varies, "" if it is its own
	Chain   []string // ancestors, nearest first
	Changes []string // what it has other than its parent, in words, a line each
	Units   System   // the system to speak in: as the file is written, unless asked otherwise
	// Gauge is the system the batch is written in, whatever it is spoken of in:
	// it says at what temperature a written volume of spirit, or % abv, is
	// meant. US: at 60 F, so that 40 % abv is 80 proof. SI: at 20 C.
	Gauge    System
	Plant    *Plant
	Standard *Standard // nil when none is named
	Start    Start
	Today    Today
	Bill     Bill
	Mash     Mash
	Ferm     Ferment
	Strip    Strip
	Spirit   Spirit
	Cask     Cask
	Costs    Costs
	Promises []Promise         // promises, see `promise`
	Models   map[string]*Model // constants of the models, from the library
	Learned  *Learned          // what the batch has from the house's runs: those constants alone; nil for none

	// Where tells the place in the text of each value that is written, by its
	// path: bill.rye, mash.water, mash.step.4, mash.step.4.to, spirit.hearts.from,
	// cask.entry. Blocks have a place, too.
	Where map[Path]diag.Span
}

// At is the place of a value, or of the nearest thing around it that has one.
func (b *Batch) At(p Path) diag.Span {
	for ; !p.IsZero(); p = p.Parent() {
		if at, ok := b.Where[p]; ok {
			return at
		}
	}
	return b.Where[PathBatch]
}

// Start is the civil time at which mash day begins; the plant holds the zone.
type Start struct {
	Year, Month, Day, Hour, Minute int
	// Assumed says that the batch names no day, so that one stands in for it. A
	// plan for people wants a day of its own.
	Assumed bool
}

// Date is the day as it is written: 2026-03-03.
func (s Start) Date() string { return fmt.Sprintf("%04d-%02d-%02d", s.Year, s.Month, s.Day) }

// Today is what the house really has on the day, of what one batch hands on to
// the next. Nothing said: it has what a house at work has.
type Today struct {
	FeintsSaid bool     // the house says what feints it has
	FeintsM3   float64  // for all charges of the spirit still together; 0: none yet
	FeintsAt   Strength // of them
	NoBackset  bool     // none yet: water goes in its place
	NoKept     bool     // no last water kept yet: water goes in its place
	NoPotAle   bool     // none yet that is hot: the first charge of the wash still goes in as it stands
	Spirit     Before   // goes into a cask with this one's
}

// Before is the spirit at entry strength that a run of the batch left over, too little for a
// cask of its own.
type Before struct {
	EthanolKg, WaterKg float64
	Run                string // its number
}

// Bill is the grain, in the order written.
type Bill struct {
	TotalKg float64
	Lines   []BillLine
}

// BillLine is one grain of the bill.
type BillLine struct {
	Grain  *Grain
	MassKg float64
	Share  float64 // of the bill by weight, 0..1
	Lot    string  // of a store, whose certificate Grain is of; "" where none is named
	At     diag.Span
}

// Mash is the work in the cooker, in order.
type Mash struct {
	Cooker *Vessel
	Steps  []MashStep
	// BacksetShare is backset as a share of all the liquor, 0..1 by volume.
	BacksetShare      float64
	BacksetPH         float64 // 0: from the house or the default
	BacksetSolidsFrac float64 // dissolved solids by mass; 0: default
	Treatment         Treatment
	At                diag.Span
}

// Treatment is what goes into the liquor to set its pH.
type Treatment struct {
	Acid     Acid
	AcidM3   float64 // 0: none, or to AcidToPH
	AcidToPH float64 // 0: by volume
	GypsumKg float64
	LimeKg   float64 // slaked
}

// Acid is one of those that a mash is soured with, at its usual strength.
type Acid uint8

const (
	NoAcid Acid = iota
	Lactic
	Phosphoric
	Sulfuric
)

// String is the word that the acid is written by.
func (a Acid) String() string {
	return [...]string{NoAcid: "none", Lactic: "lactic", Phosphoric: "phosphoric", Sulfuric: "sulfuric"}[a]
}

// Bought names the acid as it is bought, which is how it is counted.
func (a Acid) Bought() string {
	return [...]string{NoAcid: "none", Lactic: "lactic acid of 88 %", Phosphoric: "phosphoric acid of 85 %", Sulfuric: "sulfuric acid of 96 %"}[a]
}

// Additions are the names by which what goes into liquor and wort is priced.
var Additions = []string{"lactic-acid", "phosphoric-acid", "sulfuric-acid", "gypsum", "lime", "dap", "antifoam"}

// MashVerb is what a mash step does.
type MashVerb uint8

const (
	MashWater       MashVerb = iota // liquor in: VolumeM3 at TempC
	MashBackset                     // backset in: VolumeM3 at TempC (resolved from its share)
	MashAdd                         // grains in
	MashDose                        // enzyme in: MassKg of Enzyme, or acid/salt by name
	MashHeat                        // to TempC
	MashRest                        // for DurationS
	MashCool                        // to TempC
	MashDrain                       // worts drawn off through the false bottom, in DurationS; grain stays
	MashBoil                        // at the local boil for DurationS
	MashRecirculate                 // first runnings back over the bed for DurationS, until they run bright
	MashSparge                      // VolumeM3 at TempC over the bed in DurationS, as the worts run off
)

// MashStep is one line of the mash.
type MashStep struct {
	Verb      MashVerb
	VolumeM3  float64
	TempC     float64
	DurationS float64
	Grains    []int // indexes into Bill.Lines
	Enzyme    *Enzyme
	MassKg    float64 // of the enzyme
	KeptM3    float64 // of the water: what was kept of the mash before
	CooledC   float64 // drain and sparge: by the wort cooler into the fermenter at this; 0: hot into the underback
	NextMash  bool    // drain: kept for the next mash
	Share     float64 // dose: of the grain by weight; backset: of all the liquor. 0: written as an amount
	ForWant   bool    // water for want of backset: see AsToday
	Path      Path    // its key in Batch.Where: mash.step.4
	At        diag.Span
}

// Ferment is the days in the fermenter.
type Ferment struct {
	Vessels    []*Vessel // those allowed, in house order; "any fermenter" lists all
	Yeast      *Yeast
	PitchKg    float64 // mass of yeast, 0 when PitchKgM3 is given
	PitchKgM3  float64 // mass of yeast per volume of wort
	Doses      []Dose  // enzymes into the fermenter
	Nutrient   Nutrient
	AntifoamM3 float64 // of the emulsion as bought
	Rehydrate  Rehydration
	AsItFills  bool    // pitched into the first of the wort
	HoldLowC   float64 // cooling starts above HoldHighC, warming (if any) below HoldLowC
	HoldHighC  float64
	DurationS  float64
	AmbientC   float64
	At         diag.Span
}

// Nutrient is diammonium phosphate for the yeast.
type Nutrient struct {
	MassKg float64 // 0 when KgM3 is given
	KgM3   float64 // of wort
}

// Rehydration is how dry yeast is wetted before it is pitched; VolumeM3 0: it is not.
type Rehydration struct {
	VolumeM3, TempC, DurationS float64
}

// Dose is an enzyme addition.
type Dose struct {
	Enzyme *Enzyme
	MassKg float64
	Share  float64 // of the grain by weight; 0: written as a weight
	At     diag.Span
}

// Strip is the stripping run.
type Strip struct {
	Still   *Vessel
	Charges int // the wash is run in this many equal charges, 1 by default
	HeatUp  HeatUp
	StopAt  Strength // at the spout
	Pace    FractionPace
	Apart   []Charge // as they were made, where they were not alike; else nil
	At      diag.Span
}

// Charge is one charge of a still as it was made.
type Charge struct {
	Share                float64 // of the wash, or of the low wines
	FeintsShare          float64 // of the feints that went in
	ForeshotsM3          float64
	HeartsFrom, HeartsTo Cut
	Stop                 Strength
}

// HeatUp is how a charge is brought to its boil: one of the three, or nothing, which
// is full heat.
type HeatUp struct {
	OverS  float64 // in so long
	RateKS float64 // by so much a second
	PowerW float64 // with so much heat
}

// Cut says where a fraction ends or begins.
type Cut struct {
	By       CutBy
	Strength Strength // ByStrength: strength at the spout
	VolumeM3 float64  // ByVolume: collected since the run's first drop
	TempC    float64  // ByVapourTemp: vapour leaving the head
	Share    float64  // ByShare: of the pure alcohol in the charge that has come over
	TimeS    float64  // ByTime: since the run's first drop
	At       diag.Span
}

// CutBy is how a cut is written.
type CutBy uint8

const (
	ByStrength CutBy = iota
	ByVolume
	ByVapourTemp
	ByShare
	ByTime
)

// SameTimeS is as near as two times of a run are one: nobody turns a spout sooner.
const SameTimeS = 1

// Pace is how fast each fraction of the second run is brought over.
type Pace struct {
	Foreshots, Heads, Hearts, Tails FractionPace
}

// FractionPace is one of the three, or nothing: full heat, and of the heads the
// pace of the hearts.
type FractionPace struct {
	OverS   float64 // in so long
	FlowM3S float64 // at so much at the spout
	PowerW  float64 // with so much heat
	Full    bool    // full heat, and said so
}

// Spirit is the second run.
type Spirit struct {
	Still       *Vessel
	Charges     int
	Feints      bool // heads, tails and feints of the run before go back into the charge
	Pace        Pace
	WaterTo     Strength // water brings the charge down to this; zero: none goes in
	ForeshotsM3 float64
	HeartsFrom  Cut
	HeartsTo    Cut
	Stop        Strength
	Apart       []Charge // as they were made, where they were not alike; else nil
	At          diag.Span
}

// Cask is reduction, filling and the years in wood. Of a batch that goes into no
// wood it holds the bottle alone, and Kind is nil.
type Cask struct {
	Entry    Strength
	SizeM3   float64
	Kind     *CaskWood
	New      bool
	Char     int     // char level 0..4, 0 none
	TareKg   float64 // of an empty cask; 0: by its wood and size
	RestS    float64
	Climate  Climate
	Air      YearOfAir // of the rack house; not said: as Climate has it, the same all the year
	BottleM3 float64   // bottle size for the count of bottles; 0: 750 mL (US) or 700 mL (SI)
	BottleAt Strength  // bottling strength; zero: the standard's least or 40 % vol
	At       diag.Span
}

// Climate sets what evaporates from wood.
type Climate struct {
	MeanTempC     float64
	LossFirstYear float64 // fraction of volume, standard 200 L cask
	LossYearly    float64 // fraction of volume a year after the first
	ProofPerYear  float64 // change of proof a year once soaked (27 CFR 19.1 proof)
	Named         string
}

// Costs are what the house says things cost; zero where it does not.
type Costs struct {
	Currency    string
	PerKg       map[string]float64 // by grain, yeast, enzyme name
	BagKg       map[string]float64 // what one bag holds, by the same names; nothing where nobody says
	BagsAPallet map[string]int
	PerKWh      float64
	PerM3Water  float64
	PerCask     float64 // a new one
	PerUsedCask float64
	PerBottle   float64 // an empty one, with closure and label
	PerHour     float64
	// CarryingPerYear is what money costs that lies in casks, as a share a year.
	CarryingPerYear float64
	Where           map[string]diag.Span // price → its line
}

// Promise is a promise the batch makes of its own plan.
type Promise struct {
	What      string        // "hearts", "casks", "original-gravity", ...
	Kind      quantity.Kind // of Value: hearts may be promised as a volume or a strength
	Unit      string        // as written, for the report
	Value     float64       // SI, or a strength fraction
	Strength  Strength      // Value with its basis, of a strength
	Tolerance float64       // absolute, of Value; in degrees Plato where Unit is that; 0 for exact
	OfRuns    int           // it is to be kept in so many runs
	InRuns    int           // of so many; 0: by the plan as it stands
	At        diag.Span
}
