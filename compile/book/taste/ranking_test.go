package taste

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat/distuv"
)

// ISO 8587, annex A: eight tasters, five samples, rank sums 17, 31, 32, 23, 17: F is
// 10.60, more than the 9.49 of chi-squared at 5 %; rank sums that differ by 12.40 differ.
func TestRankingAsPublished(t *testing.T) {
	f := statistic(squares([]float64{17, 31, 32, 23, 17}), 8, 5)
	assert.InDelta(t, 10.60, f, .005)
	assert.Equal(t, "12.40", fmt.Sprintf("%.2f", leastDifference(8, 5, .05)))
	p, ok := exactFriedman(8, 5, squares([]float64{17, 31, 32, 23, 17}))
	assert.True(t, ok)
	assert.Less(t, p, .05)
	assert.InDelta(t, .0314, distuv.ChiSquared{K: 4}.Survival(f), .0001, "by the approximation")
}

// Critical values of Friedman's statistic at 5 and 1 %, as reprinted in tables of
// statistics: three samples, 3 to 15 tasters, and four samples, 2 to 8. Each is the least
// value that chance reaches with at most that probability, and the next below is not.
func TestFriedmanExactly(t *testing.T) {
	for _, c := range []struct {
		samples, from int
		at5, at1      []float64
	}{
		{3, 3, []float64{6.000, 6.500, 6.400, 7.000, 7.143, 6.250, 6.222, 6.200, 6.545, 6.500, 6.615, 6.143, 6.400},
			[]float64{0, 8.000, 8.400, 9.000, 8.857, 9.000, 9.556, 9.600, 9.455, 9.500, 9.385, 9.143, 8.933}},
		{4, 2, []float64{6.000, 7.400, 7.800, 7.800, 7.600, 7.800, 7.650}, []float64{0, 9.000, 9.600, 9.960, 10.200, 10.540, 10.500}},
	} {
		for i := range c.at5 {
			for level, f := range map[float64]float64{.05: c.at5[i], .01: c.at1[i]} {
				if f == 0 {
					continue
				}
				j, n := float64(c.from+i), float64(c.samples)
				s := math.Round((f + 3*j*(n+1)) * j * n * (n + 1) / 12)
				p, ok := exactFriedman(c.from+i, c.samples, s)
				assert.True(t, ok)
				assert.LessOrEqual(t, p, level, "%d samples, %v tasters, F %v", c.samples, j, f)
				below := p
				for below == p {
					s--
					below, _ = exactFriedman(c.from+i, c.samples, s)
				}
				assert.Greater(t, below, level, "%d samples, %v tasters, just under F %v", c.samples, j, f)
			}
		}
	}
}

// Ranks with ties: the statistic is that of the mean ranks, corrected (ISO 8587).
func TestTies(t *testing.T) {
	r := Ranks{{1, 2, 3}, {1.5, 1.5, 3}, {1, 2.5, 2.5}}
	f, p, exact := r.Friedman()
	// sums 3.5, 6, 8.5: F = 12/36*120.5 - 36 = 4.1667; E = 6+6 = 12, and 1 - 12/72 = .8333
	assert.InDelta(t, 5, f, 1e-9)
	assert.InDelta(t, math.Exp(-2.5), p, 1e-9, "chi-squared with two degrees of freedom")
	assert.False(t, exact)
	f, p, _ = Ranks{{2, 2, 2}, {2, 2, 2}}.Friedman()
	assert.Equal(t, []float64{0, 1}, []float64{f, p}, "nobody parted anything")
}

// Page's critical values: three samples at 5 %, 2 to 10 tasters (Page 1963, table 2,
// from memory); four samples and six tasters at 0.1 %, 172 (Cohen and Holliday,
// Statistics for Social Scientists (1983), table of Page's L, as quoted).
func TestPageAsPublished(t *testing.T) {
	for i, l := range []int{28, 41, 54, 66, 79, 91, 104, 116, 128} {
		assert.LessOrEqual(t, exactPage(i+2, 3, l), .05, "%d tasters", i+2)
		assert.Greater(t, exactPage(i+2, 3, l-1), .05, "%d tasters", i+2)
	}
	assert.LessOrEqual(t, exactPage(6, 4, 172), .001)
	assert.Greater(t, exactPage(6, 4, 171), .001)
}

// The same tasters one way and the other: an order that all have, and its reverse.
func TestPageKnowsTheOrder(t *testing.T) {
	r := Ranks{{1, 2, 3}, {1, 2, 3}, {1, 2, 3}}
	l, p, exact := r.Page([]int{0, 1, 2})
	assert.Equal(t, 42., l)
	assert.InDelta(t, 1./216, p, 1e-12)
	assert.True(t, exact)
	_, p, _ = r.Page([]int{2, 1, 0})
	assert.InDelta(t, 1, p, 1e-12)
	_, p, exact = Ranks{{1, 2.5, 2.5}, {1, 2, 3}}.Page([]int{0, 1, 2})
	assert.False(t, exact)
	assert.Less(t, p, .1)
}
