package learn

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/constants"
)

// What is foretold is as wide as its standard deviation says where the spread between runs is
// certain, and heavier in its tails where it is not.
func TestMargin(t *testing.T) {
	certain := Outcome{After: 10, SD: 2, DF: freedom(0)}
	assert.InDelta(t, 2*constants.NineInTen, certain.margin(), 1e-4)
	assert.Equal(t, mostFreedom, freedom(-1))
	assert.Equal(t, 5.0, freedom(6))
	// Student's t of 5: 2.015 at 95 % (Abramowitz and Stegun, table 26.10).
	unsure := Outcome{After: 10, SD: 2, DF: 5}
	assert.InDelta(t, 2.015*2*.774597, unsure.margin(), 1e-3)
	assert.Greater(t, unsure.t().Quantile(.999), certain.t().Quantile(.999))
}

// A run is foretold by how much the others differ: wider where they do, narrower where they do
// not, and as the prior has it where one run alone tells. What the run itself says does not count.
func TestScatterOfOthers(t *testing.T) {
	cause := constants.Constant{ID: "vigor"}
	effect := func(run int, z float64) Effect { return Effect{Run: run, Constant: cause, Z: z, SD: .1} }
	near := []Effect{effect(0, .1), effect(1, -.1), effect(2, 0), effect(3, .1), effect(4, 9)}
	far := []Effect{effect(0, 2), effect(1, -2), effect(2, 2.5), effect(3, -2.5), effect(4, 0)}
	times, excess := toCome(near, 4)(cause)
	assert.Less(t, times, .5)
	assert.Positive(t, excess)
	wide, _ := toCome(far, 4)(cause)
	assert.Greater(t, wide, 1.2)
	times, excess = toCome(near[:2], 1)(cause)
	assert.Equal(t, [2]float64{1, 0}, [2]float64{times, excess})
}
