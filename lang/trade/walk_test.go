package trade

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/recipe"
)

// Grain that goes in first lies at the temperature of the house, and cools what is let on
// to it from there.
func TestDryGrainIsAsWarmAsTheHouse(t *testing.T) {
	b := &recipe.Batch{Plant: &recipe.Plant{AmbientC: 20}, Bill: recipe.Bill{Lines: []recipe.BillLine{{MassKg: 100}}}}
	b.Mash.Steps = []recipe.MashStep{{Verb: recipe.MashAdd, Grains: []int{0}}, {Verb: recipe.MashWater, VolumeM3: 0.3, TempC: 70}}
	w := walkThrough(&rules{batch: b})
	assert.InDelta(t, 20, w.moments[0].afterC, 1e-12)
	water, grain := 300*waterHeat, 100*grainHeat
	assert.InDelta(t, (water*70+grain*20)/(water+grain), w.moments[1].afterC, 1e-9)
}
