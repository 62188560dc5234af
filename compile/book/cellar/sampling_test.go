package cellar

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/quantity"
	"newmake/lang/record"
)

// many are casks of one run, a third on each of three tiers.
func many(n int) []*record.Life {
	var out []*record.Life
	for i := range n {
		l := life(fmt.Sprintf("C-%03d", i), 108)
		l.Events = []record.Visit{{Word: "to", To: "Rack house", Names: []string{fmt.Sprintf("row %d", i/3+1), fmt.Sprintf("tier %d", i%3+1)}, When: record.When{Date: filledOn}}}
		out = append(out, l)
	}
	return out
}

// So many are taken that the mean is known to a hundredth, by the formulas of Cochran: held
// here against them, worked out apart.
func TestHowManyAreTaken(t *testing.T) {
	for _, c := range []struct {
		lost float64 // share of what was put in
		n    int
		want int
	}{
		// s = 0.2 x 0.06/0.94, n0 = (1.645 s/0.01)^2 = 4.41; 4.41/(1 + 4.41/60) = 4.11
		{0.06, 60, 5},
		// s = 0.2 x 0.15/0.85, n0 = 33.7; 33.7/(1 + 33.7/60) = 21.6; of ten 7.7; of three all
		{0.15, 60, 22}, {0.15, 10, 8}, {0.15, 3, 3},
		{0.01, 60, fewestTaken},
	} {
		var rows []*Row
		for range c.n {
			rows = append(rows, &Row{PutInL: 100, Now: Holds{PureL: 100 * (1 - c.lost)}})
		}
		n, mean := taken(rows)
		assert.Equal(t, c.want, n, "%+v", c)
		assert.LessOrEqual(t, mean, wantedOfMean)
		if n < c.n && n > fewestTaken {
			s, fewer := caskSpread*c.lost/(1-c.lost), float64(n-1)
			assert.Greater(t, z90*s/math.Sqrt(fewer)*math.Sqrt(1-fewer/float64(c.n)), 0.95*wantedOfMean, "one fewer would do as well")
		}
	}
	assert.InDelta(t, 1-18./20*17./19*16./18, sees(20, 3), 1e-12, "two odd casks of twenty")
	assert.Equal(t, 1., sees(3, 3))
}

// Of many casks some are sampled for all, from each tier alike; next time it is others.
func TestSomeStandForAll(t *testing.T) {
	lives := many(30)
	day := filledOn.After(400)
	c := On(house(lives...), day)
	require.Len(t, c.Lots, 1)
	l := c.Lots[0]
	assert.Equal(t, 30, l.Casks)
	assert.Equal(t, "2024-08-29", l.On, "none has been sampled yet: half a year after the fill")
	tiers, due := map[string]int{}, 0
	chosen := map[string]bool{}
	for _, r := range c.Casks {
		if r.Sample != "" {
			tiers[r.Spot[1]]++
			due++
			chosen[r.Serial] = true
		}
	}
	assert.Equal(t, l.Take, due)
	assert.Len(t, l.Serials, l.Take)
	for tier, n := range tiers {
		assert.InDelta(t, float64(l.Take)/3, n, 1, tier)
	}
	assert.Len(t, tiers, 3)
	assert.Less(t, l.Serials[0], "C-010")
	assert.Greater(t, l.Serials[l.Take-1], "C-019", "from one end of the lot to the other")

	sample := func(x *record.Life) {
		x.Events = append(x.Events, record.Visit{When: record.When{Date: day}, Read: []record.Reading{value(record.Strength, 119, "proof", quantity.Strength)}})
	}
	first := l.Serials[0] // one is sampled: the rest of them are still due, and none in its place
	for _, x := range lives {
		if x.Serial == first {
			sample(x)
		}
	}
	c = On(house(lives...), day.After(1))
	require.Len(t, c.Lots, 1)
	assert.Equal(t, "2024-08-29", c.Lots[0].On)
	assert.Equal(t, l.Take-1, c.Lots[0].Take)
	assert.NotContains(t, c.Lots[0].Serials, first)
	delete(chosen, first)

	for _, x := range lives { // they are sampled, and the lot is due half a year on, by others
		if chosen[x.Serial] {
			sample(x)
		}
	}
	c = On(house(lives...), day.After(1))
	require.Len(t, c.Lots, 1)
	assert.Equal(t, "2025-08-29", c.Lots[0].On)
	for _, s := range c.Lots[0].Serials {
		assert.False(t, chosen[s], "%s was sampled last time", s)
	}

	assert.Empty(t, On(house(many(3)...), day).Lots, "of three each is sampled")
}
