package ferment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/recipe"
)

// A tolerance a hundred times finer changes nothing in four digits.
func TestStepHalvingAgreesToFourDigits(t *testing.T) {
	for name, in := range cases(t) {
		coarse, err := run(in, stepError)
		require.NoError(t, err)
		fine, err := run(in, stepError/100)
		require.NoError(t, err)
		for _, v := range []struct {
			what         string
			coarse, fine float64
		}{
			{"dry", coarse.DryS, fine.DryS}, {"sour", coarse.SourS, fine.SourS},
			{"strength", coarse.ABV, fine.ABV}, {"gravity", coarse.FinalSG, fine.FinalSG},
			{"carbon dioxide", coarse.CO2Kg, fine.CO2Kg}, {"pH", coarse.PH, fine.PH},
			{"peak heat", coarse.PeakHeatW, fine.PeakHeatW}, {"peak temperature", coarse.PeakTempC, fine.PeakTempC},
			{"grown", coarse.GrownKg, fine.GrownKg}, {"alive", coarse.ViableShare, fine.ViableShare},
		} {
			assert.InDelta(t, v.fine, v.coarse, 1e-4*math.Abs(v.fine)+1e-12, "%s: %s", name, v.what)
		}
		require.Len(t, fine.Curve, len(coarse.Curve))
		for k, p := range coarse.Curve {
			assert.InDelta(t, fine.Curve[k].SG, p.SG, 2e-6, "%s at %g h", name, p.TimeS/hour)
		}
	}
}

func TestSameInputSameResult(t *testing.T) {
	in := everything(t)
	before := in.Enzymes.Clone()
	a, b := ferments(t, in), ferments(t, in)
	assert.Equal(t, a, b)
	assert.Equal(t, before, in.Enzymes, "the input is left alone")
}

// A ferment that is carried on is the one that was run at once, to the last bit,
// and one that is asked for less afterwards too.
func TestCourseCarriedOn(t *testing.T) {
	for name, in := range cases(t) {
		c, err := Begin(in)
		require.NoError(t, err)
		for _, h := range []float64{10, 10.2, 47, 47.0001, 96, 30, 96, 120.5} {
			one := in
			one.DurationS = h * hour
			got, err := c.To(one.DurationS)
			require.NoError(t, err)
			assert.Equal(t, ferments(t, one), got, "%s at %g h", name, h)
		}
	}
}

func TestCurveIsHourly(t *testing.T) {
	in := bourbon(t)
	in.DurationS = 30.5 * hour
	r := ferments(t, in)
	require.Len(t, r.Curve, 32)
	for i, p := range r.Curve[:31] {
		assert.InDelta(t, float64(i)*hour, p.TimeS, 1e-9)
	}
	last := r.Curve[31]
	assert.Equal(t, in.DurationS, last.TimeS)
	assert.Equal(t, r.FinalSG, last.SG)
	assert.Equal(t, r.ABV, last.ABV)
	assert.InDelta(t, in.Wort.SG(), r.Curve[0].SG, 2e-4, "only the yeast's own water is new")
}

// held makes a wort keep a temperature.
func held(in Input, tempC float64) Input {
	in.Wort.TempC, in.AmbientC = tempC, tempC
	in.HoldLowC, in.HoldHighC = tempC, tempC
	in.Vessel.HeatsW, in.CoolW, in.WaterC = 20e3, 20e3, tempC-20
	return in
}

func TestColderIsSlower(t *testing.T) {
	last := math.Inf(1)
	for _, c := range []float64{16, 20, 24, 28, 32} {
		in := held(bourbon(t), c)
		in.DurationS = 20 * 24 * hour
		r := ferments(t, in)
		require.NotZero(t, r.DryS, "%g C", c)
		assert.Less(t, r.DryS, last, "%g C", c)
		last = r.DryS
	}
}

func TestBiggerPitchIsFaster(t *testing.T) {
	last, left := math.Inf(1), math.Inf(1)
	for _, kg := range []float64{0.05, 0.1, 0.3, 0.9, 2, 4} {
		in := bourbon(t)
		in.PitchKg, in.DurationS = kg, 10*24*hour
		r := ferments(t, in)
		if r.DryS == 0 { // not in ten days
			assert.Equal(t, math.Inf(1), last, "%g kg, and less was dry", kg)
			assert.Less(t, r.SugarLeftKg, left, "%g kg", kg)
			left = r.SugarLeftKg
			continue
		}
		assert.Less(t, r.DryS, last, "%g kg", kg)
		last = r.DryS
	}
	assert.False(t, math.IsInf(last, 1) || math.IsInf(left, 1), "both are tried")
}

// Less yeast never makes more alcohol, nor makes it sooner. What is pitched brings
// water and no sugar, so above the usual the strength falls a little: hence alcohol, not
// strength, and the yeast is as dry as it comes.
func TestLessYeastNeverMakesMore(t *testing.T) {
	for name, in := range map[string]func(testing.TB) Input{"bourbon": bourbon, "malt": malt} {
		for _, days := range []float64{2, 4, 10} {
			last := 0.0
			for _, gramPerL := range []float64{0.02, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.6, 1, 2} {
				in := held(in(t), 28)
				in.DurationS = days * 24 * hour
				in.PitchKg = gramPerL * in.Wort.VolumeM3() * 0.95 / in.Yeast.Solids
				made := ferments(t, in).Wash.EthanolKg
				assert.Greater(t, made, last*(1-1e-4), "%s, %g days, %g g/L", name, days, gramPerL)
				last = made
			}
		}
	}
}

// A pitch far below the usual is slow, for yeast that gets no air doubles five times
// at its full pace and no more: it takes days longer, sours sooner, and at last does not
// finish. From the least usual pitch on nothing of that is felt.
func TestSmallPitchIsSlow(t *testing.T) {
	with := func(gramPerL float64) (Input, Result) {
		in := held(bourbon(t), 30)
		in.DurationS = 96 * hour
		in.PitchKg = gramPerL * in.Wort.VolumeM3()
		return in, ferments(t, in)
	}
	_, usual := with(0.6)
	_, least := with(0.4)
	assert.InDelta(t, usual.GrownKg, least.GrownKg, 0.02*usual.GrownKg)
	assert.Less(t, least.DryS, usual.DryS+4*hour)

	in, twelfth := with(0.05)
	alive := in.PitchKg * in.Yeast.Solids * in.Yeast.Viable
	assert.Greater(t, twelfth.GrownKg, 31*alive, "it is past five doublings")
	assert.Zero(t, twelfth.DryS)
	assert.Less(t, twelfth.ABV, 0.7*usual.ABV)

	// Bacteria have it to themselves. All are as warm here: a small pitch by itself is
	// cooler, for want of the yeast's heat.
	assert.Less(t, twelfth.SourS, usual.SourS-12*hour)
	assert.InDelta(t, usual.SourS, least.SourS, hour)
}

func TestEthanolSlows(t *testing.T) {
	last := 0.0
	for _, kg := range []float64{0, 15, 30, 45} {
		in := bourbon(t)
		in.Wort.EthanolKg, in.DurationS = kg, 20*24*hour
		r := ferments(t, in)
		assert.Greater(t, r.DryS, last, "%g kg", kg)
		last = r.DryS
	}
	in := bourbon(t)
	in.Wort.EthanolKg = 180 // 128 g/L, above the strain's limit
	r := ferments(t, in)
	assert.Zero(t, r.DryS)
	assert.Less(t, r.SugarTakenKg, 1.0)
}

func TestHeatStopsTheYeast(t *testing.T) {
	in := bourbon(t)
	in.Wort.TempC = 60 // pitched before it was cooled
	in.AmbientC = 60
	in.HoldHighC = 0
	r := ferments(t, in)
	assert.Less(t, r.SugarTakenKg, 1.0)
	assert.Less(t, r.ViableShare, 1e-6)
}

// A large vessel set warm, with no cooling: it heats itself to where the yeast
// dies, and sugar is left. With cooling enough it finishes.
func TestTooLittleCoolingStopsShort(t *testing.T) {
	in := bourbon(t)
	in.Wort = in.Wort.Scale(20)
	in.Wort.TempC = 31
	in.PitchKg *= 20
	in.Vessel.HoldsM3 = 40
	in.AmbientC = 30
	cooled := in
	cooled.CoolW = 100e3
	in.CoolW = 0

	hot, cold := ferments(t, in), ferments(t, cooled)
	assert.Greater(t, hot.PeakTempC, 38.0)
	assert.Less(t, cold.PeakTempC, 32.0)
	assert.NotZero(t, cold.DryS)
	assert.Zero(t, hot.DryS)
	assert.Less(t, hot.ABV, cold.ABV)
	assert.Less(t, hot.ViableShare, 0.8*cold.ViableShare)

	// Small cooling: it is all in use and still too little.
	in.CoolW = 8e3
	some := ferments(t, in)
	full := 0.0
	for _, p := range some.Curve {
		full = max(full, p.Cooling)
	}
	assert.InDelta(t, 1, full, 1e-9)
	assert.Less(t, some.PeakTempC, hot.PeakTempC)
	assert.Greater(t, some.PeakTempC, 34.0)
}

// A coil cools by the difference from its water, and its water runs as far as the
// valve is open.
func TestACoilCoolsByItsWater(t *testing.T) {
	last, water := 0.0, 0.0
	for _, c := range []float64{10, 20, 26} {
		in := bourbon(t)
		in.CoolW, in.WaterC, in.HoldHighC = 0, c, 28
		in.Vessel.Cooler = recipe.Cooler{Surface: recipe.CoilSurface, AreaM2: 1, WaterM3S: 2e-4}
		r := ferments(t, in)
		assert.GreaterOrEqual(t, r.PeakTempC, last, "water at %g C", c)
		assert.Greater(t, r.CoolingWaterM3, water, "warm water takes more of it")
		assert.Less(t, r.CoolingWaterM3, 2e-4*in.DurationS)
		assert.Greater(t, r.CoolJ, 0.0)
		assert.InDelta(t, c+2, r.ColdestC, 1e-9)
		for _, p := range r.Curve {
			assert.True(t, p.Cooling >= 0 && p.Cooling <= 1+1e-9)
		}
		last, water = r.PeakTempC, r.CoolingWaterM3
	}
	in := bourbon(t)
	in.CoolW = 0
	assert.Zero(t, ferments(t, in).ColdestC, "nothing cools it")
}

// It is warmest when the curve is, and where nothing cools it that is long after
// it gives off the most heat: it warms until the wall loses as much as comes.
func TestWarmestIsWhenTheCurveIs(t *testing.T) {
	in := bourbon(t)
	in.CoolW = 0
	r := ferments(t, in)
	hottest, fiercest := r.Curve[0], r.Curve[0]
	for _, p := range r.Curve {
		if p.TempC > hottest.TempC {
			hottest = p
		}
		if p.HeatW > fiercest.HeatW {
			fiercest = p
		}
	}
	const hourS = 3600
	assert.InDelta(t, hottest.TimeS, r.PeakTempS, hourS)
	assert.InDelta(t, hottest.TempC, r.PeakTempC, 0.05)
	assert.Greater(t, r.PeakTempS, fiercest.TimeS+2*hourS)
}

func TestWarmCoolingWaterCoolsLess(t *testing.T) {
	last := 0.0
	for _, c := range []float64{10, 20, 28, 31} {
		in := bourbon(t)
		in.CoolW, in.WaterC, in.HoldHighC = 1000, c, 28
		r := ferments(t, in)
		assert.GreaterOrEqual(t, r.PeakTempC, last, "water at %g C", c)
		last = r.PeakTempC
	}
	assert.Greater(t, last, 29.0)
}

// Catabolite repression: of a wort of glucose and maltose, glucose goes first.
func TestGlucoseBeforeMaltoseBeforeMaltotriose(t *testing.T) {
	in := held(bourbon(t), 28)
	in.Wort.GlucoseKg, in.Wort.MaltoseKg, in.Wort.MaltotrioseKg = 80, 80, 30
	var half [3]float64
	for h := 1.0; h < 72; h++ {
		in.DurationS = h * hour
		w := ferments(t, in).Wash
		for i, left := range []float64{w.GlucoseKg / 80, w.MaltoseKg / 80, w.MaltotrioseKg / 30} {
			if half[i] == 0 && left < 0.5 {
				half[i] = h
			}
		}
	}
	require.NotZero(t, half[2])
	assert.Less(t, half[0], half[1])
	assert.Less(t, half[1], half[2])
}

func TestAleYeastLeavesMaltotriose(t *testing.T) {
	in := bourbon(t)
	in.DurationS = 8 * 24 * hour
	all := ferments(t, in)
	in.Yeast = yeastNamed(t, "ale-yeast")
	in.HoldLowC, in.HoldHighC, in.Wort.TempC = 20, 24, 20
	in.Model.Values["lactic-seed"] = 0 // bacteria would eat it
	some := ferments(t, in)
	assert.InDelta(t, 0.6*in.Wort.MaltotrioseKg, some.Wash.MaltotrioseKg, 0.2)
	assert.Less(t, all.Wash.MaltotrioseKg, 0.2)
	assert.Less(t, some.ABV, all.ABV)
	assert.Greater(t, some.FinalSG, all.FinalSG)
}

// Glucoamylase dosed into the fermenter makes of dextrin and of starch left
// over from the cook what the yeast can take.
func TestGlucoamylaseInTheFermenter(t *testing.T) {
	in := bourbon(t)
	in.Wort.GelStarchKg = 20
	in.Yeast = yeastNamed(t, "distillers-yeast")
	none := ferments(t, in)
	z := enzymeNamed(t, "glucoamylase")
	in.Doses = []recipe.Dose{{Enzyme: z, MassKg: 0.28}} // 0.065 % of 430 kg
	dosed := ferments(t, in)
	assert.InDelta(t, 20, none.Wash.GelStarchKg, 1e-9)
	assert.Less(t, dosed.Wash.GelStarchKg+dosed.Wash.DextrinKg, 0.5*(none.Wash.GelStarchKg+none.Wash.DextrinKg))
	assert.Greater(t, dosed.ABV, none.ABV+0.005)
	assert.Len(t, dosed.Enzymes.Added, 1)
}

// Without nitrogen yeast does not grow; what was pitched ferments alone.
func TestNoNutrientsNoGrowth(t *testing.T) {
	in := bourbon(t)
	in.Wort.SolublesKg = 0
	r := ferments(t, in)
	assert.Zero(t, r.GrownKg)
	assert.Greater(t, r.SugarTakenKg, 1.0)
	assert.Zero(t, r.DryS)
}

func TestThinAirCarriesMoreOff(t *testing.T) {
	in := bourbon(t)
	sea := ferments(t, in)
	in.PressurePa = 72e3 // about 9,000 ft
	high := ferments(t, in)
	assert.Greater(t, high.VentEthanol, 1.3*sea.VentEthanol)
}

// TestStepsAreFew: what ferments takes a small share of the steps that are allowed.
func TestStepsAreFew(t *testing.T) {
	for name, in := range cases(t) {
		c, err := Begin(in)
		require.NoError(t, err, name)
		_, err = c.To(in.DurationS)
		require.NoError(t, err, name)
		assert.Less(t, c.f.solver.Tries, mostSteps/10, name)
		assert.Positive(t, c.f.solver.Tries, name)
	}
}

// A sugar that answers a thousand times faster than the step is followed: yeast
// that takes maltose to the last microgram ends as one that takes it to a gram
// in a hundred litres, and in no more steps than are allowed.
func TestSharpAnswerIsFollowed(t *testing.T) {
	abv := func(half float64) float64 {
		in := bourbon(t)
		in.Model.Values["maltose-half"] = half
		return ferments(t, in).ABV
	}
	assert.InDelta(t, abv(1e-2), abv(2e-6), 2e-5)
}

func TestAsMuchYeastAsWortIsComputed(t *testing.T) {
	in := bourbon(t)
	in.PitchKg = 0.99 * in.Wort.MassKg()
	assert.Positive(t, ferments(t, in).SugarTakenKg)
}

func TestErrorsNameWhatIsMissing(t *testing.T) {
	for _, c := range []struct {
		name string
		turn func(*Input)
		want string
	}{
		{"yeast", func(in *Input) { in.Yeast = nil }, "names no yeast"},
		{"pitch", func(in *Input) { in.PitchKg = 0 }, "no amount of distillers-yeast"},
		{"wort", func(in *Input) { in.Wort = in.Wort.Scale(0) }, "no wort"},
		{"duration", func(in *Input) { in.DurationS = 0 }, "no duration"},
		{"long", func(in *Input) { in.DurationS = 400 * 24 * hour }, "400 days"},
		{"model", func(in *Input) { in.Model = nil }, "`model ferment` is missing"},
		{"mash model", func(in *Input) { in.Mash = nil }, "`model mash` is missing"},
		{"constant", func(in *Input) { delete(in.Model.Values, "resting-rate") }, "lacks resting-rate"},
		{"out of all measure", func(in *Input) { in.PitchKg = 1.01 * in.Wort.MassKg() }, "more yeast than wort"},
		{"too fast", func(in *Input) { y := *in.Yeast; y.GrowthPerS = 1e300; in.Yeast = &y }, "too fast to be followed"},
		{"band", func(in *Input) { in.Model.Values["control-band"] = 0 }, "control-band"},
		{"growth", func(in *Input) { in.Yeast.GrowthPerS = 0 }, "growth is missing"},
		{"yield", func(in *Input) { in.Yeast.EthanolYield = 1.02 }, "above 100 %"},
		{"hold", func(in *Input) { in.HoldLowC = 40 }, "from high to low"},
		{"ice", func(in *Input) { in.Wort.TempC = -3 }, "-3 C"},
	} {
		in := bourbon(t)
		c.turn(&in)
		_, err := Run(in)
		require.ErrorContains(t, err, c.want, c.name)
	}
}
