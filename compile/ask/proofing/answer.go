package proofing

// Format and Version name the shape of an answer as JSON. A minor version adds
// names and never takes one away.
const (
	Format  = "newmake.gauge"
	Version = "1.0"
)

// Answer is a question, worked. Every number in it is rounded: what is shown is
// what there is.
type Answer struct {
	Format   string   `json:"format"`
	Version  string   `json:"version"`
	Question string   `json:"question"`
	Units    string   `json:"units"` // "us" or "si"
	Working  []Work   `json:"working"`
	Results  []Result `json:"results"`
	Notes    []string `json:"notes"`
	Cautions []string `json:"cautions"`
}

// Work is one step of the working: what is worked out, by which table, and the
// arithmetic line by line.
type Work struct {
	Title  string   `json:"title"`
	Source string   `json:"source"`
	Lines  []string `json:"lines"`
}

// Result is one number of the answer. The unit "delta_F" or "delta_C" is a
// distance on the scale.
type Result struct {
	Name   string  `json:"name"`  // stable
	Label  string  `json:"label"` // for people
	Value  float64 `json:"value"`
	Unit   string  `json:"unit"`
	Places int     `json:"-"`
}

// The names of results.
const (
	TrueProof    = "trueProof"
	TrueABV      = "trueAbvPct"      // at 20 C
	TrueABV60F   = "trueAbvPctAt60F" // half the proof
	Obscuration  = "obscurationProof"
	Volume       = "volume"
	Weight       = "weight"
	ProofGallons = "proofGallons"
	PureAlcohol  = "pureAlcohol"
	SpiritVolume = "spiritVolume"
	SpiritWeight = "spiritWeight"
	WaterVolume  = "waterVolume"
	WaterWeight  = "waterWeight"
	Contraction  = "contraction"
	Expansion    = "expansion" // weak spirit and water grow a little
	Temperature  = "temperature"
	Rise         = "temperatureRise"
	LeftOver     = "leftOverVolume"
)
