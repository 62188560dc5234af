package trade

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/recipe"
)

// A rule speaks in the units in which the batch is written.
func TestRulesSpeakTheBatchsUnits(t *testing.T) {
	us, si := &rules{batch: &recipe.Batch{Units: recipe.US}}, &rules{batch: &recipe.Batch{Units: recipe.SI}}
	assert.Equal(t, "160 F", us.temp(71.2))
	assert.Equal(t, "32 F", us.temp(0))
	assert.Equal(t, "71.3 C", si.temp(71.26))
	assert.Equal(t, "185 gal", us.volume(185*0.003785411784))
	assert.Equal(t, "700 L", si.volume(0.7))
	assert.Equal(t, "12.5 %", percent(0.125))
}

// An age in years, or in days below one.
func TestDurationText(t *testing.T) {
	const year, day = 365.25 * 86400, 86400.0
	for s, want := range map[float64]string{
		year: "1 year", 1.0009 * year: "1 year", 1.5 * year: "1.5 years", 2 * year: "2 years", 0.999 * year: "365 days", 90 * day: "90 days",
	} {
		assert.Equal(t, want, durationText(s))
	}
	assert.NotEqual(t, "1 year", durationText(1.0011*year))
}
