package plan

// Congeners is where what is volatile beside ethanol and water goes in the
// spirit run. All of it is an estimate, relative to what is in the charge, for
// nothing here knows how much that is. It makes no spirit safe: no cut removes
// methanol.
type Congeners struct {
	UncertaintyPct float64         `json:"uncertaintyPct" places:"0"` // of a volatility, up and down
	HouseOwn       bool            `json:"houseOwn"`                  // by the house's own figures
	Each           []Congener      `json:"each"`
	Curve          []CongenerPoint `json:"curve"`
}

// Congener is one of them.
type Congener struct {
	Name      string             `json:"name"`
	Fractions []CongenerFraction `json:"fractions"` // as the run's
	LeftPct   Estimate           `json:"leftPct"`   // of the charge's, in the spent lees
	// Gain is how many times as much of it a steady charge holds as its low
	// wines bring, for feints return it.
	Gain Estimate `json:"gain"`
}

// CongenerFraction is one congener in one fraction.
type CongenerFraction struct {
	Fraction string   `json:"fraction"`
	SharePct Estimate `json:"sharePct"` // of what the charge holds
	// Relative is its amount to a litre of pure alcohol, the charge's being 1.
	Relative Estimate `json:"relative"`
}

// CongenerPoint is all of them at the spout at a moment.
type CongenerPoint struct {
	Min    float64 `json:"min" places:"2"` // from the fire
	AbvPct float64 `json:"abvPct" places:"2"`
	// Relative is the amount of each to a litre of pure alcohol, in the order of
	// Congeners.Each.
	Relative []float64 `json:"relative" places:"3"`
}

// Estimate is a value with what it could be, given the model's uncertainty.
type Estimate struct {
	Value float64 `json:"value" places:"3"`
	Low   float64 `json:"low" places:"3"`
	High  float64 `json:"high" places:"3"`
}
