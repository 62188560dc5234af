package measure_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/measure"
	"newmake/compile/plan"
)

// Factors: NIST SP 811 (2008), appendix B.8.
func TestValue(t *testing.T) {
	spirit := plan.Lot{VolumeL: 172.49, AbvPct: 72.02, WineGallons: 45.377, Proof: 144}
	for _, c := range []struct {
		q      plan.Quantity
		us, si float64
		usUnit string
		siUnit string
	}{
		{plan.Of(100, plan.Litre), 26.417205, 100, "gal", "L"},
		{spirit.Volume(), 45.377, 172.49, "gal", "L"},
		{spirit.Strength().At(), 144, 72.02, "proof", "% vol"},
		{plan.Of(9.4, plan.AbvPct), 9.4, 9.4, "% abv", "% vol"},
		{plan.Of(100, plan.Kilogram), 220.46226, 100, "lb", "kg"},
		{plan.Of(65, plan.Celsius), 149, 65, "F", "C"},
		{plan.Of(1, plan.CelsiusDiff), 1.8, 1, "F difference", "C difference"},
		{plan.Of(0.5, plan.AbvDiff), 0.5, 0.5, "% vol", "% vol"},
		{plan.Quantity{Value: 1, Unit: plan.AbvDiff, Proof: 2}, 2, 1, "proof", "% vol"},
		{plan.Of(60, plan.LitrePerH), 15.850323, 60, "gal/h", "L/h"},
		{plan.Of(1, plan.CubicMetre), 35.314667, 1, "cu ft", "m3"},
		{plan.Of(1.067, plan.SG), 1.067, 1.067, "SG", "SG"},
		{plan.Of(0.003, plan.SGDiff), 0.003, 0.003, "SG", "SG"},
		{plan.Of(45, plan.Minute), 45, 45, "min", "min"},
	} {
		v, unit := measure.US.Value(c.q)
		assert.InEpsilon(t, c.us, v, 1e-6)
		assert.Equal(t, c.usUnit, unit)
		v, unit = measure.SI.Value(c.q)
		assert.InEpsilon(t, c.si, v, 1e-6)
		assert.Equal(t, c.siUnit, unit)
	}
}
