package exchanger

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/matter/fluid"
)

// Effectiveness and transfer units give what the log mean temperature difference
// gives: the heat is surface times coefficient times that difference.
func TestCounterFlowAgainstTheLogMean(t *testing.T) {
	for _, c := range []struct{ hotC, hotWK, coldC, coldWK, surfaceWK float64 }{
		{64, 1300, 14, 2600, 3000}, {64, 2600, 14, 1300, 3000}, {90, 500, 5, 5000, 400}, {64, 1300, 14, 1300.001, 2000},
	} {
		out := CounterHotOutC(c.hotC, c.hotWK, c.coldC, c.coldWK, c.surfaceWK)
		heat := c.hotWK * (c.hotC - out)
		coldOut := c.coldC + heat/c.coldWK
		a, b := c.hotC-coldOut, out-c.coldC
		mean := (a + b) / 2
		if math.Abs(a-b) > 1e-3 {
			mean = (a - b) / math.Log(a/b)
		}
		assert.InEpsilon(t, c.surfaceWK*mean, heat, 1e-5, "%+v", c)
	}
	assert.InDelta(t, CounterHotOutC(64, 1300, 14, 1300, 2000), CounterHotOutC(64, 1300, 14, 1300.0001, 2000), 1e-4, "streams alike")
	assert.Equal(t, 64.0, CounterHotOutC(64, 1300, 14, 0, 2000), "no water")
}

func TestWaterForAWort(t *testing.T) {
	const hotWK, surfaceWK = 1300, 5000
	m3S, ok := CounterWaterM3S(64, hotWK, 20, 14, 0.001, surfaceWK)
	assert.True(t, ok)
	perM3 := fluid.WaterDensity(14) * fluid.WaterHeatCapacity(14)
	assert.InDelta(t, 20, CounterHotOutC(64, hotWK, 14, m3S*perM3, surfaceWK), 1e-6)
	assert.Less(t, m3S, 0.001)
	coldest := CounterHotOutC(64, hotWK, 14, 0.001*perM3, surfaceWK)
	_, ok = CounterWaterM3S(64, hotWK, coldest+0.001, 14, 0.001, surfaceWK)
	assert.True(t, ok)
	_, ok = CounterWaterM3S(64, hotWK, coldest-0.001, 14, 0.001, surfaceWK)
	assert.False(t, ok)
}
