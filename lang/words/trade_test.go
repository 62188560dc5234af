package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/quantity"
)

// TestTrade: the words of each system's trade, there and back.
func TestTrade(t *testing.T) {
	for scottish, american := range map[string]string{
		"Discharge 1000 L of pot ale.":           "Discharge 1000 L of stillage.",
		"Draff holds liquor.":                    "Spent grain holds mash water.",
		"LIQUOR TO GRIST":                        "MASH WATER TO GRAIN",
		"the spirit safe's hydrometer":           "the parrot's hydrometer",
		"stir into the liquor":                   "stir into the mash water",
		"Set the hot liquor tank to heat":        "Set the hot liquor tank to heat",
		"write `pot ale`, and `draff` in a line": "write `pot ale`, and `draff` in a line",
		"the tank \"Pot ale\" holds draff":       "the tank \"Pot ale\" holds spent grain",
		"draff-holds, pot-ale":                   "draff-holds, pot-ale",
	} {
		assert.Equal(t, american, Trade(scottish, quantity.US))
		assert.Equal(t, scottish, Trade(american, quantity.SI))
		assert.Equal(t, scottish, Trade(scottish, quantity.SI))
		assert.Equal(t, american, Trade(american, quantity.US))
		assert.Equal(t, scottish, Trade(scottish, quantity.Both))
	}
	assert.Equal(t, "Set the mash water to heat", Trade("Set the hot liquor to heat", quantity.US))
	assert.Equal(t, "what stays in the stillage", Trade("what stays in the lees", quantity.US))
	explained := "pot ale is called stillage in America"
	assert.Equal(t, explained, Trade(explained, quantity.US), "one word by the other")
	assert.Equal(t, explained, Trade(explained, quantity.SI))
	assert.Equal(t, "fleeces and fleets", Trade("fleeces and fleets", quantity.US))
}
