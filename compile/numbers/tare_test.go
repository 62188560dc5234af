package numbers

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/recipe"
)

// Empty casks of the trade, common practice: 53 gal 100 to 120 lb, 30 gal about 75,
// 15 gal 40 to 50; a butt of 500 L some 90 to 110 kg.
func TestTareGoesWithTheSurface(t *testing.T) {
	const lb, gal = 0.45359237, 3.785411784e-3
	tare := func(m3 float64) float64 {
		return TareKg(recipe.Cask{SizeM3: m3, Kind: &recipe.CaskWood{TareKg: 50}})
	}
	assert.InDelta(t, 110, tare(53*gal)/lb, 10)
	assert.InDelta(t, 75, tare(30*gal)/lb, 5)
	assert.InDelta(t, 45, tare(15*gal)/lb, 5)
	assert.InDelta(t, 92, tare(0.5), 5)
	assert.Equal(t, 43.0, TareKg(recipe.Cask{SizeM3: 0.2, TareKg: 43, Kind: &recipe.CaskWood{TareKg: 50}}), "as it is written")
	assert.Zero(t, TareKg(recipe.Cask{}), "no wood")
}
