package size

import (
	"slices"

	"newmake/lang/recipe"
)

// Scale is a batch f times as large: all that is an amount, as it is written.
// Shares, strengths, temperatures, times and vessels stay.
func Scale(b *recipe.Batch, f float64) *recipe.Batch {
	out := *b
	out.Bill.TotalKg *= f
	out.Bill.Lines = slices.Clone(b.Bill.Lines)
	for i := range out.Bill.Lines {
		out.Bill.Lines[i].MassKg *= f
	}
	out.Mash.Steps = slices.Clone(b.Mash.Steps)
	for i := range out.Mash.Steps {
		s := &out.Mash.Steps[i]
		s.VolumeM3 *= f
		s.MassKg *= f
	}
	out.Ferm.PitchKg *= f
	out.Ferm.Doses = slices.Clone(b.Ferm.Doses)
	for i := range out.Ferm.Doses {
		out.Ferm.Doses[i].MassKg *= f
	}
	out.Spirit.ForeshotsM3 *= f
	out.Spirit.HeartsFrom.VolumeM3 *= f
	out.Spirit.HeartsTo.VolumeM3 *= f
	out.Resolve()
	return &out
}
