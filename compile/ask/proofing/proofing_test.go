package proofing_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/ask/proofing"
	"newmake/compile/measure"
	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// solve works a question in the units in which it is put.
func solve(t testing.TB, text string) proofing.Answer {
	t.Helper()
	q, list := proofing.Read(text, quantity.Both)
	require.Empty(t, list, text)
	a, list := proofing.Solve(q, q.OwnUnits())
	require.Empty(t, list, text)
	return a
}

// value is one result of an answer.
func value(t testing.TB, a proofing.Answer, name string) float64 {
	t.Helper()
	for _, r := range a.Results {
		if r.Name == name {
			return r.Value
		}
	}
	require.Failf(t, "no such result", "%s has no %s", a.Question, name)
	return 0
}

// The worked examples of 27 CFR part 30, each to what its print allows plus
// what the model's factors may differ in (see package fluid): one or two in the
// fifth place of Table 4, which over 81,000 lb is 1.7 gallons.
func TestWorkedExamplesOfTheRegulation(t *testing.T) {
	// 30.23: reads 192.85 at 72.10 F, corrections -0.03 and +0.05.
	a := solve(t, "reading 192.85 at 72.10 F, hydrometer -0.03, thermometer 0.05 F")
	assert.Equal(t, 190.0, value(t, a, proofing.TrueProof))

	// 30.61: 193 at 75 F.
	a = solve(t, "reading 193 at 75 F")
	assert.InDelta(t, 189.5, value(t, a, proofing.TrueProof), 0.05)

	// 30.32: 0.125 g left of 25 mL is 0.50 g in 100 mL, and hides 2 proof.
	a = solve(t, "reading 90 at 60 F, solids 5 g/L")
	assert.Equal(t, 2.0, value(t, a, proofing.Obscuration))
	assert.Equal(t, 92.0, value(t, a, proofing.TrueProof))

	// 30.51: 4,308.48 gal of 86.8 proof at 72 F.
	a = solve(t, "4,308.48 gal at 86.8 proof at 72 F")
	assert.Equal(t, 3721.1, value(t, a, proofing.ProofGallons))

	// 30.64: 81,000 lb of 190 proof.
	a = solve(t, "81,000 lb at 190 proof")
	assert.InDelta(t, 11921.6, value(t, a, proofing.Volume), 0.9)
	assert.InDelta(t, 22650.8, value(t, a, proofing.ProofGallons), 1.8)

	// 30.64: 1,000 lb of 200 proof to 190.
	a = solve(t, "1,000 lb at 200 proof, reduce to 190 proof")
	assert.InDelta(t, 82.03, value(t, a, proofing.WaterWeight), 0.1)

	// 30.66: 100 gal of 112 proof to 100 takes 12.42 gal.
	a = solve(t, "100 gal at 112 proof, reduce to 100 proof")
	assert.InDelta(t, 12.42, value(t, a, proofing.WaterVolume), 0.02)
}

// A trade handbook's check, from memory: 70 % to 60 % to fill 53 gal
// takes 7.98 gal of water; its % are at 60 F, so half the proof. Printed to
// 0.01; 0.02 for two parts of Table 6.
func TestFillFiftyThreeGallons(t *testing.T) {
	a := solve(t, "fill 53 gal at 120 proof from 140 proof")
	assert.InDelta(t, 7.98, value(t, a, proofing.WaterVolume), 0.02)
	assert.InDelta(t, 53*120/140.0, value(t, a, proofing.SpiritVolume), 0.006)
	// As % abv at 20 C it is nearly the same.
	a = solve(t, "fill 53 gal at 60 % abv from 70 % abv")
	assert.InDelta(t, 7.98, value(t, a, proofing.WaterVolume), 0.02)
}

// Larkin 1975: 62.5 to 40 % vol at 25 C warms by
// 4.9 C.
func TestReductionWarms(t *testing.T) {
	a := solve(t, "100 kg at 62.5 % abv at 25 C, reduce to 40 % abv")
	assert.InDelta(t, 4.9, value(t, a, proofing.Rise), 0.1)
}

// The two ways of working agree. By the regulation's way proof is rounded to
// 0.1 and factors to the print, which is up to 0.1 % of each.
func TestUnitsAgree(t *testing.T) {
	const litresPerGal, kgPerLb = 3.785411784, 0.45359237
	const litresPerPG = 1.9018 // of pure alcohol at 20 C
	for _, text := range []string{
		"38 gal at 134.1 proof at 66 F, reduce to 114 proof",
		"200 L at 63 % abv at 18 C, reduce to 46 % abv with water at 12 C",
		"400 lb at 128 proof at 68 F, reduce to 100 proof",
		"50 proof-gal at 190 proof at 68 F, reduce to 80 proof",
		"60 gal reading 140 at 80 F, reduce to 125 proof",
	} {
		q, list := proofing.Read(text, quantity.Both)
		require.Empty(t, list)
		us, list := proofing.Solve(q, measure.US)
		require.Empty(t, list)
		si, list := proofing.Solve(q, measure.SI)
		require.Empty(t, list)
		assert.InEpsilon(t, value(t, si, proofing.PureAlcohol)/litresPerPG, value(t, us, proofing.ProofGallons), 2e-3, text)
		assert.InEpsilon(t, value(t, si, proofing.PureAlcohol), value(t, us, proofing.PureAlcohol), 2e-3, text)
		assert.InEpsilon(t, value(t, si, proofing.WaterWeight), value(t, us, proofing.WaterWeight)*kgPerLb, 1e-2, text)
		assert.InEpsilon(t, value(t, si, proofing.WaterVolume), value(t, us, proofing.WaterVolume)*litresPerGal, 1e-2, text)
		assert.InDelta(t, value(t, si, proofing.Rise), value(t, us, proofing.Rise)/1.8, 0.2, text)
	}
}

// A lot blended with the water that reduces it is that lot reduced: the same
// volume and proof by two ways of the tables.
func TestBlendOfLikeLots(t *testing.T) {
	a := solve(t, "20 gal at 120 proof, blend with 20 gal at 120 proof")
	assert.Equal(t, 120.0, value(t, a, proofing.TrueProof))
	assert.InDelta(t, 40, value(t, a, proofing.Volume), 0.05)
	assert.InDelta(t, 48, value(t, a, proofing.ProofGallons), 0.05)
}

// Lots nearly alike hardly shrink, wherever their proof lies between two tenths:
// the proof that is recorded has no part in the volume. Nor has it in what comes
// of reducing the blend, whose proof gallons stay what they were.
func TestBlendOfNearlyLikeLots(t *testing.T) {
	for _, text := range []string{
		"1,000 gal at 113.7 proof, blend with 1,000 gal at 113.8 proof",
		"1,000 gal at 113.7 proof, blend with 2,000 gal at 113.8 proof",
		"1,000 gal at 60 proof, blend with 1,000 gal at 60.1 proof",
		"1,000 gal at 180.3 proof, blend with 1,000 gal at 180.4 proof",
		"3 gal at 113.7 proof, blend with 3 gal at 113.8 proof",
	} {
		assert.InDelta(t, 0, value(t, solve(t, text), proofing.Contraction), 0.0101, text)
	}
	a := solve(t, "1,000 gal at 113.7 proof, blend with 1,000 gal at 113.8 proof, reduce to 100 proof")
	assert.InDelta(t, 2275, value(t, a, proofing.Volume), 0.05)
}

// Proof gallons add up in a blend; volumes do not.
func TestBlendKeepsProofGallons(t *testing.T) {
	a := solve(t, "20 gal at 134 proof, blend with 5 gal at 20 proof")
	assert.InDelta(t, 20*1.34+5*0.2, value(t, a, proofing.ProofGallons), 0.05)
	assert.Greater(t, value(t, a, proofing.Contraction), 0.0)
	assert.InDelta(t, value(t, a, proofing.ProofGallons), value(t, a, proofing.Volume)*value(t, a, proofing.TrueProof)/100, 0.1)
}

// Steps follow one another on what is in hand.
func TestSteps(t *testing.T) {
	a := solve(t, "20 gal at 134 proof, blend with 5 gal at 100 proof, reduce to 120 proof, fill 10 gal at 110 proof")
	assert.Equal(t, 110.0, value(t, a, proofing.TrueProof))
	left := (20*1.34+5*1-11)/1.2 - 0
	assert.InDelta(t, left, value(t, a, proofing.LeftOver), 0.1)
}

// An alcoholometer of % vol at 20 C tells the truth at 20 C, and reads high in
// warm spirit.
func TestAlcoholometer(t *testing.T) {
	assert.Equal(t, 63.0, value(t, solve(t, "reading 63 % abv at 20 C"), proofing.TrueABV))
	assert.Less(t, value(t, solve(t, "reading 63 % abv at 25 C"), proofing.TrueABV), 62.0)
	assert.Greater(t, value(t, solve(t, "reading 63 % abv at 15 C"), proofing.TrueABV), 64.0)
}

func TestOwnUnits(t *testing.T) {
	for text, want := range map[string]measure.Units{
		"reading 192.8 at 72.1 F":                         measure.US,
		"reading 192.8 proof at 22 C":                     measure.US,
		"200 L at 120 proof":                              measure.SI,
		"53 gal at 60 % abv at 15 C":                      measure.US,
		"60 % abv":                                        measure.SI,
		"fill 53 gal at 60 % abv from 70 % abv":           measure.US,
		"reading 63 % abv at 25 C, fill 5 L at 60 % abv":  measure.SI,
		"20 kg at 60 % abw, blend with 1 gal at 50 proof": measure.SI,
	} {
		q, list := proofing.Read(text, quantity.Both)
		require.Empty(t, list, text)
		assert.Equal(t, want, q.OwnUnits(), text)
	}
}

// `% abv` means what it means in a batch: by volume at 60 F beside gallons, where
// proof is twice it (27 CFR 19.1), and at 20 C beside litres, whichever units
// the answer is in. OIML R 22 makes 40 % at 20 C 79.86 proof.
func TestABVIsHalfTheProofBesideGallons(t *testing.T) {
	for text, want := range map[string]float64{
		"100 gal at 40 % abv":                                80,
		"100 gal at 40 % abv at 70 F":                        80,
		"400 lb at 62.5 % abv":                               125,
		"10 gal at 140 proof, reduce to 40 % abv":            80,
		"fill 53 gal at 60 % abv from 70 % abv":              120,
		"10 gal at 70 % abv, blend with 10 gal at 140 proof": 140,
		"100 L at 40 % abv":                                  79.9,
		"400 kg at 40 % abv":                                 79.9,
		"40 % abv at 15 C":                                   79.9,
		"20 L at 60 % abv, reduce to 40 % abv":               79.9,
	} {
		q, list := proofing.Read(text, quantity.Both)
		require.Empty(t, list, text)
		us, list := proofing.Solve(q, measure.US)
		require.Empty(t, list, text)
		assert.Equal(t, want, value(t, us, proofing.TrueProof), text)
	}
	for text, want := range map[string]float64{"100 gal at 40 % abv": 40.07, "100 L at 40 % abv": 40} {
		q, list := proofing.Read(text, quantity.Both)
		require.Empty(t, list, text)
		si, list := proofing.Solve(q, measure.SI)
		require.Empty(t, list, text)
		assert.Equal(t, want, value(t, si, proofing.TrueABV), text)
	}
	assert.Equal(t, 67.05, value(t, solve(t, "134.1 proof at 66 F"), proofing.TrueABV60F))
}

// A bare reading is proof beside gallons and F. Beside litres and C it may be
// % vol as well: it is asked which, and both answers are read.
func TestBareReadingInLitresIsAsked(t *testing.T) {
	for _, text := range []string{"reading 63.5 at 18 C", "20 L reading 63.5 at 18 C", "20 L at 70 % abv, blend with 5 L reading 63.5 at 18 C", "reading 136 at 18 C"} {
		_, list := proofing.Read(text, quantity.Both)
		require.Len(t, list, 1, text)
		assert.Equal(t, diag.CodeNoUnit, list[0].Code, text)
		assert.Contains(t, list[0].Summary, "in % vol or in US proof?", text)
	}
	// In F it is a scale of 60 F, in C one of 20 C.
	assert.Equal(t, 118.8, value(t, solve(t, "reading 59.4 % abv at 60 F"), proofing.TrueProof))
	assert.Equal(t, value(t, solve(t, "10 gal reading 118.8 proof at 70 F"), proofing.TrueProof), value(t, solve(t, "10 gal reading 59.4 % abv at 70 F"), proofing.TrueProof))
	assert.InDelta(t, 121.8, value(t, solve(t, "10 gal reading 59.4 % abv at 15.56 C"), proofing.TrueProof), 0.05)
	assert.InDelta(t, value(t, solve(t, "10 gal reading 118.8 proof at 70 F, hydrometer 0.4"), proofing.TrueProof), value(t, solve(t, "10 gal reading 59.4 % abv at 70 F, hydrometer 0.2"), proofing.TrueProof), 1e-9)
	assert.InDelta(t, 64.2, value(t, solve(t, "reading 63.5 % abv at 18 C"), proofing.TrueABV), 0.05)
	assert.Equal(t, 61.5, value(t, solve(t, "reading 63.5 proof at 18 C"), proofing.TrueProof))
	assert.Equal(t, 61.5, value(t, solve(t, "reading 63.5 at 64.4 F"), proofing.TrueProof))
	assert.Equal(t, 61.5, value(t, solve(t, "38 gal reading 63.5 at 18 C"), proofing.TrueProof))
}

// The ends of the scale are gauged like the rest: what pure alcohol reads is
// 200 proof, hot or cold, and what is beyond it is refused.
func TestReadingOfPureAlcohol(t *testing.T) {
	assert.Equal(t, 200.0, value(t, solve(t, "reading 200 at 60 F"), proofing.TrueProof))
	q, list := proofing.Read("reading 200.1 at 60 F", quantity.Both)
	require.Empty(t, list)
	_, list = proofing.Solve(q, measure.US)
	assert.True(t, list.HasErrors())
}

// Spirit with water takes less room than the two, but a little more where both
// are weak (densities of OIML R 22): it is then called what it is.
func TestWeakSpiritGrows(t *testing.T) {
	for text, name := range map[string]string{
		"100 gal at 120 proof, reduce to 100 proof": proofing.Contraction,
		"100 gal at 50 proof, reduce to 10 proof":   proofing.Expansion,
		"100 L at 60 % abv, reduce to 50 % abv":     proofing.Contraction,
		"100 L at 20 % abv, reduce to 5 % abv":      proofing.Expansion,
	} {
		assert.Positive(t, value(t, solve(t, text), name), text)
	}
}
