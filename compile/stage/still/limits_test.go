package still

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/matter/stream"
	"newmake/lang/diag"
	"newmake/lang/schema"
)

// What a run is refused for, by its own reason, and the figure just inside of it that is
// let pass.
func TestSettingAtItsLimits(t *testing.T) {
	for _, c := range []struct {
		why     string
		in, out func(*Setting, *stream.Stream)
	}{
		{"holds nothing", func(s *Setting, _ *stream.Stream) { s.Still.HoldsM3 = 1e-6 }, func(s *Setting, _ *stream.Stream) { s.Still.HoldsM3 = 0 }},
		{"has no heat", func(s *Setting, _ *stream.Stream) { s.Still.HeatsW = 1e-3 }, func(s *Setting, _ *stream.Stream) { s.Still.HeatsW = 0 }},
		{"below zero", func(s *Setting, _ *stream.Stream) { s.BoilerW = 0 }, func(s *Setting, _ *stream.Stream) { s.BoilerW = -1e-3 }},
		{"below zero", func(s *Setting, _ *stream.Stream) { s.Still.MetalKg = 0 }, func(s *Setting, _ *stream.Stream) { s.Still.MetalKg = -1e-3 }},
		{"below zero", func(s *Setting, _ *stream.Stream) { s.Still.LossW = 0 }, func(s *Setting, _ *stream.Stream) { s.Still.LossW = -1e-3 }},
		{"the head cannot return", func(s *Setting, _ *stream.Stream) { s.Still.Reflux = 0.5 }, func(s *Setting, _ *stream.Stream) { s.Still.Reflux = 0.501 }},
		{"the head cannot return", func(s *Setting, _ *stream.Stream) { s.Still.Reflux = 0 }, func(s *Setting, _ *stream.Stream) { s.Still.Reflux = -0.001 }},
		{"an air pressure", func(s *Setting, _ *stream.Stream) { s.PressurePa = 50e3 }, func(s *Setting, _ *stream.Stream) { s.PressurePa = 49.9e3 }},
		{"an air pressure", func(s *Setting, _ *stream.Stream) { s.PressurePa = 110e3 }, func(s *Setting, _ *stream.Stream) { s.PressurePa = 110.1e3 }},
		{"air at", func(s *Setting, _ *stream.Stream) { s.AmbientC = -40 }, func(s *Setting, _ *stream.Stream) { s.AmbientC = -40.1 }},
		{"air at", func(s *Setting, _ *stream.Stream) { s.AmbientC = 50 }, func(s *Setting, _ *stream.Stream) { s.AmbientC = 50.1 }},
		{"air at", func(s *Setting, _ *stream.Stream) { s.WaterC = 0 }, func(s *Setting, _ *stream.Stream) { s.WaterC = -0.1 }},
		{"air at", func(s *Setting, _ *stream.Stream) { s.WaterC = 50 }, func(s *Setting, _ *stream.Stream) { s.WaterC = 50.1 }},
		{"nothing to distil", func(_ *Setting, c *stream.Stream) { c.WaterKg = 1e-3 }, func(_ *Setting, c *stream.Stream) { c.WaterKg = 0 }},
		{"nothing to distil", func(_ *Setting, c *stream.Stream) { c.EthanolKg = 0 }, func(_ *Setting, c *stream.Stream) { c.EthanolKg = -1e-3 }},
		{"at 0 C or above", func(_ *Setting, c *stream.Stream) { c.TempC = 0 }, func(_ *Setting, c *stream.Stream) { c.TempC = -0.1 }},
		{"not a number", func(s *Setting, _ *stream.Stream) { s.BoilerW = 1e9 }, func(s *Setting, _ *stream.Stream) { s.BoilerW = math.Inf(1) }},
		{"not a number", func(_ *Setting, c *stream.Stream) { c.TempC = 20 }, func(_ *Setting, c *stream.Stream) { c.TempC = math.NaN() }},
	} {
		check := func(change func(*Setting, *stream.Stream)) error {
			s, charge := setting(1, 10e3, 0.1), stream.Stream{EthanolKg: 10, WaterKg: 90, TempC: 20}
			change(&s, &charge)
			return s.check(charge)
		}
		assert.NoError(t, check(c.in), c.why)
		assert.ErrorContains(t, check(c.out), c.why)
	}
}

// What a text may say of a head is what can be computed.
func TestRefluxOfATextIsComputed(t *testing.T) {
	limits := schema.Language.Find("plant").Block.Find("still").Block.Find("reflux").Limits
	at := slices.IndexFunc(limits, func(l schema.Limit) bool { return l.Severity == diag.Error })
	assert.Equal(t, []float64{0, MostReflux}, []float64{limits[at].Low, limits[at].High})
}

// The middle of the cubic through two ends with their slopes: of u cubed, and of what
// is flatter, it is exact.
func TestMiddleOfACubic(t *testing.T) {
	for _, c := range [][4]float64{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}, {2, -3, 5, 7}} {
		f := func(u float64) float64 { return c[0] + u*(c[1]+u*(c[2]+u*c[3])) }
		d := func(u float64) float64 { return c[1] + u*(2*c[2]+u*3*c[3]) }
		for _, ends := range [][2]float64{{0, 1}, {-1, -3}, {2, 2.5}} {
			a, b := ends[0], ends[1]
			assert.InDelta(t, f((a+b)/2), middle(b-a, f(a), d(a), f(b), d(b)), 1e-12, "%v from %g to %g", c, a, b)
		}
	}
}
