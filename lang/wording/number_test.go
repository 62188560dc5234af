package wording

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestDecimal(t *testing.T) {
	for want, v := range map[string]float64{
		"0": 0, "0.04": 0.04, "1.5": 1.5, "12.3": 12.34, "117": 117.4, "1,250": 1250, "-4": -4, "0.0004": 0.0004, "4e-05": 4e-5, "12,000": 12000,
	} {
		assert.Equal(t, want, Decimal(v))
	}
}
