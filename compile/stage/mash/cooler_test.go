package mash

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/matter/fluid"
	"newmake/lang/recipe"
)

// cooled is 2,000 kg of water, in a vessel without metal or loss, cooled from 65 C by
// a coil of 2,400 W/K with 1 kg/s of water.
func cooled(t *testing.T, waterC, toC float64) Input {
	in := plant(t)
	in.Cooker.MetalKg, in.Cooker.LossW, in.AmbientC, in.WaterC = 1e-9, 1e-9, 20, waterC
	in.Cooker.CoolsW = 0
	in.Cooker.Cooler = recipe.Cooler{Surface: recipe.CoilSurface, AreaM2: 6, WM2K: 400, WaterM3S: 1 / fluid.WaterDensity(waterC)}
	in.Steps = []recipe.MashStep{
		{Verb: recipe.MashWater, VolumeM3: 2000 / fluid.WaterDensity(65), TempC: 65},
		{Verb: recipe.MashCool, TempC: toC},
	}
	return in
}

// The time to cool a stirred vessel with water run once through is M c/(m cw e)
// ln((T0-Tw)/(T1-Tw)), e = 1 - exp(-UA/(m cw)): Kern, Process Heat Transfer (1950),
// ch. 18, coil in tank with a non-isothermal cooling medium (from memory). Summer's
// water takes much longer than winter's.
func TestCoolingBySurfaceTakesItsTime(t *testing.T) {
	last := 0.0
	for _, waterC := range []float64{8, 14, 20} {
		r := must(t, cooled(t, waterC, 25))
		step := r.Steps[1]
		cw := fluid.WaterHeatCapacity(waterC)
		e := 1 - math.Exp(-2400/cw)
		want := 2000 * waterJKgK / (cw * e) * math.Log((step.StartC-waterC)/(25-waterC))
		assert.InEpsilon(t, want, step.EndS-step.StartS, 1e-3, "water at %g C", waterC)
		assert.InEpsilon(t, want/fluid.WaterDensity(waterC), r.CoolingWaterM3, 2e-3, "the water runs all the while")
		assert.Equal(t, limitCooling, step.Limit)
		assert.Greater(t, want, last)
		last = want
	}
	assert.InDelta(t, 167, last/60, 1, "minutes; 160 for mash, which holds 4.0 kJ/(kg K)")
}

// A longer time than the surface needs holds it back, and takes less water in all.
func TestCoolingBySurfaceInAWrittenTime(t *testing.T) {
	in := cooled(t, 14, 25)
	fast := must(t, in)
	in.Steps[1].DurationS = 4 * 3600
	slow := must(t, in)
	assert.Equal(t, limitWritten, slow.Steps[1].Limit)
	assert.InDelta(t, 4*3600, slow.Steps[1].EndS-slow.Steps[1].StartS, 1)
	assert.InEpsilon(t, fast.CoolJ, slow.CoolJ, 1e-6)
	assert.Less(t, slow.CoolingWaterM3, in.Cooker.Cooler.WaterM3S*4*3600)
}

// No surface gets within 2 K of its water, in any time: below, it stops there and is
// said.
func TestColdestThatASurfaceReaches(t *testing.T) {
	above, below := must(t, cooled(t, 20, 22.01)), must(t, cooled(t, 20, 21.99))
	assert.Empty(t, above.Problems)
	assert.InDelta(t, 22.01, above.Out.TempC, 1e-6)
	if assert.Len(t, below.Problems, 1) {
		assert.Equal(t, Problem{Step: 1, What: ProblemWarmWater, ToC: 22}, below.Problems[0])
	}
	assert.InDelta(t, 22, below.Out.TempC, 1e-6)
}

// What a house does not say of its surface is the model's for a jacket or a coil.
func TestAJacketPassesLessThanACoil(t *testing.T) {
	in := cooled(t, 14, 25)
	in.Cooker.Cooler.WM2K = 0
	coil := must(t, in)
	in.Cooker.Cooler.Surface = recipe.JacketSurface
	jacket := must(t, in)
	assert.Greater(t, jacket.DurationS, 1.3*coil.DurationS)
}
