package chart

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A lying cylinder that is half full is filled to its middle; a quarter of what it holds
// stands at 29.8 % of its height (the segment of a circle: a - sin a cos a = pi/4).
func TestLevel(t *testing.T) {
	for full, want := range map[float64]float64{0: 0, 0.25: 0.298, 0.5: 0.5, 0.75: 0.702, 1: 1, -1: 0, 2: 1} {
		assert.InDelta(t, want, levelOf(full), 0.001, full)
	}
}

// Few casks have words below them, many have none, and of too many no picture is made.
func TestRacks(t *testing.T) {
	heads := func(n int) (out []Head) {
		for i := range n {
			out = append(out, Head{Name: fmt.Sprintf("C-%d", i), Below: "50.1 PG", Full: 0.9, State: HeadState(i % 3)})
		}
		return out
	}
	words := func(c Chart) (n int) {
		for _, m := range c.Marks {
			if m.Shape == "text" {
				n++
			}
		}
		return n
	}
	assert.Empty(t, Racks(nil).ID)
	few := Racks([]Rack{{"Rack house, row 1", heads(9)}, {"no place written", heads(1)}})
	assert.Equal(t, 2+2*10, words(few))
	assert.Contains(t, few.Desc, "Rack house, row 1: C-0 90 % full, C-1 90 % full, rest over, C-2 90 % full, may leak")
	assert.Equal(t, 1+2*manyHeads, words(Racks([]Rack{{"A", heads(manyHeads)}})))
	many := Racks([]Rack{{"A", heads(manyHeads + 1)}})
	assert.Equal(t, 1, words(many))
	require.NotEmpty(t, Racks([]Rack{{"A", heads(MostHeads)}}).ID)
	assert.Empty(t, Racks([]Rack{{"A", heads(MostHeads + 1)}}).ID)
	for _, c := range append(sizes(t, few), sizes(t, many)...) {
		for _, m := range c.Marks {
			var x, y float64
			fmt.Sscan(m.X+" "+m.Y, &x, &y)
			assert.LessOrEqual(t, y, float64(c.H))
			assert.LessOrEqual(t, x, float64(c.W))
		}
	}
}
