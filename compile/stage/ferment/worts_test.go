package ferment

import (
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

const hour = 3600.0

// The worts hold as sugar what would ferment in the end, and their enzymes are
// dead, so that these tests do not hang on how the mash is tuned; tests of
// residual saccharification bring their own.

// bourbon is a set of about 425 gal, grain-in, of gravity 1.060.
func bourbon(t testing.TB) Input {
	t.Helper()
	return Input{
		Wort: stream.Stream{
			WaterKg: 1400, GlucoseKg: 26, MaltoseKg: 160, MaltotrioseKg: 36, DextrinKg: 8,
			SolublesKg: 15, InsolublesKg: 90, TempC: 26,
		},
		PH:      5.3,
		Yeast:   yeastNamed(t, "distillers-yeast"),
		PitchKg: 0.9, // 0.6 g/L
		Vessel:  recipe.Vessel{Kind: recipe.Fermenter, HoldsM3: 1.97},
		CoolW:   12000, WaterC: 14, AmbientC: 18,
		HoldLowC: 25.5, HoldHighC: 31, DurationS: 5 * 24 * hour,
		Mash:  modelNamed(t, "mash"),
		Model: modelNamed(t, "ferment"),
	}
}

// malt is a malt whisky wash of gravity 1.055, lautered, set at 20 C with
// pressed yeast.
func malt(t testing.TB) Input {
	t.Helper()
	in := bourbon(t)
	in.Yeast = yeastNamed(t, "malt-whisky-yeast")
	in.Wort = stream.Stream{
		WaterKg: 1450, GlucoseKg: 24, MaltoseKg: 140, MaltotrioseKg: 37, DextrinKg: 10,
		SolublesKg: 18, TempC: 20,
	}
	in.PitchKg = 5 // 3.2 g/L
	in.HoldLowC, in.HoldHighC = 18, 32
	return in
}

func ferments(t testing.TB, in Input) Result {
	t.Helper()
	r, err := Run(in)
	require.NoError(t, err)
	return r
}
