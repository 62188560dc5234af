package ferment

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/fluid"
)

// Each element on both sides of the growth equation, g a g of yeast. The
// equation is built from electrons, carbon and oxygen; that hydrogen closes is
// the check.
func TestGrowthClosesByElement(t *testing.T) {
	for _, glycerol := range []float64{0, 0.4, 0.8, 1.2} {
		g := growthOf(glycerol)
		assert.InDelta(t, g.glucose+g.ammonia, 1+g.glycerol+g.co2+g.water, 1e-12, "mass")
		for _, e := range []struct {
			name                                             string
			glucose, ammonia, yeast, glycerol, carbon, water float64 // atoms
		}{
			{"carbon", 6, 0, 1, 3, 1, 0},
			{"hydrogen", 12, 3, 1.8, 8, 0, 2},
			{"oxygen", 6, 0, 0.5, 3, 2, 1},
			{"nitrogen", 0, 1, 0.2, 0, 0, 0},
		} {
			in := e.glucose*g.glucose/molGlucose + e.ammonia*g.ammonia/molAmmonia
			out := e.yeast/molYeast + e.glycerol*g.glycerol/molGlycerol + e.carbon*g.co2/molCO2 + e.water*g.water/molWater
			assert.InDelta(t, in, out, 1e-12, "%s at %g", e.name, glycerol)
		}
	}
}

// While yeast grows it takes the sugar of the published Yx/s (Warren 1990), and
// never makes ethanol faster than the published Yx/p. Verduyn et al., J. Gen.
// Microbiol. 136 (1990) 395 (from memory) give 0.10 g a g without air, against
// 0.152 here: the two disagree, and Warren's is followed.
func TestPublishedYieldsAreTheLimits(t *testing.T) {
	y := yeastNamed(t, "distillers-yeast")
	k, err := constantsFrom(modelNamed(t, "ferment"))
	require.NoError(t, err)
	st := newStrain(y, &k)
	for p := 0.0; p < 80; p += 5 {
		growth, ferments := st.uptake(y.RefC, p, 1, 1)
		assert.InEpsilon(t, 0.152*(1-p/302.3), growth/(ferments+growth*st.gr.glucose), 1e-12, "at %g g/L", p)
		for nutrients := 0.0; nutrients <= 1; nutrients += 0.25 {
			_, ferments := st.uptake(y.RefC, p, 1, nutrients)
			full, _ := st.uptake(y.RefC, p, 1, 1)
			assert.LessOrEqual(t, ferments*ethanolPerGlucose*y.EthanolYield, full/0.291*(1+1e-12))
		}
	}
}

func TestGayLussac(t *testing.T) {
	// Computed from molar masses.
	assert.InDelta(t, 0.5114, ethanolPerGlucose, 0.5e-4)
	assert.InDelta(t, 0.4886, co2PerGlucose, 0.5e-4)
	assert.InDelta(t, 1.0526, glucosePerMaltose, 0.5e-4)
	assert.InDelta(t, 1, ethanolPerGlucose+co2PerGlucose, 1e-12)
	// 0.754 kg of carbon dioxide a litre of pure alcohol (common practice).
	assert.InDelta(t, 0.754, co2PerGlucose/ethanolPerGlucose*fluid.Density(1, 20)/1000, 0.5e-3)
}

// Heat of fermentation from enthalpies of formation, kJ/mol (CRC Handbook and
// NBS tables, from memory): glucose dissolved -1262.2, ethanol dissolved -288.3,
// carbon dioxide gas -393.51. Per kg of maltose 592.
func TestHeatOfFermentation(t *testing.T) {
	k, err := constantsFrom(modelNamed(t, "ferment"))
	require.NoError(t, err)
	perMol := -1262.2 - 2*-288.3 - 2*-393.51
	assert.InDelta(t, k.heatGlucose, perMol*1e6/molGlucose, 1e3)
	assert.InDelta(t, 592e3, k.heatGlucose*glucosePerMaltose, 1e3)
}
