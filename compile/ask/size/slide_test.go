package size

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/measure"
	"newmake/lang/recipe"
)

// Where the cut stands, the slide gives what the plan gives; moved, what a plan of a
// batch gives that is written so.
func TestSlideIsThePlan(t *testing.T) {
	b, _ := house(t).Batch("Ferry Landing")
	s, err := NewSlide(b, measure.US)
	require.NoError(t, err)
	assert.Equal(t, "% abv", s.Unit)
	assert.InDelta(t, 62, s.Now, 1e-9)
	assert.Equal(t, "62.0 % abv", s.Words(s.Now))
	assert.Equal(t, 0.2, s.Step)
	whole, _ := compile.Compile(b)
	now, err := s.At(s.Now)
	require.NoError(t, err)
	assert.Equal(t, HeartsOf(whole), HeartsOf(now))

	other := *b
	other.Spirit.HeartsTo.Strength.Value = 0.55
	written, _ := compile.Compile(&other)
	moved, err := s.At(55)
	require.NoError(t, err)
	assert.Equal(t, HeartsOf(written), HeartsOf(moved))
	assert.Greater(t, HeartsOf(moved).VolumeL, HeartsOf(now).VolumeL, "a later cut gives more")
	assert.Less(t, HeartsOf(moved).Proof, HeartsOf(now).Proof, "and weaker")
}

// A cut can be moved in the measure in which it is written, between the ends of its
// range and not past them.
func TestSlideMeasures(t *testing.T) {
	for _, c := range []struct {
		cut  recipe.Cut
		u    measure.Units
		unit string
	}{
		{recipe.Cut{By: recipe.ByStrength, Strength: recipe.Strength{Value: 0.62}}, measure.SI, "% vol"},
		{recipe.Cut{By: recipe.ByTime, TimeS: 10800}, measure.SI, "min"},
		{recipe.Cut{By: recipe.ByStrength, Strength: recipe.Strength{Value: 0.62, Basis: recipe.Proof}}, measure.US, "proof"},
		{recipe.Cut{By: recipe.ByVolume, VolumeM3: 0.185}, measure.US, "gal"},
		{recipe.Cut{By: recipe.ByVolume, VolumeM3: 0.185}, measure.SI, "L"},
		{recipe.Cut{By: recipe.ByVapourTemp, TempC: 90}, measure.US, "F"},
		{recipe.Cut{By: recipe.ByVapourTemp, TempC: 90}, measure.SI, "C"},
		{recipe.Cut{By: recipe.ByShare, Share: 0.6}, measure.US, "% of charge"},
	} {
		b, _ := house(t).Batch("Ferry Landing")
		o := *b
		o.Spirit.HeartsTo = c.cut
		if c.cut.By == recipe.ByTime {
			o.Spirit.Pace.Hearts = recipe.FractionPace{FlowM3S: 68e-3 / 3600}
		}
		s, err := NewSlide(&o, c.u)
		require.NoError(t, err, c.unit)
		assert.Equal(t, c.unit, s.Unit)
		assert.True(t, s.Holds(s.Now), "%s: %v in %v..%v", c.unit, s.Now, s.From, s.To)
		steps := (s.To - s.From) / s.Step
		assert.True(t, steps >= 20 && steps <= 170, "%s: %v steps", c.unit, steps)
		for _, v := range []float64{s.From - s.Step, s.To + s.Step} {
			_, err := s.At(v)
			assert.ErrorContains(t, err, "can end between", c.unit)
		}
		middle := s.From + s.Step*float64(int(steps/2))
		p, err := s.At(middle)
		require.NoError(t, err, c.unit)
		assert.Positive(t, HeartsOf(p).VolumeL)
	}
	b, _ := house(t).Batch("Ferry Landing")
	o := *b
	o.Spirit.HeartsTo = recipe.Cut{By: recipe.ByStrength, Strength: recipe.Strength{Value: 0.55, Basis: recipe.ABW}}
	_, err := NewSlide(&o, measure.US)
	assert.ErrorContains(t, err, "weight percent")
}

// Hearts that end by the clock and come by the drop, at a flow, a heat or in a time, come
// to an end or to an answer that says why not: no plan is made with readings for years.
func TestSlideByTheClockEnds(t *testing.T) {
	for _, timeS := range []float64{60, 10800, 86400, 1e9} {
		for _, pace := range []recipe.FractionPace{{}, {OverS: 60}, {OverS: 1e9}, {FlowM3S: 1e-12}, {PowerW: 1}, {PowerW: 1e7}} {
			b, _ := house(t).Batch("Ferry Landing")
			o := *b
			o.Spirit.HeartsTo = recipe.Cut{By: recipe.ByTime, TimeS: timeS}
			o.Spirit.Pace.Hearts = pace
			_, err := NewSlide(&o, measure.US)
			switch {
			case pace.FlowM3S > 0:
				require.ErrorContains(t, err, "a run is followed for a week")
			case pace.PowerW == 1:
				require.ErrorContains(t, err, "does not make up the still's losses")
			case timeS == 60 || timeS == 1e9:
				require.ErrorContains(t, err, "the hearts end where the run does")
			}
		}
	}
}
