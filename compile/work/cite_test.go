package work

import (
	"newmake/lang/recipe"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The law of the United States is cited in its own zones, and in no other.
func TestCite(t *testing.T) {
	for zone, want := range map[string]bool{
		"America/New_York": true, "America/Kentucky/Louisville": true, "Pacific/Honolulu": true,
		"America/Toronto": false, "America/Mexico_City": false, "Europe/London": false, "Asia/Tokyo": false,
	} {
		// Rye of a United States type may be made abroad, and its plant is under other law.
		b := &recipe.Batch{Plant: &recipe.Plant{Zone: zone}, Standard: &recipe.Standard{Law: "27 CFR 5.143(c), table 1 (2)"}}
		assert.Equal(t, want, cite(b, "27 CFR 19.301") != "", zone)
	}
}
