// Package plan is what newmake makes of a batch: every prediction, the timed
// work, and what to look out for. It is plain data. Renderers, comparisons and
// reviews see a Plan and nothing else.
//
// Everything is in SI with the unit in the name: L, kg, C, kW, kWh, min, h. A
// volume or a strength of spirit is at 20 C; what the US gauger counts (wine
// gallons, proof, proof gallons) is at 60 F and stands beside it, because one
// does not follow from the other by a factor.
//
// Every float has a `places` tag: the decimals to which Round rounds it when
// the plan is made, so that the same batch gives the same bytes everywhere.
package plan

// Format and Version name the shape of a plan as JSON. A minor version adds
// names and never takes one away.
const (
	Format  = "newmake.plan"
	Version = "1.0"
)

// Plan is one batch, computed.
type Plan struct {
	Format  string  `json:"format"`
	Version string  `json:"version"`
	Summary Summary `json:"summary"`

	Batch     Batch      `json:"batch"`
	Source    *Source    `json:"source,omitempty"` // where the text was at hand
	Opened    *Opened    `json:"run,omitempty"`    // the run that is opened of the batch on this day
	Plant     Plant      `json:"plant"`
	Bill      Bill       `json:"bill"`
	Mash      Mash       `json:"mash"`
	Ferment   Ferment    `json:"ferment"`
	Strip     Run        `json:"strip"`
	Spirit    Run        `json:"spirit"`
	Congeners *Congeners `json:"congeners,omitempty"` // estimates; none without a `model congener`
	Reduction *Reduction `json:"reduction,omitempty"`
	Card      *Card      `json:"proofingCard,omitempty"`
	Cask      Cask       `json:"cask"`
	Streams   []Stream   `json:"streams"` // what each stage takes and gives, by mass
	Yield     Yield      `json:"yield"`
	Energy    Energy     `json:"energy"`
	Cost      *Cost      `json:"cost,omitempty"` // only where the house states prices
	Law       *Law       `json:"law,omitempty"`
	Promises  []Promise  `json:"promises,omitempty"`
	Schedule  Schedule   `json:"schedule"`
	Cautions  []Caution  `json:"cautions"`
	Notices   []Notice   `json:"notices"`
	Bands     *Bands     `json:"bands,omitempty"` // how sure it is; only where that is asked for
}

// Summary is the plan in twenty numbers. The names are stable.
type Summary struct {
	OriginalGravitySG float64 `json:"originalGravitySG" places:"4"`
	FinalGravitySG    float64 `json:"finalGravitySG" places:"4"`
	WashVolumeL       float64 `json:"washVolumeL" places:"1"`
	WashAbvPct        float64 `json:"washAbvPct" places:"2"` // of the whole: times washVolumeL it is the alcohol
	LowWinesVolumeL   float64 `json:"lowWinesVolumeL" places:"1"`
	LowWinesAbvPct    float64 `json:"lowWinesAbvPct" places:"2"`
	HeartsVolumeL     float64 `json:"heartsVolumeL" places:"1"`
	HeartsAbvPct      float64 `json:"heartsAbvPct" places:"2"`
	HeartsProofGal    float64 `json:"heartsProofGallons" places:"2"`
	PureAlcoholL      float64 `json:"pureAlcoholL" places:"2"` // in the hearts
	FeintsVolumeL     float64 `json:"feintsVolumeL" places:"1"`
	FeintsAbvPct      float64 `json:"feintsAbvPct" places:"2"`
	CaskEntryAbvPct   float64 `json:"caskEntryAbvPct" places:"2"`
	CasksFilled       int     `json:"casksFilled"`
	LeftoverL         float64 `json:"leftoverL" places:"1"` // at entry strength
	MashHours         float64 `json:"mashHours" places:"2"`
	FermentHours      float64 `json:"fermentHours" places:"2"` // in the fermenter, until the still is charged
	StripHours        float64 `json:"stripHours" places:"2"`
	SpiritHours       float64 `json:"spiritHours" places:"2"`
	YieldLPAPerTonne  float64 `json:"yieldLPAPerTonne" places:"1"` // hearts, per tonne of grain as is
}

// Batch says which batch this is.
type Batch struct {
	Name     string   `json:"name"`
	Parent   string   `json:"parent,omitempty"` // the batch it varies
	Chain    []string `json:"ancestors,omitempty"`
	Changes  []string `json:"changes,omitempty"`  // what it has other than its parent, in words
	Standard string   `json:"standard,omitempty"` // title of the standard of identity
	Start    string   `json:"start"`              // RFC 3339, in the plant's zone
	Units    string   `json:"units"`              // "us" or "si": what the batch is written in
}

// Opened is a run of the batch that the house has opened for the day of the plan.
type Opened struct {
	Number  string      `json:"number"`
	Vessels []RunVessel `json:"vessels,omitempty"` // those that it names
}

// RunVessel is the vessel in which a run does a stage.
type RunVessel struct {
	Use    string `json:"use"` // mash, ferment, strip, spirit
	Vessel string `json:"vessel"`
}

// Plant is the plant as far as the batch depends on it.
type Plant struct {
	Name        string   `json:"name"`
	ElevationM  float64  `json:"elevationM" places:"1"`
	PressureKPa float64  `json:"pressureKPa" places:"2"`
	WaterBoilsC float64  `json:"waterBoilsC" places:"1"`
	WaterC      float64  `json:"waterC" places:"1"`
	HardnessPPM float64  `json:"hardnessPPM" places:"0"`
	AmbientC    float64  `json:"ambientC" places:"1"`
	BoilerKW    float64  `json:"boilerKW" places:"0"` // 0: no limit stated
	Crew        int      `json:"crew"`
	Zone        string   `json:"zone"`
	ShiftFrom   string   `json:"shiftFrom"` // 07:00
	ShiftTo     string   `json:"shiftTo"`
	ShiftDays   []string `json:"shiftDays"` // Tuesday ...
	Vessels     []Vessel `json:"vessels"`   // those that the batch uses, in its order
	// Tanks is what waits in them; those that share what waits stand together.
	Tanks []TankUse `json:"tanks,omitempty"`
}

// TankUse is what waits between the steps of the batch in a tank, or in tanks that share
// it. Spirit is counted at 20 C and at 60 F, all else as it is.
type TankUse struct {
	Names  []string `json:"names"`
	For    []string `json:"for"` // low-wines, feints, spirit ...
	HoldsL float64  `json:"holdsL" places:"2"`
	MostL  float64  `json:"mostL" places:"1"` // that waits at a time
	// FillPct is that of the brim. FullestAt is when, RFC 3339; no time where nothing waits.
	FillPct   float64 `json:"fillPct" places:"1"`
	FullestAt string  `json:"fullestAt,omitempty"`
	LeftL     float64 `json:"leftL" places:"1"` // when the batch is done

	MostGallons float64 `json:"mostGallons" places:"2"` // US gal
	LeftGallons float64 `json:"leftGallons" places:"2"`
}

// Most is the most that waits at a time.
func (t TankUse) Most() Quantity {
	return Quantity{Value: t.MostL, Unit: Litre, Gallons: t.MostGallons}
}

// Left is what is there when the batch is done.
func (t TankUse) Left() Quantity {
	return Quantity{Value: t.LeftL, Unit: Litre, Gallons: t.LeftGallons}
}

// Vessel is one vessel that the batch uses.
type Vessel struct {
	Name   string  `json:"name"`
	Kind   string  `json:"kind"` // cooker, fermenter, still
	Use    string  `json:"use"`  // mash, ferment, strip, spirit
	HoldsL float64 `json:"holdsL" places:"2"`
	HeatKW float64 `json:"heatsKW,omitempty" places:"1"`
	CoolKW float64 `json:"coolsKW,omitempty" places:"1"`
	// MostL is the greatest volume in it, hot; FillPct is that of the brim.
	MostL   float64 `json:"mostL" places:"1"`
	FillPct float64 `json:"fillPct" places:"1"`
}

// VesselOf is the first vessel of a use; one without a name if there is none.
func (p *Plan) VesselOf(use string) Vessel {
	for _, v := range p.Plant.Vessels {
		if v.Use == use {
			return v
		}
	}
	return Vessel{}
}

// Lot is an amount of spirit, counted both ways.
type Lot struct {
	VolumeL      float64 `json:"volumeL" places:"2"`     // at 20 C
	AbvPct       float64 `json:"abvPct" places:"2"`      // at 20 C
	PureL        float64 `json:"pureL" places:"2"`       // litres of pure alcohol at 20 C
	WineGallons  float64 `json:"wineGallons" places:"3"` // US gal at 60 F
	Proof        float64 `json:"proof" places:"1"`       // at 60 F
	ProofGallons float64 `json:"proofGallons" places:"2"`
	MassKg       float64 `json:"massKg" places:"3"`
}

// Times is a lot n times as large.
func (l Lot) Times(n float64) Lot {
	l.VolumeL *= n
	l.PureL *= n
	l.WineGallons *= n
	l.ProofGallons *= n
	l.MassKg *= n
	return l
}

// Strength is a strength, said both ways.
type Strength struct {
	AbvPct float64 `json:"abvPct" places:"2"` // at 20 C
	Proof  float64 `json:"proof" places:"1"`  // at 60 F
}

// Caution is a danger of the work. Steps name it by Key.
type Caution struct {
	Key   string `json:"key"`
	Title string `json:"title"` // a few words, for beside a step
	Text  string `json:"text"`
}

// Notice is what is to be said about the batch. An error here is a promise that
// is not kept: a batch with any other has no sheet to keep it in.
type Notice struct {
	Code     string `json:"code"`
	Severity string `json:"severity"` // error, warning, note
	Summary  string `json:"summary"`
	Help     string `json:"help,omitempty"`
	Reason   string `json:"reason,omitempty"`
	Line     int    `json:"line,omitempty"` // of the batch's file
}

// Law is the standard of identity and how the batch stands against it.
type Law struct {
	Standards  []string    `json:"standards"` // those that the batch names
	Title      string      `json:"title"`
	Source     string      `json:"source"`
	Conditions []Condition `json:"conditions"`
}

// Condition is one thing the law asks.
type Condition struct {
	Asks    string `json:"asks"` // "corn at least 51 %"; a limit stands as the law states it
	Section string `json:"section,omitempty"`
	Found   string `json:"found,omitempty"` // "68 %"
	Met     string `json:"met"`             // met, NOT met, not tested
}

// Promise is what the batch expects of itself.
type Promise struct {
	What      string   `json:"what"`
	Basis     string   `json:"basis,omitempty"` // how it is measured, where there are two ways
	Promised  Quantity `json:"promised"`
	Tolerance Quantity `json:"tolerance"`
	Found     Quantity `json:"found"`
	Kept      bool     `json:"kept"`
	// Times is how often it is promised to be kept; none of one that the plan alone has
	// to keep. Kept says of such a promise what the plan alone gives, and Tried what
	// came of many runs; none where they were not tried.
	Times *Times `json:"times,omitempty"`
	Tried *Tried `json:"tried,omitempty"`
}

// How a promise stands.
const (
	PromiseKept     = "kept"
	PromiseBroken   = "broken"
	PromiseTooClose = "too close to say"
	PromiseUntried  = "not tried"
)

// Stands says how a promise stands: one that the plan alone has to keep is kept or
// broken.
func (p Promise) Stands() string {
	switch {
	case p.Times != nil && p.Tried != nil:
		return p.Tried.Verdict
	case p.Times != nil:
		return PromiseUntried
	case p.Kept:
		return PromiseKept
	}
	return PromiseBroken
}

// Tried is what came of a promise in many runs that were drawn.
type Tried struct {
	Draws   int     `json:"draws"`
	Share   float64 `json:"share" places:"3"` // of the draws that kept it
	Words   string  `json:"words"`
	Verdict string  `json:"verdict"`
}

// Times is so many runs of so many.
type Times struct {
	Of int `json:"of"`
	In int `json:"in"`
}

// Share is the share of runs.
func (t Times) Share() float64 { return float64(t.Of) / float64(t.In) }
