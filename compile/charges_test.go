package compile

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// With several charges the feints tank holds what is kept for the next one beside what
// this one gives. Both are read in the same minute, and each is named.
func TestFeintsOfSeveralCharges(t *testing.T) {
	stop := func(charges int) (tank, after plan.Reading, do string) {
		p, _ := planOf(t, func(b *recipe.Batch) { b.Spirit.Charges = charges })
		use := "spirit"
		if charges > 1 {
			use = "spirit.1"
		}
		tails, end := stepOf(t, p, use+".tails"), stepOf(t, p, use+".stop")
		for _, r := range tails.Read {
			if strings.HasPrefix(r.What, "feints tank") {
				tank = r
			}
		}
		require.NotEmpty(t, end.Read)
		return tank, end.Read[0], end.Do.Text
	}
	tank, after, do := stop(2)
	assert.InDelta(t, 2*after.Should.Value, tank.Should.Value, 0.01*tank.Should.Value)
	assert.Equal(t, "this charge's feints", after.What)
	assert.Contains(t, do, "the feints of this charge, apart from what the tank held before")

	tank, after, do = stop(1)
	assert.InDelta(t, after.Should.Value, tank.Should.Value, 0.01*tank.Should.Value)
	assert.Equal(t, "volume", after.What)
	assert.Contains(t, do, "the feints before they are mingled")
}

// Hours of a ferment count from its pitch; where that is done as it fills, from when it
// is full.
func TestHoursOfTheFermentCountFrom(t *testing.T) {
	first := func(asItFills bool) string {
		p, _ := planOf(t, func(b *recipe.Batch) { b.Ferm.AsItFills = asItFills })
		return stepOf(t, p, "ferment.round.1").Do.Text
	}
	assert.Contains(t, first(false), "after the pitch")
	assert.Contains(t, first(true), "after the fermenter was full")
}
