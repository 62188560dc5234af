package still

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The integrator's tableau meets the conditions of order 5, and the embedded one those
// of order 4 (Hairer, Norsett and Wanner, Solving Ordinary Differential Equations I,
// 2nd ed., II.2, table 2.1, from memory): each figure of the table bears on one of them.
func TestTableauIsOfOrderFive(t *testing.T) {
	const n = 7
	c := dpC
	for i := range n {
		sum := 0.0
		for j := range i {
			sum += dpA[i][j]
		}
		assert.InDelta(t, c[i], sum, 1e-14, "the nodes are the sums of the rows: %d", i)
	}
	a := func(x [n]float64) (y [n]float64) { // A x
		for i := range n {
			for j := range i {
				y[i] += dpA[i][j] * x[j]
			}
		}
		return y
	}
	times := func(x, y [n]float64) (z [n]float64) {
		for i := range n {
			z[i] = x[i] * y[i]
		}
		return z
	}
	one := [n]float64{1, 1, 1, 1, 1, 1, 1}
	c2 := times(c, c)
	c3 := times(c2, c)
	four := []struct {
		of   [n]float64
		want float64
	}{
		{one, 1}, {c, 1. / 2}, {c2, 1. / 3}, {a(c), 1. / 6}, {c3, 1. / 4}, {times(c, a(c)), 1. / 8}, {a(c2), 1. / 12}, {a(a(c)), 1. / 24},
	}
	five := append(four[:len(four):len(four)], []struct {
		of   [n]float64
		want float64
	}{
		{times(c3, c), 1. / 5}, {times(c2, a(c)), 1. / 10}, {times(a(c), a(c)), 1. / 20}, {times(c, a(c2)), 1. / 15},
		{times(c, a(a(c))), 1. / 30}, {a(c3), 1. / 20}, {a(times(c, a(c))), 1. / 40}, {a(a(c2)), 1. / 60}, {a(a(a(c))), 1. / 120},
	}...)
	weigh := func(w, x [n]float64) (sum float64) {
		for i := range n {
			sum += w[i] * x[i]
		}
		return sum
	}
	var b, other [n]float64
	copy(b[:], dpA[n-1][:])
	for i := range n {
		other[i] = b[i] - dpE[i]
	}
	for i, x := range five {
		assert.InDelta(t, x.want, weigh(b, x.of), 1e-14, "condition %d", i)
	}
	for i, x := range four {
		assert.InDelta(t, x.want, weigh(other, x.of), 1e-14, "condition %d of the embedded one", i)
	}
	assert.Greater(t, math.Abs(weigh(other, five[len(four)].of)-1./5), 1e-4, "which is not of order 5")
}
