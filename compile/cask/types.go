// Package cask computes what wood does over the years.
package cask

import "newmake/lang/recipe"

// Input is a filling.
type Input struct {
	SpiritEthanolKg, SpiritWaterKg float64 // at entry strength
	SizeM3                         float64
	Kind                           *recipe.CaskKind
	Climate                        recipe.Climate
	RestS                          float64
	BottleM3                       float64
	BottleABV                      float64
	Model                          *recipe.Model
}

// Result is the filling and its forecast.
type Result struct {
	Casks      int     // filled to the bung
	LeftoverM3 float64 // at entry strength, 20 C
	Years      []Year  // of one cask, at 0, each year, and at the end of the rest
	Bottles    int     // from all casks at the end of the rest
}

// Year is one cask at an age.
type Year struct {
	AgeYears     float64
	VolumeM3     float64 // at 20 C, can be drawn
	ABV          float64 // 20 C
	Proof        float64
	ProofGallons float64
}
