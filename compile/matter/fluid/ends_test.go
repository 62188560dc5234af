package fluid

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Beyond the range in which it is known a property stays what it is at the end; within, it
// goes on to the end.
func TestHeldAtTheEnds(t *testing.T) {
	for _, c := range []struct {
		what      string
		of        func(float64) float64
		low, high float64
	}{
		{"pressure", PressureAtElevation, -610, 11000},
		{"heat capacity of water", WaterHeatCapacity, -20, 120},
		{"latent heat of water", LatentHeatWater, 0, 200},
		{"enthalpy of steam", SteamEnthalpy, 0, 200},
		{"density by temperature", func(c float64) float64 { return Density(0.3, c) }, -20, 120},
		{"density by strength", func(w float64) float64 { return Density(w, 20) }, 0, 1},
		{"heat capacity by temperature, hot", func(c float64) float64 { return HeatCapacity(0.3, max(c, 50)) }, -1000, 120},
		{"heat capacity by strength", func(w float64) float64 { return HeatCapacity(w, 20) }, 0, 1},
		{"enthalpy by strength", func(w float64) float64 { return LiquidEnthalpy(w, 50) }, 0, 1},
		{"latent heat by strength", func(y float64) float64 { return VapourLatentHeat(y, 80) }, 0, 1},
		{"density of a solution by sugar", func(s float64) float64 { return SolutionDensity(s, 20) }, 0, 0.85},
		{"density of a wort by strength", func(e float64) float64 { return WortDensity(e, 0, 20) }, 0, 1},
		{"heat capacity of a solution by sugar", func(s float64) float64 { return SugarHeatCapacity(s, 20) }, 0, 1},
		{"heat capacity of a solution by temperature", func(c float64) float64 { return SugarHeatCapacity(0.5, c) }, -20, 120},
		{"heat capacity of grain", GrainHeatCapacity, 0, 1},
		{"heat of slaking", SlakingHeat, 0, 0.16},
	} {
		by := (c.high - c.low) / 20
		if c.low > -1000 {
			assert.Equal(t, c.of(c.low), c.of(c.low-by), "%s below %g", c.what, c.low)
			assert.NotEqual(t, c.of(c.low), c.of(c.low+by), "%s above %g", c.what, c.low)
		}
		assert.Equal(t, c.of(c.high), c.of(c.high+by), "%s above %g", c.what, c.high)
		assert.NotEqual(t, c.of(c.high), c.of(c.high-by), "%s below %g", c.what, c.high)
	}
}

// What sugar takes from the heat capacity of water changes from 0 to 120 C, and not below.
func TestSugarHeatCapacityBelowFreezing(t *testing.T) {
	less := func(c float64) float64 { return WaterHeatCapacity(c) - SugarHeatCapacity(1, c) }
	assert.InDelta(t, 2511, less(-0.5), 1e-9)
	assert.InDelta(t, 2511, less(0), 1e-9)
	assert.InDelta(t, 2511-7.5*0.5, less(0.5), 1e-9)
}

// Gravities below that of water give a negative extract, to -10 %.
func TestPlatoEnds(t *testing.T) {
	at := func(extract float64) float64 { return SG(WaterDensity(20) + rise(extract)) }
	for extract, ok := range map[float64]bool{-0.0999: true, -0.1001: false, 0.8499: true} {
		_, err := PlatoFromSG(at(extract))
		assert.Equal(t, ok, err == nil, "%g: %v", extract, err)
	}
}
