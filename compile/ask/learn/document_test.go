package learn

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// A strength has the unit of the house that reads it, as a reading and as a constant.
func TestStrengthInTheReadersUnits(t *testing.T) {
	for s, want := range map[recipe.System]string{recipe.US: "% abv", recipe.SI: "% vol"} {
		for _, w := range []record.What{record.Strength, record.Spout} {
			v, unit := shown(w, 0.26, s)
			assert.Equal(t, 26.0, v)
			assert.Equal(t, want, unit)
			v, unit = shownDifference(w, 0.013, s)
			assert.Equal(t, 1.3, v)
			assert.Equal(t, want, unit)
		}
		v, unit := inUnits(0.0125, quantity.Strength, s)
		assert.Equal(t, 1.25, v)
		assert.Equal(t, want, unit)
	}
}
