package made_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/made"
	"newmake/compile/matter/fluid"
	"newmake/lang/quantity"
	"newmake/lang/record"
)

// read is a reading of an SI value; one whose sample was so warm, if any.
func read(k quantity.Kind, unit string, si float64, atC ...float64) *record.Reading {
	r := &record.Reading{State: record.Read, Value: record.Value{Kind: k, Unit: unit, SI: si}}
	for _, c := range atC {
		r.At = &record.Value{Kind: quantity.Temperature, SI: c}
	}
	return r
}

func TestStrength(t *testing.T) {
	for _, c := range []struct {
		r          *record.Reading
		is, unsure float64
	}{
		{read(quantity.Strength, "% abv", 0.6, 20), 0.6, 0},
		{read(quantity.Strength, "% abv", 0.6), 0.6, 0.014},
		// Half the proof, to the little that a strength at 60 F differs from one at 20 C.
		{read(quantity.Strength, "proof", 0.6, (60.0-32)/1.8), 0.6, 0},
		{read(quantity.Strength, "proof", 0.6), 0.6, 0.014},
		{read(quantity.Strength, "% abv", 0.6, 25), 0.6 - 5*0.0035, 0}, // 0.3 to 0.4 % vol a degree
	} {
		got, ok := made.Strength(c.r)
		require.True(t, ok)
		assert.InDelta(t, c.is, got.SI, 0.003, "%+v", c.r)
		assert.InDelta(t, c.unsure, got.Unsure, 1e-12, "%+v", c.r)
	}
}

// TestStrengthByItsScale: % abv is half the proof on a scale of 60 F, which is where the
// sample is in F, and not on one of 20 C; what the instrument says of its scale comes first.
func TestStrengthByItsScale(t *testing.T) {
	at := func(unit string, atC float64, scale ...float64) float64 {
		r := read(quantity.Strength, "% abv", 0.594, atC)
		r.At.Unit = unit
		for i := range scale {
			r.ScaleC = &scale[i]
		}
		got, ok := made.Strength(r)
		require.True(t, ok)
		w, err := fluid.MassFracFromABV(got.SI)
		require.NoError(t, err)
		return fluid.ProofFromMassFrac(w)
	}
	assert.InDelta(t, 118.8, at("F", fluid.SixtyF), 0.001)
	assert.InDelta(t, 118.8, at("C", fluid.SixtyF, 15), 0.001)
	assert.InDelta(t, 121.8, at("C", fluid.SixtyF), 0.05) // 60.9 % vol at 20 C
	assert.Equal(t, at("C", fluid.SixtyF), at("F", fluid.SixtyF, 20))
	assert.InDelta(t, 0.0, at("C", 20)-at("F", 20, 20), 1e-9)
	w, err := fluid.MassFracFromABV(0.594)
	require.NoError(t, err)
	assert.InDelta(t, fluid.ProofFromMassFrac(w), at("C", 20), 1e-6)
}

// What no spirit reads tells nothing, however it is written.
func TestStrengthOfNoSpirit(t *testing.T) {
	for _, c := range []struct {
		possible, not *record.Reading
	}{
		{read(quantity.Strength, "proof", 0.999), read(quantity.Strength, "proof", 1.001)},
		{read(quantity.Strength, "proof", 0.5, 37), read(quantity.Strength, "proof", 0.5, 38)}, // the tables end at 100 F
		{read(quantity.Strength, "% abv", 0.5, 39), read(quantity.Strength, "% abv", 0.5, 41)}, // OIML R 22 ends at 40 C
	} {
		_, ok := made.Strength(c.possible)
		assert.True(t, ok, "%+v", c.possible)
		_, ok = made.Strength(c.not)
		assert.False(t, ok, "%+v", c.not)
	}
}

func TestVolume(t *testing.T) {
	w, err := fluid.MassFracFromABV(0.6)
	require.NoError(t, err)
	colder, warmer := fluid.Density(w, 10)/fluid.Density(w, 20), fluid.Density(w, 30)/fluid.Density(w, 20)
	warm := read(quantity.Strength, "% abv", 0.6, 30)
	corrected := read(quantity.Volume, "L", 0.2, 10)
	corrected.AtCorrected = &record.Correction{New: record.Value{Kind: quantity.Temperature, SI: 30}}
	for name, c := range map[string]struct {
		r          *record.Reading
		sample     *record.Reading
		is, unsure float64
	}{
		"at its own temperature":                 {read(quantity.Volume, "L", 0.2, 10), nil, 0.2 * colder, 0},
		"its own goes before the sample's":       {read(quantity.Volume, "L", 0.2, 10), warm, 0.2 * colder, 0},
		"as warm as the sample of its strength":  {read(quantity.Volume, "L", 0.2), warm, 0.2 * warmer, 0},
		"the temperature was corrected":          {corrected, nil, 0.2 * warmer, 0},
		"nobody took any temperature, so unsure": {read(quantity.Volume, "L", 0.2), nil, 0.2, 0.2 * 0.0036},
	} {
		got, ok := made.Volume(c.r, 0.6, c.sample)
		require.True(t, ok, name)
		assert.InDelta(t, c.is, got.SI, 1e-12, name)
		assert.InDelta(t, c.unsure, got.Unsure, 1e-12, name)
	}
}

// A hydrometer that is true at 60 F reads less in what is warmer, and one that says where
// it is true is taken at its word.
func TestGravity(t *testing.T) {
	sixty := fluid.SixtyF
	own, ok := made.Gravity(read(quantity.Gravity, "SG", 1.05, sixty), nil)
	require.True(t, ok)
	assert.InDelta(t, 1.05, own.SI, 1e-12)
	warm, ok := made.Gravity(read(quantity.Gravity, "SG", 1.05, 30), nil)
	require.True(t, ok)
	assert.InDelta(t, 1.05+14.4*0.00025, warm.SI, 0.001, "a wort gains 0.001 in 4 C")
	at20 := &record.Instrument{}
	at20.Scale.AtSaid, at20.Scale.AtC = true, 20
	said, ok := made.Gravity(read(quantity.Gravity, "SG", 1.05, 20), at20)
	require.True(t, ok)
	assert.InDelta(t, 1.05, said.SI, 1e-12)
	unknown, ok := made.Gravity(read(quantity.Gravity, "SG", 1.05), nil)
	require.True(t, ok)
	assert.InDelta(t, 1.05, unknown.SI, 1e-12)
	assert.InDelta(t, 0.001, unknown.Unsure, 1e-12)
}
