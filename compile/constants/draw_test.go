package constants

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/recipe"
)

// moments are the mean and the standard deviation of a constant's draws.
func moments(d Draws, k int) (mean, sd float64) {
	for _, x := range d.X {
		mean += x[k]
	}
	mean /= float64(len(d.X))
	for _, x := range d.X {
		sd += (x[k] - mean) * (x[k] - mean)
	}
	return mean, math.Sqrt(sd / float64(len(d.X)-1))
}

// TestDrawsHaveTheirPrior: mean and standard deviation within five standard errors.
func TestDrawsHaveTheirPrior(t *testing.T) {
	const n = 20000
	wide := Prior{Mean: 1, SD: 0.25, Low: -100, High: 100}
	log := Prior{Shape: Lognormal, Mean: 1, SD: 0.25, High: 100}
	d := Drawn([]Constant{{ID: "normal", Prior: wide}, {ID: "lognormal", Prior: log}}, n, nil)
	for k := range d.Of {
		mean, sd := moments(d, k)
		assert.InDelta(t, 1, mean, 5*0.25/math.Sqrt(n), d.Of[k].ID)
		assert.InDelta(t, 0.25, sd, 0.02, d.Of[k].ID)
	}
	assert.Zero(t, d.Rejected)
}

// TestTruncation: nothing beyond the bounds is drawn, what was is counted, and what
// is left has the moments of the cut-off normal. Of a normal cut off at its mean those
// are sqrt(2/pi) and sqrt(1-2/pi) (the half-normal distribution).
func TestTruncation(t *testing.T) {
	const n = 20000
	d := Drawn([]Constant{{ID: "half", Prior: Prior{Mean: 0, SD: 1, Low: 0, High: 50}}}, n, nil)
	mean, sd := moments(d, 0)
	assert.InDelta(t, math.Sqrt(2/math.Pi), mean, 0.02)
	assert.InDelta(t, math.Sqrt(1-2/math.Pi), sd, 0.02)
	assert.InDelta(t, n, d.Rejected, 5*math.Sqrt(2*n), "as many are beyond as within")
	for _, x := range d.X {
		require.GreaterOrEqual(t, x[0], 0.0)
	}

	far := Drawn([]Constant{{ID: "far", Prior: Prior{Mean: 0, SD: 1, Low: 60, High: 61}}}, 3, nil)
	assert.Equal(t, [][]float64{{60}, {60}, {60}}, far.X, "where nothing can be drawn, the nearer bound")
	assert.Equal(t, 3*mostTries, far.Rejected)
}

// TestDrawsAreShared: a constant's draws hang on its key alone, not on what stands
// beside it or how many are drawn.
func TestDrawsAreShared(t *testing.T) {
	p := Prior{Mean: 1, SD: 0.1, Low: 0, High: 2}
	a, b := Constant{ID: "a", Prior: p}, Constant{ID: "a", Of: "North", Prior: p}
	few, many := Drawn([]Constant{a}, 10, nil), Drawn([]Constant{b, a}, 20, nil)
	for i := range few.X {
		assert.Equal(t, few.X[i][0], many.X[i][1])
		assert.NotEqual(t, many.X[i][0], many.X[i][1], "another key, another stream")
	}

	// With another prior it is the same luck.
	a.Prior = Prior{Mean: 5, SD: 1, Low: 0, High: 10}
	moved := Drawn([]Constant{a}, 10, nil)
	for i := range moved.X {
		assert.InDelta(t, p.Z(few.X[i][0]), a.Prior.Z(moved.X[i][0]), 1e-9)
	}
}

// TestDrawsAreIndependent: no two streams go together, and no draw with the next.
func TestDrawsAreIndependent(t *testing.T) {
	const n = 4000
	p := Prior{SD: 1, Low: -50, High: 50}
	d := Drawn([]Constant{{ID: "a", Prior: p}, {ID: "b", Prior: p}, {ID: "c", Prior: p}}, n, nil)
	together := func(j, k, lag int) float64 {
		sum := 0.0
		for i := lag; i < n; i++ {
			sum += d.X[i][j] * d.X[i-lag][k]
		}
		return sum / float64(n-lag)
	}
	for j := range d.Of {
		for k := range d.Of {
			for lag := range 3 {
				if j == k && lag == 0 {
					continue
				}
				assert.InDelta(t, 0, together(j, k, lag), 5/math.Sqrt(n), "%d %d %d", j, k, lag)
			}
		}
	}
}

func TestPriorTurnsRound(t *testing.T) {
	for _, p := range []Prior{{Mean: 2, SD: 0.5}, {Shape: Lognormal, Mean: 2, SD: 1}, {Shape: Lognormal, Mean: 0.01, SD: 0.01}} {
		for _, z := range []float64{-3, -1, 0, 0.5, 2} {
			assert.InDelta(t, z, p.Z(p.At(z)), 1e-12)
		}
	}
	low, high := Prior{Mean: 1, SD: 0.1, Low: 0, High: 1.05}.Range()
	assert.InDelta(t, 1-0.1*NineInTen, low, 1e-12)
	assert.Equal(t, 1.05, high)
}

// TestDrawnTogether: constants that were learned together are drawn so, one after the
// other, and what each has by itself is as it was; beside a draw that leads none, no draw
// changes.
func TestDrawnTogether(t *testing.T) {
	const n = 20000
	p := Prior{Mean: 1, SD: 0.1, Low: -50, High: 50}
	of := []Constant{{ID: "a", Owner: House, Prior: p}, {ID: "b", Owner: House, Prior: p}, {ID: "c", Owner: House, Prior: p}, {ID: "d", Owner: House, Prior: p}}
	l := &recipe.Learned{
		Constants: []recipe.LearnedConstant{{ID: "a"}, {ID: "b"}, {ID: "c"}},
		Together: []recipe.Pair{
			{One: [2]string{"b"}, Two: [2]string{"a"}, Correlation: -0.95}, {One: [2]string{"b"}, Two: [2]string{"c"}, Correlation: 0.92},
			{One: [2]string{"a"}, Two: [2]string{"d"}, Correlation: 0.99}, // d was not learned
		},
	}
	d, alone := Drawn(of, n, l), Drawn(of, n, nil)
	with := func(j, k int) float64 {
		sum := 0.0
		for i := range d.X {
			sum += of[j].Prior.Z(d.X[i][j]) * of[k].Prior.Z(d.X[i][k])
		}
		return sum / n
	}
	for j := range of {
		assert.InDelta(t, 1, with(j, j), 5*math.Sqrt(2.0/n), "%d", j)
	}
	assert.InDelta(t, -0.95, with(0, 1), 0.03)
	assert.InDelta(t, 0.92, with(1, 2), 0.03)
	assert.InDelta(t, -0.95*0.92, with(0, 2), 0.03, "by what both have in common with b")
	assert.InDelta(t, 0, with(0, 3), 0.03)
	for i := range n {
		assert.Equal(t, alone.X[i][0], d.X[i][0])
		assert.Equal(t, alone.X[i][3], d.X[i][3])
	}
	pairs := Together(of, l)
	require.Len(t, pairs, 3)
	for i, want := range []Pair{{0, 1, -0.95}, {0, 2, -0.95 * 0.92}, {1, 2, 0.92}} {
		assert.Equal(t, want.One, pairs[i].One)
		assert.Equal(t, want.Two, pairs[i].Two)
		assert.InDelta(t, want.Correlation, pairs[i].Correlation, 1e-12)
	}
	assert.Empty(t, Together(of, nil))
}
