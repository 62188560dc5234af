package compare

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sumOf is a game in which players only add.
func sumOf(each []float64) game {
	return game{players: len(each), value: func(s set) []float64 {
		v := 0.0
		for i, x := range each {
			if s.has(i) {
				v += x
			}
		}
		return []float64{v}
	}}
}

// airport is the game of S. C. Littlechild and G. Owen, A simple expression for
// the Shapley value in a special case, Management Science 20 (1973) 370-372: a
// runway costs what its largest aircraft needs. With the costs in rising order,
// player i pays the sum over k <= i of (c_k - c_(k-1)) / (n - k + 1).
func airport(costs []float64) (game, []float64) {
	want := make([]float64, len(costs))
	paid, before := 0.0, 0.0
	for i, c := range costs {
		paid += (c - before) / float64(len(costs)-i)
		want[i], before = paid, c
	}
	return game{players: len(costs), value: func(s set) []float64 {
		most := 0.0
		for i, c := range costs {
			if s.has(i) {
				most = math.Max(most, c)
			}
		}
		return []float64{most}
	}}, want
}

func TestTheAirportGame(t *testing.T) {
	g, want := airport([]float64{1, 2, 4, 7, 11, 12, 20, 21})
	got, ok := g.play()
	require.True(t, ok)
	require.True(t, got.exact)
	assert.Equal(t, 256, got.sets)
	for i := range want {
		assert.InDelta(t, want[i], got.part[i][0], 1e-12, "player %d", i)
		assert.Equal(t, []float64{1, 2, 4, 7, 11, 12, 20, 21}[i], got.alone[i][0])
	}
}

// Drawn orders come near the exact value, within their own error, and add up to
// the whole whatever was drawn.
func TestDrawnOrders(t *testing.T) {
	costs := []float64{1, 2, 4, 7, 11, 12, 20, 21, 25, 33, 34, 50}
	g, want := airport(costs)
	g.pairs = 2000
	got, ok := g.play()
	require.True(t, ok)
	require.False(t, got.exact)
	sum := 0.0
	for i := range want {
		sum += got.part[i][0]
		assert.InDelta(t, want[i], got.part[i][0], 4*got.err[i][0], "player %d", i)
	}
	assert.InDelta(t, 50, sum, 1e-12)
	again, _ := g.play()
	assert.Equal(t, got.part, again.part, "the seed is fixed")
}

// Where players only add, everyone's part is what he brings, and there is no
// interaction and no error.
func TestPlayersThatOnlyAdd(t *testing.T) {
	for _, each := range [][]float64{{3}, {1, -2, 5}, {1, 2, 3, 4, 5, 6, 7, 8, 9, 10}} {
		got, ok := sumOf(each).play()
		require.True(t, ok)
		for i, x := range each {
			assert.InDelta(t, x, got.part[i][0], 1e-12)
			assert.InDelta(t, x, got.alone[i][0], 1e-12)
			if got.err != nil {
				assert.InDelta(t, 0, got.err[i][0], 1e-7)
			}
		}
	}
}

func TestAGameThatCannotBePlayed(t *testing.T) {
	g := game{players: 3, value: func(s set) []float64 {
		if s.has(1) && !s.has(2) {
			return nil
		}
		return []float64{1}
	}}
	_, ok := g.play()
	assert.False(t, ok)
}

func TestApportion(t *testing.T) {
	for _, c := range []struct {
		parts  []float64
		total  float64
		places int
		want   []float64
	}{
		{[]float64{-1.64, -0.36, -0.06}, -2.1, 1, []float64{-1.6, -0.4, -0.1}},
		{[]float64{0.25, 0.25, 0.25, 0.25}, 1, 1, []float64{0.2, 0.2, 0.3, 0.3}},
		{[]float64{0.004}, 0.01, 2, []float64{0.01}},
		{[]float64{5.5}, 5, 0, []float64{5}},
	} {
		got := apportion(c.parts, c.total, c.places)
		sum := 0.0
		for _, x := range got {
			sum += x
		}
		assert.InDelta(t, c.total, sum, 1e-9)
		assert.ElementsMatch(t, c.want, got)
	}
}
