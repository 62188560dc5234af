package mash

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/recipe"
)

// treated is a tonne of pale malt in 3 L/kg of soft water.
func treated(t *testing.T, x recipe.Treatment) Input {
	in := plant(t)
	in.Cooker.HoldsM3, in.HardnessPPM = 6, 0
	in.Bill = bill(t, []string{"two-row-malt"}, []float64{1000})
	in.Steps = []recipe.MashStep{{Verb: recipe.MashWater, VolumeM3: 3, TempC: 70}, add(0)}
	in.Treatment = x
	return in
}

// Acid for a tenth of a pH in a tonne of malt whose buffer is 35 mEq/(kg pH), worked
// out from strength and pKa (CRC Handbook, from memory) by hand: lactic of 88 %
// 0.30 L, phosphoric of 85 % 0.24 L, sulfuric of 96 % 0.097 L.
func TestAcidToAPH(t *testing.T) {
	without := must(t, treated(t, recipe.Treatment{})).PH
	for acid, wantKg := range map[recipe.Acid]float64{recipe.Lactic: 0.301 * 1.21, recipe.Phosphoric: 0.235 * 1.685, recipe.Sulfuric: 0.0973 * 1.835} {
		r := must(t, treated(t, recipe.Treatment{Acid: acid, AcidToPH: without - 0.1}))
		assert.InEpsilon(t, wantKg, r.AcidKg, 0.02, acid.String())
		assert.InDelta(t, without-0.1, r.PH, 1e-6)
		assert.InEpsilon(t, 3500, r.AcidMEq, 1e-6)
		assert.InDelta(t, without, r.PHWithoutAcid, 1e-9)

		// The same volume, written as such, gives the same pH; and twice, more.
		m3 := r.AcidKg / acids[acid].kgM3
		assert.InDelta(t, r.PH, must(t, treated(t, recipe.Treatment{Acid: acid, AcidM3: m3})).PH, 1e-6)
		assert.Less(t, must(t, treated(t, recipe.Treatment{Acid: acid, AcidM3: 2 * m3})).PH, r.PH-0.09)
	}
}

// A pH that the mash is at already takes no acid; a little below it takes some.
func TestAcidThatIsNotWanted(t *testing.T) {
	without := must(t, treated(t, recipe.Treatment{})).PH
	above := must(t, treated(t, recipe.Treatment{Acid: recipe.Lactic, AcidToPH: without + 0.01}))
	assert.Zero(t, above.AcidKg)
	assert.InDelta(t, without, above.PH, 1e-9)
	assert.Greater(t, must(t, treated(t, recipe.Treatment{Acid: recipe.Lactic, AcidToPH: without - 0.01})).AcidKg, 0.0)
}

// Acid is reckoned on all that goes in, in whatever order.
func TestAcidReckonsWithBacksetAndWater(t *testing.T) {
	in := treated(t, recipe.Treatment{Acid: recipe.Phosphoric, AcidToPH: 5.0, GypsumKg: 1})
	in.HardnessPPM = 250
	in.Steps = append(in.Steps, recipe.MashStep{Verb: recipe.MashBackset, VolumeM3: 0.2, TempC: 20}, recipe.MashStep{Verb: recipe.MashWater, VolumeM3: 0.5, TempC: 20})
	assert.InDelta(t, 5.0, must(t, in).PH, 1e-6)
}

// Gypsum lowers and lime raises: calcium by one hydrogen ion for 3.5 equivalents,
// 430 g of gypsum in a cubic metre being 100 mg/L of it.
func TestGypsumAndLime(t *testing.T) {
	without := must(t, treated(t, recipe.Treatment{})).PH
	gypsum := must(t, treated(t, recipe.Treatment{GypsumKg: 3 * 0.430})).PH
	assert.InDelta(t, -0.122, gypsum-without, 0.002, "100 mg/L of calcium: 4.99 mEq/L over 3.5, times 3 L/kg, over 35")
	lime := must(t, treated(t, recipe.Treatment{LimeKg: 0.1}))
	assert.Greater(t, lime.PH, without+0.05)
	assert.InEpsilon(t, 0.1*27e3*2.5/3.5, lime.SaltsMEq, 0.001, "27 mEq/g, less its own calcium")
}
