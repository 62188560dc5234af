// Package numbers computes a batch stage by stage, and no more: what is said of
// it, the work, the clock and the plan are made from what it gives. Each function
// takes the recipe and what the stages before gave, and gives what the next one
// needs, all in SI. A Memo spares stages whose inputs were seen before.
package numbers

import (
	"newmake/compile/matter/fluid"
	"newmake/compile/stage/mash"
	"newmake/lang/recipe"
)

// Batch is a recipe with what its stages give. A stage that was not computed, or
// has nothing to do, is zero.
type Batch struct {
	*recipe.Batch // with every strength on the basis on which it is meant

	Mashed    mash.Result
	Fermented Ferment
	Stripped  Strip
	Distilled Spirit
	Ways      []Way // what was tried where the feints never settle
	Reduced   Reduction
	Filled    Cask
}

// InWood reports whether a batch goes into casks at all.
func InWood(b *recipe.Batch) bool { return b.Cask.Kind != nil && b.Cask.SizeM3 > 0 }

// PressurePa is that of the air at the plant.
func PressurePa(b *recipe.Batch) float64 { return fluid.PressureAtElevation(b.Plant.ElevationM) }

// Stage names what is computed, for Failure.
type Stage string

// What can fail to be computed.
const (
	Mashing    Stage = "mash"
	Fermenting Stage = "ferment"
	Stripping  Stage = "strip"
	Distilling Stage = "spirit"
	Following  Stage = "congeners"
	Reducing   Stage = "reduction"
	Carding    Stage = "proofing card"
	Filling    Stage = "cask"
	Planning   Stage = "plan" // what is made of the numbers: costs, the card, the clock
)

// Failure is an error that says which stage could not be computed.
type Failure struct {
	Stage Stage
	Err   error
}

func (f *Failure) Error() string { return string(f.Stage) + ": " + f.Err.Error() }

func (f *Failure) Unwrap() error { return f.Err }

// failed wraps the error of a stage, if there is one.
func failed(s Stage, err error) error {
	if err == nil {
		return nil
	}
	return &Failure{s, err}
}

// ended is how a stage ends: with the error it had, or with that of a result that
// is no number.
func ended(s Stage, err error, result any) error {
	if err == nil {
		err = ran(result)
	}
	return failed(s, err)
}
