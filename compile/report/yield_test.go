package report

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/recipe"
)

// Saskatchewan Agriculture and Food (1993), ethanol yields by grain: 375 L a
// tonne as is from wheat of 10.9 % moisture and 63.8 % starch, 399 from barley
// of 9.7 and 67.1, both 91.5 % of theory. Printed to whole litres.
func TestTheoryAgainstPublishedYields(t *testing.T) {
	for _, g := range []struct {
		name                   string
		moisture, starch, want float64
	}{{"wheat", 0.109, 0.638, 375}, {"barley", 0.097, 0.671, 399}} {
		got := 0.915 * theoryLPA(&recipe.Grain{Moisture: g.moisture, Starch: g.starch}, 1000)
		assert.InDelta(t, g.want, got, 0.8, g.name)
	}
}
