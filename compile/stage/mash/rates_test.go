package mash

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/recipe"
)

// Mashing in takes as long in a pilot of 100 L as in a house of 10 m3, unless the
// house says how fast it works.
func TestPaceOfFillingGoesWithTheCooker(t *testing.T) {
	minutes := func(m3, waterM3S, grainKgS float64) (water, grain float64) {
		in := plant(t)
		in.Cooker.HoldsM3, in.WaterInM3S, in.GrainInKgS = m3, waterM3S, grainKgS
		in.Bill = bill(t, []string{"two-row-malt"}, []float64{200 * m3})
		in.Steps = []recipe.MashStep{{Verb: recipe.MashWater, VolumeM3: 0.7 * m3, TempC: 70}, add(0)}
		r, err := Run(in)
		require.NoError(t, err)
		return (r.Steps[0].EndS - r.Steps[0].StartS) / 60, (r.Steps[1].EndS - r.Steps[1].StartS) / 60
	}
	for _, m3 := range []float64{0.1, 2, 10} {
		water, grain := minutes(m3, 0, 0)
		assert.InDelta(t, 19.6, water, 0.01, "%g m3", m3)
		assert.InDelta(t, 13.6, grain, 0.01, "%g m3", m3)
	}
	water, grain := minutes(2, 0.001, 0.25)
	assert.InDelta(t, 23.33, water, 0.01)
	assert.InDelta(t, 26.67, grain, 0.01)
}

// A step that the rates make longer than any step lasts is refused, and not computed for
// years: it would take all the memory there is.
func TestEndlessRates(t *testing.T) {
	const volumeM3 = 1.0
	for longer, ok := range map[float64]bool{0.99: true, 1.01: false} { // times the longest that a step may be
		in := plant(t)
		in.Bill = bill(t, []string{"two-row-malt"}, []float64{200})
		in.Steps = []recipe.MashStep{{Verb: recipe.MashWater, VolumeM3: volumeM3, TempC: 70}, add(0)}
		in.WaterInM3S = volumeM3 / (longer * endlessS)
		_, err := Run(in)
		if ok {
			require.NoError(t, err)
			continue
		}
		require.ErrorContains(t, err, "raise `water-in`")
	}
}

// A mash of steps that each can be is refused where all of them together take weeks; its
// curve holds no point beyond.
func TestEndlessMash(t *testing.T) {
	for longer, ok := range map[float64]bool{0.99: true, 1.01: false} { // times the longest that a mash may be
		in := plant(t)
		in.Bill = bill(t, []string{"two-row-malt"}, []float64{200})
		in.Steps = []recipe.MashStep{{Verb: recipe.MashWater, VolumeM3: 0.6, TempC: 70}, add(0)}
		const rests = 10
		for range rests {
			in.Steps = append(in.Steps, recipe.MashStep{Verb: recipe.MashRest, DurationS: longer * longestS / rests})
		}
		r, err := Run(in)
		if ok {
			require.NoError(t, err)
			assert.LessOrEqual(t, len(r.Curve), longestS/curveStepS+2*len(in.Steps))
			continue
		}
		require.ErrorContains(t, err, "by the end of step 12 it has taken more than 14 days")
	}
}
