package still

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

// Copper takes up 385 J/(kg K) near 25 C: CRC Handbook, from memory. A still of
// 1 m3 that states no metal has 1.5 times the copper of a sphere of that volume, 4 mm
// thick: 4.836 m2, 8,960 kg/m3.
func TestTheMetalTakesUpHeat(t *testing.T) {
	water := stream.Stream{WaterKg: 100}
	stated := Setting{Still: recipe.Vessel{HoldsM3: 1, MetalKg: 300}}
	assert.InDelta(t, 300*385.0, stated.inertHeatCapacity(water), 1)
	assert.InDelta(t, 260, Setting{Still: recipe.Vessel{HoldsM3: 1}}.metalKg(), 0.1)
}
