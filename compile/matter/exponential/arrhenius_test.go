package exponential

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A rate is itself at its own temperature, and 50 kJ/mol doubles it from 20 to 30 C
// (Atkins, Physical Chemistry, from memory): by 1.97.
func TestArrhenius(t *testing.T) {
	a := ArrheniusOf(50e3, 20)
	assert.InDelta(t, 1, a.At(PerKelvin(20)), 1e-14)
	assert.InDelta(t, math.Exp(50e3/8.314462618*(1/293.15-1/303.15)), a.At(PerKelvin(30)), 1e-13)
	assert.InDelta(t, 1.97, a.At(PerKelvin(30)), 0.005)
	assert.Equal(t, 1.0, ArrheniusOf(0, 20).At(PerKelvin(80)))
}
