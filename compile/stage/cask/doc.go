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
// Ethanol and water evaporate, each in proportion to what is there:
//
//	dE/dt = -kE f E    dW/dt = -kW f W    f = (size/V)^(1/3)
//
// f is the cask's surface against its contents, 1 for 200 L. kE and kW are
// those with which spirit of the model's reference strength loses the volume,
// and changes by the proof, that the climate states for a year. So strength is
// an outcome: a dry climate takes more water and proof rises, a damp one more
// ethanol and proof falls, and stronger spirit changes at another rate than
// weaker.
//
// The climate's first-year loss is the whole of what goes in that year from a
// cask of 200 L, soak included; what the soak does not account for evaporates,
// and never less than in a later year. From the model's `late-after` on the
// loss is less.
//
// # What is left out
//
// The strength is true proof: what the wood dissolves would hide some of it
// from a hydrometer. Seasons, the place in the rack house and the fill of the
// cask change nothing here. What the wood holds when a cask is emptied is not
// won back, and nothing is lost in bottling.
package cask
