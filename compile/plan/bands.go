package plan

// Bands are how sure the numbers of a plan are: 9 times in 10 what comes lies between
// the low and the high, each number looked at by itself. They are made of what is not
// known for certain of the house, of what scatters from run to run, and, where
// something is read, of the models' form and of the instrument. Package bands makes
// them.
type Bands struct {
	Computed int `json:"computed"` // batches that were computed for them
	Failed   int `json:"failed"`   // those of which nothing came
	// Numbers are those of the summary, of which one is not certain: what comes, whatever
	// instrument reads it. The lows belong to no one batch.
	Numbers []NumberBand `json:"numbers"`
	Mash    []MashBand   `json:"mash"` // at the points of the curve, by the clock
	// Ferment is at the points of the curve, by the hours from the pitch.
	Ferment []FermentBand `json:"ferment"`
	Strip   RunBands      `json:"strip"`
	Spirit  RunBands      `json:"spirit"`
	Cask    []CaskBand    `json:"cask"` // at the ages of the forecast
}

// NumberBand is a number of the summary, and what makes the width of its band, the
// greatest first.
type NumberBand struct {
	Key     string   `json:"key"` // in the summary
	Words   string   `json:"words"`
	Planned Quantity `json:"planned"`
	Low     Quantity `json:"low"`
	High    Quantity `json:"high"`
	Of      []Share  `json:"of"`
}

// Share is one constant's part of the square of a band's width.
type Share struct {
	Constant string  `json:"constant"`
	Words    string  `json:"words"`
	SharePct float64 `json:"sharePct" places:"0"`
}

// MashBand is the temperature of the mash at a moment, sooner and later steps regarded.
type MashBand struct {
	Min   float64 `json:"min" places:"2"`
	LowC  float64 `json:"lowC" places:"2"`
	HighC float64 `json:"highC" places:"2"`
}

// FermentBand is the ferment at an hour.
type FermentBand struct {
	Hour       float64 `json:"hour" places:"2"`
	LowC       float64 `json:"lowC" places:"2"`
	HighC      float64 `json:"highC" places:"2"`
	LowSG      float64 `json:"lowSG" places:"4"`
	HighSG     float64 `json:"highSG" places:"4"`
	LowAbvPct  float64 `json:"lowAbvPct" places:"2"`
	HighAbvPct float64 `json:"highAbvPct" places:"2"`
}

// RunBands are those of one charge of a still: at the same volume, where the spout
// hangs little on how fast it runs, and by the clock.
type RunBands struct {
	ByVolume []RunBand `json:"byVolume"`
	ByClock  []RunBand `json:"byClock"`
}

// RunBand is a run at a point of its curve: when so much has come over, or at that
// minute from the fire. By the clock what has come over has a band too; at a volume
// its ends are that volume.
type RunBand struct {
	Min           float64 `json:"min" places:"2"`
	OverL         float64 `json:"overL" places:"2"`
	LowOverL      float64 `json:"lowOverL" places:"2"`
	HighOverL     float64 `json:"highOverL" places:"2"`
	LowAbvPct     float64 `json:"lowAbvPct" places:"2"`
	HighAbvPct    float64 `json:"highAbvPct" places:"2"`
	LowVapourC    float64 `json:"lowVapourC" places:"2"`
	HighVapourC   float64 `json:"highVapourC" places:"2"`
	LowRateLPerH  float64 `json:"lowRateLPerH" places:"1"`
	HighRateLPerH float64 `json:"highRateLPerH" places:"1"`
}

// CaskBand is one cask at an age.
type CaskBand struct {
	AgeYears        float64 `json:"ageYears" places:"3"`
	LowVolumeL      float64 `json:"lowVolumeL" places:"2"`
	HighVolumeL     float64 `json:"highVolumeL" places:"2"`
	LowWineGallons  float64 `json:"lowWineGallons" places:"2"`
	HighWineGallons float64 `json:"highWineGallons" places:"2"`
	LowAbvPct       float64 `json:"lowAbvPct" places:"2"`
	HighAbvPct      float64 `json:"highAbvPct" places:"2"`
	LowProof        float64 `json:"lowProof" places:"2"`
	HighProof       float64 `json:"highProof" places:"2"`
}

// LowVolume and HighVolume are what is in the cask, as Quantities.
func (b CaskBand) LowVolume() Quantity {
	return Quantity{Value: b.LowVolumeL, Unit: Litre, Gallons: b.LowWineGallons}
}

// HighVolume is the other end of LowVolume.
func (b CaskBand) HighVolume() Quantity {
	return Quantity{Value: b.HighVolumeL, Unit: Litre, Gallons: b.HighWineGallons}
}
