package ferment

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/exponential"
)

// Lactobacilli stop above 45 to 50 C (from memory): here they grow unhindered to 42 C, half at
// 46 C and not at all from 50 C on.
func TestSouringEndsWithHeat(t *testing.T) {
	k, err := constantsFrom(modelNamed(t, "ferment"))
	require.NoError(t, err)
	byTemp := func(c float64) float64 {
		return k.souring(c, 1, 0, 10) / k.lacticByTemp.At(exponential.PerKelvin(c))
	}
	at30 := byTemp(30)
	assert.Positive(t, at30)
	for c, share := range map[float64]float64{42: 1, 44: 0.75, 46: 0.5, 48: 0.25, 49.9: 0.0125, 50: 0, 60: 0} {
		assert.InDelta(t, share, byTemp(c)/at30, 1e-12, "%g C", c)
	}
}

// They are half fed at 0.5 kg/m3 of food, held back by yeast that works, and ended by their own
// acid.
func TestSouringIsHeld(t *testing.T) {
	k, err := constantsFrom(modelNamed(t, "ferment"))
	require.NoError(t, err)
	fed := func(food float64) float64 { return k.souring(30, 0, 0, food) }
	assert.InDelta(t, 0.5, fed(0.5)/(fed(1e12)), 1e-9)
	assert.Zero(t, fed(0))
	assert.Zero(t, fed(-1), "integration may step below nothing")
	assert.InDelta(t, 1-k.lacticHeld, k.souring(30, 0, 1, 10)/k.souring(30, 0, 0, 10), 1e-12)
	most := k.lacticMost
	assert.Zero(t, k.souring(30, most, 0, 10))
	assert.Zero(t, k.souring(30, 1.1*most, 0, 10))
	assert.Positive(t, k.souring(30, 0.999*most, 0, 10))
}
