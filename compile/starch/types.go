// Package starch holds the kinetics of starch and the enzymes that break it
// down, shared by the mash and the ferment.
package starch

// Enzymes is the activity present, in the units of the model's constants.
type Enzymes struct {
	Alpha float64 // malt alpha-amylase
	Beta  float64 // malt beta-amylase
	Added []Added // preparations, in the order dosed
}

// Added is the activity left of one preparation.
type Added struct {
	Name     string
	Activity float64
	Dosed    float64 // activity when it went in
}
