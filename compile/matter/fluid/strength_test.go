package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// OIML R 22: q = p rho(p,20)/rho(1,20) with the densities printed in Table I at
// 20 C for 30, 40 and 50 % by mass, and 789.24 for pure ethanol
// (from memory of its Table III). Tolerance 1e-5: print rounding.
func TestABVFromMassFracOIML(t *testing.T) {
	for _, c := range []struct{ w, rho float64 }{{0.30, 953.78}, {0.40, 935.15}, {0.50, 913.77}} {
		assert.InDelta(t, c.w*c.rho/789.24, ABVFromMassFrac(c.w), 1e-5)
	}
}

func TestStrengthEnds(t *testing.T) {
	for _, f := range []func(float64) float64{ABVFromMassFrac, ABV60FFromMassFrac} {
		assert.Equal(t, 0.0, f(0))
		assert.Equal(t, 1.0, f(1))
	}
	for _, f := range []func(float64) (float64, error){MassFracFromABV, MassFracFromABV60F} {
		for _, q := range []float64{0, 1} {
			w, err := f(q)
			assert.NoError(t, err)
			assert.Equal(t, q, w)
		}
		for _, q := range []float64{-1e-12, 1 + 1e-12, math.NaN(), math.Inf(1)} {
			_, err := f(q)
			assert.Error(t, err, "strength %g", q)
		}
	}
}

// Strength by volume and by mass, both ways over the whole range, to 1e-12.
func TestStrengthRoundTrip(t *testing.T) {
	pairs := []struct {
		name string
		to   func(float64) float64
		from func(float64) (float64, error)
	}{
		{"20 C", ABVFromMassFrac, MassFracFromABV},
		{"60 F", ABV60FFromMassFrac, MassFracFromABV60F},
	}
	for _, p := range pairs {
		check := func(v float64) {
			w, err := p.from(v)
			require.NoError(t, err)
			require.InDelta(t, v, p.to(w), 1e-12, "%s: strength %g", p.name, v)
			back, err := p.from(p.to(v))
			require.NoError(t, err)
			require.InDelta(t, v, back, 1e-12, "%s: mass fraction %g", p.name, v)
		}
		steps(0, 1, 5000, check)
		steps(0, 1e-6, 50, check)
		steps(1-1e-6, 1, 50, check)
	}
}

// Strength by volume rises with strength by mass, and is the greater.
func TestStrengthMonotone(t *testing.T) {
	last := -1.0
	steps(0, 1, 10000, func(w float64) {
		q := ABVFromMassFrac(w)
		require.Greater(t, q, last)
		require.GreaterOrEqual(t, q, w)
		last = q
	})
}

// Strength from density, to 1e-9 over the whole range of both regimes: the
// density falls with strength everywhere, so there is one answer.
func TestMassFracFromDensityRoundTrip(t *testing.T) {
	worst := 0.0
	check := func(w, tempC float64) {
		back, err := MassFracFromDensity(Density(w, tempC), tempC)
		require.NoError(t, err, "w %g at %g C", w, tempC)
		require.InDelta(t, w, back, 1e-9, "w %g at %g C", w, tempC)
		worst = math.Max(worst, math.Abs(w-back))
	}
	for tempC := -20.0; tempC <= 120; tempC += 2.5 {
		steps(0, 1, 400, func(w float64) { check(w, tempC) })
	}
	r := fixedSeed()
	for range 20000 {
		check(r.Float64(), -20+140*r.Float64())
	}
	t.Logf("largest error of the round trip: %.2g", worst)
}

func TestMassFracFromDensityErrors(t *testing.T) {
	for _, c := range []struct{ rho, tempC float64 }{
		{998.21, 20},  // denser than water
		{789.2, 20},   // lighter than ethanol
		{900, -20.01}, // too cold
		{900, 120.01}, // too hot
		{math.NaN(), 20}, {900, math.NaN()}, {0, 20}, {-5, 20}, {math.Inf(1), 20},
	} {
		_, err := MassFracFromDensity(c.rho, c.tempC)
		assert.Error(t, err, "%g kg/m3 at %g C", c.rho, c.tempC)
	}
	_, err := MassFracFromDensity(1050, 20)
	assert.ErrorContains(t, err, "dissolved")
}
