package numbers

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/recipe"
)

// Where the house does not say, the pace goes with the cooker, down to what a
// person does by hand; what it says holds.
func TestPaceGoesWithTheHouse(t *testing.T) {
	house := func(m3 float64) *recipe.Batch {
		return &recipe.Batch{Plant: &recipe.Plant{}, Mash: recipe.Mash{Cooker: &recipe.Vessel{HoldsM3: m3}}}
	}
	perHour := func(m3 float64) (mill, pump, dig float64) {
		r := Rates(house(m3))
		return r.MillKgS * 3600, r.PumpM3S * 60e3, r.DigKgS * 60
	}
	mill, pump, dig := perHour(2)
	assert.InDelta(t, 600, mill, 1e-9)
	assert.InDelta(t, 100, pump, 1e-9)
	assert.InDelta(t, 10, dig, 1e-9)
	for _, c := range []struct{ least, more float64 }{{0.2, 0.21}, {0.199, 0.21}} {
		mill, pump, _ = perHour(c.least)
		assert.InDelta(t, 60, mill, 1e-9, "a hand mill's")
		assert.InDelta(t, 10, pump, 1e-9, "a small pump's")
		mill, pump, _ = perHour(c.more)
		assert.InDelta(t, 63, mill, 1e-9)
		assert.InDelta(t, 10.5, pump, 1e-9)
	}
	_, _, dig = perHour(0.99)
	assert.InDelta(t, 5, dig, 1e-9, "one shovel's")
	_, _, dig = perHour(1.1)
	assert.InDelta(t, 5.5, dig, 1e-9)

	b := house(2)
	b.Plant.Rates = recipe.Rates{MillKgS: 1, PumpM3S: 2, DigKgS: 3}
	assert.Equal(t, b.Plant.Rates, Rates(b))
}
