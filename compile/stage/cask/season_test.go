package cask

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/fluid"
	"newmake/lang/check"
	"newmake/lang/recipe"
)

// monthly is a year of air, in C and percent.
func monthly(tempC, humidityPct [12]float64) recipe.YearOfAir {
	y := recipe.YearOfAir{Said: true}
	for i := range y.Months {
		y.Months[i] = recipe.Air{TempC: tempC[i], Humidity: humidityPct[i] / 100}
	}
	return y
}

// allYear is air that is the same in every month.
func allYear(tempC, humidity float64) recipe.YearOfAir {
	y := recipe.YearOfAir{Said: true}
	for i := range y.Months {
		y.Months[i] = recipe.Air{TempC: tempC, Humidity: humidity}
	}
	return y
}

// Two climates out of doors: monthly means of typical meteorological years (TMY3, National
// Renewable Energy Laboratory; statistics files of Sterling, Virginia, and Golden,
// Colorado). No cask lies out of doors: they stand for a damp place and a dry one.
var (
	sterling = monthly([12]float64{0.6, 1.6, 7.7, 12.5, 18.2, 22.5, 24.5, 23.0, 20.1, 11.9, 7.8, 1.0}, [12]float64{61, 68, 60, 63, 72, 71, 75, 74, 77, 67, 73, 68})
	golden   = monthly([12]float64{1.1, -1.3, 3.2, 8.4, 13.1, 18.8, 20.8, 21.5, 17.0, 9.4, 2.6, 1.8}, [12]float64{50, 63, 62, 57, 49, 55, 52, 47, 48, 58, 61, 42})
)

// temperate is a cask of 53 gal at 125 proof in new charred oak.
func temperate(t testing.TB, air recipe.YearOfAir, filledAt float64) Input {
	library := check.Builtin().Library
	w, err := fluid.MassFracFromProof(125)
	require.NoError(t, err)
	const m3 = 0.2006
	kg := m3 * fluid.Density(w, referenceC)
	return Input{
		SpiritEthanolKg: kg * w, SpiritWaterKg: kg * (1 - w), SizeM3: m3, Kind: library.Woods["charred-oak"],
		Climate: recipe.Climate{Named: "temperate"}, Air: air, FilledAt: filledAt, RestS: 4 * YearS, Model: library.Models["cask"],
	}
}

func lastYear(t testing.TB, in Input) Year {
	r, err := Forecast(in)
	require.NoError(t, err)
	return r.Years[len(r.Years)-1]
}

// Air that is the same all the year, of the humidity that the climate implies, changes
// nothing: nor does its temperature, since the climate says how much goes.
func TestAirOfTheClimate(t *testing.T) {
	in := temperate(t, recipe.YearOfAir{}, -1)
	k, err := readConstants(in.Model)
	require.NoError(t, err)
	c, err := newCask(in, k)
	require.NoError(t, err)
	assert.Greater(t, c.later.humidity, 0.5)
	assert.Less(t, c.later.humidity, 0.65, "proof rises in it: it is drier than the pivot")
	plain := lastYear(t, in)
	for _, tempC := range []float64{5, 25} {
		for _, at := range []float64{-1, 0, 0.6} {
			same := temperate(t, allYear(tempC, c.later.humidity), at)
			got := lastYear(t, same)
			// The humidity implied by the first year and by late years is a little another.
			assert.InDelta(t, plain.Proof, got.Proof, 0.05)
			assert.InDelta(t, 1000*plain.VolumeM3, 1000*got.VolumeM3, 0.1)
		}
	}
}

// Which way strength goes is known: it falls in the damp place and rises in the dry one, by
// the vapour-weighted humidities of 71.0 and 52.4 % that stand on either side of the pivot
// of 65 %.
func TestStrengthByHumidity(t *testing.T) {
	damp, dry := seasonOf(sterling, 0), seasonOf(golden, 0)
	assert.InDelta(t, 0.710, damp.humidity, 0.0015)
	assert.InDelta(t, 0.524, dry.humidity, 0.0015)
	plain, a, b := lastYear(t, temperate(t, recipe.YearOfAir{}, 0.25)), lastYear(t, temperate(t, sterling, 0.25)), lastYear(t, temperate(t, golden, 0.25))
	first := lastYear(t, func() Input { in := temperate(t, sterling, 0.25); in.RestS = 0; return in }())
	assert.Less(t, a.Proof, first.Proof-1)
	assert.Greater(t, b.Proof, first.Proof+1)
	assert.Greater(t, a.VolumeM3, b.VolumeM3, "damp air takes less water")
	assert.Greater(t, a.VolumeM3, plain.VolumeM3*0.99)

	// Just about the pivot strength stands still, once the wood has soaked.
	drift := func(humidity float64) float64 {
		in := temperate(t, allYear(13, humidity), 0)
		in.Used = true
		r, err := Forecast(in)
		require.NoError(t, err)
		return r.Years[4].Proof - r.Years[1].Proof
	}
	assert.Greater(t, drift(0.60), 0.2)
	assert.Less(t, drift(0.70), -0.2)
}

// Summer takes more than winter, as houses have long found: a cask filled in spring has lost
// more after its first half year than one filled in autumn; a year has all the months, and
// takes the same whenever it begins.
func TestSeasons(t *testing.T) {
	gone := func(filledAt, from, to float64) (ethanolKg, waterKg float64) {
		in := temperate(t, sterling, filledAt)
		in.Used = true
		w, err := NewWood(in)
		require.NoError(t, err)
		o := w.Course(1)
		o.To(from)
		a := o.Now()
		o.To(to)
		b := o.Now()
		return b.LostEthanolKg - a.LostEthanolKg, b.LostWaterKg - a.LostWaterKg
	}
	lost := func(filledAt, from, to float64) float64 {
		ethanol, water := gone(filledAt, from, to)
		return ethanol + water
	}
	april, october := 3.0/12, 9.0/12
	assert.Greater(t, lost(april, 0, 0.5), 2*lost(october, 0, 0.5))
	assert.InEpsilon(t, lost(april, 2, 3), lost(october, 2, 3), 0.01)
	july, _ := gone(april, 3.25, 3.25+1./12)
	january, _ := gone(april, 3.75, 3.75+1./12)
	// Ethanol by its vapour pressure alone, since the air holds none: July 24.5 C beside
	// January 0.6 C. The water of July's damp air goes slower than that.
	want := fluid.VapourPressureEthanolPa(24.5) / fluid.VapourPressureEthanolPa(0.6)
	assert.InEpsilon(t, want, july/january, 0.15)
}

// The months are met by the integration: four times the steps change a millionth.
func TestSeasonSteps(t *testing.T) {
	in := temperate(t, sterling, 0.37)
	w, err := NewWood(in)
	require.NoError(t, err)
	whole, fine := w.Course(1), w.Course(1)
	whole.To(4)
	for i := 1; i <= 4*12*8; i++ {
		fine.To(float64(i) / 96)
	}
	assert.InEpsilon(t, fine.Now().LostEthanolKg, whole.Now().LostEthanolKg, 1e-4)
	assert.InEpsilon(t, fine.Now().LostWaterKg, whole.Now().LostWaterKg, 1e-4)
}

// A house that states its own loss has measured a volume in its own air: so much goes in a
// later year, whatever the humidity, till the air is so damp that no wood would pass it.
func TestOwnLossIsKept(t *testing.T) {
	reference := func(humidity float64) (lost float64, clipped bool) {
		in := temperate(t, allYear(13, humidity), 0)
		in.Climate.LossYearly, in.Climate.LossFirstYear = 0.04, 0.06
		k, err := readConstants(in.Model)
		require.NoError(t, err)
		c, err := newCask(in, k)
		require.NoError(t, err)
		return -math.Expm1(-c.volumeRate(c.later, humidity) * math.Pow(laterFull, -1./3)), c.clipped
	}
	for _, humidity := range []float64{0.4, 0.65, 0.8} {
		lost, clipped := reference(humidity)
		assert.InDelta(t, 0.04, lost, 0.0006, "%g", humidity)
		assert.False(t, clipped)
	}
	low, high := 0.8, 1.0
	for range 30 {
		if mid := (low + high) / 2; func() bool { _, c := reference(mid); return c }() {
			high = mid
		} else {
			low = mid
		}
	}
	assert.InDelta(t, 0.92, low, 0.04, "the dampest air in which 4 % is believed")
	_, clipped := reference(low - 0.002)
	assert.False(t, clipped)
	_, clipped = reference(high + 0.002)
	assert.True(t, clipped)
}

// A cask that is moved takes on the air of where it lies then.
func TestMove(t *testing.T) {
	w, err := NewWood(temperate(t, sterling, 0.2))
	require.NoError(t, err)
	o, stays := w.Course(1), w.Course(1)
	o.To(1)
	o.Move(golden)
	o.To(3)
	stays.To(3)
	assert.Greater(t, o.Now().Proof, stays.Now().Proof+1)
	o.Move(recipe.YearOfAir{})
	o.To(4)
	assert.Greater(t, o.Now().Proof, stays.Now().Proof)
}
