// Package ferment computes the days in the fermenter.
package ferment

import (
	"newmake/compile/starch"
	"newmake/compile/stream"
	"newmake/lang/recipe"
)

// Input is all that the ferment depends on.
type Input struct {
	Wort                stream.Stream
	PH                  float64
	Enzymes             starch.Enzymes
	Doses               []recipe.Dose
	Yeast               *recipe.Yeast
	PitchKg             float64 // yeast as bought
	Vessel              recipe.Vessel
	CoolW               float64
	WaterC              float64
	AmbientC            float64
	HoldLowC, HoldHighC float64
	DurationS           float64
	Mash                *recipe.Model // constants of starch hydrolysis
	Model               *recipe.Model // constants of the ferment that are not the yeast's
}

// Result is what the ferment gives.
type Result struct {
	Wash        stream.Stream
	Curve       []Point // every hour, first at 0
	FinalSG     float64 // hydrometer, alcohol and backset included
	ABV         float64 // 20 C
	DryS        float64 // when fermentable sugar is 98 % gone; 0 if it never is
	PeakHeatW   float64 // heat of fermentation at its greatest
	PeakTempC   float64
	PeakS       float64
	CoolJ       float64
	CO2Kg       float64
	PH          float64
	SourS       float64 // when the sour phase sets in; 0 if not within the time
	Attenuation float64 // apparent
	SugarLeftKg float64
}

// Point is the ferment at one hour.
type Point struct {
	TimeS, TempC, SG, ABV, PH, YeastKgM3, HeatW, CO2Kg float64
	Cooling                                            float64 // share of the vessel's cooling in use
}
