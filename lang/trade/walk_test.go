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

// What a bed of grain keeps back is not drawn off: 0.9 L of wort a kilogram.
func TestABedKeepsWort(t *testing.T) {
	for _, c := range []struct{ liquorM3, drawnM3 float64 }{{0.1, 0.01}, {0.0899, 0}} {
		b := &recipe.Batch{Plant: &recipe.Plant{AmbientC: 20}, Bill: recipe.Bill{Lines: []recipe.BillLine{{MassKg: 100}}}}
		b.Mash.Steps = []recipe.MashStep{{Verb: recipe.MashWater, VolumeM3: c.liquorM3, TempC: 70}, {Verb: recipe.MashAdd, Grains: []int{0}}, {Verb: recipe.MashDrain}}
		w := walkThrough(&rules{batch: b})
		assert.InDelta(t, c.drawnM3, w.drained, 1e-12)
		assert.InDelta(t, c.liquorM3-c.drawnM3, w.last().liquorM3, 1e-12)
	}
}

// A law's limit of a cask stands in litres, and for a house in gallons in them too.
func TestCaskLimit(t *testing.T) {
	assert.Equal(t, "700 L", (&rules{batch: &recipe.Batch{Units: recipe.SI}}).caskLimit(0.7))
	assert.Regexp(t, `^700 L \(18[45](\.[0-9]+)? gal\)$`, (&rules{batch: &recipe.Batch{Units: recipe.US}}).caskLimit(0.7))
}
