package mash

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/fluid"
	"newmake/lang/recipe"
)

// 5 kg of water at 80 C on 5 kg of grist at 20 C of a specific heat of 0.4:
// 62.9 C (computed from the mixing rule).
func TestMixing(t *testing.T) {
	got := mixC(5*waterJKgK, 80, 5*0.4*waterJKgK, 20, 0)
	assert.InDelta(t, 62.857, got, 0.001)
}

// strikeC is the strike temperature that gives mashC, by search on Run: a
// vessel without metal and loss.
func strikeC(t *testing.T, grainKg, waterKg, grainC, mashC float64) float64 {
	low, high := mashC, 99.0
	for range 50 {
		mid := (low + high) / 2
		in := plant(t)
		in.Cooker.MetalKg, in.Cooker.LossW, in.AmbientC = 1e-9, 1e-9, grainC
		in.Bill = bill(t, []string{"two-row-malt"}, []float64{grainKg})
		in.Steps = []recipe.MashStep{{Verb: recipe.MashWater, VolumeM3: waterKg / fluid.WaterDensity(mid), TempC: mid}, add(0)}
		if must(t, in).Steps[1].EndC < mashC {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// Palmer, How to Brew: 1.25 qt/lb, grain 65 F, mash 152 F, strike about 166 F.
// His formula is (0.2/r)(T2-T1)+T2, which leaves out slaking heat. With the
// slaking heat of malt at 4.5 % moisture the strike comes out 3 F lower, and
// without it within half a degree: both are asserted.
func TestStrikeTemperature(t *testing.T) {
	const ratio = 1.25 * galM3 / 4 * 998.2 / lbKg // kg/kg
	got := strikeC(t, 100, 100*ratio, fahrenheit(65), fahrenheit(152))*1.8 + 32
	assert.InDelta(t, 166-3, got, 1)

	g := bill(t, []string{"two-row-malt"}, []float64{100}).Lines[0].Grain
	slakingF := fluid.SlakingHeat(g.Moisture) / (ratio * waterJKgK) * 1.8
	assert.InDelta(t, 166, got+slakingF, 1)
}

// 1,000 kg of water in a vessel without loss at 100 kW: 4.1868 MJ/K, so 41.9 s
// a degree; the metal adds its own.
func TestHeatUpTime(t *testing.T) {
	in := plant(t)
	in.Cooker.HeatsW, in.Cooker.MetalKg, in.Cooker.LossW, in.AmbientC = 100e3, 1e-9, 1e-9, 20
	in.Steps = []recipe.MashStep{
		{Verb: recipe.MashWater, VolumeM3: 1000 / fluid.WaterDensity(20), TempC: 20},
		{Verb: recipe.MashHeat, TempC: 80},
	}
	r := must(t, in)
	assert.InDelta(t, 60*4186.8e3/100e3, r.Steps[1].EndS-r.Steps[1].StartS, 0.01)
	assert.InDelta(t, 60*4186.8e3, r.Steps[1].HeatJ, 1)
	assert.Equal(t, limitJacket, r.Steps[1].Limit)

	in.BoilerW = 50e3
	slow := must(t, in)
	assert.Equal(t, limitBoiler, slow.Steps[1].Limit)
	assert.InDelta(t, 2, (slow.Steps[1].EndS-slow.Steps[1].StartS)/(r.Steps[1].EndS-r.Steps[1].StartS), 1e-4)
}

// Live steam: 1,000 kg of water from 20 to 80 C takes 60 x 4.1868 MJ, and each
// kg of steam at 2 bar (2,706 kJ/kg, IAPWS) leaves what it holds above 80 C's
// water as it is mixed: m = M c (80-20) / (h - c 80) = 106 kg.
func TestDirectSteamAddsItsCondensate(t *testing.T) {
	in := plant(t)
	in.PressurePa = 101325
	in.Cooker.HeatedBy, in.Cooker.MetalKg, in.Cooker.LossW, in.AmbientC = recipe.Direct, 1e-9, 1e-9, 20
	in.Steps = []recipe.MashStep{
		{Verb: recipe.MashWater, VolumeM3: 1000 / fluid.WaterDensity(20), TempC: 20},
		{Verb: recipe.MashHeat, TempC: 80},
	}
	r := must(t, in)
	want := 1000 * 4.1868 * 60 / (2706 - 4.1868*80)
	assert.InEpsilon(t, want, r.SteamKg, 1e-3)
	assert.InDelta(t, 1000+r.SteamKg, r.Out.WaterKg, 1e-6)
	assert.Equal(t, limitSteam, r.Steps[1].Limit)
}

func TestHeatAboveTheBoilStopsAtIt(t *testing.T) {
	in := plant(t)
	in.PressurePa = 84300 // about 5,000 ft
	in.Steps = []recipe.MashStep{water(200, 60), heat(212), {Verb: recipe.MashBoil, DurationS: 600}}
	r := must(t, in)
	require.Len(t, r.Problems, 1)
	assert.Equal(t, Problem{Step: 1, What: ProblemAboveBoil, ToC: r.BoilC}, r.Problems[0])
	assert.InDelta(t, 94.9, r.BoilC, 0.1)
	assert.InDelta(t, r.BoilC, r.Steps[2].EndC, 1e-9)
	assert.InDelta(t, 600, r.Steps[2].EndS-r.Steps[2].StartS, 1e-6)
}

// Cooling slows as the mash nears the water, and stops short of it.
func TestCoolingNeedsColdWater(t *testing.T) {
	minutes := func(waterC float64) (float64, string) {
		in := plant(t)
		in.WaterC = waterC
		in.Steps = []recipe.MashStep{{Verb: recipe.MashWater, VolumeM3: 1.5, TempC: 65}, {Verb: recipe.MashCool, TempC: 27}}
		r := must(t, in)
		require.Empty(t, r.Problems)
		assert.InDelta(t, 27, r.Steps[1].EndC, 1e-9)
		return (r.Steps[1].EndS - r.Steps[1].StartS) / 60, r.Steps[1].Limit
	}
	last := 0.0
	for _, waterC := range []float64{5, 10, 15, 20, 24} {
		m, _ := minutes(waterC)
		assert.Greater(t, m, last-1e-9)
		last = m
	}
	_, cold := minutes(5)
	assert.Equal(t, limitCooling, cold)
	_, warm := minutes(24)
	assert.Equal(t, limitWater, warm)

	in := plant(t)
	in.WaterC = 28
	in.Steps = []recipe.MashStep{{Verb: recipe.MashWater, VolumeM3: 1.5, TempC: 65}, {Verb: recipe.MashCool, TempC: 25}}
	r := must(t, in)
	require.Len(t, r.Problems, 1)
	assert.Equal(t, ProblemWarmWater, r.Problems[0].What)
	assert.InDelta(t, 30, r.Steps[1].EndC, 1e-9)
}

func TestWrittenTimeIsKeptIfThePowerIsThere(t *testing.T) {
	in := plant(t)
	slow := heat(150)
	slow.DurationS = 3 * 3600
	in.Steps = []recipe.MashStep{water(330, 60), slow}
	r := must(t, in)
	assert.InDelta(t, 3*3600, r.Steps[1].EndS-r.Steps[1].StartS, 1e-6)
	assert.Equal(t, limitWritten, r.Steps[1].Limit)

	in.Steps[1].DurationS = 60
	r = must(t, in)
	assert.Greater(t, r.Steps[1].EndS-r.Steps[1].StartS, 600.0)
	assert.Equal(t, ProblemSlower, r.Problems[0].What)
}

func TestWhatCannotBeDoneIsSaid(t *testing.T) {
	one := func(change func(*Input), steps ...recipe.MashStep) Problem {
		in := plant(t)
		change(&in)
		in.Bill = bill(t, []string{"two-row-malt"}, []float64{300})
		in.Steps = steps
		r := must(t, in)
		require.Len(t, r.Problems, 1)
		return r.Problems[0]
	}
	none := func(*Input) {}
	assert.Equal(t, ProblemNoHeat, one(func(in *Input) { in.Cooker.HeatsW = 0 }, water(200, 60), heat(150)).What)
	assert.Equal(t, ProblemNoCooling, one(func(in *Input) { in.Cooker.CoolsW = 0 }, water(200, 160), cool(80)).What)
	assert.Equal(t, ProblemAlreadyThere, one(none, water(200, 160), heat(100)).What)
	assert.Equal(t, ProblemAlreadyThere, one(none, water(200, 60), cool(100)).What)
	assert.Equal(t, ProblemNoLiquor, one(none, heat(150)).What)
	assert.Equal(t, ProblemNothingDrawn, one(none, water(50, 160), add(0), drain(30)).What)
	assert.Equal(t, ProblemLoss, one(func(in *Input) { in.Cooker.HeatsW, in.Cooker.LossW = 1000, 10000 }, water(200, 60), heat(150)).What)
}

// Where the wall takes all the heat: it comes to a degree below where both are even, which it
// would take for ever to reach; a step to less than that is done.
func TestAsHotAsTheWallLets(t *testing.T) {
	in := plant(t)
	in.Steps = []recipe.MashStep{water(200, 60), heat(150)}
	in.Cooker.HeatsW, in.Cooker.LossW = 1000, 10000
	evenC := in.AmbientC + in.Cooker.HeatsW/in.Cooker.LossW*(fluid.WaterBoilC(in.PressurePa)-in.AmbientC)
	r := must(t, in)
	require.Len(t, r.Problems, 1)
	assert.InDelta(t, evenC-1, r.Problems[0].ToC, 1e-9)
	assert.InDelta(t, evenC-1, r.Steps[1].EndC, 1e-9)

	in.Steps[1].TempC = evenC - 1.01
	assert.Empty(t, must(t, in).Problems)
}

func TestBadInputIsAnError(t *testing.T) {
	in := plant(t)
	in.Steps = []recipe.MashStep{water(200, 60), add(0)}
	_, err := Run(in)
	require.ErrorContains(t, err, "bill")
	in.Steps = []recipe.MashStep{water(200, 60), dose(nil, 1)}
	_, err = Run(in)
	require.Error(t, err)
	delete(in.Model.Values, "drain-time")
	_, err = Run(in)
	require.EqualError(t, err, "mash: model mash lacks drain-time")
	in.Model = nil
	_, err = Run(in)
	require.Error(t, err)
}

func TestNothingInNothingOut(t *testing.T) {
	r := must(t, plant(t))
	assert.Zero(t, r.Out.MassKg())
	assert.Zero(t, r.DurationS)
	assert.Equal(t, 1.0, r.OriginalSG)
}
