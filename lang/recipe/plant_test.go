package recipe

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWaterOfTheYear(t *testing.T) {
	p := &Plant{WaterC: 6, WarmestC: 20, WarmestIn: 8}
	on := func(month, day int) float64 { return p.waterOnC(Start{Year: 2026, Month: month, Day: day}) }
	assert.InDelta(t, 20, on(8, 15), 0.01)
	assert.InDelta(t, 6, on(2, 14), 0.02)
	assert.InDelta(t, 13, on(5, 15), 0.2, "half way, a quarter of a year before")
	assert.InDelta(t, 13, on(11, 15), 0.2)
	assert.InDelta(t, on(12, 31), on(1, 1), 0.2, "a year is a circle")
	p.WarmestIn = 1 // south of the equator
	assert.InDelta(t, 20, on(1, 15), 0.01)
	p.WarmestIn = 0
	assert.Equal(t, 6.0, on(8, 15))
	assert.Equal(t, "none", Month(0).String())
	assert.Equal(t, "August", Month(8).String())
}

func TestWortSteps(t *testing.T) {
	water, drain, sparge := MashStep{Verb: MashWater}, MashStep{Verb: MashDrain}, MashStep{Verb: MashSparge}
	kept := MashStep{Verb: MashDrain, NextMash: true}
	for _, c := range []struct {
		steps []MashStep
		want  int
	}{
		{[]MashStep{water, water}, 2},
		{[]MashStep{water, drain, water, drain}, 4},
		{[]MashStep{water, drain, water, kept}, 2},
		{[]MashStep{water, drain, sparge, water, kept, water}, 3},
		{[]MashStep{water, kept}, 2},
	} {
		assert.Len(t, WortSteps(c.steps), c.want)
	}
}
