package promise

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/plan"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// What a plan gives of each thing that is promised, on the promise's own basis and in its
// own unit, and what is off.
func TestAnswers(t *testing.T) {
	p := &plan.Plan{
		Mash: plan.Mash{OriginalGravitySG: 1.07, Hours: 7}, Ferment: plan.Ferment{FinalGravitySG: 0.998, DryHours: 60, Wash: plan.Lot{VolumeL: 1000, WineGallons: 264, AbvPct: 8, Proof: 16}, Liquid: plan.Strength{AbvPct: 8.5, Proof: 17}},
		Strip: plan.Run{TotalHours: 5}, Spirit: plan.Run{TotalHours: 6, Feints: &plan.Lot{VolumeL: 80, WineGallons: 21, AbvPct: 40, Proof: 80}},
		Yield: plan.Yield{HeartsLPAPerTonne: 380}, Cask: plan.Cask{Casks: 2, Leftover: plan.Lot{VolumeL: 3, WineGallons: 0.8}},
	}
	low := plan.Lot{VolumeL: 300, WineGallons: 79, AbvPct: 28, Proof: 56}
	hearts := plan.Lot{VolumeL: 100, WineGallons: 26.4, AbvPct: 70, Proof: 140, PureL: 70, ProofGallons: 37, MassKg: 89}
	abv, proof, abw := recipe.Strength{Basis: recipe.ABV}, recipe.Strength{Basis: recipe.Proof}, recipe.Strength{Basis: recipe.ABW}
	for _, c := range []struct {
		gauge   recipe.System
		what    string
		kind    quantity.Kind
		at      recipe.Strength
		unit    string
		found   float64 // in SI
		shown   float64
		shownAs plan.Unit
	}{
		{recipe.SI, "original-gravity", quantity.Gravity, abv, "SG", 1.07, 1.07, plan.SG},
		{recipe.SI, "original-gravity", quantity.Gravity, abv, "plato", 1.07, 17.06, plan.Plato},
		{recipe.SI, "final-gravity", quantity.Gravity, abv, "SG", 0.998, 0.998, plan.SG},
		{recipe.SI, "wash", quantity.Volume, abv, "L", 1, 1000, plan.Litre},
		{recipe.SI, "wash", quantity.Strength, abv, "% abv", 0.085, 8.5, plan.AbvPct},
		{recipe.SI, "low-wines", quantity.Volume, abv, "L", 0.3, 300, plan.Litre},
		{recipe.SI, "low-wines", quantity.Strength, proof, "proof", 0.28, 28.073, plan.AbvPct},
		{recipe.SI, "hearts", quantity.Volume, abv, "L", 0.1, 100, plan.Litre},
		{recipe.US, "hearts", quantity.Volume, abv, "gal", 26.4 * 3.785411784e-3, 99.93, plan.Litre},
		{recipe.SI, "hearts", quantity.Strength, abw, "% abw", 70 * 0.78924 / 89, 69.71, plan.AbvPct},
		{recipe.SI, "hearts", quantity.ProofGallons, abv, "proof-gal", 37, 37, plan.ProofGallon},
		{recipe.SI, "hearts", quantity.PureAlcohol, abv, "LPA", 0.07, 70, plan.PureLitre},
		{recipe.SI, "pure-alcohol", quantity.PureAlcohol, abv, "LPA", 0.07, 70, plan.PureLitre},
		{recipe.SI, "pure-alcohol", quantity.ProofGallons, abv, "proof-gal", 37, 37, plan.ProofGallon},
		{recipe.SI, "pure-alcohol", quantity.Volume, abv, "L", 0.07, 70, plan.Litre},
		{recipe.US, "pure-alcohol", quantity.Volume, abv, "gal", 18.5 * 3.785411784e-3, 70, plan.Litre},
		{recipe.SI, "yield", quantity.SpiritYield, abv, "LPA/t", 380e-6, 380, plan.PurePerT},
		{recipe.SI, "casks", quantity.Number, abv, "", 2, 2, plan.Each},
		{recipe.SI, "leftover", quantity.Volume, abv, "L", 0.003, 3, plan.Litre},
		{recipe.SI, "feints", quantity.Volume, abv, "L", 0.08, 80, plan.Litre},
		{recipe.SI, "mash", quantity.Duration, abv, "h", 7 * 3600, 420, plan.Minute},
		{recipe.SI, "dry", quantity.Duration, abv, "h", 60 * 3600, 3600, plan.Minute},
		{recipe.SI, "strip", quantity.Duration, abv, "h", 5 * 3600, 300, plan.Minute},
		{recipe.SI, "spirit", quantity.Duration, abv, "h", 6 * 3600, 360, plan.Minute},
	} {
		name := c.what + " in " + c.unit
		e := recipe.Promise{What: c.what, Kind: c.kind, Unit: c.unit, Strength: c.at, Value: c.found}
		b := &recipe.Batch{Gauge: c.gauge, Promises: []recipe.Promise{e}}
		answer := func() Answer { return Answers(b, p, low, hearts)[0] }
		found, ok := answers{b.Gauge, p, low, hearts}.promised(e)
		require.True(t, ok, name)
		assert.InEpsilon(t, c.found, found, 1e-5, name)

		b.Promises[0].Value = found
		a := answer()
		assert.True(t, a.Kept, name)
		assert.True(t, a.More, "%s: just as much is not less", name)
		assert.Equal(t, c.shownAs, a.Found.Unit, name)
		assert.InEpsilon(t, c.shown, a.Found.Value, 1e-3, name)
		assert.Nil(t, a.Times, name)

		b.Promises[0].Value = found * 1.1
		a = answer()
		assert.False(t, a.Kept, name)
		assert.False(t, a.More, name)
		b.Promises[0].Tolerance = found * 0.1001
		if c.unit != "plato" { // whose margin is in degrees
			assert.True(t, answer().Kept, name)
			b.Promises[0].Tolerance = found * 0.0999
			assert.False(t, answer().Kept, name)
		}
		b.Promises[0].Value, b.Promises[0].InRuns, b.Promises[0].OfRuns = found*0.9, 10, 9
		a = answer()
		assert.True(t, a.More, name)
		assert.Equal(t, &plan.Times{Of: 9, In: 10}, a.Times, name)
		assert.Equal(t, c.what == "wash" && c.kind == quantity.Strength, a.Basis != "", name)
	}
}
