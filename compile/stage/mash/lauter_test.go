package mash

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/fluid"
	"newmake/lang/recipe"
)

// maltHouse is a mash of two-row malt in a house with a wort cooler: two waters to the
// fermenter, and a third for the next mash.
func maltHouse(t testing.TB, steps ...recipe.MashStep) Input {
	in := plant(t)
	in.WortCooler = recipe.Cooler{AreaM2: 1.4, WaterM3S: 10 * galM3 / 60}
	const kg = 875 * lbKg
	in.Bill = bill(t, []string{"two-row-malt"}, []float64{kg})
	in.Steps = append([]recipe.MashStep{water(285, 163), add(0), rest(60)}, steps...)
	return in
}

func cold(s recipe.MashStep, f float64) recipe.MashStep {
	s.CooledC = fahrenheit(f)
	return s
}

func run1(t testing.TB, in Input) Result {
	t.Helper()
	r, err := Run(in)
	require.NoError(t, err)
	return r
}

// massIn is all that a mash takes.
func massIn(in Input, r Result) float64 {
	kg := in.Bill.TotalKg + r.KeptIn.MassKg()
	for _, s := range in.Steps {
		if s.Verb == recipe.MashWater || s.Verb == recipe.MashSparge {
			kg += (s.VolumeM3 - s.KeptM3) * fluid.WaterDensity(s.TempC)
		}
	}
	return kg
}

func TestLauteredMassCloses(t *testing.T) {
	third := drain(40)
	third.NextMash = true
	in := maltHouse(t, recipe.MashStep{Verb: recipe.MashRecirculate, DurationS: 600}, cold(drain(60), 70), water(100, 168), cold(drain(60), 70),
		cold(recipe.MashStep{Verb: recipe.MashSparge, VolumeM3: 80 * galM3, TempC: fahrenheit(172), DurationS: 1800}, 70), water(150, 180), third)
	first := run1(t, in)
	require.Empty(t, first.Problems)
	assert.True(t, first.InFermenter)
	assert.Positive(t, first.Kept.VolumeM3)
	assert.InEpsilon(t, massIn(in, first), first.Out.MassKg()+first.Draff.MassKg()+first.Kept.Stream.MassKg(), 1e-12)

	// The next mash takes what the first left, as much as each leaves in the long run.
	in.Steps[0].KeptM3, in.Kept = 140*galM3, first.SteadyKept()
	second := run1(t, in)
	assert.InEpsilon(t, massIn(in, second), second.Out.MassKg()+second.Draff.MassKg()+second.Kept.Stream.MassKg(), 1e-12)
	gain := second.ExtractKg - first.ExtractKg
	assert.InDelta(t, second.KeptIn.ExtractKg(), gain, 0.2*second.KeptIn.ExtractKg(), "most of it comes into the fermenter")
	assert.InEpsilon(t, in.Kept.Stream.ExtractKg(), second.Kept.Stream.ExtractKg(), 0.01)

	in.Kept = second.Kept
	third3 := run1(t, in)
	assert.InEpsilon(t, second.ExtractKg, third3.ExtractKg, 3e-4, "steady")
}

// Worts that run cold into the fermenter have the temperature that was asked, and the
// heat that the cooler took is theirs.
func TestWortsRunCold(t *testing.T) {
	in := maltHouse(t, cold(drain(60), 70))
	r := run1(t, in)
	require.Empty(t, r.Problems)
	assert.InDelta(t, fahrenheit(70), r.Out.TempC, 1e-9)
	hot := r.Steps[2].EndC
	assert.InEpsilon(t, r.Out.MassKg()*3.6e3*(hot-r.Out.TempC), r.CoolJ, 0.03, "a wort of 20 Plato takes some 3.6 kJ/(kg K)")
	assert.InDelta(t, 60, (r.Steps[3].EndS-r.Steps[3].StartS)/60, 1e-9)
	most := in.WortCooler.WaterM3S * 3600
	assert.Less(t, r.CoolingWaterM3, most)
	warm := in
	warm.WaterC = 17
	assert.Greater(t, run1(t, warm).CoolingWaterM3, r.CoolingWaterM3, "warmer water, more of it")

	// A wort that is cold at once loses the enzymes' work in the underback, no more.
	standing := run1(t, maltHouse(t, drain(60), cool(70)))
	assert.InEpsilon(t, standing.ExtractKg, r.ExtractKg, 1e-3)
}

// The cooler sets the pace where it is too small for the time that is written.
func TestCoolerSetsThePace(t *testing.T) {
	least := func(areaM2, minutes float64) Result {
		in := maltHouse(t, cold(drain(minutes), 70))
		in.WortCooler.AreaM2 = areaM2
		return run1(t, in)
	}
	slow := least(0.35, 10)
	require.Len(t, slow.Problems, 1)
	assert.Equal(t, ProblemSlower, slow.Problems[0].What)
	assert.InDelta(t, fahrenheit(70), slow.Out.TempC, 1e-9, "it runs cold all the same")
	takes := (slow.Steps[3].EndS - slow.Steps[3].StartS) / 60
	require.Greater(t, takes, 10.0)
	assert.Empty(t, least(0.35, takes*1.001).Problems)
	assert.Len(t, least(0.35, takes*0.999).Problems, 1)
	assert.Equal(t, limitCooling, slow.Steps[3].Limit)
}

func TestColderThanTheWater(t *testing.T) {
	in := maltHouse(t, cold(drain(60), 0))
	in.WortCooler = recipe.Cooler{AreaM2: 20, WaterM3S: 1e-2}
	for _, c := range []struct {
		above float64
		said  int
	}{{3.01, 0}, {2.99, 1}} {
		in.Steps[3].CooledC = in.WaterC + c.above
		r := run1(t, in)
		require.Len(t, r.Problems, c.said, "%g K above the water", c.above)
	}
	none := in
	none.WortCooler = recipe.Cooler{}
	r := run1(t, none)
	require.Len(t, r.Problems, 1)
	assert.Equal(t, ProblemNoCooling, r.Problems[0].What)
	assert.False(t, r.InFermenter)
	assert.Greater(t, r.Out.TempC, 55.0, "it stays hot")
}

// A second water of twice what the bed holds, mixed and drained, leaves a third of
// what the bed held; let over it as it runs it leaves a sixth, and a bed that mixes
// throughout would leave a seventh: 1/(1+x), (1+x/6)^-6, exp(-x).
func TestWashingOfTheBed(t *testing.T) {
	left := func(steps ...recipe.MashStep) float64 {
		before := run1(t, maltHouse(t, drain(60)))
		r := run1(t, maltHouse(t, append([]recipe.MashStep{drain(60)}, steps...)...))
		return r.Draff.ExtractKg() / before.Draff.ExtractKg()
	}
	const gallons = 200
	sparge := recipe.MashStep{Verb: recipe.MashSparge, VolumeM3: gallons * galM3, TempC: fahrenheit(165), DurationS: 3600}
	one, over := left(water(gallons, 165), drain(60)), left(sparge)
	x := gallons * galM3 / (0.95e-3 * 875 * lbKg)
	assert.InEpsilon(t, 1/(1+x), one, 0.06)
	assert.InEpsilon(t, math.Pow(1+x/6, -6), over, 0.06)
	assert.Greater(t, over, math.Exp(-x))
}

// Worts that stood in the underback are cooled at the pump's pace on their way to the
// fermenter, and not in the tun.
func TestUnderbackByTheCooler(t *testing.T) {
	in := maltHouse(t, drain(60), cool(70))
	in.PumpM3S = 0.2e-3
	in.Cooker.CoolsW = 0
	r := run1(t, in)
	require.Empty(t, r.Problems)
	assert.True(t, r.InFermenter)
	assert.InDelta(t, fahrenheit(70), r.Out.TempC, 1e-9)
	assert.InEpsilon(t, r.Steps[3].VolumeM3/in.PumpM3S, r.Steps[4].EndS-r.Steps[4].StartS, 0.02)
	in.PumpM3S = 5e-3
	fast := run1(t, in)
	assert.Equal(t, limitCooling, fast.Steps[4].Limit)
	assert.Greater(t, fast.Steps[4].EndS-fast.Steps[4].StartS, r.Steps[3].VolumeM3/in.PumpM3S)
}
