package compile

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/recipe"
)

// lastBits moves every written number of a batch that the models read by one
// unit in its last place.
func lastBits(b *recipe.Batch, towards float64) {
	turn := func(x *float64) {
		if *x != 0 {
			*x = math.Nextafter(*x, towards)
		}
	}
	for i := range b.Bill.Lines {
		turn(&b.Bill.Lines[i].MassKg)
	}
	for i := range b.Mash.Steps {
		s := &b.Mash.Steps[i]
		turn(&s.TempC)
		turn(&s.DurationS)
		turn(&s.VolumeM3)
		turn(&s.MassKg)
	}
	for _, x := range []*float64{
		&b.Plant.ElevationM, &b.Plant.WaterC, &b.Plant.AmbientC, &b.Plant.HardnessPPM,
		&b.Ferm.PitchKgM3, &b.Ferm.DurationS, &b.Ferm.HoldLowC, &b.Ferm.HoldHighC,
		&b.Strip.StopAt.Value, &b.Spirit.ForeshotsM3, &b.Spirit.HeartsFrom.VolumeM3, &b.Spirit.HeartsTo.Strength.Value,
		&b.Spirit.Stop.Value, &b.Cask.Entry.Value,
	} {
		turn(x)
	}
}

// The last bit of no input decides anything: neither how the integrators step,
// nor how the root finders go, so the plan is the same to the byte.
func TestLastBitsOfInputsAreNotSeen(t *testing.T) {
	written := batch(t, lantern, ferry)
	text := func(towards float64) string {
		b := own(written)
		if towards != 0 {
			lastBits(b, towards)
		}
		p, list := Compile(b)
		require.NotNil(t, p, list.Error())
		out, err := json.Marshal(p)
		require.NoError(t, err)
		return string(out)
	}
	want := text(0)
	assert.Equal(t, want, text(math.Inf(1)), "up")
	assert.Equal(t, want, text(math.Inf(-1)), "down")
}

// A narrow sweep is smooth: from one point to the next a number moves as it did
// between the two before, but for less than the steps' error. A leap where the
// pattern of steps changes would stand out here.
func TestNarrowSweepIsSmooth(t *testing.T) {
	written := batch(t, lantern, ferry)
	memo := new(Memo)
	for name, set := range map[string]func(b *recipe.Batch, x float64){
		"malt rest, C": func(b *recipe.Batch, x float64) {
			for i := range b.Mash.Steps {
				if s := &b.Mash.Steps[i]; s.Verb == recipe.MashCool && s.TempC > 60 {
					s.TempC += 0.2 * x
				}
			}
		},
		"pitch, %": func(b *recipe.Batch, x float64) { b.Ferm.PitchKgM3 *= 1 + 0.01*x },
		"grain, %": func(b *recipe.Batch, x float64) {
			for i := range b.Bill.Lines {
				b.Bill.Lines[i].MassKg *= 1 + 0.01*x
			}
		},
		"hearts to, % vol": func(b *recipe.Batch, x float64) { b.Spirit.HeartsTo.Strength.Value += 0.005 * x },
	} {
		const points = 24
		ys := make([]map[string]float64, points+1)
		for i := range ys {
			b := own(written)
			b.Plant.Shift = recipe.Shift{} // no ferment stands until the morning
			b.Cask.SizeM3 = 0.030
			set(b, float64(i)/points)
			b.Resolve()
			p, list := memo.Compile(b)
			require.NotNil(t, p, list.Error())
			ys[i] = smooth(p)
		}
		for what := range ys[0] {
			size := math.Abs(ys[0][what])
			for i := 2; i <= points; i++ {
				bend := ys[i][what] - 2*ys[i-1][what] + ys[i-2][what]
				assert.LessOrEqual(t, math.Abs(bend), 2e-5*size+1e-9, "%s: %s at %d of %d", name, what, i, points)
			}
		}
	}
}
