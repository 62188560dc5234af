package mash

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/starch"
	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

// steamed is the bourbon with live steam.
func steamed(t testing.TB) Input {
	in := bourbon(t)
	in.Cooker.HeatedBy = recipe.Direct
	return in
}

func all(t testing.TB) map[string]Input {
	return map[string]Input{"bourbon": bourbon(t), "steamed": steamed(t), "malt": maltWhisky(t)}
}

// Starch, counted as starch, and water, free and bound, in and out.
func TestMassIsConserved(t *testing.T) {
	for name, in := range all(t) {
		r := must(t, in)
		starchIn, sugarsIn, solublesIn, dryIn, waterIn, backsetIn := 0.0, 0.0, 0.0, 0.0, r.SteamKg, 0.0
		for _, l := range in.Bill.Lines {
			g, dry := l.Grain, l.MassKg*(1-l.Grain.Moisture)
			starchIn += dry * g.Starch
			sugarsIn += dry * g.Sugars
			solublesIn += dry * g.Solubles
			dryIn += dry
			waterIn += l.MassKg - dry
		}
		for _, s := range in.Steps {
			switch s.Verb {
			case recipe.MashWater:
				waterIn += s.VolumeM3 * fluid.WaterDensity(s.TempC)
			case recipe.MashBackset:
				solids := in.Model.Values["backset-solids"]
				kg := s.VolumeM3 * fluid.SolutionDensity(solids, s.TempC)
				waterIn += kg * (1 - solids)
				backsetIn += kg * solids
			}
		}
		out := r.Out.Plus(r.Draff)
		asStarch := func(w stream.Stream) float64 {
			return w.RawStarchKg + w.GelStarchKg + w.DextrinKg/starch.PerDextrin + w.MaltotrioseKg/starch.PerMaltotriose +
				w.MaltoseKg/starch.PerMaltose + w.GlucoseKg/starch.PerGlucose
		}
		require.InEpsilon(t, starchIn+sugarsIn/starch.PerGlucose, asStarch(out), 1e-9, name)
		require.InEpsilon(t, solublesIn, out.SolublesKg, 1e-9, name)
		if backsetIn > 0 {
			require.InEpsilon(t, backsetIn, out.BacksetKg, 1e-9, name)
		}
		require.InEpsilon(t, dryIn+waterIn+backsetIn, out.MassKg(), 1e-9, name)
	}
}

// Heat in, heat out, heat that stays. Reckoned from the input and the answer,
// from 0 C.
func TestHeatBalanceCloses(t *testing.T) {
	for name, in := range all(t) {
		k, err := starch.ConstantsFrom(in.Model)
		require.NoError(t, err)
		c, err := constantsFrom(in.Model)
		require.NoError(t, err)
		m := newCooker(in, c, k, starch.Tolerance)
		for i := range in.Steps {
			require.NoError(t, m.do(i))
		}
		r := m.finish()
		heatIn := m.metalJK*in.AmbientC + r.SlakingJ + r.HeatJ + r.SteamKg*waterJKgK*in.WaterC
		for _, l := range in.Bill.Lines {
			heatIn += grainJK(l.Grain, l.MassKg) * in.AmbientC
		}
		for _, s := range in.Steps {
			switch s.Verb {
			case recipe.MashWater: // HeatJ holds what was above the supply's temperature
				heatIn += s.VolumeM3 * fluid.WaterDensity(s.TempC) * waterJKgK * math.Min(s.TempC, in.WaterC)
			case recipe.MashBackset:
				kg := s.VolumeM3 * fluid.SolutionDensity(c.backsetSolids, s.TempC)
				heatIn += kg * ((1-c.backsetSolids)*waterJKgK + c.backsetSolids*backsetJKgK) * s.TempC
			}
		}
		stays := m.heatCapacityJK(&m.tun)*m.tun.tempC + m.heatCapacityJK(&m.worts)*m.worts.tempC
		assert.InEpsilon(t, heatIn, stays+r.CoolJ+r.LossJ, 1e-6, name)
		assert.Positive(t, r.LossJ)

		steps := 0.0
		for _, s := range r.Steps {
			steps += s.HeatJ - s.CoolJ
		}
		assert.InEpsilon(t, r.HeatJ-r.CoolJ, steps, 1e-9, name)
	}
}

// A tolerance a hundred times finer changes nothing in four digits.
func TestStepOfTimeIsFineEnough(t *testing.T) {
	for name, in := range all(t) {
		coarse, err := run(in, starch.Tolerance)
		require.NoError(t, err)
		fine, err := run(in, starch.Tolerance/100)
		require.NoError(t, err)
		same := func(a, b float64, what string) { t.Helper(); assert.InEpsilon(t, b, a, 2e-5, "%s: %s", name, what) }
		same(coarse.Conversion, fine.Conversion, "conversion")
		same(coarse.Gelatinized, fine.Gelatinized, "gelatinized")
		same(coarse.FermentableShare, fine.FermentableShare, "fermentable")
		same(coarse.Out.MaltoseKg, fine.Out.MaltoseKg, "maltose")
		same(coarse.Out.GlucoseKg, fine.Out.GlucoseKg, "glucose")
		same(coarse.Out.MaltotrioseKg, fine.Out.MaltotrioseKg, "maltotriose")
		same(coarse.Out.DextrinKg, fine.Out.DextrinKg, "dextrin")
		same(coarse.OriginalSG-1, fine.OriginalSG-1, "gravity")
		same(coarse.Enzymes.Alpha, fine.Enzymes.Alpha, "alpha")
		same(coarse.HeatJ, fine.HeatJ, "heat")
		same(coarse.DurationS, fine.DurationS, "duration")
	}
}

func TestSameInputSameResult(t *testing.T) {
	in := bourbon(t)
	assert.Equal(t, must(t, in), must(t, in))
}

func TestCurveIsInOrderAndDense(t *testing.T) {
	for name, in := range all(t) {
		r := must(t, in)
		require.NotEmpty(t, r.Curve)
		assert.Zero(t, r.Curve[0].TimeS)
		assert.InDelta(t, r.DurationS, r.Curve[len(r.Curve)-1].TimeS, 1e-6)
		for i := 1; i < len(r.Curve); i++ {
			gap := r.Curve[i].TimeS - r.Curve[i-1].TimeS
			assert.GreaterOrEqual(t, gap, 0.0, name)
			assert.LessOrEqual(t, gap, 90.0, name)
		}
	}
}
