package ferment

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/starch"
	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

// readOracle reads a file of testdata/oracle.py: a line of JSON and a table.
func readOracle(t *testing.T, name string) (head map[string]float64, rows []map[string]float64) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", name))
	require.NoError(t, err)
	lines := strings.SplitN(string(text), "\n", 3)
	require.NoError(t, json.Unmarshal([]byte(strings.TrimPrefix(lines[1], "# ")), &head))
	table, err := csv.NewReader(strings.NewReader(lines[2])).ReadAll()
	require.NoError(t, err)
	for _, r := range table[1:] {
		row := map[string]float64{}
		for i, cell := range r {
			row[table[0][i]], err = strconv.ParseFloat(cell, 64)
			require.NoError(t, err)
		}
		rows = append(rows, row)
	}
	return head, rows
}

// Warren, Hill and MacDonald 1990 as published, solved by scipy: the strain's
// own functions, put together in the published way, give the same batch. The
// tolerance is that of this test's Runge-Kutta step of 2 s.
func TestWarrenAsPublished(t *testing.T) {
	head, rows := readOracle(t, "warren.csv")
	y := yeastNamed(t, "distillers-yeast")
	k, err := constantsFrom(modelNamed(t, "ferment"))
	require.NoError(t, err)
	st := newStrain(y, &k)

	type vec [3]float64
	rate := func(v vec) vec {
		all, _, _, _ := st.appetite(v[1], 0, 0)
		growth, _ := st.uptake(y.RefC, v[2], all, 1)
		return vec{growth * v[0], -growth * v[0] / st.biomassYield(v[2]), growth * v[0] / y.YieldBiomassPerEthanol}
	}
	plus := func(a, b vec, h float64) vec {
		for i := range a {
			a[i] += h * b[i]
		}
		return a
	}
	now, at := vec{head["X0"], head["S0"], 0}, 0.0
	const h = 2.0
	for _, row := range rows {
		for ; at < row["h"]*hour-1e-6; at += h {
			k1 := rate(now)
			k2 := rate(plus(now, k1, h/2))
			k3 := rate(plus(now, k2, h/2))
			k4 := rate(plus(now, k3, h))
			for i := range now {
				now[i] += h / 6 * (k1[i] + 2*k2[i] + 2*k3[i] + k4[i])
			}
		}
		assert.InEpsilon(t, row["X"], now[0], 1e-6, "yeast at %g h", row["h"])
		assert.InDelta(t, row["S"], now[1], 1e-4, "sugar at %g h", row["h"])
		assert.InDelta(t, row["P"], now[2], 1e-5, "ethanol at %g h", row["h"])
	}
}

// The whole model on glucose alone, at one temperature, solved by scipy from
// its documentation: four digits, as asked of the integrator.
func TestVatAgainstScipy(t *testing.T) {
	k, rows := readOracle(t, "vat.csv")
	in := bourbon(t)
	in.Wort = stream.Stream{WaterKg: k["water"], GlucoseKg: k["glucose"], SolublesKg: k["solubles"], TempC: k["tempC"]}
	in.Enzymes = starch.Enzymes{}
	in.PitchKg = k["yeast"]
	in.DurationS = 96 * hour
	in.Vessel = recipe.Vessel{HoldsM3: 1, MetalKg: 1e12} // keeps its temperature
	in.AmbientC, in.HoldHighC = k["tempC"], 0
	in.PressurePa = 1e15 // nothing evaporates
	y := *in.Yeast
	in.Yeast = &y
	y.RefC, y.ActivationGrowthJMol, y.ActivationEthanolJMol, y.ActivationDeathJMol = k["refC"], k["eGrowth"], k["eEthanol"], k["eDeath"]
	y.DeathPerS, y.EthanolYield, y.HighC, y.MostC = k["death"]/hour, k["yield"], k["highC"], k["mostC"]
	y.Solids, y.Viable, y.LagS = 1, 1, 0
	v := in.Model.Values
	v["death-by-ethanol"], v["glycerol-per-biomass"], v["resting-rate"] = k["deathByEthanol"], k["glycerol"], k["resting"]
	v["biomass-most"], v["lactic-seed"] = k["biomassMost"], 0

	for _, row := range rows[1:] {
		in.DurationS = row["h"] * hour
		r := ferments(t, in)
		w := r.Wash
		at := "at %g h"
		assert.InEpsilon(t, row["alive"], w.YeastKg*r.ViableShare, 1e-4, at, row["h"])
		assert.InDelta(t, row["glucose"], w.GlucoseKg, 1e-3, at, row["h"])
		assert.InEpsilon(t, row["ethanol"], w.EthanolKg, 1e-5, at, row["h"])
		assert.InEpsilon(t, row["water"], w.WaterKg, 1e-6, at, row["h"])
		assert.InEpsilon(t, row["grown"], r.GrownKg, 1e-5, at, row["h"])
		assert.InEpsilon(t, row["glycerol"], r.GlycerolKg, 1e-5, at, row["h"])
		assert.InEpsilon(t, row["other"], r.OtherKg, 1e-5, at, row["h"])
	}
}
