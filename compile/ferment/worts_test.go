package ferment

import (
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/compile/starch"
	"newmake/compile/stream"
	"newmake/lang/recipe"
)

const hour = 3600.0

// bourbon is a set of about 425 gal, grain-in, of gravity 1.060, with what is
// left of the enzymes of 60 kg of distillers' malt. Maltose leads and a sixth
// of the extract is dextrin (common practice).
func bourbon(t testing.TB) Input {
	t.Helper()
	return Input{
		Wort: stream.Stream{
			WaterKg: 1400, GlucoseKg: 22, MaltoseKg: 135, MaltotrioseKg: 28, DextrinKg: 45,
			SolublesKg: 15, InsolublesKg: 90, TempC: 26,
		},
		PH:      5.3,
		Enzymes: starch.Enzymes{Alpha: 90 * 60 * 0.8, Beta: 240 * 60 * 0.2, Limit: 90 * 60 * 0.4, BranchedShare: 0.7},
		Yeast:   yeastNamed(t, "distillers-yeast"),
		PitchKg: 0.9, // 0.6 g/L
		Vessel:  recipe.Vessel{Kind: recipe.Fermenter, HoldsM3: 1.97},
		CoolW:   12000, WaterC: 14, AmbientC: 18,
		HoldLowC: 25.5, HoldHighC: 31, DurationS: 5 * 24 * hour,
		Mash:  modelNamed(t, "mash"),
		Model: modelNamed(t, "ferment"),
	}
}

// malt is a malt whisky wash, lautered and not boiled, of gravity 1.051, set at
// 20 C with pressed yeast.
func malt(t testing.TB) Input {
	t.Helper()
	in := bourbon(t)
	in.Yeast = yeastNamed(t, "malt-whisky-yeast")
	in.Wort = stream.Stream{
		WaterKg: 1450, GlucoseKg: 18, MaltoseKg: 105, MaltotrioseKg: 30, DextrinKg: 40,
		SolublesKg: 18, TempC: 20,
	}
	in.Enzymes = starch.Enzymes{Alpha: 50 * 300, Beta: 60 * 300 * 0.3, Limit: 50 * 300 * 0.3, BranchedShare: 0.8}
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
