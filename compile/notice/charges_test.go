package notice

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/numbers"
	"newmake/lang/recipe"
)

// A still that takes 1,000 L: what is advised holds each charge, and one charge less would not.
func TestChargesThatFit(t *testing.T) {
	still := &recipe.Vessel{HoldsM3: 2, FillMost: 0.5}
	for _, c := range []struct {
		mostL   float64
		charges int
		want    int
	}{
		{1000, 1, 2}, {1001, 1, 2}, {2000, 1, 2}, {2001, 1, 3}, {2549, 1, 3}, {1001, 2, 3}, {1500, 2, 3}, {1501, 2, 4},
	} {
		assert.Equal(t, c.want, chargesThatFit(numbers.Use{Vessel: still, Stage: "spirit", MostM3: c.mostL / 1000}, c.charges), "%v L in %d", c.mostL, c.charges)
	}
}
