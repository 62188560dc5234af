package taste

import (
	"fmt"
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The least number of right answers at 10, 5, 1 and 0.1 %, 0 where none is enough. The
// triangle's rows are those of FAO, Guidelines for the Sensory Evaluation of food
// (docrep V7180E, chapter 12); those of the duo-trio are ISO 10399, table A.1.
func TestLeastAsPublished(t *testing.T) {
	alphas := []float64{.1, .05, .01, .001}
	for _, c := range []struct {
		test Test
		rows map[int][]int
	}{
		{testOf(Triangle, false), map[int][]int{
			3: {3, 3, 0, 0}, 4: {4, 4, 0, 0}, 5: {4, 4, 5, 0}, 6: {5, 5, 6, 0}, 7: {5, 5, 6, 7}, 8: {5, 6, 7, 8},
			9: {6, 6, 7, 8}, 10: {6, 7, 8, 9}, 11: {7, 7, 8, 10}, 12: {7, 8, 9, 10},
		}},
		{testOf(DuoTrio, false), map[int][]int{
			5: {-1, 5, 0, 0}, 6: {-1, 6, 0, 0}, 7: {-1, 7, 7, 0}, 8: {-1, 7, 8, 0}, 9: {-1, 8, 9, 0}, 10: {-1, 9, 10, 10},
			12: {-1, 10, 11, 12}, 15: {-1, 12, 13, 14}, 20: {-1, 15, 16, 18}, 24: {-1, 17, 19, 20}, 36: {-1, 24, 26, 28}, 60: {-1, 37, 40, 43}, 80: {-1, 48, 51, 55},
		}},
	} {
		for n, row := range c.rows {
			for i, want := range row {
				if want < 0 {
					continue
				}
				if want == 0 {
					want = n + 1
				}
				assert.Equal(t, want, c.test.Least(n, alphas[i]), "%v answers, %v, chance %v", n, alphas[i], c.test.Chance)
			}
		}
	}
}

// A value that a statistics package documents: 11 of 20 in a triangle, p = 0.03764.
func TestPAsPublished(t *testing.T) {
	assert.Equal(t, "0.03764", fmt.Sprintf("%.5f", testOf(Triangle, false).P(11, 20)))
}

// The tail against exact fractions.
func TestTailIsExact(t *testing.T) {
	for n := 1; n <= 40; n += 3 {
		for k := 0; k <= n; k++ {
			sum := new(big.Rat)
			for i := k; i <= n; i++ {
				term := new(big.Int).Binomial(int64(n), int64(i))
				term.Mul(term, new(big.Int).Exp(big.NewInt(2), big.NewInt(int64(n-i)), nil))
				sum.Add(sum, new(big.Rat).SetFrac(term, new(big.Int).Exp(big.NewInt(3), big.NewInt(int64(n)), nil)))
			}
			want, _ := sum.Float64()
			assert.InEpsilon(t, want, atLeast(k, n, 1./3), 1e-11, "%d of %d", k, n)
		}
	}
}

// Two-sided, both tails count: 9 of 10 and 1 of 10 are as far from half.
func TestTwoSided(t *testing.T) {
	pair := testOf(Paired, false)
	assert.InDelta(t, 22./1024, pair.P(9, 10), 1e-12)
	assert.InDelta(t, pair.P(9, 10), pair.P(1, 10), 1e-15)
	assert.Equal(t, 1., pair.P(5, 10))
	assert.Equal(t, 9, pair.Least(10, .05))
	assert.Equal(t, 10, pair.Least(10, .01))
	assert.InDelta(t, 11./1024, testOf(Paired, true).P(9, 10), 1e-12)
}

// How many answers find a share of discriminators at 5 %: ISO 4120, table A.3, for
// probabilities of missing it of 20, 10 and 5 % (from memory).
func TestNeeded(t *testing.T) {
	tri := testOf(Triangle, false)
	for share, want := range map[float64][]int{.5: {16, 20, 23}, .4: {23, 30, 40}, .3: {40, 53, 66}, .2: {87, 117, 147}} {
		for i, miss := range []float64{.2, .1, .05} {
			n := tri.Needed(.05, share, 1-miss, 500)
			assert.Equal(t, want[i], n, "share %v, missed %v", share, miss)
			assert.GreaterOrEqual(t, tri.Power(n, .05, share), 1-miss)
			assert.Less(t, tri.Power(n-1, .05, share), 1-miss)
		}
	}
	assert.Zero(t, tri.Needed(.05, .001, .9, 50), "not with so few")
}

// What can be found is where the power is reached: a little less is not.
func TestFindable(t *testing.T) {
	tri := testOf(Triangle, false)
	d := tri.Findable(12, .05, .8)
	assert.InDelta(t, .8, tri.Power(12, .05, d), 1e-9)
	assert.Less(t, tri.Power(12, .05, d-.001), .8)
	assert.True(t, math.IsInf(tri.Findable(2, .05, .8), 1), "two answers show nothing")
}

// The ends of the exact interval have the tails that they claim.
func TestInterval(t *testing.T) {
	s := interval(11, 20, .9)
	assert.InDelta(t, .05, atLeast(11, 20, s.Low), 1e-9)
	assert.InDelta(t, .05, 1-atLeast(12, 20, s.High), 1e-9)
	assert.Equal(t, Share{0, 0, interval(0, 5, .9).High}, interval(0, 5, .9))
	assert.Equal(t, 1., interval(5, 5, .9).High)
	d := testOf(Triangle, false).discriminators(11, 20, .9)
	assert.InDelta(t, (.55-1./3)/(2./3), d.Value, 1e-12)
	assert.Zero(t, testOf(Triangle, false).discriminators(5, 20, .9).Value, "fewer than by guessing is no less than nothing")
}
