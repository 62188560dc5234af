package season

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestPrintedStands: a task that is printed is written anew when it takes more minutes
// otherwise than the clocks of a plan are good for, or another heat than so many minutes
// of a short task make; one of a run that nobody has on paper by any minute, and any step
// of the boiler.
func TestPrintedStands(t *testing.T) {
	one := func(minutes int, powerW float64) block {
		return block{minutes: minutes, tasks: []task{{key: "strip.heat", to: minutes, powerW: powerW}}}
	}
	for _, c := range []struct {
		within, minutes int
		powerW          float64
		differs         bool
	}{
		{printedWithinMin, 70, 80e3, false},
		{printedWithinMin, 71, 80e3, true},
		{printedWithinMin, 50, 80e3, false},
		{printedWithinMin, 49, 80e3, true},
		{printedWithinMin, 60, 90e3, false},
		{printedWithinMin, 60, 90.001e3, true},
		{printedWithinMin, 60, 70e3, false},
		{printedWithinMin, 60, 69.999e3, true},
		{0, 60, 80e3, false},
		{0, 61, 80e3, true},
		{0, 59, 80e3, true},
		{0, 60, 80.1e3, false},
		{0, 60, 80.101e3, true},
	} {
		assert.Equal(t, c.differs, one(60, 80e3).differs(one(c.minutes, c.powerW), c.within), "%+v", c)
	}
	// A task of little heat is not written anew for less than the boiler is counted in.
	assert.False(t, one(60, 400).differs(one(60, 500), printedWithinMin))
	assert.True(t, one(60, 400).differs(one(60, 501), printedWithinMin))
}

// TestKeeps: what a run leaves for the next is there from its minute on, for 72 h.
func TestKeeps(t *testing.T) {
	assert.False(t, keeps(100, 99))
	assert.True(t, keeps(100, 100))
	assert.True(t, keeps(100, 100+72*60))
	assert.False(t, keeps(100, 101+72*60))
}

// TestAsMovesWhatFollows: a block that takes longer puts off what follows its end, and what
// is done beside it goes by the task that it follows.
func TestAsMovesWhatFollows(t *testing.T) {
	c := func(minutes int) *course {
		return &course{blocks: []block{
			{after: -1, minutes: minutes, tasks: []task{{key: "a", to: minutes - 10}, {key: "b", from: minutes - 10, to: minutes}}},
			{after: 0, least: minutes + 30, most: minutes + 90, minutes: 5, tasks: []task{{key: "c", to: 5}}},
			{after: 0, least: minutes - 10, most: minutes - 10, beside: true, minutes: 5, tasks: []task{{key: "d", to: 5}}},
		}}
	}
	assert.Nil(t, c(60).as(c(70), printedWithinMin))
	out := c(60).as(c(71), printedWithinMin)
	require.NotNil(t, out)
	assert.Equal(t, c(71).blocks, out.blocks)
	assert.Equal(t, 60, c(60).blocks[0].minutes, "the course itself is left as it was")
}
