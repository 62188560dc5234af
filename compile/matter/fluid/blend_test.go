package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func fromABV(t testing.TB, abv float64) float64 {
	t.Helper()
	w, err := MassFracFromABV(abv)
	require.NoError(t, err)
	return w
}

// Larkin, J. Chem. Thermodyn. 7 (1975) 137: 62.5 to 40 % vol warms by 4.9 C at
// 25 C (computed from the paper's equation). Tolerance 0.1 C.
func TestReductionRise(t *testing.T) {
	r, err := Reduce(Lot{MassKg: 100, EthanolMassFrac: fromABV(t, 0.625), TempC: 25}, fromABV(t, 0.40), 25)
	require.NoError(t, err)
	assert.InDelta(t, 4.9, r.Result.RiseC, 0.1)
	assert.InDelta(t, 25, r.Result.MeanTempC, 1e-9)
}

// Mass of ethanol and of water, and energy, are conserved; the mixture is
// smaller than its parts; the two lots may come in either order.
func TestBlendConserves(t *testing.T) {
	r := fixedSeed()
	lot := func() Lot {
		return Lot{MassKg: 1000 * r.Float64(), EthanolMassFrac: r.Float64(), TempC: 5 + 50*r.Float64()}
	}
	for range 2000 {
		a, b := lot(), lot()
		m, err := Blend(a, b)
		require.NoError(t, err)
		require.InEpsilon(t, a.MassKg+b.MassKg, m.MassKg, 1e-12)
		require.InEpsilon(t, a.MassKg*a.EthanolMassFrac+b.MassKg*b.EthanolMassFrac, m.MassKg*m.EthanolMassFrac, 1e-12)
		in := a.MassKg*LiquidEnthalpy(a.EthanolMassFrac, a.TempC) + b.MassKg*LiquidEnthalpy(b.EthanolMassFrac, b.TempC)
		require.InDelta(t, in, m.MassKg*LiquidEnthalpy(m.EthanolMassFrac, m.TempC), 1e-9*math.Abs(in)+1e-6)
		require.GreaterOrEqual(t, m.MeanTempC, math.Min(a.TempC, b.TempC)-1e-9)
		require.LessOrEqual(t, m.MeanTempC, math.Max(a.TempC, b.TempC)+1e-9)
		back, err := Blend(b, a)
		require.NoError(t, err)
		require.InDelta(t, m.TempC, back.TempC, 1e-9)
		require.InDelta(t, m.ContractionM3, back.ContractionM3, 1e-12)
	}
}

// Spirit and water contract and warm near 20 C. (Below about 25 % vol more
// water makes the mixture grow a little, as OIML's own densities show.)
func TestDilutionContractsAndWarms(t *testing.T) {
	for abv := 0.4; abv <= 0.96; abv += 0.04 {
		for to := 0.2; to < abv-0.01; to += 0.05 {
			r, err := Reduce(Lot{MassKg: 1, EthanolMassFrac: fromABV(t, abv), TempC: 20}, fromABV(t, to), 20)
			require.NoError(t, err)
			require.Greater(t, r.Result.ContractionM3, 0.0, "%g to %g", abv, to)
			require.Greater(t, r.Result.RiseC, 0.0, "%g to %g", abv, to)
		}
	}
}

// Mixing a lot with more of itself changes nothing.
func TestBlendOfLikeLots(t *testing.T) {
	m, err := Blend(Lot{2, 0.4, 18}, Lot{3, 0.4, 18})
	require.NoError(t, err)
	assert.InDelta(t, 18, m.TempC, 1e-9)
	assert.InDelta(t, 0, m.RiseC, 1e-9)
	assert.InDelta(t, 0, m.ContractionM3, 1e-15)
}

func TestReduceInSteps(t *testing.T) {
	spirit := Lot{MassKg: 50, EthanolMassFrac: fromABV(t, 0.68), TempC: 20}
	once, err := Reduce(spirit, fromABV(t, 0.43), 20)
	require.NoError(t, err)
	half, err := Reduce(spirit, fromABV(t, 0.55), 20)
	require.NoError(t, err)
	twice, err := Reduce(half.Result.Lot, fromABV(t, 0.43), 20)
	require.NoError(t, err)
	assert.InEpsilon(t, once.Water.MassKg, half.Water.MassKg+twice.Water.MassKg, 1e-12)
	assert.InDelta(t, once.Result.TempC, twice.Result.TempC, 1e-6, "the path does not matter")
}

func TestBlendErrors(t *testing.T) {
	good := Lot{1, 0.5, 20}
	for _, bad := range []Lot{
		{-1, 0.5, 20}, {math.NaN(), 0.5, 20}, {math.Inf(1), 0.5, 20},
		{1, -0.1, 20}, {1, 1.1, 20}, {1, math.NaN(), 20}, {1, 0.5, 130}, {1, 0.5, math.NaN()},
	} {
		_, err := Blend(good, bad)
		assert.Error(t, err, "%+v", bad)
		_, err = Blend(bad, good)
		assert.Error(t, err, "%+v", bad)
	}
	_, err := Blend(Lot{}, Lot{})
	assert.Error(t, err)
	_, err = Reduce(good, 0.6, 20)
	assert.ErrorContains(t, err, "only weakens")
	_, err = Reduce(good, 0, 20)
	assert.Error(t, err)
}

// volumeM3 is the lot's volume at its own temperature.
func (l Lot) volumeM3() float64 { return l.VolumeAtM3(l.TempC) }
