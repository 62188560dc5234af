// Package mash computes the work in the cooker: the heat, the water, the acid,
// and by way of package starch what becomes of the starch.
//
// The recipe's steps are done in order. Liquor and grain mix at once when they
// go in (the time that it takes stands after that, losing heat); heat goes in
// at the vessel's power, or as fast as a written time asks if the power is
// there; a rest is held at its temperature where the vessel has heat and cools
// by its wall where it has none. Between additions the temperature follows the
// exact solution of the heat balance, and the kinetics ride on it.
//
// Drained, the worts stand hot beside the tun until a `cool`, which is theirs
// from then on; a `cool` between two drains keeps the enzymes of the first
// alive. After the last drain every step is the worts'.
//
// Balance of heat: liquor, grain with its slaking heat, the vessel's metal
// (which stands at ambient at first), jacket or steam, loss through the wall.
// Water is taken at a constant 4186.8 J/(kg K), within 0.8 % from 10 to 100 C.
// Left out: evaporation (lid on), the heat of hydrolysis, the work of stirring.
//
// A jacket gives the power that the plant says, whatever the temperature; so
// that power is to be the one seen with a thick mash near the boil. It is cooled by
// a rated power in the same way, which falls off near the water; or by a surface,
// area times coefficient, with a flow of water behind it (package exchanger).
package mash

import (
	"newmake/compile/matter/starch"
	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

// Input is all that the mash depends on.
type Input struct {
	Cooker                       recipe.Vessel
	PressurePa                   float64 // local air pressure
	AmbientC                     float64
	WaterC                       float64 // supply, for cooling and for what is heated from it
	HardnessPPM                  float64
	BoilerW                      float64 // 0: no limit
	WaterInM3S, GrainInKgS       float64 // 0: by the cooker's size
	PumpM3S                      float64 // of worts that stood in the underback; 0: by the model
	WortCooler                   recipe.Cooler
	Kept                         Worts // of the mash before; zero: there is none yet
	Bill                         recipe.Bill
	Steps                        []recipe.MashStep
	BacksetPH, BacksetSolidsFrac float64          // 0: the model's default
	Treatment                    recipe.Treatment // goes in with the first liquor
	Model                        *recipe.Model    // constants, library entry `model mash`
}

// Result is what the mash gives.
type Result struct {
	Out      stream.Stream  // goes to the fermenter
	Draff    stream.Stream  // left in the tun when lautered; zero when grain-in
	Enzymes  starch.Enzymes // still alive, to work on in the fermenter
	Steps    []Step         // one per recipe step, same order
	Curve    []Point        // at least every minute, and at each change
	Problems []Problem      // what could not be done as written, in order
	Lautered bool

	InFermenter bool          // worts ran by the cooler into the fermenter
	Kept        Worts         // for the next mash
	KeptIn      stream.Stream // of the mash before, that went in

	OriginalSG        float64 // from the grain alone, 20/20 C in vacuum
	HydrometerSG      float64 // what the instrument shows, with the backset's solids
	PH                float64
	AcidKg            float64 // that goes in: as written, or what its pH asks
	AcidMEq           float64 // of hydrogen ions that it gives off in the whole mash
	SaltsMEq          float64 // that gypsum takes away from the alkali and lime adds to it
	PHWithoutAcid     float64
	LiquorGristLPerKg float64 // liquor and backset as written, before the first drain
	Conversion        float64 // of the starch, that has become sugars and dextrins
	Gelatinized       float64 // of the starch
	FermentableShare  float64 // of the extract: sugars a yeast can take
	ExtractKg         float64 // dissolved from the grain
	TheoryExtractKg   float64 // what complete conversion would dissolve
	MostVolumeM3      float64 // greatest volume in the cooker
	HeatJ, CoolJ      float64 // heat paid for: hot liquor from the supply, jacket or steam
	LossJ             float64 // through the wall
	SlakingJ          float64 // given out by the grain as it wets
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
	Limit                            string  // what set its duration: see Limit*
	GelatinizedShare, ConvertedShare float64 // after the step, of all starch in so far
	AlphaLeft, BetaLeft              float64 // share of the malt enzymes added so far still alive
	AddedLeft                        float64 // same, of added enzymes
	PH                               float64
	SG                               float64 // of the liquid after the step, as a hydrometer reads it
}

// What set the duration of a step.
const (
	limitWritten = "written" // the recipe
	limitJacket  = "jacket"  // the vessel's power through its wall
	limitSteam   = "steam"   // the vessel's power in live steam
	limitBoiler  = "boiler"  // the boiler, smaller than the vessel's power
	limitCooling = "cooling" // the vessel's rated cooling
	limitWater   = "water"   // cooling water too near the temperature wanted
	limitFill    = "fill"    // how fast liquor or grain goes in, worts come out
	limitNone    = ""        // takes no time
)

// Problem is a step that could not be done as written. The mash does the
// nearest thing that it can.
type Problem struct {
	Step int     // index of the recipe step
	What string  // see Problem*
	ToC  float64 // temperature reached instead, where one was asked
}

// Kinds of Problem.
const (
	ProblemAboveBoil    = "above-boil"      // hotter than water boils here: taken to the boil
	ProblemNoHeat       = "no-heat"         // the vessel has no heat
	ProblemLoss         = "loss-beats-heat" // the wall loses as much as the heat gives
	ProblemNoCooling    = "no-cooling"      // the vessel has no cooling
	ProblemWarmWater    = "warm-water"      // colder than the cooling water can make it
	ProblemAlreadyThere = "already-there"   // already hotter (heat) or colder (cool)
	ProblemSlower       = "slower"          // takes longer than the written time
	ProblemNothingDrawn = "nothing-drawn"   // the grain keeps all the liquor
	ProblemNoLiquor     = "no-liquor"       // a step that works on an empty vessel
)

// Point is the mash at one moment.
type Point struct {
	TimeS, TempC                                                     float64
	ConvertedShare, GelatinizedShare, AlphaLeft, BetaLeft, AddedLeft float64
}
