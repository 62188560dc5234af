package still

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/recipe"
)

// A pace moves the clock and the heat. With a jacket what comes over is the same.
func TestPaceMovesTheClockAlone(t *testing.T) {
	in := secondRun(t)
	full := spirit1(t, in)
	in.Pace = recipe.Pace{
		Foreshots: recipe.FractionPace{OverS: 15 * 60}, Hearts: recipe.FractionPace{OverS: 2.5 * 3600},
		Tails: recipe.FractionPace{PowerW: 40e3},
	}
	slow := spirit1(t, in)
	for i, f := range slow.Fractions {
		assert.InDelta(t, full.Fractions[i].EthanolKg, f.EthanolKg, 1e-7, f.Name)
		assert.InDelta(t, full.Fractions[i].EndABV, f.EndABV, 1e-9, f.Name)
	}
	length := func(r Run, name string) float64 { f := r.Fraction(name); return f.EndS - f.StartS }
	// Spirit of falling strength is a thought less mixed than the sum of its drops.
	assert.InEpsilon(t, 15*60, length(slow, Foreshots), 1e-3)
	assert.InEpsilon(t, 2.5*3600, length(slow, Hearts), 1e-3)
	assert.InEpsilon(t, slow.Fraction(Hearts).VolumeM3/(2.5*3600), slow.Fraction(Heads).VolumeM3/length(slow, Heads), 2e-3, "heads come as the hearts do")
	loss := in.lossW(slow.Curve[0].PotC, slow.Curve[0].PotC)
	assert.InEpsilon(t, length(full, Tails)*(60e3-loss)/(40e3-loss), length(slow, Tails), 1e-6)
	holds(t, in.Setting, slow)

	// The flow is held: it is what the curve shows all through the hearts.
	want := slow.Fraction(Hearts).VolumeM3 / (2.5 * 3600)
	n := 0
	for _, p := range slow.Curve {
		if p.Fraction == Hearts {
			assert.InEpsilon(t, want, p.RateM3S, 2e-3)
			n++
		}
	}
	assert.Greater(t, n, 20)
	last := slow.Curve[0].TimeS
	for _, p := range slow.Curve[1:] {
		assert.GreaterOrEqual(t, p.TimeS, last)
		last = p.TimeS
	}
}

// The heat of a litre is that of the vapour, which the account of the run shows:
// the same flow of weaker spirit wants more.
func TestHeatByFraction(t *testing.T) {
	in := secondRun(t)
	in.Pace.Hearts = recipe.FractionPace{FlowM3S: 30e-3 / 3600}
	r := spirit1(t, in)
	sum := 0.0
	for _, f := range r.Fractions {
		sum += f.HeatJ
	}
	assert.InEpsilon(t, r.HeatJ, in.heatW()*r.HeatUpS+sum, 1e-9)
	h := r.Fraction(Hearts)
	meanW := h.HeatJ / (h.EndS - h.StartS)
	assert.Less(t, meanW, 60e3)
	// 20 gal/h (75.7 L/h) of 68 % takes 26 kW of latent heat, by the latent heats of
	// the two (IAPWS SR1-86; Schroeder et al., J. Phys. Chem. Ref. Data 43 (2014)
	// 043102); a tenth returned and the losses come on top, and the warming of pot
	// and charge.
	latent := 26e3 * 30 / 75.7
	assert.InDelta(t, latent*1.1+in.lossW(r.Curve[0].PotC, r.Curve[0].PotC), meanW, 0.15*meanW)
}

// What the heat does not give is not promised: the run is as at full heat, and
// says how long was asked for.
func TestPaceBeyondTheHeat(t *testing.T) {
	in := secondRun(t)
	full := spirit1(t, in)
	in.Pace.Hearts = recipe.FractionPace{OverS: 60}
	r := spirit1(t, in)
	assert.InEpsilon(t, full.DurationS, r.DurationS, 1e-6)
	assert.InDelta(t, 60, r.Fraction(Hearts).AskedS, 1e-9)
	in.Pace.Hearts = recipe.FractionPace{PowerW: 1e9}
	assert.InEpsilon(t, full.DurationS, spirit1(t, in).DurationS, 1e-6)
}

// With live steam a slower run condenses more; the balances hold, and the steady
// run is found.
func TestPaceWithSteam(t *testing.T) {
	in := secondRun(t)
	in.Still.HeatedBy = recipe.Direct
	full := spirit1(t, in)
	in.Pace = recipe.Pace{Foreshots: recipe.FractionPace{OverS: 900}, Hearts: recipe.FractionPace{OverS: 3 * 3600}}
	slow := spirit1(t, in)
	holds(t, in.Setting, slow)
	assert.Greater(t, slow.SteamKg, full.SteamKg)
	f := slow.Fraction(Hearts)
	assert.InEpsilon(t, 3*3600, f.EndS-f.StartS, 2e-3)
	r, _, err := Steady(in)
	require.NoError(t, err)
	require.NotContains(t, r.Problems, ProblemNotSteady)
	back := r.Charge.Minus(in.LowWines)
	assert.InDelta(t, back.EthanolKg, r.Feints().EthanolKg, 2e-9*r.Charge.MassKg())
}

// Heads that come as the hearts do take five minutes at least, unless they would
// come slower than the foreshots; what the batch writes for them holds as it stands.
func TestHeadsTakeMinutes(t *testing.T) {
	in := secondRun(t)
	in.Pace.Foreshots, in.Pace.Hearts = recipe.FractionPace{OverS: 15 * 60}, recipe.FractionPace{OverS: 2.5 * 3600}
	in.ForeshotsM3 = 1e-3
	length := func(volumeL float64) float64 {
		in.HeartsFrom = recipe.Cut{By: recipe.ByVolume, VolumeM3: (1 + volumeL) * 1e-3}
		heads := spirit1(t, in).Fraction(Heads)
		assert.InEpsilon(t, volumeL*1e-3, heads.VolumeM3, 1e-3)
		return heads.EndS - heads.StartS
	}
	hearts := spirit1(t, in).Fraction(Hearts)
	litresIn5Min := 1000 * hearts.VolumeM3 / (2.5 * 3600) * 300
	assert.InEpsilon(t, 300, length(0.4), 2e-3, "a litre of foreshots in 15 min is a third of one in 5")
	assert.InEpsilon(t, 300, length(0.9*litresIn5Min), 2e-3)
	assert.Greater(t, length(1.2*litresIn5Min), 330.0)
	assert.InEpsilon(t, 180, length(0.2), 2e-3, "as slow as the foreshots")
	in.Pace.Heads = recipe.FractionPace{OverS: 60}
	assert.InEpsilon(t, 60, length(0.4), 2e-2)
}

// The low wines of a stripping run come in the time, at the flow or with the heat that
// is asked for, and are the same low wines.
func TestStripPace(t *testing.T) {
	in := washRun(t)
	full := strip1(t, in)
	whole := full.Fraction(LowWines)
	took := func(p recipe.FractionPace) (Run, float64) {
		in.Pace = p
		r := strip1(t, in)
		holds(t, in.Setting, r)
		f := r.Fraction(LowWines)
		assert.InDelta(t, whole.EthanolKg, f.EthanolKg, 1e-6)
		return r, f.EndS - f.StartS
	}
	wanted := 2 * (whole.EndS - whole.StartS)
	r, s := took(recipe.FractionPace{OverS: wanted})
	assert.InEpsilon(t, wanted, s, 2e-2) // strength falls far: drops and mixture differ by the contraction
	assert.InDelta(t, wanted, r.Fraction(LowWines).AskedS, 1e-9)
	_, s = took(recipe.FractionPace{FlowM3S: whole.VolumeM3 / wanted})
	assert.InEpsilon(t, wanted, s, 2e-2)
	_, s = took(recipe.FractionPace{PowerW: in.heatW() / 2})
	assert.Greater(t, s, whole.EndS-whole.StartS)
	_, s = took(recipe.FractionPace{Full: true})
	assert.InEpsilon(t, whole.EndS-whole.StartS, s, 1e-12)
	_, s = took(recipe.FractionPace{OverS: 60})
	assert.InEpsilon(t, whole.EndS-whole.StartS, s, 1e-9, "no more than full heat")
}

// The secant is trusted from the flow as it is, without it, to the whole gap with it, and half
// the gap is taken where it says nothing, goes the other way or goes too far.
func TestSecant(t *testing.T) {
	for _, c := range []struct{ dFlow, dGap, gap, want float64 }{
		{1, -2, 3, 1.5},     // half way by the slope itself
		{1, -4, 3, 0.75},    // less than half
		{1, -1, 3, 3},       // the whole of it
		{1, -0.999, 3, 1.5}, // more than the whole
		{1, 2, 3, 1.5},      // the other way
		{0, 2, 3, 1.5},      // no step
		{1, 0, 3, 1.5},      // no slope
		{1, -4, -3, -0.75},
	} {
		assert.InDelta(t, c.want, secant(c.dFlow, c.dGap, c.gap), 1e-12, "%+v", c)
	}
}
