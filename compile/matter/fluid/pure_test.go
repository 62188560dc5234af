package fluid

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Pure alcohol is of strength 1, and nothing is stronger; water is of none.
func TestStrengthOfPureAlcohol(t *testing.T) {
	for _, of := range []func(float64) float64{ABVFromMassFrac, ABV60FFromMassFrac} {
		assert.Equal(t, 1.0, of(1))
		assert.Equal(t, 1.0, of(1.01))
		assert.InDelta(t, 1, of(1-1e-9), 1e-8)
		assert.Zero(t, of(0))
	}
}
