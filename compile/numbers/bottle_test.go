package numbers

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/recipe"
)

// Where neither the batch nor a standard says, a bottle has 40 % by volume, one gauged by
// US proof 80 proof, which is of 60 F; it is the bottle that is usual there.
func TestUsualBottle(t *testing.T) {
	for _, c := range []struct {
		what    string
		batch   recipe.Batch
		abv, m3 float64
	}{
		{"in litres", recipe.Batch{Units: recipe.SI, Gauge: recipe.SI}, 0.400, 0.700e-3},
		{"in gallons", recipe.Batch{Units: recipe.US, Gauge: recipe.US}, 0.400, 0.750e-3},
		{"as written", recipe.Batch{Cask: recipe.Cask{BottleM3: 0.5e-3, BottleAt: recipe.Strength{Value: 0.46}}}, 0.460, 0.500e-3},
	} {
		assert.InDelta(t, c.abv, BottleABV(&c.batch), 1e-3, c.what)
		assert.InDelta(t, c.m3, BottleM3(&c.batch), 1e-12, c.what)
	}
	assert.InDelta(t, 0.400, BottleABV(&recipe.Batch{Gauge: recipe.SI}), 1e-9)
	assert.NotEqual(t, 0.4, BottleABV(&recipe.Batch{Gauge: recipe.US}), "80 proof at 60 F is a little else at 20 C")
}
