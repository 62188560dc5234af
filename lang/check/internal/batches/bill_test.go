package batches

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A sum that is not 100 % never reads as 100 %.
func TestNotHundred(t *testing.T) {
	for want, v := range map[string]float64{"100.1": 100.06, "99.9": 99.9, "100.002": 100.002, "100.2": 100.2, "101": 101, "98": 98} {
		assert.Equal(t, want, notHundred(v))
	}
}
