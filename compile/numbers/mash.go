package numbers

import (
	"slices"

	"newmake/compile/stage/mash"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Mash runs the cooker.
func Mash(memo *Memo, b *recipe.Batch) (mash.Result, error) {
	in := mash.Input{
		Cooker: *b.Mash.Cooker, PressurePa: PressurePa(b), AmbientC: b.Plant.AmbientC,
		WaterC: b.SupplyC(), HardnessPPM: b.Plant.HardnessPPM, BoilerW: b.Plant.BoilerW,
		WaterInM3S: b.Plant.Rates.WaterInM3S, GrainInKgS: b.Plant.Rates.GrainInKgS,
		Bill: billAlone(b.Bill), Steps: stepsAlone(b.Mash.Steps),
		BacksetPH: b.Mash.BacksetPH, BacksetSolidsFrac: b.Mash.BacksetSolidsFrac, Treatment: b.Mash.Treatment,
		PumpM3S: b.Plant.Rates.PumpM3S, WortCooler: b.Plant.WortCooler,
		Model: b.Models["mash"],
	}
	r, err := memo.mash(in)
	if err == nil && r.Kept.VolumeM3 > 0 && keeps(b) {
		in.Kept = r.SteadyKept()
		r, err = memo.mash(in)
	}
	return r, ended(Mashing, err, &r)
}

// keeps reports whether the mash takes water that was kept of the mash before.
func keeps(b *recipe.Batch) bool {
	return slices.ContainsFunc(b.Mash.Steps, func(s recipe.MashStep) bool { return s.KeptM3 > 0 })
}

// A stage takes the figures of a recipe and not their places in the text, so that
// the same recipe in another file is the same input to it.

func billAlone(b recipe.Bill) recipe.Bill {
	b.Lines = slices.Clone(b.Lines)
	for i := range b.Lines {
		b.Lines[i].At = diag.Span{}
	}
	return b
}

func stepsAlone(steps []recipe.MashStep) []recipe.MashStep {
	steps = slices.Clone(steps)
	for i := range steps {
		steps[i].At = diag.Span{}
	}
	return steps
}
