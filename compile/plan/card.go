package plan

// Card is the proofing card: the hearts brought to entry strength with water
// in small steps, and what the hydrometer shows on the way at the temperature
// that is found.
type Card struct {
	Target Strength   `json:"target"`
	RoomC  float64    `json:"roomC" places:"1"` // at which spirit and water stand at first
	Steps  []CardStep `json:"steps"`            // the first has no water yet
	Trims  []Trim     `json:"trims"`
}

// CardStep is the spirit after some of the water. Weights are what a
// scale in air shows.
type CardStep struct {
	SharePct     float64 `json:"sharePct" places:"1"` // of all the water
	AddL         float64 `json:"addL" places:"2"`     // in this step, at 20 C
	AddScaleKg   float64 `json:"addScaleKg" places:"3"`
	WaterL       float64 `json:"waterL" places:"2"` // so far
	WaterScaleKg float64 `json:"waterScaleKg" places:"3"`

	AddGallons   float64 `json:"addGallons" places:"3"` // US gal, at 60 F
	WaterGallons float64 `json:"waterGallons" places:"3"`

	Gives        Lot     `json:"gives"`
	GivesScaleKg float64 `json:"givesScaleKg" places:"3"`
	// MixedC is where it stands by its own warmth, if no heat is lost.
	MixedC float64 `json:"mixedC" places:"1"`
	// Shows is what a glass hydrometer reads, by temperature.
	Shows []Shown `json:"shows"`
}

// Shown is what a hydrometer shows at one temperature: one in proof, marked at
// 60 F, and one in % vol, marked at 20 C.
type Shown struct {
	TempC  float64 `json:"tempC" places:"2"`
	Proof  float64 `json:"proof" places:"1"`
	AbvPct float64 `json:"abvPct" places:"1"`
}

// Trim is the water that takes spirit from a little over its target to it.
type Trim struct {
	Over         Quantity `json:"over"`
	WaterL       float64  `json:"waterL" places:"2"`
	WaterScaleKg float64  `json:"waterScaleKg" places:"3"`

	WaterGallons float64 `json:"waterGallons" places:"3"` // US gal, at 60 F
}

// Add is the water of this step as a Quantity.
func (s CardStep) Add() Quantity {
	return Quantity{Value: s.AddL, Unit: Litre, Gallons: s.AddGallons}
}

// Water is the water so far as a Quantity.
func (s CardStep) Water() Quantity {
	return Quantity{Value: s.WaterL, Unit: Litre, Gallons: s.WaterGallons}
}

// Water is the water of a trim as a Quantity.
func (t Trim) Water() Quantity {
	return Quantity{Value: t.WaterL, Unit: Litre, Gallons: t.WaterGallons}
}

// EnzymeWindow is where an enzyme of the mash works.
type EnzymeWindow struct {
	Name    string  `json:"name"`
	Malt    bool    `json:"malt"`               // the malt's own; otherwise added
	FromMin float64 `json:"fromMin" places:"1"` // it goes in, from the first step of the mash
	LowC    float64 `json:"lowC" places:"1"`
	HighC   float64 `json:"highC" places:"1"`
	GoneC   float64 `json:"goneC" places:"1"` // dies quickly above
}

// Source is the text that a plan was made from.
type Source struct {
	File     string `json:"file"`               // of the batch, in its house
	Revision string `json:"revision,omitempty"` // the commit that last changed the sources
	Changed  bool   `json:"changed"`            // they have changes that are not saved in git
	Hash     string `json:"hash"`               // of the sources, short
}

// String says which text it is, in words; nothing if it is not known.
func (s *Source) String() string {
	switch {
	case s == nil || s.Hash == "" && s.Revision == "":
		return ""
	case s.Revision == "":
		return "draft " + s.Hash + ", not saved in git"
	case s.Changed:
		return "draft " + s.Hash + ", revision " + s.Revision + " with changes not saved in git"
	}
	return "revision " + s.Revision
}
