package compile

import (
	"newmake/compile/plan"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestVolumeTimesStrengthIsTheAlcohol(t *testing.T) {
	p := planned(t, batch(t, lantern, ferry))
	s, f := p.Summary, p.Ferment
	assert.InDelta(t, f.PureL, s.WashVolumeL*s.WashAbvPct/100, 0.1)
	assert.InDelta(t, f.PureL, p.Strip.Charge.PureL, 0.01)
	assert.Equal(t, s.WashAbvPct, p.Strip.Charge.AbvPct)
	assert.Greater(t, f.Liquid.AbvPct, s.WashAbvPct+0.2, "grain takes room and holds no alcohol")
	for _, l := range []plan.Lot{f.Wash, p.Strip.Charge, p.Spirit.Charge, p.Reduction.From, p.Reduction.To, *p.Cask.Fill, p.Cask.Leftover} {
		assert.InDelta(t, l.PureL, l.VolumeL*l.AbvPct/100, 0.01+5e-5*l.VolumeL)
		assert.InDelta(t, l.ProofGallons, l.WineGallons*l.Proof/100, 0.01+5e-4*l.WineGallons)
	}
	read := stepOf(t, p, "strip.charge").Read[1]
	assert.Equal(t, "strength, strained", read.What)
	assert.Equal(t, f.Liquid.AbvPct, read.Should.Value)
}

func TestWrittenVolumesComeBack(t *testing.T) {
	p := planned(t, edited(t, func(b *recipe.Batch) {
		gal := 3.785411784e-3
		b.Promises = []recipe.Promise{{What: "hearts", Kind: quantity.Volume, Unit: "gal", Value: 45 * gal, Tolerance: 2 * gal}}
	}))
	fore, heads := fractionOf(p.Spirit, "foreshots"), fractionOf(p.Spirit, "heads")
	assert.InDelta(t, 0.5, fore.WineGallons, 0.001)
	assert.InDelta(t, 4, fore.WineGallons+heads.WineGallons, 0.001, "hearts from 4 gal")
	assert.Equal(t, 62.0, fractionOf(p.Spirit, "hearts").Ends.Proof/2, "to 62 % abv")
	k := p.Promises[0]
	assert.InDelta(t, 45, k.Promised.Gallons, 0.001)
	assert.Equal(t, p.Reduction.From.WineGallons, k.Found.Gallons)
	assert.InDelta(t, 2, k.Tolerance.Gallons, 0.001)
	assert.InDelta(t, p.Reduction.To.WineGallons, 53+p.Cask.Leftover.WineGallons, 0.002)
	assert.InDelta(t, 53, p.Cask.Forecast[0].WineGallons, 0.01)

	// Spoken of in litres the batch is the same batch.
	si := planned(t, edited(t, func(b *recipe.Batch) { b.Units = recipe.SI }))
	us := planned(t, batch(t, lantern, ferry))
	assert.Equal(t, us.Summary, si.Summary)

	// Written in litres, the litres are those at 20 C.
	malt := planned(t, batch(t, "testdata/houses/malt-425", ""))
	assert.Equal(t, 2.0, fractionOf(malt.Spirit, "foreshots").VolumeL)
	assert.Equal(t, 200.0, malt.Cask.Fill.VolumeL)
	assert.Equal(t, 33.0, fractionOf(malt.Spirit, "hearts").Ends.AbvPct)
}
