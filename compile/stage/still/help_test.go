package still

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

// spirits is ethanol and water of a volume and strength, both at 20 C.
func spirits(t testing.TB, m3, abv float64) stream.Stream {
	t.Helper()
	w, err := fluid.MassFracFromABV(abv)
	require.NoError(t, err)
	kg := m3 * fluid.Density(w, 20)
	return stream.Stream{EthanolKg: kg * w, WaterKg: kg * (1 - w), TempC: 20}
}

func abv(v float64) recipe.Strength { return recipe.Strength{Value: v} }

func byABV(v float64) recipe.Cut { return recipe.Cut{Strength: abv(v)} }

func setting(holdsM3, heatsW, reflux float64) Setting {
	return Setting{
		Still:      recipe.Vessel{Name: "still", HoldsM3: holdsM3, HeatsW: heatsW, Reflux: reflux},
		PressurePa: fluid.StandardPressurePa, AmbientC: 20, WaterC: 14,
	}
}

// washRun is 3,000 L of wash of 8 % run to 1 % with no reflux.
func washRun(t testing.TB) StripInput {
	return StripInput{Setting: setting(4, 250e3, 0), Wash: spirits(t, 3, 0.08), Stop: abv(0.01)}
}

// secondRun is low wines of 25 % with every cut in reach.
func secondRun(t testing.TB) SpiritInput {
	return SpiritInput{
		Setting: setting(1.2, 60e3, 0.1), LowWines: spirits(t, 0.6, 0.25), ForeshotsM3: 0.002,
		HeartsFrom: recipe.Cut{By: recipe.ByVolume, VolumeM3: 0.010}, HeartsTo: byABV(0.62), Stop: abv(0.02),
	}
}

// ideal is a mixture of constant volatility. Its temperature is of no
// consequence but that it must fall as x rises.
type ideal struct{ alpha float64 }

func (m ideal) bubble(x float64) (tempC, y float64) {
	return 100 - 20*x, m.alpha * x / (1 + x*(m.alpha-1))
}

// bare is a pot of n mol at x with no metal, for what concerns moles alone.
func bare(m equilibrium, reflux, n, x float64) (*pot, node) {
	p := &pot{b: newBoil(m, reflux), heatW: 1e5, ethanol0: n * x, water0: n * (1 - x), maxStep: 0.25, tolerance: tolerance}
	return p, p.node(math.Log(x), level{pot: n})
}
