package quantity

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestRoundSteps(t *testing.T) {
	for _, c := range []struct{ x, up, down float64 }{
		{1, 1, 1}, {1.01, 2, 1}, {1.99, 2, 1}, {2, 2, 2}, {2.01, 5, 2}, {4.99, 5, 2}, {5, 5, 5}, {5.01, 10, 5},
		{9.99, 10, 5}, {10, 10, 10}, {0.3, 0.5, 0.2}, {0.2, 0.2, 0.2}, {730, 1000, 500}, {1e-3, 1e-3, 1e-3},
		{0, 0, 0}, {-3, 0, 0}, {math.NaN(), 0, 0}, {math.Inf(1), 0, 0},
		{3 * 0.1 / 0.3 * 5, 5, 5}, {0.1 + 0.1, 0.2, 0.2}, // not quite round by arithmetic
	} {
		assert.InDelta(t, c.up, RoundUp(c.x), 1e-12*c.up, "up %v", c.x)
		assert.InDelta(t, c.down, RoundDown(c.x), 1e-12*c.down, "down %v", c.x)
	}
}
