package odds

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/constants"
)

// uniform are scores spread evenly over (-pi, pi), from the same streams as the draws.
func uniform(n, k int) [][]float64 {
	var of []constants.Constant
	for j := range k {
		of = append(of, constants.Constant{ID: fmt.Sprint("x", j+1), Prior: constants.Prior{SD: 1, Low: -50, High: 50}})
	}
	x := constants.Drawn(of, n, nil).X
	for _, row := range x {
		for j, z := range row {
			row[j] = math.Pi * math.Erf(z/math.Sqrt2) // a normal's place among all normals
		}
	}
	return x
}

// TestIshigami: f = sin x1 + 7 sin^2 x2 + 0.1 x3^4 sin x1 of uniform inputs (Ishigami
// and Homma, ISUMA 1990), of variance 13.8446. A line and a square tell of it what
// their covariances give, by hand: of x1 the line, cov^2/var = (1 + 0.1 pi^4/5)^2 /
// (pi^2/3) = 2.6418; of x2 the square, (7/4)^2 / (4 pi^4/45) = 0.3537; of x3 nothing.
// So the shares are 0.1908, 0.0255 and 0, together 0.2164; the first-order indices,
// 0.3139, 0.4424 and 0, are not to be had by lines and squares, and R2 says so.
func TestIshigami(t *testing.T) {
	const n = 40000
	x := uniform(n, 3)
	y := make([]float64, n)
	for i, r := range x {
		y[i] = math.Sin(r[0]) + 7*math.Pow(math.Sin(r[1]), 2) + 0.1*math.Pow(r[2], 4)*math.Sin(r[0])
	}
	const variance = 13.844588
	line := math.Pow(1+0.1*math.Pow(math.Pi, 4)/5, 2) / (math.Pi * math.Pi / 3) / variance
	square := math.Pow(7.0/4, 2) / (4 * math.Pow(math.Pi, 4) / 45) / variance
	assert.InDelta(t, 0.1908, line, 1e-4)
	assert.InDelta(t, 0.0255, square, 1e-4)
	f, ok := shares(x, y)
	require.True(t, ok)
	assert.InDelta(t, line, f.Share[0], 0.01)
	assert.InDelta(t, square, f.Share[1], 0.005)
	assert.InDelta(t, 0, f.Share[2], 0.002)
	assert.InDelta(t, line+square, f.R2, 0.01)
}

// TestSharesOfASum: of a sum of lines and squares all of the variance is told, each by
// its own: 2 z1 + z2 + (z3^2 - 1)/2 has parts 4, 1 and 1/2, of 5.5.
func TestSharesOfASum(t *testing.T) {
	var of []constants.Constant
	for j := range 10 { // seven that do nothing
		of = append(of, constants.Constant{ID: fmt.Sprint("z", j+1), Prior: constants.Prior{SD: 1, Low: -50, High: 50}})
	}
	z := constants.Drawn(of, 4000, nil).X
	y := make([]float64, len(z))
	for i, r := range z {
		y[i] = 100 + 2*r[0] + r[1] + (r[2]*r[2]-1)/2
	}
	f, ok := shares(z, y)
	require.True(t, ok)
	assert.InDelta(t, 1, f.R2, 1e-9)
	for j, want := range []float64{4 / 5.5, 1 / 5.5, 0.5 / 5.5, 0, 0, 0, 0, 0, 0, 0} {
		assert.InDelta(t, want, f.Share[j], 0.03, "%d", j)
	}
}

// TestSharesOfNoise: of a number that hangs on no input hardly anything is told, though
// every input is fitted.
func TestSharesOfNoise(t *testing.T) {
	var of []constants.Constant
	for j := range 31 {
		of = append(of, constants.Constant{ID: fmt.Sprint("z", j+1), Prior: constants.Prior{SD: 1, Low: -50, High: 50}})
	}
	all := constants.Drawn(of, 400, nil).X
	z, y := make([][]float64, len(all)), make([]float64, len(all))
	for i, r := range all {
		z[i], y[i] = r[:30], r[30]
	}
	f, ok := shares(z, y)
	require.True(t, ok)
	assert.Less(t, f.R2, 0.1)
	for _, s := range f.Share {
		assert.Less(t, s, 0.05)
	}
}

// TestFewDraws: with too few draws for squares lines alone are fitted, with fewer yet
// nothing; and a number that does not vary has no shares.
func TestFewDraws(t *testing.T) {
	const inputs = 10
	fit := func(n int) (fitted, bool) {
		z := uniform(n, inputs)
		y := make([]float64, n)
		for i, r := range z {
			y[i] = r[0]
		}
		return shares(z, y)
	}
	for n, want := range map[int]bool{drawsPerTerm*(inputs+1) - 1: false, drawsPerTerm * (inputs + 1): true, drawsPerTerm * (2*inputs + 1): true} {
		f, ok := fit(n)
		assert.Equal(t, want, ok, n)
		if ok {
			assert.InDelta(t, 1, f.Share[0], 1e-9)
		}
	}
	_, ok := shares(uniform(400, 3), make([]float64, 400))
	assert.False(t, ok, "nothing varies")
	_, ok = shares(nil, nil)
	assert.False(t, ok)
}

// TestLeastSquares: a fit by hand, and a column that two others make up.
func TestLeastSquares(t *testing.T) {
	a, b := []float64{1, 1, 1, 1}, []float64{0, 1, 2, 3}
	beta := leastSquares([][]float64{a, b}, []float64{1, 3, 5, 7})
	assert.InDeltaSlice(t, []float64{1, 2}, beta, 1e-12)
	both := []float64{1, 2, 3, 4}
	beta = leastSquares([][]float64{a, b, both}, []float64{1, 3, 5, 7})
	assert.InDeltaSlice(t, []float64{1, 2, 0}, beta, 1e-12)
	beta = leastSquares([][]float64{a, {0, 0, 0, 0}}, []float64{2, 2, 2, 2})
	assert.InDeltaSlice(t, []float64{2, 0}, beta, 1e-12)
}
