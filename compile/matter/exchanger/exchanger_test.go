package exchanger

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	_ "newmake/lang/testflag"
)

// Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 11.1 (from
// memory): oil of 0.1 kg/s and 2,131 J/(kg K) cooled from 100 to 60 C by 0.2 kg/s of
// water of 30 C, which leaves at 40.2 C; U 38.1 W/(m2 K) wants 65.9 m of a tube of
// 25 mm.
func TestCounterCurrentAgainstATextbook(t *testing.T) {
	water := Water{InC: 30, capWK: 0.2 * 4178}
	out, heat := water.Counter(38.1*math.Pi*0.025*65.9, 0.1*2131, 100)
	assert.InDelta(t, 60, out, 0.1)
	assert.InDelta(t, 8524, heat, 20)
	assert.InDelta(t, 40.2, water.OutC(heat), 0.05)
}

// Effectiveness against the balance of heat integrated along the surface, from the
// end at which the liquid leaves: dT = (T - w) U dA / C on either side.
func TestCounterCurrentAgainstTheBalance(t *testing.T) {
	for _, c := range []struct{ surface, liquid, water float64 }{
		{2400, 4000, 8000}, {2400, 8000, 4000}, {500, 4000, 4000}, {20000, 4000, 6000}, {4000, 4000, 4000 * (1 + 1e-7)},
	} {
		w := Water{InC: 14, capWK: c.water}
		got, heat := w.Counter(c.surface, c.liquid, 65)
		liquid, water := got, 14.0
		const n = 20000
		for range n {
			slope := func(l, w float64) (float64, float64) {
				q := (l - w) * c.surface / n
				return q / c.liquid, q / c.water
			}
			dl, dw := slope(liquid, water)
			dl, dw = slope(liquid+dl/2, water+dw/2)
			liquid, water = liquid+dl, water+dw
		}
		assert.InDelta(t, 65, liquid, 1e-3, "%+v", c)
		assert.InDelta(t, water, w.OutC(heat), 1e-3, "%+v", c)
	}
}

// A vessel is cooled by no more than the water can carry, and by all of the surface
// when there is water enough.
func TestVessel(t *testing.T) {
	assert.Zero(t, WaterOf(14, 0).Vessel(1000))
	assert.Zero(t, WaterOf(14, 1e-3).Vessel(0))
	scarce := WaterOf(14, 1e-5)
	assert.InEpsilon(t, scarce.capWK, scarce.Vessel(1e6), 1e-9)
	assert.InEpsilon(t, 1000, WaterOf(14, 10).Vessel(1000), 1e-4)
	out, heat := WaterOf(14, 0).Counter(1000, 4000, 65)
	assert.Equal(t, 65.0, out)
	assert.Zero(t, heat)
	out, _ = WaterOf(14, 1e-3).Counter(1000, 0, 65)
	assert.Equal(t, 65.0, out)
}
