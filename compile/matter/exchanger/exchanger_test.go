package exchanger

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/matter/fluid"
	_ "newmake/lang/testflag"
)

// A vessel is cooled by no more than the water can carry, and by all of the surface
// when there is water enough.
func TestVessel(t *testing.T) {
	assert.Zero(t, VesselWK(14, 0, 1000))
	assert.Zero(t, VesselWK(14, 1e-3, 0))
	carried := 1e-5 * fluid.WaterDensity(14) * fluid.WaterHeatCapacity(14)
	assert.InEpsilon(t, carried, VesselWK(14, 1e-5, 1e6), 1e-9)
	assert.InEpsilon(t, 1000, VesselWK(14, 10, 1000), 1e-4)
}

// The conductance against the balance of heat integrated along the surface: the water
// warms by (T - w) U dA / C on its way, and carries off what it has warmed by.
func TestVesselAgainstTheBalance(t *testing.T) {
	const hotC, inC, steps = 65, 14, 20000
	for _, c := range []struct{ surfaceWK, flowWK float64 }{{2400, 8000}, {4000, 4000}, {20000, 4000}} {
		slope := func(waterC float64) float64 { return (hotC - waterC) * c.surfaceWK / steps / c.flowWK }
		waterC := float64(inC)
		for range steps {
			waterC += slope(waterC + slope(waterC)/2)
		}
		assert.InEpsilon(t, (waterC-inC)*c.flowWK/(hotC-inC), conductance(c.surfaceWK, c.flowWK), 1e-6, "%+v", c)
	}
}
