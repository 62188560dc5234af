package cask

import "newmake/lang/recipe"

// Input is a filling.
type Input struct {
	SpiritEthanolKg, SpiritWaterKg float64 // at entry strength
	SizeM3                         float64
	Kind                           *recipe.CaskWood
	Used                           bool // the cask has held spirit before; false: new wood
	// Climate is what evaporates. Losses of zero are taken from the model, by
	// the climate's name.
	Climate recipe.Climate
	// Air is that of the rack house by the month; where nobody wrote it, Climate holds all
	// the year.
	Air recipe.YearOfAir
	// FilledAt is the day of the fill as a share of the year, 0 the first of January; below
	// 0 it is not known, and the months are taken together.
	FilledAt  float64
	RestS     float64
	BottleM3  float64 // 0: no bottles are counted
	BottleC   float64 // at this temperature a bottle holds its size
	BottleABV float64
	Model     *recipe.Model // library entry `model cask`
}

// Result is the filling and its forecast.
type Result struct {
	Casks      int     // filled to the bung, the last one perhaps a little short
	LastM3     float64 // what the last cask holds if it is short, 20 C; 0: it is full
	LeftoverM3 float64 // at entry strength, 20 C
	Years      []Year  // of one cask (a full one, if there is one), at 0, each year, and at the end of the rest
	// What one cask of this size does in this climate, from its second year.
	LossYearly   float64 // share of the volume a year
	ProofPerYear float64
	Bottles      int     // from all casks at the end of the rest
	BottledM3    float64 // at BottledABV, from all casks, at the temperature of the bottles
	BottledABV   float64 // as asked, or the cask's own if that is weaker
	Problems     []Problem
}

// Year is one cask at an age. Masses are of ethanol and water: in the cask,
// gone into the wood, and gone into the air; the wood's own water is in them.
type Year struct {
	AgeYears     float64
	VolumeM3     float64 // at 20 C, can be drawn
	ABV          float64 // 20 C
	Proof        float64
	ProofGallons float64

	EthanolKg, WaterKg         float64
	WoodEthanolKg, WoodWaterKg float64
	LostEthanolKg, LostWaterKg float64
}

// Problem is a machine word for what did not go as written.
type Problem string

const (
	// ProblemNotOneCask: there is less spirit than one cask holds. The years
	// are those of a full cask all the same.
	ProblemNotOneCask Problem = "less-than-one-cask"
	// ProblemShort: the last cask is filled a little short of full.
	ProblemShort Problem = "last-cask-short"
	// ProblemWeak: at the end of its rest the spirit is weaker than the
	// bottling strength, and is bottled as it is.
	ProblemWeak Problem = "weaker-than-bottling-strength"
	// ProblemClimate: the losses and the change of proof that are stated
	// cannot both be, for ethanol would have to enter the cask; the change of
	// proof gives way.
	ProblemClimate Problem = "climate-cannot-be"
	// ProblemDry: the cask is all but empty before its rest ends; the years
	// stop there.
	ProblemDry Problem = "cask-runs-dry"
)
