// Package cask computes what wood does over the years.
//
// # The model
//
// A cask holds ethanol and water. Two things take from it.
//
// The wood soaks: in the first months it takes up the share of the fill that
// the kind of cask states, at the strength that the spirit has, and gives back
// some of its own moisture. That moisture is why proof falls at first.
//
// Ethanol and water evaporate through the same wood, by the surface that the spirit wets,
// each by how far its activity in the spirit is above that in the air, which holds water
// and no ethanol:
//
//	dE/dt = -kE S aE(x)    dW/dt = -kW S (aW(x) - humidity)    S = (V/V0)^(2/3)
//
// with the activities of package fluid (its NRTL). kW follows from kE: at the model's
// `pivot-humidity` the strength of its reference spirit stands still. kE and the humidity
// are those with which the reference spirit loses the volume, and changes by the proof,
// that the climate states for a year. So strength is an outcome: in dry air water goes and
// proof rises, in damp air ethanol, and proof falls. As a cask empties it has more surface
// to its contents, and both go faster. A smaller cask has more surface to its contents
// too: f = (size/V0)^(1/3), 1 for 200 L.
//
// The climate's first-year loss is the whole of what goes in that year from a
// cask of 200 L, soak included; what the soak does not account for evaporates,
// and never less than in a later year. From the model's `late-after` on the
// loss is less.
//
// Where the air of the rack house is known by the month, each month takes by its vapour
// pressures beside the year's mean, and water by how far its own humidity is below that of
// the spirit (season.go): summer takes more than winter, and strength follows the humidity
// of the year as it weighs by vapour pressure. That is known. How much goes in the year,
// at which humidity strength stands still (60 to 70 %, the model's `pivot-humidity`), and
// that wood passes as much in the cold as in the heat, are guesses: which way strength
// goes is sure, how far is within some 2 proof in four years.
//
// # What is left out
//
// The strength is true proof: what the wood dissolves would hide some of it
// from a hydrometer. Leaks, the tier of the rack house and the fill of the
// cask change nothing here; a high tier has warmer and drier air than a low one, and is a
// rack house of its own where that is measured. What the wood holds when a cask is emptied is not
// won back, and nothing is lost in bottling.
package cask
