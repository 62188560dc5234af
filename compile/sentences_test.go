package compile

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

func planOf(t *testing.T, change func(*recipe.Batch)) (*plan.Plan, diag.List) {
	t.Helper()
	p, list := Compile(edited(t, change))
	require.NotNil(t, p, list.Error())
	return p, list
}

func cautionOf(p *plan.Plan, key string) (plan.Caution, bool) {
	for _, c := range p.Cautions {
		if c.Key == key {
			return c, true
		}
	}
	return plan.Caution{}, false
}

// Hearts that begin where the foreshots end have no heads, and that is not said to
// be within them, however the amounts were written; a decilitre sooner is.
func TestHeartsWhereForeshotsEnd(t *testing.T) {
	said := func(foreshotsL, fromL float64) bool {
		_, list := planOf(t, func(b *recipe.Batch) {
			b.Spirit.ForeshotsM3 = foreshotsL / 1000
			b.Spirit.HeartsFrom = recipe.Cut{By: recipe.ByVolume, VolumeM3: fromL / 1000, At: b.Spirit.HeartsFrom.At}
		})
		return slices.ContainsFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeInForeshots })
	}
	const gal = 3.785411784
	for _, l := range []float64{0.5 * gal, 1.1 * gal, 2, 0.1 + 0.2, 3.3} {
		assert.False(t, said(l, l), "%g L", l)
		assert.False(t, said(l, l-0.004), "%g L: less than is measured", l)
		assert.True(t, said(l, l-0.1), "%g L", l)
	}
	_, list := planOf(t, func(b *recipe.Batch) {
		b.Spirit.ForeshotsM3, b.Spirit.HeartsFrom = 0.02, recipe.Cut{By: recipe.ByShare, Share: 0.001}
	})
	assert.True(t, slices.ContainsFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeInForeshots }), "nor by share")
}

// The weight of a full cask is that of the plan, and what crushes in a butt rolls
// in a firkin.
func TestCautionOfACaskIsOfItsWeight(t *testing.T) {
	barrel, _ := planOf(t, func(*recipe.Batch) {})
	c, found := cautionOf(barrel, "lift")
	require.True(t, found)
	assert.Contains(t, c.Title, "crushes")
	assert.Contains(t, c.Text, "A cask of 53.0 gal full holds 40")
	assert.Contains(t, c.Text, "lb of spirit")

	small, _ := planOf(t, func(b *recipe.Batch) { b.Cask.SizeM3 = 0.005 })
	c, found = cautionOf(small, "lift")
	require.True(t, found)
	assert.NotContains(t, c.Title+c.Text, "crush")
	assert.Contains(t, c.Text, "chock it")

	for litres, crushes := range map[float64]bool{24: false, 27: true} { // 23 kg of spirit are some 25 L
		p, _ := planOf(t, func(b *recipe.Batch) { b.Cask.SizeM3 = litres / 1000 })
		c, _ = cautionOf(p, "lift")
		assert.Equal(t, crushes, strings.Contains(c.Title, "crushes"), "%g L: %s", litres, c.Text)
	}
}

// Nothing crushes or is blown in where casks are soaked: an empty one rolls, and hot
// water scalds.
func TestCautionOfAnEmptyCask(t *testing.T) {
	p, _ := planOf(t, func(*recipe.Batch) {})
	i := slices.IndexFunc(p.Schedule.Steps, func(s plan.Step) bool { return s.ID == "fill.soak" })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, []string{"soak", "roll"}, p.Schedule.Steps[i].Cautions)
	c, found := cautionOf(p, "roll")
	require.True(t, found)
	assert.Contains(t, c.Text, "An empty cask of 53.0 gal weighs about 110.5 lb, and the water in it 43.0 lb")
}

// The water that is paid for is the water that the plan counts.
func TestWaterIsOneFigure(t *testing.T) {
	p, _ := planOf(t, func(*recipe.Batch) {})
	i := slices.IndexFunc(p.Cost.Lines, func(l plan.CostLine) bool { return l.What == "water" })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, p.Energy.WaterL, p.Cost.Lines[i].Amount.Value)
}

// Steam is spoken of where there is a boiler or steam is blown in.
func TestSteamOnlyWhereThereIsSteam(t *testing.T) {
	for name, c := range map[string]struct {
		boilerW float64
		steam   recipe.Heating
		want    bool
	}{"boiler": {300e3, recipe.Jacket, true}, "steam blown in": {0, recipe.Direct, true}, "elements": {0, recipe.Jacket, false}} {
		p, _ := planOf(t, func(b *recipe.Batch) { b.Plant.BoilerW, b.Mash.Cooker.HeatedBy = c.boilerW, c.steam })
		_, steam := cautionOf(p, "steam")
		_, live := cautionOf(p, "live-steam")
		assert.Equal(t, c.steam == recipe.Direct, live, name)
		steam = steam || live
		_, water := cautionOf(p, "hot-water")
		assert.Equal(t, c.want, steam, name)
		assert.Equal(t, !c.want, water, name)
	}
}

// A fermenter without cooling is not told to cool.
func TestCoolItOnlyWhereItCools(t *testing.T) {
	words := func(coolsW float64) string {
		p, _ := planOf(t, func(b *recipe.Batch) {
			for _, v := range b.Ferm.Vessels {
				v.CoolsW, v.Cooler = coolsW, recipe.Cooler{}
			}
		})
		for _, s := range p.Schedule.Steps {
			if s.ID == "ferment.run" {
				return s.Do.Text
			}
		}
		return ""
	}
	assert.Contains(t, words(10e3), "Cool it when it passes")
	assert.Contains(t, words(0), "Nothing cools this vessel: it comes to some {} by itself")
}

// What is said of a ferment that is too warm speaks of cooling where there is some.
func TestTooWarmWithoutCooling(t *testing.T) {
	for coolsW, want := range map[float64]string{0: "nothing cools", 50: "takes out"} {
		_, list := planOf(t, func(b *recipe.Batch) {
			for _, v := range b.Ferm.Vessels {
				v.CoolsW, v.Cooler = coolsW, recipe.Cooler{}
			}
			b.Ferm.HoldHighC = 25
			b.Ferm.HoldLowC = 20
		})
		at := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeHoldLeft })
		require.GreaterOrEqual(t, at, 0)
		assert.Contains(t, list[at].Reason, want)
		assert.Equal(t, coolsW == 0, strings.Contains(list[at].Help, "a fermenter that is cooled"), list[at].Help)
		assert.NotContains(t, list[at].Reason, "0 kW at most")
	}
}

// The share of the low wines that comes out as hearts is computed: a run stopped
// while the spout is strong leaves much of it behind.
func TestHeartsOfTheLowWines(t *testing.T) {
	share := func(change func(*recipe.Batch)) float64 {
		p, _ := planOf(t, change)
		return p.Spirit.HeartsOfLowWinesPct
	}
	usual := share(func(*recipe.Batch) {})
	assert.Greater(t, usual, 95.0)
	assert.Less(t, usual, 100.0)
	early := share(func(b *recipe.Batch) {
		b.Spirit.Stop = recipe.Strength{Value: 0.60}
		b.Spirit.HeartsTo = recipe.Cut{Strength: recipe.Strength{Value: 0.62}, At: b.Spirit.HeartsTo.At}
	})
	assert.Less(t, early, 90.0, "not nearly all")
	assert.Zero(t, share(func(b *recipe.Batch) { b.Spirit.Feints = false }), "without feints it is the hearts' own share")
}

// One moment is one number: where a run ends, its curve, its table and its sheet say the
// same, and a cask is as full in the forecast as when it is filled.
func TestOneMomentIsOneNumber(t *testing.T) {
	for _, stop := range []float64{0.01, 0.02, 0.033, 0.05, 0.10} {
		p, _ := planOf(t, func(b *recipe.Batch) { b.Strip.StopAt.Value = stop })
		p.Round()
		for _, r := range []plan.Run{p.Strip, p.Spirit} {
			end := r.Curve[len(r.Curve)-1]
			assert.Equal(t, r.Fractions[len(r.Fractions)-1].VapourC, end.VapourC, "%s, stop %g", r.Still, stop)
		}
		for step, c := range map[string]float64{"strip.heat": p.Strip.Curve[0].VapourC, "spirit.heat": p.Spirit.Curve[0].VapourC,
			"strip.collect": p.Strip.Fractions[0].VapourC, "spirit.tails": p.Spirit.Fractions[3].VapourC} {
			read := stepOf(t, p, step).Read
			assert.Equal(t, c, read[len(read)-1].Should.Value, "%s, stop %g", step, stop)
		}
		if f := p.Cask.Fill; f != nil {
			y := p.Cask.Forecast[0]
			assert.Equal(t, []float64{f.VolumeL, f.Proof, f.ProofGallons}, []float64{y.VolumeL, y.Proof, y.ProofGallons})
		}
	}
}

// A set above its hold is called one, and not a rise that took no time.
func TestASetAboveItsHold(t *testing.T) {
	for high, want := range map[float64]string{18: "it is set at 78 F", 30: "rises to"} {
		_, list := planOf(t, func(b *recipe.Batch) {
			b.Ferm.HoldLowC, b.Ferm.HoldHighC = 15, high
			for _, v := range b.Ferm.Vessels {
				v.CoolsW, v.Cooler = 0, recipe.Cooler{}
				if high == 18 {
					v.CoolsW = 20e3
				}
			}
		})
		at := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeHoldLeft })
		require.GreaterOrEqual(t, at, 0, list.Error())
		assert.Contains(t, list[at].Summary, want)
		assert.NotContains(t, list[at].Summary, "0 s after")
	}
}

// What is said of a tank that is too small is what the plan says of it, in words.
func TestATankSaysWhatThePlanSays(t *testing.T) {
	p, list := Compile(edited(t, func(b *recipe.Batch) { b.Plant.TanksFor(recipe.OfFeints)[0].HoldsM3 = 0.15 }))
	require.NotNil(t, p)
	at := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeTankFull })
	require.GreaterOrEqual(t, at, 0)
	i := slices.IndexFunc(p.Plant.Tanks, func(u plan.TankUse) bool { return slices.Contains(u.For, "feints") })
	assert.Contains(t, list[at].Summary, measure.US.Quantity(p.Plant.Tanks[i].Most())+` to wait in "Feints receiver", for feints, which holds`)

	_, list = Compile(edited(t, func(b *recipe.Batch) { b.Plant.TanksFor(recipe.OfLowWines)[0].HoldsM3 = 0.4 }))
	at = slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeTankFull })
	assert.Contains(t, list[at].Summary, "for low wines, which")
}

// A vessel of so many gallons is one of so many in the plan: 40 gal are 151.4 L.
func TestAVesselHoldsWhatIsWritten(t *testing.T) {
	p, _ := planOf(t, func(b *recipe.Batch) { b.Spirit.Still.HoldsM3 = 301 * 0.003785411784 })
	p.Round()
	i := slices.IndexFunc(p.Plant.Vessels, func(v plan.Vessel) bool { return v.Name == "Spirit still" })
	require.GreaterOrEqual(t, i, 0)
	assert.InDelta(t, 301, p.Plant.Vessels[i].HoldsL/3.785411784, 0.005)
	small, _ := planOf(t, func(b *recipe.Batch) { b.Cask.SizeM3, b.Promises = 5*0.003785411784, nil })
	small.Round()
	assert.Equal(t, "5.00 gal", measure.US.Litres(small.Cask.SizeL))
}
