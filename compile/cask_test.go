package compile

import (
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestNothingIsBottledStrongerThanItsCask(t *testing.T) {
	p := planned(t, edited(t, func(b *recipe.Batch) { b.Cask.BottleAt = recipe.Strength{Value: 0.75, Basis: recipe.Proof} }))
	last := p.Cask.Forecast[len(p.Cask.Forecast)-1]
	assert.InDelta(t, last.Proof, p.Cask.BottleAt.Proof, 0.0501) // a strength has one place
	require.NotNil(t, p.Cask.BottleAsked)
	assert.Equal(t, 150.0, p.Cask.BottleAsked.Proof)
	assert.Contains(t, condition(t, p, "bottled").Found, measure.Number(last.Proof, 1)+" proof")
}

func TestEveryGallonHasItsPlace(t *testing.T) {
	short, list := Compile(edited(t, func(b *recipe.Batch) { b.Cask.SizeM3 *= 1.02; b.Promises = nil }))
	require.NotNil(t, short)
	assert.Equal(t, 1, short.Cask.Casks)
	require.NotNil(t, short.Cask.LastFill)
	assert.Equal(t, short.Reduction.To.WineGallons, short.Cask.LastFill.WineGallons)
	assert.True(t, hasStep(short, "fill.cask"))
	i := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeCaskNotFilled })
	require.GreaterOrEqual(t, i, 0, list.Error())
	assert.Regexp(t, `it is filled 0\.\d\d gal short`, list[i].Summary)

	none := planned(t, edited(t, func(b *recipe.Batch) { b.Cask.SizeM3 *= 1.3; b.Promises = nil }))
	assert.Zero(t, none.Cask.Casks)
	assert.False(t, hasStep(none, "fill.cask"))
	keep := stepOf(t, none, "fill.keep")
	assert.Equal(t, none.Cask.Leftover.Volume(), keep.Do.Values[1])

	left := stepOf(t, planned(t, batch(t, lantern, ferry)), "fill.cask")
	assert.Contains(t, left.Do.Text, "{} is left: into a closed tank, labelled, for the next cask.")
}

func TestNoWood(t *testing.T) {
	young := func(at float64) *plan.Plan {
		return planned(t, edited(t, func(b *recipe.Batch) {
			b.Cask, b.Promises = recipe.Cask{BottleAt: recipe.Strength{Value: at, Basis: recipe.Proof}}, nil
		}))
	}
	p := young(0.45)
	assert.Zero(t, p.Cask.SizeL)
	assert.Zero(t, p.Summary.CasksFilled)
	assert.Equal(t, 90.0, p.Reduction.To.Proof)
	assert.Equal(t, int(p.Reduction.To.WineGallons*3.785411784/0.75), p.Cask.Bottles, "measured at 60 F (27 CFR 5.1)")
	assert.True(t, hasStep(p, "fill.bottle"))
	assert.Equal(t, "NOT met", condition(t, p, "in wood at least").Met)
	assert.Equal(t, "NOT met", condition(t, p, "wood").Met)
	assert.Equal(t, "met", condition(t, p, "into wood").Met)

	p = young(0)
	assert.Nil(t, p.Reduction)
	assert.True(t, p.Cask.BottleAssumed)
	assert.Equal(t, fractionOf(p.Spirit, "hearts").Volume(), stepOf(t, p, "fill.keep").Read[0].Should)

	_, list := Compile(edited(t, func(b *recipe.Batch) {
		b.Cask = recipe.Cask{BottleAt: recipe.Strength{Value: 0.9, Basis: recipe.Proof}}
	}))
	assert.Contains(t, list.Error(), "are to be bottled at 180.0 proof")

	corn := *batch(t, lantern, "Low Bridge") // corn whisky may see no wood
	corn.Cask = recipe.Cask{}
	assert.Equal(t, "met", condition(t, planned(t, &corn), "wood").Met)
}
