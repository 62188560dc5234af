package ferment

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Stainless steel takes up 0.5 kJ/(kg K) near room temperature: AISI 304, as its
// data sheets have it, from memory.
func TestTheMetalTakesUpHeat(t *testing.T) {
	in := bourbon(t)
	in.Vessel.MetalKg = 0
	bare := ferments(t, in)
	in.Vessel.MetalKg = 400
	assert.InDelta(t, 400*500.0, ferments(t, in).HeatCapacityJK-bare.HeatCapacityJK, 1)
}
