package notice_test

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/law"
	"newmake/compile/matter/stream"
	"newmake/compile/notice"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/promise"
	"newmake/compile/stage/cask"
	"newmake/compile/stage/ferment"
	"newmake/compile/stage/mash"
	"newmake/compile/stage/schedule"
	"newmake/compile/stage/still"
	"newmake/lang/diag"
	"newmake/lang/diag/codetest"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// threshold is a number at which a notice is given, tried on both sides. What the
// stages gave is made up here, so that a better model of a stage moves no case;
// the values are written by hand and not taken from the rule's own constants.
type threshold struct {
	code     diag.Code
	severity diag.Severity
	what     string
	said     func(v float64) diag.List
	in, out  float64 // nothing is said, and it is said
}

var thresholds = []threshold{
	{diag.CodeCookerFull, diag.Warning, "95 L in 100", mashOf(func(_ *recipe.Batch, r *mash.Result, v float64) { r.MostVolumeM3 = v / 1000 }), 94.9, 95.1},
	{diag.CodeCookerFull, diag.Error, "more than it holds", mashOf(func(_ *recipe.Batch, r *mash.Result, v float64) { r.MostVolumeM3 = v / 1000 }), 99.9, 100.1},
	{diag.CodeCookerFull, diag.Warning, "the house's own fill", mashOf(func(b *recipe.Batch, r *mash.Result, v float64) { b.Mash.Cooker.FillMost, r.MostVolumeM3 = 0.8, v/1000 }), 79.9, 80.1},
	{diag.CodeFermenterFull, diag.Error, "90 L in 100", fermentOf(func(_ *recipe.Batch, r *numbers.Ferment, v float64) { r.WortM3 = v / 1000 }), 89.9, 90.1},
	{diag.CodeStillFull, diag.Error, "75 L of wash in 100", stripOf(func(_ *recipe.Batch, r *numbers.Strip, v float64) { r.MostFill = v / 100 }), 74.9, 75.1},
	{diag.CodeStillFull, diag.Error, "75 L of low wines in 100", spiritOf(func(_ *recipe.Batch, r *numbers.Spirit, v float64) { r.MostFill = v / 100 }), 74.9, 75.1},
	{diag.CodeBoilerSmall, diag.Warning, "a cooker of 10 kW", mashOf(func(b *recipe.Batch, _ *mash.Result, v float64) { b.Plant.BoilerW = v }), 10e3, 9.99e3},
	{diag.CodeTankFull, diag.Warning, "95 L in 100", tankOf(recipe.OfHotLiquor), 94.9, 95.1},
	{diag.CodeTankFull, diag.Error, "more than it holds", tankOf(recipe.OfHotLiquor), 99.9, 100.1},
	{diag.CodeTankFull, diag.Error, "cold and hot in one tank", tankOf(recipe.OfHotLiquor | recipe.OfColdLiquor), 79.9, 80.1},
	{diag.CodeBoilerSmall, diag.Warning, "a still of 10 kW", stripOf(func(b *recipe.Batch, _ *numbers.Strip, v float64) { b.Plant.BoilerW = v }), 10e3, 9.99e3},

	{diag.CodeMashPH, diag.Warning, "sour", mashOf(func(_ *recipe.Batch, r *mash.Result, v float64) { r.PH = v }), 4.81, 4.79},
	{diag.CodeMashPH, diag.Warning, "alkaline", mashOf(func(_ *recipe.Batch, r *mash.Result, v float64) { r.PH = v }), 5.89, 5.91},
	{diag.CodeNoAcidWanted, diag.Note, "a mash that is there already", mashOf(func(b *recipe.Batch, r *mash.Result, v float64) {
		b.Mash.Treatment.AcidToPH, r.PHWithoutAcid = 5.4, v
	}), 5.41, 5.4},
	{diag.CodeKeptShort, diag.Warning, "2 % more than 100 L", mashOf(func(b *recipe.Batch, r *mash.Result, v float64) {
		b.Mash.Steps[0] = recipe.MashStep{Verb: recipe.MashWater, KeptM3: v / 1000}
		r.Kept.VolumeM3 = 0.1
	}), 101.9, 102.1},
	{diag.CodeUnconverted, diag.Warning, "93 % converted", mashOf(func(_ *recipe.Batch, r *mash.Result, v float64) { r.Conversion = v }), 0.931, 0.929},
	{diag.CodeNotCooked, diag.Warning, "93 % gelatinized", mashOf(func(_ *recipe.Batch, r *mash.Result, v float64) { r.Conversion, r.Gelatinized = 0.8, v }), 0.931, 0.929},
	{diag.CodeUnconverted, diag.Warning, "93 % gelatinized, and not converted", mashOf(func(_ *recipe.Batch, r *mash.Result, v float64) { r.Conversion, r.Gelatinized = 0.8, v }), 0.929, 0.931},
	{diag.CodeEnzymesDead, diag.Warning, "a twentieth of the enzymes lives", mashOf(func(_ *recipe.Batch, r *mash.Result, v float64) {
		r.Conversion, r.Steps[1].AlphaLeft = 0.8, v
	}), 0.051, 0.049},
	{diag.CodeEnzymesDead, diag.Warning, "a twentieth of the enzymes lives, in a mash of one step", mashOf(func(b *recipe.Batch, r *mash.Result, v float64) {
		b.Mash.Steps, r.Conversion, r.Steps = b.Mash.Steps[:1], 0.8, []mash.Step{{AlphaLeft: v, EndC: 60}}
	}), 0.051, 0.049},

	{diag.CodePitchHot, diag.Warning, "34 C", fermentAt(), 34.049, 34.051},
	{diag.CodePitchHot, diag.Error, "43 C", fermentAt(), 42.99, 43.01},
	{diag.CodePitchCold, diag.Warning, "20 C", fermentAt(), 19.951, 19.949},
	{diag.CodeNotDry, diag.Warning, "dry at all", fermentOf(func(_ *recipe.Batch, r *numbers.Ferment, v float64) { r.DryS = v }), 1, 0},
	{diag.CodeNotDry, diag.Note, "90 h of 100", fermentOf(func(_ *recipe.Batch, r *numbers.Ferment, v float64) { r.DryS = v * 3600 }), 89.9, 90.1},
	{diag.CodeFermentHot, diag.Warning, "half a degree above 34 C", fermentOf(func(_ *recipe.Batch, r *numbers.Ferment, v float64) { r.PeakTempC = v }), 34.49, 34.51},
	{diag.CodeFermentHot, diag.Warning, "half a degree above where it is held", fermentOf(func(b *recipe.Batch, r *numbers.Ferment, v float64) {
		b.Ferm.HoldHighC, r.PeakTempC = 36, v
	}), 36.49, 36.51},
	{diag.CodeYeastKilled, diag.Error, "43 C", fermentOf(func(_ *recipe.Batch, r *numbers.Ferment, v float64) { r.PeakTempC = v }), 42.99, 43.01},

	{diag.CodeHoldCold, diag.Warning, "what the water can hold", fermentOf(func(b *recipe.Batch, r *numbers.Ferment, v float64) {
		b.Ferm.HoldHighC, r.ColdestC = 22, v
	}), 22, 22.01},

	{diag.CodeCaskNotFilled, diag.Note, "half a percent short of 100 L; whether it counts as filled the cask says: TestLeastContent of compile/stage/cask", caskOf(func(b *recipe.Batch, r *numbers.Cask, p *plan.Cask, v float64) {
		b.Gauge, b.Cask.SizeM3 = recipe.SI, 0.1
		r.Problems, p.LastFill = []cask.Problem{cask.ProblemShort}, &plan.Lot{VolumeL: v}
	}), 99.51, 99.49},
	{diag.CodeHoldLeft, diag.Note, "1 K above the hold", heldAt(25, 31), 31.99, 32.01},
	{diag.CodeHoldLeft, diag.Note, "1 K below the hold, at the end", heldAt(25, 31, 28), 24.01, 23.99},
	{diag.CodeHoldLeft, diag.Note, "1 K below the hold, which it never reached", heldAt(25, 31, 24.5), 24.01, 23.99},
	{diag.CodeHoldLeft, diag.Note, "1 K below the one temperature at which it is held", heldAt(28, 28, 28), 27.01, 26.99},
	{diag.CodeHoldLeft, diag.Note, "before it is dry", fermentOf(func(b *recipe.Batch, r *numbers.Ferment, v float64) {
		b.Ferm.HoldLowC, b.Ferm.HoldHighC = 25, 31
		r.DryS, r.Curve = 50*3600, []ferment.Point{{TempC: 28}, {TimeS: v * 3600, TempC: 20}}
	}), 50, 49.9},

	{diag.CodeDistillateWarm, diag.Warning, "5 C above the water, wash still", stripOf(func(b *recipe.Batch, _ *numbers.Strip, v float64) {
		b.Plant.WaterC, b.Strip.Still.Condenser.DistillateC = v, 20
	}), 14.99, 15.01},
	{diag.CodeDistillateWarm, diag.Warning, "5 C above the water, spirit still", spiritOf(func(b *recipe.Batch, _ *numbers.Spirit, v float64) {
		b.Plant.WaterC, b.Spirit.Still.Condenser.DistillateC = v, 20
	}), 14.99, 15.01},
	{diag.CodeEarlyStop, diag.Note, "2 kg of 100 left", stripOf(func(_ *recipe.Batch, r *numbers.Strip, v float64) { r.Residue.EthanolKg = v }), 1.99, 2.01},
	{diag.CodeEarlyStop, diag.Warning, "10 kg of 100 left", stripOf(func(_ *recipe.Batch, r *numbers.Strip, v float64) { r.Residue.EthanolKg = v }), 9.99, 10.01},
	{diag.CodeChargeStrong, diag.Warning, "32 %", spiritOf(func(_ *recipe.Batch, r *numbers.Spirit, v float64) { r.ChargeABV = v }), 0.319, 0.321},
	{diag.CodeBareSurface, diag.Warning, "a fifth of 100 L", spiritOf(func(_ *recipe.Batch, r *numbers.Spirit, v float64) { r.LeftHotM3 = v / 1000 }), 20.1, 19.9},
	{diag.CodeBareSurface, diag.Warning, "5 L above 30 L that cover it", stripOf(func(b *recipe.Batch, r *numbers.Strip, v float64) {
		b.Strip.Still.CoveredM3, r.LeftHotM3 = 0.03, v/1000
	}), 35.1, 34.9},
	{diag.CodeBareSurface, diag.Error, "30 L that cover it", stripOf(func(b *recipe.Batch, r *numbers.Strip, v float64) {
		b.Strip.Still.CoveredM3, r.LeftHotM3 = 0.03, v/1000
	}), 30.1, 29.9},
	{diag.CodePaceBeyond, diag.Warning, "2 % longer than 100 min", spiritOf(func(b *recipe.Batch, r *numbers.Spirit, v float64) {
		b.Where = map[recipe.Path]diag.Span{recipe.PathPaceHearts: {}}
		r.Fractions = []still.Fraction{{Name: still.Hearts, AskedS: 6000, EndS: 60 * v}}
	}), 101.9, 102.1},
	{diag.CodePaceBeyond, diag.Warning, "2 % longer than 100 min to the boil", stripOf(func(_ *recipe.Batch, r *numbers.Strip, v float64) { r.HeatUpAskedS, r.HeatUpS = 6000, 60*v }), 101.9, 102.1},
	{diag.CodePaceBeyond, diag.Warning, "2 % longer than 100 min to the boil, of the first of two charges", stripOf(func(_ *recipe.Batch, r *numbers.Strip, v float64) {
		r.Apart = []still.Run{{HeatUpAskedS: 6000, HeatUpS: 60 * v}, {HeatUpAskedS: 6000, HeatUpS: 6000}}
	}), 101.9, 102.1},
	{diag.CodePreheatShort, diag.Warning, "a degree less than 60 C", stripOf(func(_ *recipe.Batch, r *numbers.Strip, v float64) {
		r.Preheat = &still.Preheat{WantsC: 60, ToC: v}
	}), 59.01, 58.99},
	{diag.CodeOddPace, diag.Note, "1.2 L/h of 100 L", spiritOf(hearts), 1.21, 1.19},
	{diag.CodeOddPace, diag.Note, "12 L/h of 100 L", spiritOf(hearts), 11.9, 12.1},
	{diag.CodeNoWaterWanted, diag.Note, "any water at all", spiritOf(func(b *recipe.Batch, r *numbers.Spirit, v float64) { b.Spirit.WaterTo.Value, r.WaterKg = 0.28, v }), 0.001, 0},

	{diag.CodeInForeshots, diag.Warning, "foreshots of 2 L, less what no eye sees", spiritOf(func(b *recipe.Batch, r *numbers.Spirit, v float64) {
		r.Problems = []still.Problem{still.ProblemHeartsFromPassed}
		b.Spirit.ForeshotsM3, b.Spirit.HeartsFrom = 2e-3, recipe.Cut{By: recipe.ByVolume, VolumeM3: v / 1e6}
	}), 1996, 1994},

	{diag.CodeLeftover, diag.Note, "30 L of a cask of 100", caskOf(func(_ *recipe.Batch, _ *numbers.Cask, p *plan.Cask, v float64) { p.Leftover.VolumeL = v }), 29.9, 30.1},

	{diag.CodeOffStill, diag.Error, "at most 80 %", offStill(recipe.OffStillMost), 0.7999, 0.8001},
	{diag.CodeOffStill, diag.Error, "at most 80 %, and just that", offStill(recipe.OffStillMost), 0.80, 0.8001},
	{diag.CodeOffStill, diag.Error, "under 80 %", offStill(recipe.OffStillUnder), 0.7999, 0.80},
	{diag.CodeOffStill, diag.Error, "over 80 %", offStill(recipe.OffStillOver), 0.8001, 0.80},

	{diag.CodeTwoSeasons, diag.Error, "the end of June", seasons(2026, 6, 29), 1, 2},
	{diag.CodeTwoSeasons, diag.Error, "the end of the year", seasons(2026, 12, 30), 1, 2},

	{diag.CodeStartWaits, diag.Warning, "a wait", slots(func(s []schedule.Slot, v float64) { s[0].Wait = seconds(v) }), 0, 1},
	{diag.CodeOutOfShift, diag.Warning, "past the shift", slots(func(s []schedule.Slot, v float64) { s[1].OutOfShift = seconds(v) }), 0, 1},
	{diag.CodeStandsLong, diag.Warning, "72 h", slots(func(s []schedule.Slot, v float64) {
		s[1].Stage, s[1].Key, s[1].Wait = "strip", "strip.charge", seconds(v*3600)
	}), 72, 72.01},
	{diag.CodeStandsLong, diag.Warning, "72 h to the last charge, 12 h of them before the first", slots(func(s []schedule.Slot, v float64) {
		s[0].Stage, s[0].Key, s[0].Wait = "strip", "strip.1.charge", seconds(12*3600)
		s[1].Stage, s[1].Key, s[1].Start = "strip", "strip.2.charge", s[0].Start.Add(seconds(v*3600))
	}), 60, 60.01},
	{diag.CodeStandsDirty, diag.Note, "a day", slots(func(s []schedule.Slot, v float64) {
		s[0].Stage, s[0].Key = "strip", "strip.2.charge"
		s[1].Key, s[1].Start = "ferment.clean", s[0].End.Add(seconds(v*3600))
	}), 24, 24.01},
	{diag.CodeOtherStart, diag.Note, "36 h", otherStart(0), 36, 36.01},
	{diag.CodeOtherStart, diag.Note, "36 h of the second charge", func(v float64) diag.List {
		start := time.Date(2026, 3, 3, 7, 0, 0, 0, time.UTC)
		of := func(second float64) []schedule.Slot {
			return []schedule.Slot{{Start: start}, washCharge("strip.1.charge", start, 12), washCharge("strip.2.charge", start, second)}
		}
		return notice.OtherStart(small(), of(v), func(int) []schedule.Slot { return of(0) })
	}, 36, 36.01},
	{diag.CodeOtherStart, diag.Note, "half a day less", func(v float64) diag.List { return otherStart(v)(60) }, 48, 47.99},
	{diag.CodeCrewShort, diag.Warning, "a crew of two", slots(func(s []schedule.Slot, v float64) { s[1].People = int(v) }), 2, 3},
	{diag.CodeCrewShort, diag.Warning, "a quarter of an hour to begin a task", slots(func(s []schedule.Slot, v float64) {
		s[0].Attend, s[0].People, s[1].People = schedule.Begin, 1, 2
		s[1].Start = s[0].Start.Add(seconds(v * 60))
	}), 15.1, 14.9},

	{diag.CodePromiseBroken, diag.Error, "a tenth of a gallon", promised, 10.099, 10.101},
	{diag.CodePromiseBroken, diag.Error, "a tenth of a gallon less", promised, 9.901, 9.899},
}

// unnumbered is the codes that no number in this package decides, and what does.
var unnumbered = map[diag.Code]string{
	diag.CodeAboveBoil:      "the mash says so",
	diag.CodeNoHeat:         "the mash says so",
	diag.CodeCannotCool:     "the mash says so",
	diag.CodeSlowStep:       "the mash says so",
	diag.CodeAlreadyThere:   "the mash says so",
	diag.CodeNothingDrawn:   "the mash says so",
	diag.CodeCooledOnBed:    "a plant has a wort cooler or not",
	diag.CodeEmptyStep:      "the mash says so",
	diag.CodeNoDistillate:   "the still says so",
	diag.CodeStopUnreached:  "the still says so",
	diag.CodeCutUnreached:   "the still says so",
	diag.CodeCutsCrossed:    "the still says so",
	diag.CodeNotSteady:      "the still says so",
	diag.CodeBelowEntry:     "the reduction says so",
	diag.CodeBelowBottling:  "the cask says so",
	diag.CodeCaskFailed:     "the cask says so",
	diag.CodeMashFailed:     "a stage that cannot be computed",
	diag.CodeFermentFailed:  "a stage that cannot be computed",
	diag.CodeStillFailed:    "a stage that cannot be computed",
	diag.CodeRunsAway:       "a number that is none",
	diag.CodeScorches:       "a still has an agitator or not",
	diag.CodeNoPotAle:       "there is pot ale or not",
	diag.CodeUnknownZone:    "a zone is known or not",
	diag.CodeNoSuchStart:    "a time exists or not",
	diag.CodePromiseUntried: "a promise is of so many runs or not",
	// Named as what the checker says sooner.
	diag.CodeSetTemperature: "lang/trade says it",
	diag.CodeRawStarch:      "lang/trade says it",
	diag.CodeEnzymesDie:     "lang/trade says it",
	diag.CodeWeakEnzymes:    "lang/trade says it",
	diag.CodeNoEnzymes:      "lang/trade says it",
	diag.CodeEnzymeWindow:   "lang/trade says it",
}

func TestThresholds(t *testing.T) {
	for _, c := range thresholds {
		t.Run(string(c.code)+" "+c.what, func(t *testing.T) {
			is := func(d diag.Diagnostic) bool { return d.Code == c.code && d.Severity == c.severity }
			in, out := c.said(c.in), c.said(c.out)
			assert.False(t, slices.ContainsFunc(in, is), "at %g it is said:\n%s", c.in, in.Error())
			assert.True(t, slices.ContainsFunc(out, is), "at %g it is not said as %s:\n%s", c.out, c.severity, out.Error())
		})
	}
}

// The temperatures that a distiller is told to mash at.
func TestWhereMaltWorks(t *testing.T) {
	list := mashOf(func(_ *recipe.Batch, r *mash.Result, _ float64) { r.Conversion, r.Steps[1].AlphaLeft = 0.8, 0 })(0)
	require.Len(t, list, 1)
	assert.Contains(t, list[0].Help, "64.0 C to 67.0 C suits both amylases")
	assert.Contains(t, list[0].Reason, "above 68.0 C, alpha-amylase above 78.0 C")
	assert.Contains(t, list[0].Summary, "20 % of the starch is not converted")
}

// What is said of a number names the side on which it lies.
func TestTheSideIsNamed(t *testing.T) {
	for _, c := range []struct {
		what      string
		list      diag.List
		has, lack string
	}{
		{"hearts at 1 L/h of 100 L", spiritOf(hearts)(1), "is slow: a trickle", "fast"},
		{"hearts at 15 L/h of 100 L", spiritOf(hearts)(15), "is fast: what comes over", "slow"},
		{"100.04 L into 100", tankOf(recipe.OfHotLiquor)(100.04), "a little more than 100 L", ""},
		{"110 L into 100", tankOf(recipe.OfHotLiquor)(110), "110 L", "a little more"},
		{"99 L into 100", tankOf(recipe.OfHotLiquor)(99), "99", "a little more"},
	} {
		require.Len(t, c.list, 1, c.what)
		assert.Contains(t, c.list[0].Summary, c.has, c.what)
		if c.lack != "" {
			assert.NotContains(t, c.list[0].Summary, c.lack, c.what)
		}
	}
}

// Two tanks of 50 L for the same hold 100 L together.
func TestTanksHoldTogether(t *testing.T) {
	said := func(tanks int) string {
		b := small()
		b.Plant.WaterC = 10
		for range tanks {
			b.Plant.Tanks = append(b.Plant.Tanks, &recipe.Tank{Name: "Tank", HoldsM3: 0.1 / float64(tanks), For: recipe.OfHotLiquor})
		}
		b.Mash.Steps = []recipe.MashStep{{Verb: recipe.MashWater, TempC: 80, VolumeM3: 0.11}}
		list := notice.Tanks(&numbers.Batch{Batch: b})
		require.Len(t, list, 1)
		return list[0].Summary
	}
	assert.Contains(t, said(1), "which holds 100 L")
	assert.Contains(t, said(2), "which hold together 100 L")
}

// TestNothingElseIsSaid: the batch from which each case departs gives no cause.
func TestNothingElseIsSaid(t *testing.T) {
	assert.Empty(t, mashOf(func(*recipe.Batch, *mash.Result, float64) {})(0))
	assert.Empty(t, fermentOf(func(*recipe.Batch, *numbers.Ferment, float64) {})(0))
	assert.Empty(t, stripOf(func(*recipe.Batch, *numbers.Strip, float64) {})(0))
	assert.Empty(t, spiritOf(func(*recipe.Batch, *numbers.Spirit, float64) {})(0))
	assert.Empty(t, fermentOf(func(_ *recipe.Batch, r *numbers.Ferment, _ float64) { r.ColdestC = 18 })(0), "nothing is asked of the cooling")
	assert.Empty(t, caskOf(func(*recipe.Batch, *numbers.Cask, *plan.Cask, float64) {})(0))
	assert.Empty(t, slots(func([]schedule.Slot, float64) {})(0))
}

// TestEveryThresholdIsTried holds the table against the source: each code that the
// package raises is in it, or no number here decides it.
func TestEveryThresholdIsTried(t *testing.T) {
	raised := codetest.Raised(t, ".", "../../lang/diag")
	require.Greater(t, len(raised), 35)
	tried := map[diag.Code]bool{}
	for _, c := range thresholds {
		tried[c.code] = true
	}
	codetest.EveryThresholdTried(t, raised, tried, unnumbered)
}

// small is a batch in vessels of 100 L and casks of as much.
func small() *recipe.Batch {
	vessel := func(k recipe.VesselKind) *recipe.Vessel {
		return &recipe.Vessel{Name: "Tun", Kind: k, HoldsM3: 0.1, HeatsW: 10e3, Agitator: true}
	}
	malt := &recipe.Grain{Entry: recipe.Entry{Name: "malt"}, GelLowC: 52, GelHighC: 65, AlphaDU: 90, LintnerPower: 240}
	return &recipe.Batch{
		Units: recipe.SI, Gauge: recipe.SI,
		Plant:  &recipe.Plant{Crew: 2, BoilerW: 20e3},
		Bill:   recipe.Bill{TotalKg: 20, Lines: []recipe.BillLine{{Grain: malt, MassKg: 20, Share: 1}}},
		Mash:   recipe.Mash{Cooker: vessel(recipe.Cooker), Steps: []recipe.MashStep{{Verb: recipe.MashAdd, Grains: []int{0}}, {Verb: recipe.MashRest}}},
		Ferm:   recipe.Ferment{Yeast: &recipe.Yeast{Entry: recipe.Entry{Name: "yeast"}, LowC: 20, HighC: 34, MostC: 43}, Vessels: []*recipe.Vessel{vessel(recipe.Fermenter)}},
		Strip:  recipe.Strip{Still: vessel(recipe.Still)},
		Spirit: recipe.Spirit{Still: vessel(recipe.Still)},
		Cask:   recipe.Cask{SizeM3: 0.1, Kind: &recipe.CaskWood{}},
	}
}

func mashOf(change func(*recipe.Batch, *mash.Result, float64)) func(float64) diag.List {
	return func(v float64) diag.List {
		b, r := small(), mash.Result{
			MostVolumeM3: 0.05, PH: 5.3, Conversion: 1, Gelatinized: 1,
			Steps: []mash.Step{{AlphaLeft: 1, EndC: 60}, {AlphaLeft: 0.9, EndC: 60}},
		}
		change(b, &r, v)
		return notice.Mash(b, r)
	}
}

func fermentOf(change func(*recipe.Batch, *numbers.Ferment, float64)) func(float64) diag.List {
	return func(v float64) diag.List {
		b := small()
		r := numbers.Ferment{Result: ferment.Result{DryS: 50 * 3600, PeakTempC: 30}, Vessel: b.Ferm.Vessels[0], WortM3: 0.05, ForS: 100 * 3600}
		change(b, &r, v)
		return notice.Ferment(b, r, 25)
	}
}

// heldAt is a ferment that is held from a low to a high, stands at some temperatures
// in turn and ends at v.
func heldAt(lowC, highC float64, tempsC ...float64) func(float64) diag.List {
	return fermentOf(func(b *recipe.Batch, r *numbers.Ferment, v float64) {
		b.Ferm.HoldLowC, b.Ferm.HoldHighC = lowC, highC
		for i, t := range append(slices.Clone(tempsC), v) {
			r.Curve = append(r.Curve, ferment.Point{TimeS: float64(i) * 3600, TempC: t})
		}
	})
}

// tankOf is a tank of 100 L for some contents, in a house whose mash takes 20 L of cold
// water, and hot water of v litres.
func tankOf(c recipe.Contents) func(float64) diag.List {
	return func(v float64) diag.List {
		b := small()
		b.Plant.WaterC = 10
		b.Plant.Tanks = []*recipe.Tank{{Name: "Tank", HoldsM3: 0.1, For: c}}
		b.Mash.Steps = []recipe.MashStep{
			{Verb: recipe.MashWater, TempC: 14.9, VolumeM3: 0.02}, {Verb: recipe.MashWater, TempC: 15.1, VolumeM3: v / 1000},
			{Verb: recipe.MashWater, TempC: 80, VolumeM3: 0.03},
		}
		return notice.Tanks(&numbers.Batch{Batch: b})
	}
}

// fermentAt is a ferment that is set at a temperature.
func fermentAt() func(float64) diag.List {
	return func(setC float64) diag.List { return notice.Pitch(small(), setC) }
}

func stripOf(change func(*recipe.Batch, *numbers.Strip, float64)) func(float64) diag.List {
	return func(v float64) diag.List {
		b := small()
		r := numbers.Strip{Charges: 1, Run: still.Run{Charge: stream.Stream{EthanolKg: 100}, Residue: stream.Stream{EthanolKg: 1}, MostFill: 0.5}}
		change(b, &r, v)
		return notice.Strip(b, r)
	}
}

func spiritOf(change func(*recipe.Batch, *numbers.Spirit, float64)) func(float64) diag.List {
	return func(v float64) diag.List {
		b, r := small(), numbers.Spirit{Charges: 1, Run: still.Run{ChargeABV: 0.28, MostFill: 0.5}}
		change(b, &r, v)
		return notice.Spirit(b, r, nil)
	}
}

// hearts are v litres in an hour, of water, of which a litre weighs 0.9982 kg at 20 C.
func hearts(_ *recipe.Batch, r *numbers.Spirit, v float64) {
	r.Fractions = []still.Fraction{{Name: still.Hearts, StartS: 1800, EndS: 5400, Stream: stream.Stream{WaterKg: 0.9982 * v}}}
}

func caskOf(change func(*recipe.Batch, *numbers.Cask, *plan.Cask, float64)) func(float64) diag.List {
	return func(v float64) diag.List {
		b, r, p := small(), numbers.Cask{Done: true, Result: cask.Result{Casks: 1}}, plan.Cask{Casks: 1, SizeL: 100}
		change(b, &r, &p, v)
		return notice.Cask(b, r, p)
	}
}

// offStill is hearts of a strength, held against 80 %.
func offStill(test recipe.Test) func(float64) diag.List {
	return func(v float64) diag.List {
		b := small()
		b.Standard = &recipe.Standard{Title: "Whisky", Conditions: []recipe.Condition{{Test: test, Strength: recipe.Strength{Value: 0.80, Basis: recipe.ABV}}}}
		return notice.Law(b, law.Held(b, plan.Lot{VolumeL: 10, AbvPct: 100 * v, Proof: 200 * v}, law.Days{}, plan.Cask{}))
	}
}

// seasons is a batch that is distilled from a day on for so many days more.
func seasons(year int, month time.Month, day int) func(float64) diag.List {
	return func(v float64) diag.List {
		b := small()
		b.Standard = &recipe.Standard{Title: "Bonded", Conditions: []recipe.Condition{{Test: recipe.OneSeason, Of: "Bonded"}}}
		from := time.Date(year, month, day, 9, 0, 0, 0, time.UTC)
		return notice.Law(b, law.Held(b, plan.Lot{}, law.Days{From: from, To: from.AddDate(0, 0, int(v))}, plan.Cask{}))
	}
}

// slots is two jobs of an hour at the same time.
func slots(change func([]schedule.Slot, float64)) func(float64) diag.List {
	return func(v float64) diag.List {
		b := small()
		start := time.Date(2026, 3, 3, 7, 0, 0, 0, time.UTC)
		s := make([]schedule.Slot, 2)
		for i := range s {
			s[i] = schedule.Slot{Task: schedule.Task{Key: "mash.mill", Stage: "mash", Attend: schedule.Unattended}, Start: start, End: start.Add(time.Hour)}
		}
		s[1].Attend = schedule.Throughout
		change(s, v)
		s[1].End = s[1].Start.Add(time.Hour)
		return notice.Schedule(b, s)
	}
}

// otherStart is work of which a job waits for v hours, and for better hours if it is begun
// two days later.
func otherStart(better float64) func(float64) diag.List {
	of := func(hours float64) []schedule.Slot {
		start := time.Date(2026, 3, 3, 7, 0, 0, 0, time.UTC)
		return []schedule.Slot{{Start: start}, washCharge("strip.charge", start, hours)}
	}
	return func(v float64) diag.List {
		return notice.OtherStart(small(), of(v), func(days int) []schedule.Slot {
			if days == 2 {
				return of(better)
			}
			return of(100)
		})
	}
}

// washCharge is a charge of the wash still that waited for so many hours.
func washCharge(key string, start time.Time, hours float64) schedule.Slot {
	return schedule.Slot{Task: schedule.Task{Key: key, Stage: "strip"}, Start: start, Wait: seconds(hours * 3600), WaitWhy: "Sunday off"}
}

func seconds(v float64) time.Duration { return time.Duration(v * float64(time.Second)) }

// promised is a plan of v proof gallons of hearts, where ten are promised.
func promised(v float64) diag.List {
	b := small()
	b.Promises = []recipe.Promise{{What: "hearts", Kind: quantity.ProofGallons, Value: 10, Tolerance: 0.1}}
	return notice.Promises(b, promise.Answers(b, &plan.Plan{}, plan.Lot{}, plan.Lot{ProofGallons: v}))
}

// What a strength is off by is said in % abv, and in proof where it was promised in it.
func TestOffByInProof(t *testing.T) {
	for basis, proof := range map[recipe.StrengthBasis]float64{recipe.Proof: 3, recipe.ABV: 0} {
		b := small()
		b.Promises = []recipe.Promise{{What: "hearts", Kind: quantity.Strength, Value: 0.70, Strength: recipe.Strength{Value: 0.70, Basis: basis}, Tolerance: 0.01}}
		all := promise.Answers(b, &plan.Plan{}, plan.Lot{}, plan.Lot{AbvPct: 71.5, Proof: 143})
		require.Len(t, all, 1)
		assert.InDelta(t, 1.5, all[0].Off.Value, 1e-9)
		assert.InDelta(t, proof, all[0].Off.Proof, 1e-9)
	}
}

// Nobody is told to use what the batch has not: backset, where there is none.
func TestWhatMovesThePH(t *testing.T) {
	help := func(ph float64, change func(*recipe.Batch)) string {
		list := mashOf(func(b *recipe.Batch, r *mash.Result, _ float64) {
			r.PH = ph
			change(b)
		})(0)
		require.Len(t, list, 1)
		return list[0].Help
	}
	backset := func(b *recipe.Batch) {
		b.Mash.Steps = append(b.Mash.Steps, recipe.MashStep{Verb: recipe.MashBackset, VolumeM3: 0.01})
	}
	acid := func(b *recipe.Batch) { b.Mash.Treatment.Acid = recipe.Lactic }
	none := func(*recipe.Batch) {}
	assert.Contains(t, help(6, backset), "more backset lowers it")
	assert.NotContains(t, help(6, none), "backset")
	assert.Contains(t, help(6, none), "acid lactic to 5.4 pH")
	assert.Contains(t, help(4.7, backset), "less backset raises it")
	assert.Contains(t, help(4.7, acid), "less acid")
	assert.NotContains(t, help(4.7, none), "backset")
}
