package cellar

import (
	"newmake/lang/record"
)

// Format and Version name the shape of a cellar as JSON. A minor version adds names and
// never takes one away.
const (
	Format  = "newmake.cellar"
	Version = "1.3"
)

// Cellar is what lies in the casks of a house on a day.
type Cellar struct {
	Format  string  `json:"format"`
	Version string  `json:"version"`
	Units   string  `json:"units"` // "us" or "si", for a reader; all numbers here are in the units of their names
	On      string  `json:"on"`
	Casks   []Row   `json:"casks"`
	Totals  []Total `json:"totals"` // by batch and year of the fill, and last over all
	Kinds   []Total `json:"kinds"`  // by standard of identity and year of the fill
	Lots    []Lot   `json:"lots"`   // of which some casks are sampled for all, by batch and year
	// Pace is how fast the casks of the house evaporate beside what their climates say;
	// none where none has been weighed or dipped late enough to tell.
	Pace *Pace    `json:"pace,omitempty"`
	Gone int      `json:"gone"` // casks that are empty by then
	Said []string `json:"said"`
}

// Pace is a ratio with how sure it is.
type Pace struct {
	Ratio float64 `json:"ratio"`
	SD    float64 `json:"sd"`
	Casks int     `json:"casks"` // whose readings tell of it
}

// Row is one cask.
type Row struct {
	Serial   string   `json:"serial"`
	Batch    string   `json:"batch"`
	Run      string   `json:"run"`
	Filled   string   `json:"filled"` // the date
	AgeYears float64  `json:"ageYears"`
	SizeL    float64  `json:"sizeL"`
	Place    string   `json:"place,omitempty"`
	Spot     []string `json:"spot,omitempty"` // row and tier
	AtFill   Holds    `json:"atFill"`
	PutInL   float64  `json:"putInL"` // pure alcohol that went in, at the fill and later
	// Told are the times when it was topped, and when it leaked, as its own lines say.
	Told []Told `json:"told"`
	// Drawn is what went into a vat, a tank or another cask, as pure alcohol and proof gallons.
	DrawnL   float64 `json:"drawnL"`
	DrawnPG  float64 `json:"drawnProofGallons"`
	Now      Holds   `json:"now"` // nothing where it should be empty by then, though no line says so
	Low      Holds   `json:"low"` // 9 times in 10 it holds more than this, as for its pace
	High     Holds   `json:"high"`
	Last     *Last   `json:"lastReading,omitempty"`
	PaceIs   float64 `json:"pace"` // how fast it evaporates, its climate's being 1
	Target   *Target `json:"target,omitempty"`
	Standard *Aged   `json:"standard,omitempty"` // where the batch's standard of identity asks for years in wood
	Sample   string  `json:"nextSample"`         // "" where other casks of its lot are sampled for it
	Leak     *Leak   `json:"leak,omitempty"`
	Verdict  string  `json:"verdict,omitempty"` // of its last tasting, and the day
	Assumed  bool    `json:"assumedStrength"`   // its fill was not gauged
	// What a plan of sampling goes by.
	kind            string      // the title of its standard of identity
	filled, sampled record.Date // sampled is zero where it never was
	restS           float64
	doubts          []string // of what was put in or drawn
}

// Holds is what a cask holds.
type Holds struct {
	VolumeL      float64 `json:"volumeL"`     // at 20 C
	AbvPct       float64 `json:"abvPct"`      // at 20 C
	WineGallons  float64 `json:"wineGallons"` // at 60 F
	Proof        float64 `json:"proof"`
	ProofGallons float64 `json:"proofGallons"`
	PureL        float64 `json:"pureAlcoholL"` // at 20 C
}

// Last is the last reading that tells of the content.
type Last struct {
	On      string  `json:"date"`
	By      string  `json:"by"`                // weight or dip
	OffL    float64 `json:"offL"`              // volume then, less what was forecast at the fill
	Sampled string  `json:"sampled,omitempty"` // the date of the last sample
}

// Told is spirit that was put into a cask, or ran out of it, by a line that says so.
type Told struct {
	On      string  `json:"date"`
	What    string  `json:"what"`    // topped or leaked
	VolumeL float64 `json:"volumeL"` // at 20 C, 0 where nobody wrote how much
	// WineGallons is the same at 60 F.
	WineGallons float64 `json:"wineGallons"`
}

// Target is what the batch promises of the cask: the end of its rest, and a bottle of a
// strength.
type Target struct {
	On   string `json:"date"`
	Then Holds  `json:"then"`
	Low  Holds  `json:"low"`
	High Holds  `json:"high"`
	Over bool   `json:"over"` // it is behind us
	// Bottle is the strength of the bottle: as the batch has it, or the least of its
	// standard, or 40 % vol.
	BottleAbvPct float64 `json:"bottleAbvPct"`
	BottleProof  float64 `json:"bottleProof"`
	Kept         bool    `json:"kept"` // it is strong enough for its bottle then
}

// Aged is when a cask has been in wood as long as its batch's standard of identity asks, by what
// was filled in last: the youngest counts.
type Aged struct {
	Of   string `json:"of"`
	From string `json:"from"` // the date
	Met  bool   `json:"met"`
}

// Leak is a loss beyond that of its like.
type Leak struct {
	Since string  `json:"since"`
	Kg    float64 `json:"kg"`
}

// Total is the casks of one batch, or of one kind, and year together.
type Total struct {
	Batch        string  `json:"batch"`          // "" of all, and of a kind
	Kind         string  `json:"kind,omitempty"` // the standard of identity, "" of casks whose batches name none
	Year         int     `json:"year"`
	Casks        int     `json:"casks"`
	ProofGallons float64 `json:"proofGallons"`
	PureL        float64 `json:"pureAlcoholL"`
	DrawnL       float64 `json:"drawnL"`  // pure alcohol, out of casks that are not empty
	LostPct      float64 `json:"lostPct"` // of the alcohol that went in; what was drawn is not lost
}
