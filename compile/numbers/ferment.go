package numbers

import (
	"errors"
	"slices"

	"newmake/compile/stage/ferment"
	"newmake/compile/stage/mash"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Ferment is the ferment of a batch.
type Ferment struct {
	ferment.Result
	Vessel     *recipe.Vessel
	WortM3     float64 // at its own temperature: what the vessel has to hold
	PitchKg    float64
	NutrientKg float64 // diammonium phosphate
	ForS       float64 // how long it ferments: as asked, or as long as it stands
}

// Fermented runs the fermenter, for as long as the recipe asks or as the wash
// stands, if that is longer.
func Fermented(memo *Memo, b *recipe.Batch, mashed mash.Result, standsS float64) (Ferment, error) {
	if len(b.Ferm.Vessels) == 0 {
		return Ferment{}, failed(Fermenting, errors.New("the plant has no fermenter"))
	}
	f := Ferment{WortM3: mashed.Out.VolumeM3(), PitchKg: b.Ferm.PitchKg, ForS: max(b.Ferm.DurationS, standsS)}
	f.Vessel = fermenterFor(b.Ferm.Vessels, f.WortM3)
	if f.PitchKg == 0 {
		f.PitchKg = b.Ferm.PitchKgM3 * f.WortM3
	}
	if f.NutrientKg = b.Ferm.Nutrient.MassKg; f.NutrientKg == 0 {
		f.NutrientKg = b.Ferm.Nutrient.KgM3 * f.WortM3
	}
	var err error
	f.Result, err = memo.ferment(ferment.Input{
		Wort: mashed.Out, PH: mashed.PH, Enzymes: mashed.Enzymes, Doses: dosesAlone(b.Ferm.Doses),
		Yeast: b.Ferm.Yeast, PitchKg: f.PitchKg, Vessel: *f.Vessel, CoolW: f.Vessel.CoolsW,
		WaterC: b.SupplyC(), AmbientC: b.Plant.AmbientC, PressurePa: PressurePa(b),
		HoldLowC: b.Ferm.HoldLowC, HoldHighC: b.Ferm.HoldHighC, DurationS: f.ForS,
		Mash: b.Models["mash"], Model: b.Models["ferment"],
	})
	return f, ended(Fermenting, err, &f.Result)
}

// fermenterFor is the first vessel that can hold the wash: a batch alone finds all of
// them empty. If none can, it is the first of all.
func fermenterFor(vessels []*recipe.Vessel, washM3 float64) *recipe.Vessel {
	for _, v := range vessels {
		if washM3 <= v.HoldsM3*FillMost(v) {
			return v
		}
	}
	return vessels[0]
}

func dosesAlone(doses []recipe.Dose) []recipe.Dose {
	doses = slices.Clone(doses)
	for i := range doses {
		doses[i].At = diag.Span{}
	}
	return doses
}
