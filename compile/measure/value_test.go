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

// TestFigures: the number that is said, alone and in one unit, with as many decimals.
func TestFigures(t *testing.T) {
	volume := plan.Of(1022.06, plan.Litre)
	for _, c := range []struct {
		u           measure.Units
		q           plan.Quantity
		figures, of string
	}{
		{measure.US, volume, "270", "11"}, {measure.SI, volume, "1022", "40"},
		{measure.US, plan.Of(14.4, plan.Celsius), "58", "2"}, {measure.SI, plan.Of(14.4, plan.Celsius), "14.4", "1"},
		{measure.US, plan.Of(5.21, plan.PH), "5.2", "0.2"}, {measure.US, plan.Of(1.0004, plan.SG), "1.000", "0.003"},
		{measure.US, plan.Of(182.84, plan.Kilogram), "403.1", "7.7"}, {measure.US, plan.Of(0.1, plan.Kilogram), "0.2", "7.7"}, {measure.SI, plan.Of(0.04, plan.Kilogram), "0.04", "3.5"},
		{measure.US, plan.Of(211.2, plan.LitrePerH), "56", "20"},
	} {
		assert.Equal(t, c.figures, c.u.Figures(c.q), "%v", c.q)
		off := map[plan.Unit]plan.Quantity{plan.Litre: plan.Of(40.24, plan.Litre), plan.Celsius: plan.Of(1.2, plan.CelsiusDiff), plan.PH: plan.Of(0.23, plan.PH),
			plan.SG: plan.Of(0.0031, plan.SGDiff), plan.Kilogram: plan.Of(3.5, plan.Kilogram), plan.LitrePerH: plan.Of(65.1, plan.LitrePerH)}[c.q.Unit]
		assert.Equal(t, c.of, c.u.OffFigures(off), "%v", off)
	}
}
