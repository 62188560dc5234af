package fluid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The rows of the gauging tables that 27 CFR part 30 and TTB's proofing page
// print. True proof is to 0.05, half a printed tenth; parts of water to 0.01,
// twice the print rounding; the rest to 2 units in 10,000: the tables rest on
// the densities of 1912, whose pure alcohol is 0.7939 against OIML's 0.79382,
// and the columns by weight feel that at high proof.
func TestGaugingPublishedRows(t *testing.T) {
	rows := table(t, "us_gauging_published_rows.csv")
	require.Len(t, rows, 13)
	for _, row := range rows {
		proof, tempF := number(t, row, "proof_or_reading"), number(t, row, "temp_F")
		want := number(t, row, "published")
		at, err := AtProof(proof)
		require.NoError(t, err)
		what := row["quantity"]
		switch what {
		case "water parts/100":
			assert.InDelta(t, want, at.WaterParts, 0.01, "%s at %g", what, proof)
		case "proof gal/lb":
			assert.InEpsilon(t, want, at.ProofGallonsPerPound, 2e-4, "%s at %g", what, proof)
		case "lb/proof gal":
			assert.InEpsilon(t, want, at.PoundsPerProofGallon, 2e-4, "%s at %g", what, proof)
		case "wine gal/lb water":
			assert.InDelta(t, want, at.GallonsPerPound, 0.5e-6+1e-12, what)
		case "volume factor":
			f, err := VolumeFactor(proof, tempF)
			require.NoError(t, err)
			assert.InDelta(t, want, f, 0.0005, "%s at %g, %g F", what, proof, tempF)
		case "true proof":
			got, err := TrueProof(proof, tempF)
			require.NoError(t, err)
			assert.InDelta(t, want, got, 0.05, "reads %g at %g F", proof, tempF)
		default:
			t.Fatalf("no check for %q", what)
		}
	}
}

// 27 CFR 30.44(b): the weight of 1 to 10 gallons at 190 to 200 proof in whole
// ounces, a fraction called a whole one. To the ounce.
func TestContainerWeights3044(t *testing.T) {
	rows := table(t, "us_gauging_30_44_containers.csv")
	require.Len(t, rows, 12)
	for _, row := range rows {
		at, err := AtProof(number(t, row, "proof"))
		require.NoError(t, err)
		ounces := math.Ceil(16 * number(t, row, "wine_gal") / at.GallonsPerPound)
		assert.Equal(t, 16*number(t, row, "lb")+number(t, row, "oz"), ounces, "%s gal of %s proof", row["wine_gal"], row["proof"])
	}
}

// 27 CFR 30.23: a hydrometer reads 192.85 at 72.10 F; corrected by -0.03 and
// +0.05 this is 192.82 at 72.15 F, and by Table 1 the true proof is 189.972,
// recorded as 190.0. Tolerance 0.05: the worked figure is interpolated in a
// table printed to tenths.
func TestTrueProof3023(t *testing.T) {
	got, err := TrueProof(192.82, 72.15)
	require.NoError(t, err)
	assert.InDelta(t, 189.972, got, 0.05)
	assert.Equal(t, 190.0, RoundProof(got))
}

// 27 CFR 30.64: 81,000 lb of 190 proof is 11,921.6 wine gallons and 22,650.8
// proof gallons; 1,000 lb of 200 proof takes 82.03 lb of water to 190.
// Tolerance 1 in 10,000 of the gallons and 0.03 lb, for the reason above.
func TestByWeight3064(t *testing.T) {
	at, err := AtProof(190)
	require.NoError(t, err)
	assert.InEpsilon(t, 11921.6, 81000*at.GallonsPerPound, 1e-4)
	assert.InEpsilon(t, 22650.8, 81000*at.ProofGallonsPerPound, 1e-4)
	r, err := Reduce(Lot{MassKg: 1000, EthanolMassFrac: 1, TempC: SixtyF}, at.MassFrac, SixtyF)
	require.NoError(t, err)
	assert.InDelta(t, 82.03, r.Water.MassKg, 0.03)
}

// 27 CFR 30.51: 4,308.48 gal at 72 F of 86.8 proof is 3,721.1 proof gallons.
// Tolerance: the factor is printed to 0.001.
func TestProofGallons3051(t *testing.T) {
	pg, err := proofGallons(4308.48, 86.8, 72)
	require.NoError(t, err)
	assert.InEpsilon(t, 3721.1, pg, 0.0005)
}

// 27 CFR 30.66: 100 gal of 112 proof takes 12.42 gal of water to 100 proof.
// Tolerance 0.02 gal: two table entries of 0.01 each.
func TestWaterByVolume3066(t *testing.T) {
	from, err := MassFracFromProof(112)
	require.NoError(t, err)
	to, err := MassFracFromProof(100)
	require.NoError(t, err)
	spirit := Lot{MassKg: 100 * USGallonM3 * Density(from, SixtyF), EthanolMassFrac: from, TempC: SixtyF}
	r, err := Reduce(spirit, to, SixtyF)
	require.NoError(t, err)
	assert.InDelta(t, 12.42, r.Water.volumeM3()/USGallonM3, 0.02)

	// The same by the parts of Table 6, as the regulation works it.
	a, err := AtProof(112)
	require.NoError(t, err)
	b, err := AtProof(100)
	require.NoError(t, err)
	assert.InDelta(t, r.Water.volumeM3()/USGallonM3, 112.0/100*b.WaterParts-a.WaterParts, 1e-9)
}

// 27 CFR 19.1: a proof gallon is of spirit with 50 % vol ethanol, ethanol of
// specific gravity 0.7939 at 60/60 F. OIML gives 0.79382 in vacuum and 0.79357
// in air: within 1e-4, half the print rounding more.
func TestProofGallonDefinition(t *testing.T) {
	at, err := AtProof(200)
	require.NoError(t, err)
	assert.InDelta(t, 0.7939, at.SpecificGravityVacuum, 1e-4)
	pg, err := proofGallons(1, 100, 60)
	require.NoError(t, err)
	assert.InDelta(t, 1, pg, 1e-12)
}

// 27 CFR 30.32: 0.1 g of solids in 100 mL hides 0.4 proof.
func TestObscuration(t *testing.T) {
	assert.InDelta(t, 0.4, Obscuration(0.1), 1e-12)
	assert.Equal(t, 0.0, Obscuration(0))
}

// At 60 F the hydrometer tells the truth, over its whole scale.
func TestTrueProofAt60F(t *testing.T) {
	steps(0, 200, 2000, func(proof float64) {
		got, err := TrueProof(proof, 60)
		require.NoError(t, err)
		require.InDelta(t, proof, got, 1e-9)
	})
}

// True proof and the reading, both ways over the whole of Table 1's grid: 0 to
// 206 by 1, 0 to 100 F by 2.
func TestTrueProofRoundTrip(t *testing.T) {
	n := 0
	for tempF := 0.0; tempF <= 100; tempF += 2 {
		last := -1.0
		for reading := 0.0; reading <= 206; reading++ {
			proof, err := TrueProof(reading, tempF)
			if err != nil {
				continue // nothing reads so little when cold, or so much
			}
			n++
			require.Greater(t, proof, last, "reading %g at %g F", reading, tempF)
			last = proof
			back, err := HydrometerReading(proof, tempF)
			require.NoError(t, err)
			require.InDelta(t, reading, back, 1e-7, "reading %g at %g F", reading, tempF)
		}
	}
	require.Greater(t, n, 9500, "most of the grid has an answer")
}

// Pure alcohol, and water, read what they read and are not refused for the last
// bit of a number, at every tenth of a degree of Table 1.
func TestEndsOfTheScaleRoundTrip(t *testing.T) {
	waters := 0
	for i := 0; i <= 1000; i++ {
		tempF := float64(i) / 10
		for _, proof := range []float64{200, 199.999999} {
			reading, err := HydrometerReading(proof, tempF)
			require.NoError(t, err)
			if reading > 206 {
				continue // beyond the marks: hot
			}
			back, err := TrueProof(reading, tempF)
			require.NoError(t, err, "%g proof at %g F", proof, tempF)
			require.InDelta(t, proof, back, 1e-6)
		}
		if reading, err := HydrometerReading(0, tempF); err == nil {
			waters++
			back, err := TrueProof(reading, tempF)
			require.NoError(t, err, "water at %g F", tempF)
			require.InDelta(t, 0, back, 1e-6)
		}
	}
	require.Positive(t, waters)
	for _, past := range []float64{1 + 1e-9, 1 - 1e-9} {
		end := Density(0, 20)
		if past < 1 {
			end = Density(1, 20)
		}
		_, err := MassFracFromDensity(end*past, 20)
		require.Error(t, err, "a density beyond the ends by more than roundoff is still refused")
	}
}

// Warm spirit reads high and cold spirit low.
func TestTrueProofSense(t *testing.T) {
	for proof := 10.0; proof <= 190; proof += 10 {
		warm, err := TrueProof(proof, 80)
		require.NoError(t, err)
		assert.Less(t, warm, proof)
		cold, err := TrueProof(proof, 40)
		require.NoError(t, err)
		assert.Greater(t, cold, proof)
	}
}

func TestGaugingErrors(t *testing.T) {
	for _, c := range []struct{ reading, tempF float64 }{
		{-0.1, 60}, {206.1, 60}, {100, -1}, {100, 101}, {math.NaN(), 60}, {100, math.NaN()},
		{0, 80}, // warm water reads below 0
	} {
		_, err := TrueProof(c.reading, c.tempF)
		assert.Error(t, err, "reads %g at %g F", c.reading, c.tempF)
	}
	for _, proof := range []float64{-1, 200.1, math.NaN()} {
		_, err := AtProof(proof)
		assert.Error(t, err)
		_, err = VolumeFactor(proof, 60)
		assert.Error(t, err)
		_, err = proofGallons(1, proof, 60)
		assert.Error(t, err)
		_, err = HydrometerReading(proof, 60)
		assert.Error(t, err)
	}
}

// Proof gallons by volume, by mass and by the pounds of Table 4 agree; the
// pounds, weighed in air by law's weight of water, to 2 in 100,000.
func TestProofGallonsThreeWays(t *testing.T) {
	for proof := 1.0; proof <= 200; proof++ {
		at, err := AtProof(proof)
		require.NoError(t, err)
		rho := Density(at.MassFrac, SixtyF)
		massKg := 10 * USGallonM3 * rho
		byVolume, err := proofGallons(10, proof, 60)
		require.NoError(t, err)
		require.InEpsilon(t, byVolume, ProofGallonsFromKg(massKg, at.MassFrac), 1e-12)
		pounds := MassInAirKg(massKg, rho) / PoundKg
		require.InEpsilon(t, byVolume, pounds*at.ProofGallonsPerPound, 2e-5)
	}
}

// A liter of pure alcohol is a liter at 20 C; spirit of 40 % vol holds 0.4.
func TestPureAlcoholLitres(t *testing.T) {
	steps(0.001, 1, 200, func(abv float64) {
		w, err := MassFracFromABV(abv)
		require.NoError(t, err)
		massKg := 0.001 * Density(w, 20)
		require.InDelta(t, abv, PureAlcoholLitres(massKg, w), 1e-12)
	})
}

// proofGallons is the US proof gallons in a volume of spirit, in US gallons as
// they measure at tempF: gallons x VolumeFactor x proof/100.
func proofGallons(gallons, proof, tempF float64) (float64, error) {
	f, err := VolumeFactor(proof, tempF)
	return gallons * f * proof / 100, err
}
