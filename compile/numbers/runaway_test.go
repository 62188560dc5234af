package numbers

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestRan: a float that is none is found in a result, and its field is named.
func TestRan(t *testing.T) {
	type point struct{ TempC float64 }
	type result struct {
		In   point
		Last *point
		ABV  float64
	}
	assert.NoError(t, ran(result{point{1}, &point{3}, math.MaxFloat64}))
	assert.NoError(t, ran(result{}))
	assert.ErrorContains(t, ran(result{In: point{math.NaN()}}), "TempC is not a number")
	assert.ErrorContains(t, ran(result{Last: &point{math.Inf(-1)}}), "TempC is not a number")
	assert.ErrorContains(t, ran(result{ABV: math.Inf(1)}), "ABV is not a number")
}
