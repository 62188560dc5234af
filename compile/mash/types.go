// Package mash computes the work in the cooker.
package mash

import (
	"newmake/compile/starch"
	"newmake/compile/stream"
	"newmake/lang/recipe"
)

// Input is all that the mash depends on.
type Input struct {
	Cooker                                        recipe.Vessel
	PressurePa                                    float64 // local air pressure
	AmbientC                                      float64
	WaterC                                        float64 // supply, for cooling and for what is heated from it
	HardnessPPM                                   float64
	BoilerW                                       float64 // 0: no limit
	Bill                                          recipe.Bill
	Steps                                         []recipe.MashStep
	BacksetPH, BacksetSolidsFrac, BacksetAcidFrac float64
	Model                                         *recipe.Model // constants, stock entry `model mash`
}

// Result is what the mash gives.
type Result struct {
	Out      stream.Stream  // goes to the fermenter
	Draff    stream.Stream  // left in the tun when lautered; zero when grain-in
	Enzymes  starch.Enzymes // still alive, to work on in the fermenter
	Steps    []Step         // one per recipe step, same order
	Curve    []Point        // at least every minute, and at each change
	Lautered bool

	OriginalSG        float64 // from the grain alone, 20/20 C in vacuum
	HydrometerSG      float64 // what the instrument shows, with the backset's solids
	PH                float64
	LiquorGristLPerKg float64
	Conversion        float64 // of the starch, that has become sugars and dextrins
	Gelatinized       float64 // of the starch
	FermentableShare  float64 // of the extract: sugars a yeast can take
	ExtractKg         float64 // dissolved from the grain
	TheoryExtractKg   float64 // what complete conversion would dissolve
	MostVolumeM3      float64 // greatest volume in the cooker
	HeatJ, CoolJ      float64
	CoolingWaterM3    float64
	SteamKg           float64 // condensate added, direct steam only
	BoilC             float64 // water boils here
	DurationS         float64
}

// Step is what happened in one recipe step.
type Step struct {
	StartS, EndS                     float64
	StartC, EndC                     float64 // temperature before and after
	VolumeM3                         float64 // after the step
	HeatJ, CoolJ                     float64
	Limit                            string  // what set its duration: "jacket", "boiler", "cooling", "written", ...
	GelatinizedShare, ConvertedShare float64 // after the step, of all starch in so far
	AlphaLeft, BetaLeft              float64 // share of the malt enzymes added so far still alive
	AddedLeft                        float64 // same, of added enzymes
}

// Point is the mash at one moment.
type Point struct {
	TimeS, TempC                                                     float64
	ConvertedShare, GelatinizedShare, AlphaLeft, BetaLeft, AddedLeft float64
}
