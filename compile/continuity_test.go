package compile

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/fluid"
	"newmake/compile/plan"
	"newmake/lang/recipe"
	"newmake/lang/testflag"
)

// sweeps turn one input of Ferry Landing from end to end, over every place where
// a model changes its regime: the boil, the reach of the cooling water, the
// grains' gelatinization, the deaths of the enzymes, the step of time at 45 C,
// the density's join at 40 C, the yeast's range, the still's stop and cuts, the
// cask's first and ninth year.
var sweeps = []struct {
	name      string
	low, high float64
	set       func(*recipe.Batch, float64)
}{
	{"cook, F", 130, 207, func(b *recipe.Batch, f float64) { b.Mash.Steps[4].TempC = fluid.FahrenheitToC(f) }},
	{"malt rest, F", 100, 157, func(b *recipe.Batch, f float64) { b.Mash.Steps[9].TempC = fluid.FahrenheitToC(f) }},
	{"rye rest, F", 149, 189, func(b *recipe.Batch, f float64) { b.Mash.Steps[6].TempC = fluid.FahrenheitToC(f) }},
	{"set, F", 63, 100, func(b *recipe.Batch, f float64) { b.Mash.Steps[12].TempC = fluid.FahrenheitToC(f) }},
	{"liquor, gal", 200, 420, func(b *recipe.Batch, g float64) { b.Mash.Steps[0].VolumeM3 = g * fluid.USGallonM3 }},
	{"liquor, F", 34, 185, func(b *recipe.Batch, f float64) { b.Mash.Steps[0].TempC = fluid.FahrenheitToC(f) }},
	{"hold, F", 80, 108, func(b *recipe.Batch, f float64) { b.Ferm.HoldHighC = fluid.FahrenheitToC(f) }},
	{"ferment, h", 20, 200, func(b *recipe.Batch, h float64) { b.Ferm.DurationS = h * 3600 }},
	{"pitch, g/L", 0.05, 4, func(b *recipe.Batch, x float64) { b.Ferm.PitchKgM3 = x }},
	{"elevation, m", 0, 3000, func(b *recipe.Batch, m float64) { b.Plant.ElevationM = m }},
	{"stop of the stripping run", 0.002, 0.40, func(b *recipe.Batch, x float64) { b.Strip.StopAt.Value = x }},
	{"reflux of the wash still", 0, 0.5, func(b *recipe.Batch, x float64) { b.Strip.Still.Reflux = x }},
	// From a little up: a drop of foreshots takes its quarter of an hour, and none takes none.
	{"foreshots, L", 0.1, 20, func(b *recipe.Batch, x float64) { b.Spirit.ForeshotsM3 = x / 1000 }},
	{"hearts from, L", 2, 60, func(b *recipe.Batch, x float64) { b.Spirit.HeartsFrom.VolumeM3 = x / 1000 }},
	{"hearts to", 0.3, 0.70, func(b *recipe.Batch, x float64) { b.Spirit.HeartsTo.Strength.Value = x }},
	{"stop of the spirit run", 0.002, 0.45, func(b *recipe.Batch, x float64) { b.Spirit.Stop.Value = x }},
	{"entry", 0.2, 0.69, func(b *recipe.Batch, x float64) { b.Cask.Entry.Value = x }},
	{"rest, years", 0.1, 12, func(b *recipe.Batch, y float64) { b.Cask.RestS = y * 365.25 * 86400 }},
	{"cask, L", 10, 200, func(b *recipe.Batch, l float64) { b.Cask.SizeM3 = l / 1000 }},
}

// smooth is the numbers of a plan that may not leap. Counts, and what is left over
// of whole casks, are not among them.
func smooth(p *plan.Plan) map[string]float64 {
	out := map[string]float64{
		"og": p.Mash.OriginalGravitySG - 1, "hydrometer": p.Mash.HydrometerSG - 1, "conversion": p.Mash.ConversionPct, "gelatinized": p.Mash.GelatinizedPct,
		"fermentable": p.Mash.FermentablePct, "mash pH": p.Mash.PH, "wort": p.Mash.VolumeL, "mash hours": p.Mash.Hours, "mash heat": p.Mash.HeatKWh, "mash cooling": p.Mash.CoolKWh,
		"fg": p.Ferment.FinalGravitySG, "wash": p.Ferment.WashVolumeL, "alcohol": p.Ferment.PureL, "co2": p.Ferment.CO2Kg, "wash pH": p.Ferment.PH, "warmest": p.Ferment.PeakC,
		"low wines": p.Strip.Fractions[0].PureL, "strip hours": p.Strip.TotalHours, "strip heat": p.Strip.HeatKWh, "pot ale": p.Strip.Residue.MassKg,
		"spirit hours": p.Spirit.TotalHours, "spirit heat": p.Spirit.HeatKWh, "lees": p.Spirit.Residue.MassKg,
	}
	for _, f := range p.Spirit.Fractions {
		out[f.Name] = f.PureL
	}
	if r := p.Reduction; r != nil {
		out["water to add"], out["at entry"] = r.WaterKg, r.To.VolumeL
	}
	if n := len(p.Cask.Forecast); n > 0 {
		out["in the cask"], out["proof of the cask"] = p.Cask.Forecast[n-1].VolumeL/p.Cask.SizeL, p.Cask.Forecast[n-1].Proof
	}
	return out
}

// Nothing leaps. Between the two points of a sweep at which a number changes
// most, the span is halved until it is a 1e-7th of the sweep: what is continuous
// has shrunk to nothing by then, and a leap still stands.
func TestContinuous(t *testing.T) {
	written := batch(t, lantern, ferry)
	for i, s := range sweeps {
		if i%testflag.Every(6) != 0 {
			continue
		}
		t.Run(s.name, func(t *testing.T) {
			t.Parallel()
			memo := new(Memo)
			at := func(x float64) map[string]float64 {
				b := own(written)
				b.Cask.SizeM3 = 0.030          // some casks are always filled
				b.Plant.Shift = recipe.Shift{} // somebody is always there: no ferment has to stand until the morning
				s.set(b, x)
				b.Resolve()
				p, list := memo.Compile(b)
				require.NotNil(t, p, "%g: %s", x, list.Error())
				return smooth(p)
			}
			const points = 20
			xs, ys := make([]float64, points+1), make([]map[string]float64, points+1)
			for i := range xs {
				xs[i] = s.low + (s.high-s.low)*float64(i)/points
				ys[i] = at(xs[i])
			}
			for name := range ys[0] {
				worst, size := 0, 0.0
				for i := range points {
					if math.Abs(ys[i+1][name]-ys[i][name]) > math.Abs(ys[worst+1][name]-ys[worst][name]) {
						worst = i
					}
					size = max(size, math.Abs(ys[i][name]))
				}
				lo, hi, yLo, yHi := xs[worst], xs[worst+1], ys[worst], ys[worst+1]
				for hi-lo > 1e-7*(s.high-s.low) && math.Abs(yHi[name]-yLo[name]) > 1e-4*size {
					mid := (lo + hi) / 2
					y := at(mid)
					if math.Abs(y[name]-yLo[name]) > math.Abs(yHi[name]-y[name]) {
						hi, yHi = mid, y
					} else {
						lo, yLo = mid, y
					}
				}
				assert.LessOrEqual(t, math.Abs(yHi[name]-yLo[name]), 1e-3*size, "%s leaps at %g: %g to %g", name, lo, yLo[name], yHi[name])
			}
		})
	}
}

// A change of a millionth in all inputs changes no number by more than a
// thousandth, in any batch: no model is nearly unstable.
func TestSmallChangesAreSmall(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	randomBatches(t, 30, func(t *testing.T, b *recipe.Batch) {
		memo := new(Memo)
		before, list := memo.Compile(b)
		require.NotNil(t, before, list.Error())
		c := own(b)
		little := func() float64 { return 1 + 2e-6*(r.Float64()-0.5) }
		c.Plant.ElevationM *= little()
		c.Plant.WaterC *= little()
		for i := range c.Bill.Lines {
			c.Bill.Lines[i].MassKg *= little()
		}
		for i := range c.Mash.Steps {
			c.Mash.Steps[i].TempC *= little()
			c.Mash.Steps[i].DurationS *= little()
			c.Mash.Steps[i].VolumeM3 *= little()
		}
		c.Ferm.PitchKgM3 *= little()
		c.Ferm.DurationS *= little()
		c.Strip.StopAt.Value *= little()
		c.Spirit.HeartsFrom.VolumeM3 *= little()
		c.Spirit.HeartsTo.Strength.Value *= little()
		c.Cask.Entry.Value *= little()
		after, list := memo.Compile(c)
		require.NotNil(t, after, list.Error())
		was := smooth(before)
		for name, x := range smooth(after) {
			assert.InDelta(t, was[name], x, 1e-3*max(math.Abs(was[name]), 0.01), name)
		}
	})
}

// The house from the shore to the mountains: water boils cooler, pots and
// vapours with it, and the whisky stays much the same. Boiling points of water:
// U.S. Standard Atmosphere 1976 with IAPWS, between the heights of
// testdata/fluid/altitude_boiling.csv by a straight line, good to 0.02 C.
func TestHeights(t *testing.T) {
	var last *plan.Plan
	for _, h := range []struct{ feet, boilsC float64 }{{0, 99.974}, {5000, 94.90}, {9000, 90.84}} {
		c := own(batch(t, lantern, ferry))
		c.Plant.ElevationM = h.feet * 0.3048
		p, list := Compile(c)
		require.NotNil(t, p, list.Error())
		t.Run(fmt.Sprintf("%.0f ft", h.feet), func(t *testing.T) {
			assert.InDelta(t, h.boilsC, p.Plant.WaterBoilsC, 0.05+0.02) // the plan says it to 0.1
			spirit := p.Spirit.Curve
			assert.Less(t, spirit[len(spirit)-1].PotC, p.Plant.WaterBoilsC)
			assert.Greater(t, spirit[0].VapourC, p.Plant.WaterBoilsC-22, "ethanol boils 21.7 C below water at 1 atm, and as far at 70 kPa")
			assert.InEpsilon(t, overOf(p, plan.StreamHearts).PureL, 124, 0.03, "of 0 to 9,000 ft")
		})
		if last != nil {
			assert.Less(t, p.Strip.Curve[0].PotC, last.Strip.Curve[0].PotC)
			assert.Less(t, p.Spirit.Curve[0].VapourC, last.Spirit.Curve[0].VapourC)
		}
		last = p
	}
}
