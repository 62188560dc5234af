package wording

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang/quantity"
)

func TestSpan(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		kind      quantity.Kind
		want      string
	}{
		{0, 60, quantity.Temperature, "0 C to 60 C (32 F to 140 F)"},
		{1e-4, 1, quantity.Volume, "100 mL to 1,000 L (3.38 fl oz to 264 gal)"},
		{0, 2 * quantity.DayS, quantity.Duration, "0 to 2 days"},
		{6 * quantity.HourS, quantity.DayS, quantity.Duration, "6 h to 1 day"},
		{1e-12, math.Inf(1), quantity.Mass, "more than nothing"},
		{0, math.Inf(1), quantity.Mass, "not less than nothing"},
		{0.2, 1, quantity.Strength, "20 % abv to 100 % abv (40 proof to 200 proof)"},
		{1, 50, quantity.Number, "1 to 50"},
	} {
		require.Equal(t, c.want, span(c.low, c.high, c.kind))
	}
}
