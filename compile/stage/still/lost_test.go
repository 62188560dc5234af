package still

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is lost of a run is out of every receiver and in none: what went in is in the
// receivers, lost, or left in the pot. Strengths and hours are those of a tight still.
func TestLost(t *testing.T) {
	tight := washRun(t)
	leaky := tight
	leaky.Still.LostFrac = 0.02
	a, err := Strip(tight)
	require.NoError(t, err)
	b, err := Strip(leaky)
	require.NoError(t, err)
	assert.Zero(t, a.Lost.MassKg())
	assert.InDelta(t, 0.98*a.Fraction(LowWines).EthanolKg, b.Fraction(LowWines).EthanolKg, 1e-9)
	assert.InDelta(t, 0.98*a.Fraction(LowWines).VolumeM3, b.Fraction(LowWines).VolumeM3, 1e-12)
	assert.InDelta(t, 0.02*a.Fraction(LowWines).WaterKg, b.Lost.WaterKg, 1e-9)
	assert.Equal(t, a.Fraction(LowWines).ABV, b.Fraction(LowWines).ABV)
	assert.Equal(t, a.DurationS, b.DurationS)
	assert.Equal(t, a.Residue, b.Residue)
}

// A house at work that loses something returns what it has left of its feints.
func TestSteadyWithALoss(t *testing.T) {
	in := secondRun(t)
	tight, _ := steady1(t, in)
	in.Still.LostFrac = 0.02
	r, _ := steady1(t, in)
	require.NotContains(t, r.Problems, ProblemNotSteady)
	returned, feints, scale := r.Charge.Minus(in.LowWines), r.Feints(), r.Charge.MassKg()
	assert.InDelta(t, returned.EthanolKg, feints.EthanolKg, 2e-9*scale)
	assert.InDelta(t, returned.WaterKg, feints.WaterKg, 2e-9*scale)
	out := r.Fraction(Hearts).EthanolKg + r.Fraction(Foreshots).EthanolKg + r.Residue.EthanolKg + r.Lost.EthanolKg
	assert.InDelta(t, in.LowWines.EthanolKg, out, 3e-9*scale)
	assert.Less(t, r.Fraction(Hearts).EthanolKg, 0.98*tight.Fraction(Hearts).EthanolKg, "what is lost of the feints is lost to the hearts too")
}
