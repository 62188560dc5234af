package edit

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// An amount is written as it can be measured out, and a small one no more coarsely
// than a part of it.
func TestStep(t *testing.T) {
	for _, c := range []struct {
		v    float64
		unit string
		want string
	}{
		{865.33, "lb", "865"},
		{50.4, "lb", "50"},
		{49.94, "lb", "50"}, // to half a pound
		{49.6, "lb", "49.5"},
		{392.6, "kg", "392.5"},
		{24.96, "kg", "25"},
		{112.34, "g", "112"},
		{295.75, "gal", "296"},
		{12.6, "gal", "12.5"},
		{12.4, "gal", "12.4"},
		{0.54768, "gal", "0.54"},
		{1071.4, "L", "1071"},
		{24.93, "L", "25"},
		{10.714, "hL", "10.71"},
		{0, "gal", "0"},
	} {
		assert.Equal(t, c.want, inSteps(c.v, Step(c.v, c.unit), math.Round), "%g %s", c.v, c.unit)
	}
	assert.Equal(t, "499", inSteps(499.9, Step(499.9, "lb"), floor))
	assert.Equal(t, "500", inSteps(499.9999999, Step(500, "lb"), floor))
	assert.Zero(t, Step(58, "F"))
}
