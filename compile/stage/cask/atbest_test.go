package cask

import (
	"maps"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/fluid"
	"newmake/lang/check"
	"newmake/lang/recipe"
)

// What could be had of the table of proof by age (ACCURACY, Cask), if constants were chosen
// for it alone. A curve is the nearest of its degree where its largest deviations are alike
// and change their sign one time more than it has coefficients (Chebyshev's theorem).
func TestProofByAgeAtBest(t *testing.T) {
	ages := []float64{0.5, 1, 2, 3, 4, 5, 6, 7, 8}
	table := []float64{104.1, 104.4, 105.0, 106.0, 106.8, 107.7, 108.7, 110.6, 112.1}
	off := func(curve func(age float64) float64, at ...int) (largest float64) {
		sign := 0.0
		for i := 1; i < len(ages); i++ {
			largest = math.Max(largest, math.Abs(curve(ages[i])-table[i]))
		}
		for _, i := range at {
			d := curve(ages[i]) - table[i]
			assert.InDelta(t, largest, math.Abs(d), 1e-9)
			assert.NotEqual(t, sign, math.Copysign(1, d))
			sign = math.Copysign(1, d)
		}
		return largest
	}
	assert.InDelta(t, 0.60, off(func(a float64) float64 { return 102.7 + 1.1*a }, 1, 6, 8), 1e-9)
	assert.InDelta(t, 0.23, off(func(a float64) float64 { return 104.35 + a*0.55/3 + a*a*0.29/3 }, 1, 3, 6, 7), 1e-9)

	library := check.Builtin().Library
	w, err := fluid.MassFracFromProof(104.6)
	require.NoError(t, err)
	kg := 53 * gal * fluid.Density(w, referenceC)
	best, soak := math.Inf(1), 0.0
	for days := 120.0; days <= 480; days += 30 {
		for _, water := range []float64{0.015, 0.02, 0.0225, 0.025, 0.0275} {
			for rise := 0.9; rise < 1.3; rise += 0.01 {
				m := *library.Models["cask"]
				m.Values = maps.Clone(m.Values)
				m.Values["soak-time"], m.Values["wood-water"], m.Values["warm-proof-per-year"] = days*86400, water, rise
				wood, err := NewWood(Input{SpiritEthanolKg: kg * w, SpiritWaterKg: kg * (1 - w), SizeM3: 53 * gal, Kind: library.Woods["charred-oak"], Climate: recipe.Climate{Named: "warm"}, FilledAt: -1, Model: &m})
				require.NoError(t, err)
				one, largest := wood.Course(1), 0.0
				for i, age := range ages {
					one.To(age)
					largest = math.Max(largest, math.Abs(one.Now().Proof-table[i]))
				}
				if largest < best {
					best, soak = largest, days
				}
			}
		}
	}
	assert.InDelta(t, 0.395, best, 0.01, "not 0.3")
	assert.GreaterOrEqual(t, soak, 330., "days: longer than any wood is said to soak")
}
