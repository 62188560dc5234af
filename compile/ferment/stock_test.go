package ferment

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// The stock is read here line by line, so that no figure is written twice. It
// knows only lines of a name, a number or range, and a unit.

type figure struct{ low, high float64 }

var (
	opening = regexp.MustCompile(`^(yeast|enzyme|model)\s+([a-z-]+)\s*\{`)
	line    = regexp.MustCompile(`^\s*([a-z-]+)\s+(-?[0-9.e+-]+?)(?:\.\.([0-9.]+))?(?:\s+([^#\s]+)(?:\s+at\s+([0-9.]+)\s+C)?)?\s*(?:#.*)?$`)
)

func stockEntry(t testing.TB, file, kind, name string) map[string]figure {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "stdlib", file))
	require.NoError(t, err)
	var values map[string]figure
	for l := range strings.Lines(string(text)) {
		if m := opening.FindStringSubmatch(l); m != nil && m[1] == kind && m[2] == name {
			values = map[string]figure{}
			continue
		}
		if values == nil {
			continue
		}
		if strings.HasPrefix(l, "}") {
			return values
		}
		m := line.FindStringSubmatch(strings.TrimRight(l, "\n"))
		if m == nil {
			continue
		}
		factor := 1.0
		if m[4] != "" {
			u, ok := quantity.Lookup(m[4])
			require.True(t, ok, "%s: unit %q", file, m[4])
			factor = u.Measures[0].Factor
			if m[4] == "C" {
				factor = 1
			}
		}
		low, err := strconv.ParseFloat(m[2], 64)
		require.NoError(t, err, l)
		f := figure{low * factor, low * factor}
		if m[3] != "" {
			high, err := strconv.ParseFloat(m[3], 64)
			require.NoError(t, err, l)
			f.high = high * factor
		}
		values[m[1]] = f
		if m[5] != "" {
			at, err := strconv.ParseFloat(m[5], 64)
			require.NoError(t, err, l)
			values[m[1]+"-at"] = figure{at, at}
		}
	}
	require.Fail(t, "no such entry", "%s %s in %s", kind, name, file)
	return nil
}

func yeastNamed(t testing.TB, name string) *recipe.Yeast {
	t.Helper()
	v := stockEntry(t, "yeast.batch", "yeast", name)
	y := &recipe.Yeast{
		Entry:                   recipe.Entry{Name: name},
		GrowthPerS:              v["growth"].low,
		RefC:                    v["growth-at"].low,
		HalfKgM3:                v["half-saturation"].low,
		EthanolMostKgM3:         v["ethanol-limit"].low,
		InhibitionPower:         v["inhibition-power"].low,
		YieldBiomass:            v["yield-biomass"].low,
		YieldBiomassEthanolKgM3: v["yield-biomass-ethanol"].low,
		YieldBiomassPerEthanol:  v["biomass-per-ethanol"].low,
		ActivationGrowthJMol:    v["growth-energy"].low,
		ActivationEthanolJMol:   v["ethanol-energy"].low,
		ActivationDeathJMol:     v["death-energy"].low,
		LowC:                    v["range"].low,
		HighC:                   v["range"].high,
		MostC:                   v["dies-above"].low,
		PitchLowKgM3:            v["pitch"].low,
		PitchHighKgM3:           v["pitch"].high,
		Maltotriose:             v["maltotriose"].low,
		EthanolYield:            v["ethanol-yield"].low,
		Solids:                  v["solids"].low,
		Viable:                  v["viable"].low,
		LagS:                    v["lag"].low,
		DeathPerS:               v["death"].low,
	}
	require.NoError(t, checkYeast(y))
	return y
}

func modelNamed(t testing.TB, file, name string) *recipe.Model {
	t.Helper()
	m := &recipe.Model{Entry: recipe.Entry{Name: name}, Values: map[string]float64{}}
	for n, f := range stockEntry(t, file, "model", name) {
		m.Values[n] = f.low
	}
	return m
}

func glucoamylase(t testing.TB) *recipe.Enzyme {
	t.Helper()
	v := stockEntry(t, "enzyme.batch", "enzyme", "glucoamylase")
	return &recipe.Enzyme{
		Entry:         recipe.Entry{Name: "glucoamylase"},
		Does:          recipe.Saccharifying,
		ActivityPerKg: v["activity"].low,
		OptimumC:      v["optimum"].low,
		LowC:          v["range"].low,
		HighC:         v["range"].high,
		MostC:         v["dies-above"].low,
		HalfLifeS:     v["half-life"].low,
		HalfLifeC:     v["half-life-at"].low,
		DeathJMol:     v["death-energy"].low,
		PHLow:         v["acidity"].low,
		PHHigh:        v["acidity"].high,
	}
}
