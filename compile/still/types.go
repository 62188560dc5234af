// Package still computes batch distillation: the wash run and the spirit run.
package still

import (
	"newmake/compile/stream"
	"newmake/lang/recipe"
)

// Setting is the still and where it stands.
type Setting struct {
	Still      recipe.Vessel
	PressurePa float64
	AmbientC   float64
	WaterC     float64 // condenser water in
	BoilerW    float64 // 0: no limit
}

// StripInput is one wash run.
type StripInput struct {
	Setting
	Wash stream.Stream
	Stop recipe.Strength // at the spout
}

// SpiritInput is one spirit run. Feints is what is returned to the charge; the
// caller, or Steady, finds it.
type SpiritInput struct {
	Setting
	LowWines             stream.Stream
	Feints               stream.Stream
	ForeshotsM3          float64
	HeartsFrom, HeartsTo recipe.Cut
	Stop                 recipe.Strength
}

// Fraction is what came over between two cuts.
type Fraction struct {
	Name string // foreshots, heads, hearts, tails, low wines
	stream.Stream
	VolumeM3         float64 // at 20 C
	ABV              float64 // 20 C
	StartS, EndS     float64 // from the fire
	StartABV, EndABV float64 // at the spout
}

// Run is one run of a still.
type Run struct {
	Charge         stream.Stream
	ChargeM3       float64
	ChargeABV      float64
	HeatUpS        float64 // fire to first drop
	DurationS      float64 // fire to stop
	Fractions      []Fraction
	Residue        stream.Stream // pot ale or spent lees: backset is drawn from it
	ResidueM3      float64
	ResidueABV     float64
	Curve          []Point
	HeatJ          float64
	CondenserJ     float64
	CoolingWaterM3 float64
	MostFill       float64  // charge volume hot, as share of the still
	Problems       []string // a cut that was never reached, and the like: machine words, see Problem*
}

// Point is the run at one moment.
type Point struct {
	TimeS    float64
	PotC     float64
	VapourC  float64 // leaving the head
	ABV      float64 // at the spout, 20 C
	PotABV   float64
	OverM3   float64 // collected since the first drop, at 20 C
	RateM3S  float64
	Fraction string
}
