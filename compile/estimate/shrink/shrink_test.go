package shrink

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Eight schools (Rubin, Journal of Educational Statistics 6 (1981) 377; Gelman et al.,
// Bayesian Data Analysis, section 5.5, from memory).
var (
	effects = []float64{28, 8, -3, 7, -1, 1, 18, 12}
	errs    = []float64{15, 10, 16, 11, 9, 11, 10, 18}
)

// Pooled 7.7 with 4.1, scatter less than its seven degrees of freedom, so no spread
// between schools can be shown.
func TestEightSchools(t *testing.T) {
	p := DerSimonianLaird(effects, errs)
	assert.InDelta(t, 7.7, p.Mean, .05)
	assert.InDelta(t, 4.1, p.SD, .05)
	assert.InDelta(t, 4.7, p.Q, .05)
	assert.Zero(t, p.Between)
}

// A spread that is plain to see, to be worked with a pencil: w = 1, 1, 1, 1, so the
// variance is (Q - 3)/(4 - 1) with Q = 20.
func TestSpreadByMoments(t *testing.T) {
	p := DerSimonianLaird([]float64{1, 3, 5, 7}, []float64{1, 1, 1, 1})
	assert.InDelta(t, 20, p.Q, 1e-12)
	assert.InDelta(t, math.Sqrt(17.0/3), p.Between, 1e-12)
	assert.InDelta(t, 4, p.Mean, 1e-12)
	assert.InDelta(t, math.Sqrt((1+17.0/3)/4), p.SD, 1e-12)
}

// With a prior, schools that agree do not make the spread nothing, and a wide prior lets
// them say themselves.
func TestSpreadWithPrior(t *testing.T) {
	p := WithPrior(effects, errs, 5)
	assert.InDelta(t, 7.7, p.Mean, .3)
	assert.Greater(t, p.Between, 2.0)
	assert.Less(t, p.Between, 5*math.Sqrt(2/math.Pi), "less than the prior's mean: they agree")

	narrow := WithPrior(effects, errs, .01)
	assert.InDelta(t, DerSimonianLaird(effects, errs).Mean, narrow.Mean, 1e-3)
	assert.InDelta(t, DerSimonianLaird(effects, errs).SD, narrow.SD, 1e-3)

	// Many exact runs: the spread is that of the readings, whatever the prior.
	var y, s []float64
	for i := range 400 {
		y, s = append(y, math.Sqrt2*math.Erfinv((float64(i)+.5)/200-1)), append(s, .01)
	}
	assert.InDelta(t, 1, WithPrior(y, s, 2).Between, .05)
}

// Runs that tell nothing leave a half-normal spread: its mean square is 1, its mean fourth
// power 3. The scatter to come is then the product of two normals, of kurtosis 9. Many runs that
// are read well leave the spread they show, and a normal.
func TestScatterToCome(t *testing.T) {
	nothing := WithPrior([]float64{0, 0}, []float64{1e3, 1e3}, 1)
	assert.InDelta(t, 1, nothing.ToCome, 1e-3)
	assert.InDelta(t, 6, nothing.Excess, 1e-2)

	var y, s []float64
	for i := range 2000 {
		y, s = append(y, float64(2*(i%2)-1)/2), append(s, 1e-3)
	}
	known := WithPrior(y, s, 1)
	assert.InDelta(t, .5, known.ToCome, .01)
	assert.InDelta(t, 0, known.Excess, .01)
}
