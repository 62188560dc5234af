package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Murphy and Son, Appendix 4 (Pauls and Whites Brewing Room Book 1984/85),
// every row. The heat comes from the Fahrenheit column, at the table's own
// thickness; put back on that mash it must raise it by what is printed.
func TestMaltTable(t *testing.T) {
	for _, row := range table(t, "malt_specific_heat_slaking.csv") {
		moisture := number(t, row, "moisture_pct") / 100
		s := number(t, row, "specific_heat")
		assert.InEpsilon(t, s*4186.8, GrainHeatCapacity(moisture), 1e-9, "moisture %g", moisture)
		riseC := SlakingHeat(moisture) / (4186.8 * (s + 2.68))
		assert.InEpsilon(t, number(t, row, "slaking_F")/1.8, riseC, 1e-9, "moisture %g", moisture)
		// The Celsius column is rounded unevenly, by up to 0.4.
		assert.InDelta(t, number(t, row, "slaking_C_as_printed"), riseC, 0.4, "moisture %g", moisture)
	}
}

func TestGrainHeatBeyondTable(t *testing.T) {
	lastCp, lastHeat := 0.0, math.Inf(1)
	steps(0, 1, 1000, func(m float64) {
		cp, heat := GrainHeatCapacity(m), SlakingHeat(m)
		require.GreaterOrEqual(t, cp, lastCp)
		require.LessOrEqual(t, heat, lastHeat)
		require.GreaterOrEqual(t, heat, 0.0)
		lastCp, lastHeat = cp, heat
	})
	assert.InDelta(t, 4186.8, GrainHeatCapacity(1), 1e-9)
	assert.Equal(t, 0.0, SlakingHeat(0.16))
	assert.InDelta(t, SlakingHeat(0.08), SlakingHeat(0.0800001), 1)
	assert.InDelta(t, GrainHeatCapacity(0.08), GrainHeatCapacity(0.0800001), 0.1)
}
