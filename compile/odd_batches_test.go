package compile

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang/recipe"
	"newmake/lang/testflag"
)

// Whatever a batch asks for that the checker lets pass, Compile answers with a
// plan or with diagnostics, never with a panic or with neither.
func TestNoBatchIsTooOddToAnswer(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	factor := func() float64 { return []float64{0.02, 0.2, 0.5, 0.9, 1, 1.1, 2, 5, 30}[r.IntN(9)] }
	for range 150 / testflag.Every(3) {
		b := edited(t, func(b *recipe.Batch) {
			b.Plant.ElevationM = r.Float64() * 3000
			b.Plant.WaterC = 1 + r.Float64()*40
			b.Plant.BoilerW *= factor()
			b.Mash.Cooker.HeatsW *= factor()
			b.Mash.Cooker.CoolsW *= factor()
			b.Mash.Cooker.HoldsM3 *= factor()
			b.Strip.Still.HeatsW *= factor()
			b.Spirit.Still.Reflux = r.Float64() * 0.6
			b.Ferm.DurationS *= factor()
			b.Ferm.PitchKgM3 *= factor()
			b.Strip.StopAt.Value = min(b.Strip.StopAt.Value*factor(), 0.9)
			b.Spirit.Stop.Value = min(b.Spirit.Stop.Value*factor(), 0.9)
			b.Spirit.HeartsTo.Strength.Value = r.Float64()
			b.Spirit.ForeshotsM3 *= factor()
			b.Spirit.Charges, b.Strip.Charges = 1+r.IntN(3), 1+r.IntN(3)
			b.Cask.SizeM3 *= factor()
			b.Cask.RestS *= factor()
			b.Plant.Crew = r.IntN(3)
			b.Plant.Shift.ToMinute = 8*60 + r.IntN(16*60)
			for i := range b.Mash.Steps {
				s := &b.Mash.Steps[i]
				s.VolumeM3 *= []float64{0.5, 1, 1, 2}[r.IntN(4)]
				s.TempC += r.Float64()*40 - 20
				s.DurationS *= factor()
			}
			i := r.IntN(len(b.Mash.Steps))
			b.Mash.Steps = append(b.Mash.Steps[:i], b.Mash.Steps[i+1:]...)
		})
		p, list := Compile(b)
		require.True(t, p != nil || list.HasErrors())
		for _, d := range list {
			require.NotEmpty(t, d.Summary)
			require.NotContains(t, d.Summary, "NaN")
			require.NotContains(t, d.Summary+d.Help+d.Reason, "%!")
		}
	}
}
