package monotone

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/interp"
)

// tables are rows at a venture: steep and flat, rising, falling and both.
func tables(f func(x, y []float64)) {
	r := rand.New(rand.NewPCG(17, 238))
	for i := range 300 {
		n := 2 + r.IntN(12)
		x, y := make([]float64, n), make([]float64, n)
		at, v := r.NormFloat64(), r.NormFloat64()
		for k := range n {
			x[k], y[k] = at, v
			at += math.Exp(2 * r.NormFloat64())
			switch i % 3 {
			case 0:
				v += math.Exp(3 * r.NormFloat64()) // rises
			case 1:
				v -= float64(r.IntN(2)) // falls or is level
			default:
				v += r.NormFloat64()
			}
		}
		f(x, y)
	}
}

// The curve is that of gonum's FritschButland: to rounding, for the slope at an
// end is added up in another order.
func TestAgainstGonum(t *testing.T) {
	tables(func(x, y []float64) {
		var want interp.FritschButland
		require.NoError(t, want.Fit(x, y))
		c, err := Fit(x, y)
		require.NoError(t, err)
		span := 0.0
		for i := range y {
			span = max(span, math.Abs(y[i]))
		}
		width := x[len(x)-1] - x[0]
		assert.InEpsilon(t, 1+want.PredictDerivative(x[0]), 1+c.StartSlope(), 1e-9)
		for k := range 201 {
			at := x[0] + width*(float64(k)-20)/160
			assert.InDelta(t, want.Predict(at), c.At(at), 1e-12*span, "%v %v at %v", x, y, at)
		}
	})
}

// Between two rows the curve stays between them and never turns, and it meets
// each row.
func TestMonotoneBetweenRows(t *testing.T) {
	tables(func(x, y []float64) {
		c := Must(x, y)
		for i := range x[1:] {
			require.Equal(t, y[i], c.At(x[i]))
			low, high := min(y[i], y[i+1]), max(y[i], y[i+1])
			slack := 1e-12 * (math.Abs(low) + math.Abs(high))
			before, sign := y[i], 1.0
			if y[i+1] < y[i] {
				sign = -1
			}
			for k := 1; k <= 40; k++ {
				v := c.At(x[i] + (x[i+1]-x[i])*float64(k)/40)
				require.GreaterOrEqual(t, v, low-slack)
				require.LessOrEqual(t, v, high+slack)
				require.GreaterOrEqual(t, sign*(v-before), -slack)
				before = v
			}
		}
	})
}

// Beyond its ends a curve stands still.
func TestBeyondTheEnds(t *testing.T) {
	c := Must([]float64{1, 2, 4}, []float64{3, 5, 6})
	assert.Equal(t, 3.0, c.At(-7))
	assert.Equal(t, 3.0, c.At(1))
	assert.Equal(t, 6.0, c.At(4))
	assert.Equal(t, 6.0, c.At(400))
	assert.Greater(t, c.At(1.001), 3.0)
	assert.Less(t, c.At(3.999), 6.0)
}

func TestFitRefuses(t *testing.T) {
	for _, bad := range [][2][]float64{
		{{1}, {1}}, {{1, 2}, {1}}, {{2, 1}, {1, 2}}, {{1, 1}, {1, 2}}, {{1, math.NaN()}, {1, 2}},
	} {
		_, err := Fit(bad[0], bad[1])
		assert.Error(t, err, "%v", bad)
	}
}
