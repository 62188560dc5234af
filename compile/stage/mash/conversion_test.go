package mash

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/starch"
	"newmake/compile/matter/starch/starchtest"
	"newmake/lang/recipe"
)

// The library holds just the constants that the two packages read, no more.
func TestLibraryHoldsEveryConstant(t *testing.T) {
	m := starchtest.Model(t)
	names := append(starch.Names(), recipe.Names(new(constants).fields())...)
	for _, n := range names {
		assert.Contains(t, m.Values, n)
	}
	assert.Len(t, m.Values, len(names))
}

// A well run bourbon mash gives 4.9 to 5.2 proof gallons a distiller's bushel
// (contracts near 5, common practice). The mash's part: the sugars at the end
// of four days in the fermenter, at 93 % of the stoichiometric yield (90 to 95,
// common practice; the ferment computes its own).
func TestBourbonYield(t *testing.T) {
	in := bourbon(t)
	r := must(t, in)
	litres := pureAlcoholL(afterFerment(t, r, 96, 31), 0.93)
	pg := litres / 1000 / galM3 * 2 / (in.Bill.TotalKg / (56 * lbKg))
	assert.Greater(t, pg, 4.9)
	assert.Less(t, pg, 5.2)
	assert.InDelta(t, 5.1, r.PH, 0.3) // set at 4.8-5.4, common practice
	assert.Greater(t, r.HydrometerSG, r.OriginalSG)
	assert.Empty(t, r.Problems)
}

// Leave out the cook and the corn stays in the granule: 65 C is the low end of
// its range.
func TestNoCookLeavesCornRaw(t *testing.T) {
	cooked := must(t, bourbon(t))
	in := bourbon(t)
	in.Steps = []recipe.MashStep{water(388, 160), add(0, 1, 2, 3), heat(148), rest(90), cool(78)}
	raw := must(t, in)
	assert.Greater(t, cooked.Conversion, 0.95)
	assert.Less(t, raw.Conversion, 0.45)
	corn := in.Bill.Lines[0]
	cornStarch := corn.MassKg * (1 - corn.Grain.Moisture) * corn.Grain.Starch
	assert.Greater(t, raw.Out.RawStarchKg, 0.8*cornStarch)
	assert.Less(t, raw.OriginalSG, cooked.OriginalSG-0.02)
}

// Put the malt in hot, and its enzymes die before they have done their work.
func TestHotMaltDies(t *testing.T) {
	in := bourbon(t)
	good := must(t, in)
	in.Steps = []recipe.MashStep{water(388, 58), add(0), heat(190), rest(45), add(1, 2, 3), rest(60), cool(78)}
	hot := must(t, in)
	last := hot.Steps[len(hot.Steps)-1]
	assert.Less(t, last.AlphaLeft, 0.001)
	assert.Less(t, last.BetaLeft, 1e-9)
	assert.Less(t, hot.FermentableShare, 0.2)
	assert.Greater(t, good.FermentableShare, 3*hot.FermentableShare)
	// and the fermenter cannot make good for it.
	assert.Less(t, pureAlcoholL(afterFerment(t, hot, 96, 31), 1), 0.3*pureAlcoholL(afterFerment(t, good, 96, 31), 1))
}

// The hotter the malt goes in above its range, the less sugar.
func TestHotterMaltLessSugar(t *testing.T) {
	last := 2.0
	for _, f := range []float64{148, 152, 156, 160, 164, 168, 174, 180} {
		in := bourbon(t)
		in.Steps = []recipe.MashStep{water(388, 58), add(0), in.Steps[3], heat(190), rest(45), cool(f), add(1, 2, 3), rest(60), cool(78)}
		r := must(t, in)
		share := r.Out.SugarKg() / (r.Out.SugarKg() + r.Out.DextrinKg + r.Out.GelStarchKg)
		assert.Less(t, share, last, "%g F", f)
		last = share
	}
}

// brewed is an all-malt mash of 3.5 L/kg: 63 C 40 min, 72 C 25 min, 78 C.
func brewed(t testing.TB) Input {
	in := plant(t)
	in.HardnessPPM = 0
	in.Bill = bill(t, []string{"two-row-malt"}, []float64{400})
	in.Steps = []recipe.MashStep{
		{Verb: recipe.MashWater, VolumeM3: 1.4, TempC: 69.5}, add(0), rest(40),
		{Verb: recipe.MashHeat, TempC: 72}, rest(25), {Verb: recipe.MashHeat, TempC: 78}, rest(10),
	}
	return in
}

// MEBAK B-590.12.139 (sugars by HPAEC-PAD): carbohydrate is about 90 % of wort
// extract, 74 % of it fermentable sugar; a 12 % wort of pale malt holds 88 g/L
// of sugars on average, which is 70 % of its extract of 125.8 g/L, or 78 % of
// the carbohydrate. So the two figures of that page bracket 0.74-0.78.
//
// The shares of the single sugars (of carbohydrate: maltose about half,
// maltotriose 12-18 %, glucose with fructose and sucrose 12-18 %, dextrin
// 20-27 %) are common practice.
func TestSugarsOfWort(t *testing.T) {
	r := must(t, brewed(t))
	o := r.Out
	carbohydrate := o.SugarKg() + o.DextrinKg + o.GelStarchKg
	assert.InDelta(t, 0.90, carbohydrate/o.ExtractKg(), 0.02)
	assert.InDelta(t, 0.76, o.SugarKg()/carbohydrate, 0.03)
	assert.InDelta(t, 0.50, o.MaltoseKg/carbohydrate, 0.05)
	assert.InDelta(t, 0.15, o.MaltotrioseKg/carbohydrate, 0.03)
	assert.InDelta(t, 0.15, o.GlucoseKg/carbohydrate, 0.03)
	assert.InDelta(t, 0.235, o.DextrinKg/carbohydrate, 0.035)
	assert.Less(t, o.GelStarchKg/carbohydrate, 1e-3) // iodine normal
	assert.InDelta(t, 5.6, r.PH, 0.2)                // malt mash 5.2-5.8, common practice
}

// An unboiled wort's enzymes go on in the fermenter; a boiled one's do not
// (Vriesekoop et al., J. Inst. Brew. 116 (2010) 230).
func TestUnboiledWortGoesOn(t *testing.T) {
	in := maltWhisky(t)
	r := must(t, in)
	before := starch.StateOf(r.Out, r.Enzymes)
	after := afterFerment(t, r, 72, 30)
	assert.Less(t, after.DextrinKg+after.LimitDextrinKg, 0.3*(before.DextrinKg+before.LimitDextrinKg))

	in.Steps = append(in.Steps, recipe.MashStep{Verb: recipe.MashBoil, DurationS: 3600})
	boiled := must(t, in)
	assert.Less(t, boiled.Enzymes.Alpha, 1e-6)
	before = starch.StateOf(boiled.Out, boiled.Enzymes)
	after = afterFerment(t, boiled, 72, 30)
	assert.InEpsilon(t, before.DextrinKg, after.DextrinKg, 1e-6)
}

// The Alcohol Textbook, 4th ed., Table 2, US gallons of pure ethanol from 56
// lb: corn fine 2.85, coarse 2.65, milo 2.60, barley 2.50, rye 2.40. Each grain
// is cooked alone with both preparations and fermented at 95 % of the
// stoichiometric yield, the one number fitted, on fine corn. The table says how
// corn was ground and not the rest, so the others are held against the nearer
// of fine (all starch reached) and coarse (2.65/2.85 of it).
//
// Rye agrees when fine and milo when coarse. Barley comes out 4 % high even
// coarse: the library's starch is Saskatchewan's, whose practical yield of 399 L
// a tonne is itself 7 % above the table's barley.
func TestYieldsByGrain(t *testing.T) {
	const coarse = 2.65 / 2.85
	for _, c := range []struct {
		grain             string
		access            float64
		gallons, relative float64
	}{
		{"corn", 1, 2.85, 0.02},
		{"corn", coarse, 2.65, 0.02},
		{"sorghum", coarse, 2.60, 0.02},
		{"barley", coarse, 2.50, 0.05},
		{"rye", 1, 2.40, 0.02},
	} {
		in := plant(t)
		in.Model.Values["access-raw"] = c.access
		in.Bill = bill(t, []string{c.grain}, []float64{400})
		liquefying, saccharifying := starchtest.Enzyme(t, "alpha-amylase"), starchtest.Enzyme(t, "glucoamylase")
		in.Steps = []recipe.MashStep{
			water(380, 60), add(0), dose(liquefying, 0.0005*400), heat(190), rest(60),
			cool(140), dose(saccharifying, 0.0008*400), rest(30), cool(85),
		}
		r := must(t, in)
		r.PH = 5
		litres := pureAlcoholL(afterFerment(t, r, 96, 31), 0.95)
		got := litres / 1000 / galM3 / (400 / (56 * lbKg))
		assert.InEpsilon(t, c.gallons, got, c.relative, c.grain)
	}
}

// An equipment maker's sheet: 425 kg of malt and 1,900 L of water give 1,600 L
// of wash of 9-10 % vol. Here in two waters, with 0.95 L/kg left in the draff,
// and ethanol at 93 % of the stoichiometric yield.
func TestPublishedMaltMash(t *testing.T) {
	in := maltWhisky(t)
	in.Steps[0].VolumeM3 = 1.5
	r := must(t, in)
	volume := r.Out.LiquidVolumeM3(20)
	assert.InDelta(t, 1.600, volume, 0.07)
	abv := pureAlcoholL(afterFerment(t, r, 72, 30), 0.93) / 1000 / volume
	assert.Greater(t, abv, 0.09)
	assert.Less(t, abv, 0.10)
}

// Lautering leaves in the draff what it holds, and a second water draws from
// that again.
func TestSecondWaterDrawsAgain(t *testing.T) {
	in := maltWhisky(t)
	two := must(t, in)
	in.Steps = append(append([]recipe.MashStep{}, in.Steps[:5]...), in.Steps[8])
	one := must(t, in)
	require.True(t, one.Lautered && two.Lautered)
	assert.Greater(t, two.ExtractKg, 1.1*one.ExtractKg)
	assert.Less(t, two.OriginalSG, one.OriginalSG)
	assert.Zero(t, two.Out.InsolublesKg)
	assert.Zero(t, two.Out.RawStarchKg)
	assert.Positive(t, two.Draff.InsolublesKg)
	// 0.8-1.1 L of liquor a kg, common practice; 0.95 in the library.
	assert.InDelta(t, 0.95*425, 1000*two.Draff.LiquidVolumeM3(two.Draff.TempC), 3)
	// The cooling at the end is that of the worts.
	assert.InDelta(t, fahrenheit(66), two.Out.TempC, 1e-9)
	assert.Greater(t, two.Draff.TempC, 55.0)
}

// Grain displaces 0.65-0.70 L/kg dry, and what dissolves adds its own: 100 kg
// of malt in 400 L makes 460 to 475 L.
func TestVolume(t *testing.T) {
	in := plant(t)
	in.Bill = bill(t, []string{"two-row-malt"}, []float64{100})
	in.Steps = []recipe.MashStep{{Verb: recipe.MashWater, VolumeM3: 0.4, TempC: 20}, add(0)}
	r := must(t, in)
	assert.InDelta(t, 0.467, r.MostVolumeM3, 0.008)
	assert.InDelta(t, 4, r.LiquorGristLPerKg, 1e-9)
}

// Backset lowers the pH and lifts the hydrometer, not the gravity of the grain.
func TestBackset(t *testing.T) {
	at := func(share float64) Result {
		in := bourbon(t)
		in.Steps[0], in.Steps[1] = water(388*(1-share), 58), backset(388*share, 160)
		return must(t, in)
	}
	none, some, much := at(0), at(0.15), at(0.33)
	assert.Greater(t, none.PH, some.PH)
	assert.Greater(t, some.PH, much.PH)
	assert.InDelta(t, none.HydrometerSG, none.OriginalSG, 1e-12)
	// 15 % of backset of 6 % solids: 0.9 % of solids in the liquor, some 3.5 points.
	assert.InDelta(t, 0.003, some.HydrometerSG-some.OriginalSG, 0.001)
	assert.Greater(t, much.PH, 4.5)
}
