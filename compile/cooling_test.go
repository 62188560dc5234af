package compile

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

func says(t *testing.T, code diag.Code, change func(*recipe.Batch)) bool {
	_, list := Compile(edited(t, change))
	return slices.ContainsFunc(list, func(d diag.Diagnostic) bool { return d.Code == code })
}

// The water's own temperature bounds what it cools, on both sides of the bound.
func TestColdestReachable(t *testing.T) {
	hold := func(over float64) func(*recipe.Batch) {
		return func(b *recipe.Batch) { b.Plant.WaterC = b.Ferm.HoldHighC - over }
	}
	assert.True(t, says(t, diag.CodeHoldCold, hold(1.99)))
	assert.False(t, says(t, diag.CodeHoldCold, hold(2.01)))
	distillate := func(over float64) func(*recipe.Batch) {
		return func(b *recipe.Batch) { b.Strip.Still.Condenser.DistillateC = b.Plant.WaterC + over }
	}
	assert.True(t, says(t, diag.CodeDistillateWarm, distillate(4.99)))
	assert.False(t, says(t, diag.CodeDistillateWarm, distillate(5.01)))
}

// A supply that warms in summer: the same batch is done in winter, and not in August.
func TestTheWaterOfTheDay(t *testing.T) {
	in := func(month int) func(*recipe.Batch) {
		return func(b *recipe.Batch) {
			last(b).TempC, b.Start.Month = 24, month
			b.Plant.WaterC, b.Plant.WarmestC, b.Plant.WarmestIn = 8, 23, 8
		}
	}
	assert.False(t, says(t, diag.CodeCannotCool, in(2)))
	assert.True(t, says(t, diag.CodeCannotCool, in(8)))
	winter, summer := planned(t, edited(t, in(2))), planned(t, edited(t, in(7)))
	assert.Greater(t, summer.Plant.WaterC, winter.Plant.WaterC+10)
	assert.Greater(t, summer.Mash.Hours, winter.Mash.Hours)
}

// Condenser water goes by how warm it may leave: half the rise, twice the water.
func TestCondenserWaterByItsOutlet(t *testing.T) {
	out := func(rise float64) float64 {
		return planned(t, edited(t, func(b *recipe.Batch) { b.Strip.Still.Condenser.WaterOutC = b.Plant.WaterC + rise })).Strip.CoolingWaterL
	}
	assert.InEpsilon(t, 2, out(20)/out(40), 2e-3)
	usual := planned(t, edited(t, func(b *recipe.Batch) { b.Strip.Still.Condenser = recipe.Condenser{} })).Strip.CoolingWaterL
	assert.InEpsilon(t, usual, out(30), 1e-6)

	// Cooler distillate gives off more: 40 % of a litre cooled by 20 K more.
	cold := func(distillateC float64) float64 {
		p := planned(t, edited(t, func(b *recipe.Batch) {
			b.Plant.WaterC, b.Strip.Still.Condenser.DistillateC = 5, distillateC
		}))
		return p.Strip.CoolKWh
	}
	assert.Greater(t, cold(12), cold(25))
}
