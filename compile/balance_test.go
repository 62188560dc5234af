package compile

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/starch"
	"newmake/compile/matter/stream"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/report"
	"newmake/compile/stage/mash"
	"newmake/compile/stage/schedule"
	"newmake/compile/stage/still"
	"newmake/compile/work"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// exactly is the tolerance of a balance: what doubles leave after a few
// thousand steps of integration.
const exactly = 1e-9

// same holds that two masses are the same, to exactly of a whole.
func same(t *testing.T, want, got, whole float64, what string) {
	t.Helper()
	assert.LessOrEqual(t, math.Abs(want-got), exactly*math.Max(whole, 1e-9), "%s: %.12g and %.12g", what, want, got)
}

// parts are the components of a stream that a still only carries along.
func parts(s stream.Stream) map[string]float64 {
	return map[string]float64{
		"ethanol": s.EthanolKg, "water": s.WaterKg, "glucose": s.GlucoseKg, "maltose": s.MaltoseKg, "maltotriose": s.MaltotrioseKg,
		"dextrin": s.DextrinKg, "raw starch": s.RawStarchKg, "gelatinized": s.GelStarchKg, "solubles": s.SolublesKg, "backset": s.BacksetKg,
		"acid": s.AcidKg, "yeast": s.YeastKg, "insolubles": s.InsolublesKg,
	}
}

func sameParts(t *testing.T, want, got stream.Stream, what string) {
	t.Helper()
	g := parts(got)
	for name, kg := range parts(want) {
		same(t, kg, g[name], want.MassKg(), what+": "+name)
	}
}

// starchIn counts starch and what it has become as starch.
func starchIn(s stream.Stream) float64 {
	return s.RawStarchKg + s.GelStarchKg + s.DextrinKg/starch.PerDextrin + s.MaltotrioseKg/starch.PerMaltotriose +
		s.MaltoseKg/starch.PerMaltose + s.GlucoseKg/starch.PerGlucose
}

// Whatever goes into a stage comes out of it, component by component, all the
// way from the grain to the casks.
func TestMassThroughEveryStage(t *testing.T) {
	randomBatches(t, 60, func(t *testing.T, b *recipe.Batch) {
		n, p := staged(t, b)
		grain, water, backset := report.MashTakes(b, n.Mashed.BoilC)
		in := grain.Plus(water).Plus(backset).Plus(n.Mashed.KeptIn)
		in.WaterKg += n.Mashed.SteamKg
		wort, draff := n.Mashed.Out, n.Mashed.Draff
		out := wort
		if n.Mashed.Lautered {
			out = wort.Plus(draff).Plus(n.Mashed.Kept.Stream)
		}
		whole := in.MassKg()
		same(t, whole, out.MassKg(), whole, "mash")
		same(t, starchIn(in), starchIn(out), whole, "mash: starch and what it became")
		same(t, in.SolublesKg, out.SolublesKg, whole, "mash: solubles")
		same(t, in.BacksetKg, out.BacksetKg, whole, "mash: backset's solids")
		same(t, in.InsolublesKg, out.InsolublesKg, whole, "mash: husk and fibre")

		f := n.Fermented
		same(t, wort.MassKg()+p.Ferment.PitchKg, f.Wash.MassKg()+f.CO2Kg+f.VentEthanol+f.VentWater, whole, "ferment")
		same(t, wort.BacksetKg, f.Wash.BacksetKg, whole, "ferment: backset's solids")
		same(t, wort.InsolublesKg, f.Wash.InsolublesKg, whole, "ferment: husk and fibre")
		same(t, wort.RawStarchKg, f.Wash.RawStarchKg, whole, "ferment: raw starch")

		washIn := f.Wash
		washIn.WaterKg += n.Stripped.Sum(func(r still.Run) float64 { return r.SteamKg })
		sameParts(t, washIn, n.Stripped.LowWines.Plus(n.Stripped.PotAle()), "stripping run")

		spirits := float64(b.Spirit.Charges)
		charge := n.Distilled.Charge.Scale(spirits)
		sameParts(t, n.Stripped.LowWines.Plus(n.Distilled.Returned.Scale(spirits)).Plus(n.Distilled.Water.Scale(spirits)), charge, "spirit charge")
		over := n.Distilled.Residue
		for _, f := range n.Distilled.Fractions {
			over = over.Plus(f.Stream)
		}
		charge.WaterKg += spirits * n.Distilled.SteamKg
		sameParts(t, charge, over.Scale(spirits), "spirit run")
		if b.Spirit.Feints && !b.Today.FeintsSaid && !has(n.Distilled.Problems, still.ProblemNotSteady) {
			// Steady finds the feints to 1e-9 of the charge: twice that here.
			feints := n.Distilled.Feints()
			assert.InDelta(t, n.Distilled.Returned.EthanolKg, feints.EthanolKg, 2*exactly*charge.MassKg(), "feints that return are those that leave")
			assert.InDelta(t, n.Distilled.Returned.WaterKg, feints.WaterKg, 2*exactly*charge.MassKg())
		}

		if p.Reduction == nil {
			return
		}
		entry := n.Distilled.Hearts
		entry.WaterKg += p.Reduction.WaterKg
		same(t, n.Distilled.Hearts.MassKg()+p.Reduction.WaterKg, entry.MassKg(), whole, "reduction")
		k := p.Cask
		filled := k.Leftover.PureL
		if k.Fill != nil {
			filled += float64(k.Casks) * k.Fill.PureL
			if k.LastFill != nil {
				filled += k.LastFill.PureL - k.Fill.PureL
			}
		}
		same(t, entry.PureAlcoholM3()*lot.LitresPerM3, filled, filled, "casks and what is left over")
	})
}

func has(all []still.Problem, p still.Problem) bool {
	for _, x := range all {
		if x == p {
			return true
		}
	}
	return false
}

// The streams that a plan shows are those of the stages, and every batch of the
// generator makes whisky.
func TestRandomBatchesMakeWhisky(t *testing.T) {
	lautered, feints, steam, preheated := 0, 0, 0, 0
	randomBatches(t, 60, func(t *testing.T, b *recipe.Batch) {
		p, list := Compile(b)
		require.NotNil(t, p, list.Error())
		for _, d := range list {
			assert.NotEqual(t, diag.Error, d.Severity, d.Summary)
		}
		assert.Greater(t, p.Yield.OfTheoryPct, 50.0)
		assert.Less(t, p.Yield.OfTheoryPct, 92.0)
		assert.Positive(t, p.Summary.HeartsVolumeL)
		assert.InDelta(t, p.Ferment.PureL, 1000*p.Stream(plan.StreamWash).EthanolKg/fluid.Density(1, 20), 0.006)
		if p.Mash.Lautered {
			lautered++
		}
		if p.Spirit.FeintsReturned != nil {
			feints++
		}
		if p.Strip.Preheat != nil {
			preheated++
		}
		if b.Spirit.Still.HeatedBy == recipe.Direct {
			steam++
		}
	})
	for _, n := range []int{lautered, feints, steam, preheated} {
		assert.Greater(t, n, 5, "the generator makes all sorts")
		assert.Less(t, n, 55)
	}
}

// The work of one batch is done one thing after another, and what it heats goes by the
// boiler: it never wants a vessel twice at once, nor more heat than there is. So a plan
// of one batch has no word for either; a season has.
func TestOneBatchSharesNothing(t *testing.T) {
	randomBatches(t, 60, func(t *testing.T, b *recipe.Batch) {
		b.Plant.BoilerW = 30e3
		n, jobs, err := stages(b, &numbers.Memo{}, Checked, work.Hours{})
		require.NoError(t, err)
		p := report.Plan(n)
		clock, err := work.ClockOf(n.Batch)
		require.NoError(t, err)
		_, slots := clock.Scheduled(n.Batch, work.All(jobs, n, p.Cask, p.Reduction), n.Fermented.Curve)
		assert.Empty(t, schedule.Conflicts(slots, 0, b.Plant.BoilerW))
	})
}

// Heat goes somewhere: into what the stage gives, into the cooling, or out
// through the wall. Heat capacities and enthalpies are taken here from package
// fluid, not from the stages.
func TestHeatThroughEveryStage(t *testing.T) {
	randomBatches(t, 60, func(t *testing.T, b *recipe.Batch) {
		n, _ := staged(t, b)
		if !n.Mashed.Lautered {
			mashHeat(t, n)
		}
		f := n.Fermented
		heat := f.HeatJ + f.WarmJ - f.CoolJ - f.LossJ - f.VentJ
		assert.InDelta(t, heat, f.HeatCapacityJK*(f.Wash.TempC-n.Mashed.Out.TempC), 1e-9*(f.HeatJ+f.CoolJ), "ferment")
		warmedK := 0.0
		if h := n.Stripped.Preheat; h != nil {
			warmedK = h.ToC - h.FromC
		}
		runHeat(t, "stripping run", b.Strip.Still, n.Stripped.Run, warmedK)
		runHeat(t, "spirit run", b.Spirit.Still, n.Distilled.Run, 0)
	})
}

// The mash's account: water at 4186.8 J/(kg K), metal at 480, dissolved solids
// of backset at 0.38 of water, from 0 C.
func mashHeat(t *testing.T, n *numbers.Batch) {
	const waterJKgK, metalJKgK, solidsJKgK = 4186.8, 480.0, 0.38 * 4186.8
	r, b := n.Mashed, n.Batch
	metal := mash.MetalKg(*b.Mash.Cooker) * metalJKgK
	capacity, in := metal, metal*b.Plant.AmbientC+r.HeatJ+r.SlakingJ
	_, water, backset := report.MashTakes(b, r.BoilC)
	capacity += waterJKgK * (water.WaterKg + backset.WaterKg + r.SteamKg)
	capacity += solidsJKgK * backset.BacksetKg
	in += waterJKgK * r.SteamKg * b.Plant.WaterC
	for _, l := range b.Bill.Lines {
		jk := l.MassKg * fluid.GrainHeatCapacity(l.Grain.Moisture)
		capacity += jk
		in += jk * b.Plant.AmbientC
	}
	for _, s := range b.Mash.Steps {
		switch s.Verb {
		case recipe.MashWater: // HeatJ has what was above the supply
			in += waterJKgK * s.VolumeM3 * fluid.WaterDensity(s.TempC) * min(s.TempC, b.Plant.WaterC)
		case recipe.MashBackset:
			in += (waterJKgK*backset.WaterKg + solidsJKgK*backset.BacksetKg) * s.TempC
		}
	}
	assert.InEpsilon(t, in, capacity*r.Out.TempC+r.CoolJ+r.LossJ, 1e-6, "mash")
}

func enthalpy(s stream.Stream, tempC float64) float64 {
	m := s.EthanolKg + s.WaterKg
	if m == 0 {
		return 0
	}
	return m * fluid.LiquidEnthalpy(s.EthanolKg/m, tempC)
}

// runHeat is the account of one charge, from the fire to the stop.
// runHeat is of a charge that was warmed by warmedK on its way in, which the metal was not.
func runHeat(t *testing.T, what string, v *recipe.Vessel, r still.Run, warmedK float64) {
	const copperJKgK = 385.0
	inert := r.Charge.DissolvedKg()*fluid.SugarHeatCapacity(1, 60) + r.Charge.SuspendedKg()*fluid.GrainHeatCapacity(0) + v.MetalKg*copperJKgK
	in := r.HeatJ + enthalpy(r.Charge, r.Charge.TempC) + r.SteamKg*fluid.WaterEnthalpy(100)
	out := r.CondenserJ + r.HeadJ + r.LossJ + inert*(r.Residue.TempC-r.Charge.TempC) + v.MetalKg*copperJKgK*warmedK + enthalpy(r.Residue, r.Residue.TempC)
	for _, f := range r.Fractions {
		out += enthalpy(f.Stream, f.TempC)
	}
	assert.InEpsilon(t, in, out, 1e-6, what)
}
