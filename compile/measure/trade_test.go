package measure

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/plan"
)

// TestTradeWords: the words of each system's trade, and a tank's own name in both.
func TestTradeWords(t *testing.T) {
	for text, us := range map[string]string{
		"discharge {} of pot ale":                   "discharge 264 gal of stillage",
		"discharge {} of spent lees":                "discharge 264 gal of stillage",
		"Dig out {} of wet draff":                   "Dig out 264 gal of wet spent grain",
		"Set the hot liquor to heat: {}":            "Set the mash water to heat: 264 gal",
		"Run in {} from the hot liquor tank":        "Run in 264 gal from the hot liquor tank",
		"weigh {} of corn and stir into the liquor": "weigh 264 gal of corn and stir into the mash water",
	} {
		p := plan.Say(text, plan.Of(1000, plan.Litre))
		assert.Equal(t, us, US.Phrase(p))
		assert.Equal(t, SI.Phrase(p), SI.filled(plan.Say(text, plan.Of(1000, plan.Litre)), SI.Quantity))
		assert.NotContains(t, SI.Phrase(p), "stillage")
	}
	assert.Equal(t, "pot ale", SI.Words("pot ale"))
}
