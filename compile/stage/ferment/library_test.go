package ferment

import (
	"maps"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang/check"
	"newmake/lang/recipe"
)

// The built-in library, copied so that a test may change a figure.

func yeastNamed(t testing.TB, name string) *recipe.Yeast {
	t.Helper()
	y := check.Builtin().Library.Yeasts[name]
	require.NotNil(t, y, name)
	own := *y
	return &own
}

func modelNamed(t testing.TB, name string) *recipe.Model {
	t.Helper()
	m := check.Builtin().Library.Models[name]
	require.NotNil(t, m, name)
	own := *m
	own.Values = maps.Clone(m.Values)
	return &own
}

func enzymeNamed(t testing.TB, name string) *recipe.Enzyme {
	t.Helper()
	z := check.Builtin().Library.Enzymes[name]
	require.NotNil(t, z, name)
	return z
}

// Every yeast of the library has all that the model needs.
func TestLibraryYeastsAreComplete(t *testing.T) {
	require.NotEmpty(t, check.Builtin().Library.Yeasts)
	for _, y := range check.Builtin().Library.Yeasts {
		require.NoError(t, checkYeast(y))
		in := bourbon(t)
		in.Yeast, in.PitchKg = y, (y.PitchLowKgM3+y.PitchHighKgM3)/2*in.Wort.VolumeM3()
		in.Wort.TempC, in.HoldLowC, in.HoldHighC = y.LowC, y.LowC, y.HighC
		in.DurationS = 14 * 24 * hour
		r := ferments(t, in)
		require.NotZero(t, r.DryS, "%s dries a wash of 1.060 in two weeks", y.Name)
	}
}

// The library holds just the constants that the model reads, no more.
func TestLibraryHoldsEveryConstant(t *testing.T) {
	var k constants
	held := slices.Sorted(maps.Keys(modelNamed(t, "ferment").Values))
	read := recipe.Names(k.fields())
	slices.Sort(read)
	require.Equal(t, read, held)
}
