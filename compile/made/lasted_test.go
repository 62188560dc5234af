package made_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/made"
)

// A duration lies between two clock times, each written down to 2.5 minutes: it is less sure
// than either by the root of two.
func TestDurationIsBetweenTwoClocks(t *testing.T) {
	h := house(t, "")
	r, list := h.Run("26-01")
	require.NotNil(t, r, list)
	b, list := h.Batch(r.Batch)
	require.NotNil(t, b, list)
	seen := 0
	for _, rd := range made.Readings(made.Recipe(b, r), r, h.Instrument) {
		if rd.What == "" {
			seen++
			assert.InDelta(t, math.Hypot(150*math.Sqrt2, 60/math.Sqrt(12)), rd.Sure(nil), 1e-9, rd.Words)
		}
	}
	assert.Greater(t, seen, 4)
}
