package quantity_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/quantity"
)

// TestOracle holds every unit of the table, in each of its kinds, against GNU
// Units: testdata/oracle/units.csv, which .ci/oracle makes again in CI. What GNU
// Units has no word for stands there with the reason.
func TestOracle(t *testing.T) {
	byName := map[string]quantity.Kind{}
	for _, u := range quantity.All() {
		for _, m := range u.Measures {
			byName[kindNames[m.Kind]] = m.Kind
		}
	}
	seen := map[string]bool{}
	checked := 0
	for _, row := range table(t, "../../testdata/oracle/units.csv") {
		unit, kindName := row[0], row[1]
		kind, ok := byName[kindName]
		require.True(t, ok, "%s: no kind %s", unit, kindName)
		seen[unit+" "+kindName] = true
		if row[2] == "" {
			continue
		}
		value, err := strconv.ParseFloat(row[2], 64)
		require.NoError(t, err)
		want, err := strconv.ParseFloat(row[3], 64)
		require.NoError(t, err)
		got, err := quantity.ToSI(value, unit, kind)
		require.NoError(t, err, unit)
		switch {
		case kind == quantity.Gravity:
			// The cubic of ASBC against NBS Circular 440's table: 0.00005 to 25
			// Plato, far below what a hydrometer shows. At 30 the cubic has left
			// the worts that it was made for, and is 0.00012 off.
			tolerance := 0.00005
			if value > 25 {
				tolerance = 0.00013
			}
			assert.InDelta(t, want, got, tolerance, "%g %s", value, unit)
		case unit == "inHg":
			// SP 811 prints seven digits; GNU Units derives it from mmHg of 13.5951.
			assert.InEpsilon(t, want, got, 2e-7, unit)
		default:
			assert.InDelta(t, want, got, 1e-11*math.Max(1, math.Abs(want))*scale(want), "%g %s by %s", value, unit, row[4])
		}
		checked++
	}
	assert.Greater(t, checked, 90)
	for _, u := range quantity.All() {
		for _, m := range u.Measures {
			assert.True(t, seen[u.Name+" "+kindNames[m.Kind]], "%s as %s is not in testdata/oracle/units.csv: give .ci/oracle/units.py a row, and `.ci/oracle/units.py >testdata/oracle/units.csv` has GNU Units (Debian: units) write it", u.Name, m.Kind)
		}
	}
}

// scale keeps the tolerance relative for values far below one.
func scale(want float64) float64 {
	if a := math.Abs(want); a > 0 && a < 1 {
		return a
	}
	return 1
}

var kindNames = map[quantity.Kind]string{
	quantity.Mass: "Mass", quantity.Volume: "Volume", quantity.Temperature: "Temperature", quantity.TempDifference: "TempDifference",
	quantity.HeatingRate: "HeatingRate", quantity.Duration: "Duration", quantity.Length: "Length", quantity.Power: "Power",
	quantity.Energy: "Energy", quantity.Strength: "Strength", quantity.Gravity: "Gravity", quantity.Share: "Share",
	quantity.Dose: "Dose", quantity.Concentration: "Concentration", quantity.PartsPerMillion: "PartsPerMillion",
	quantity.Pressure: "Pressure", quantity.Rate: "Rate", quantity.MolarEnergy: "MolarEnergy",
	quantity.DiastaticPower: "DiastaticPower", quantity.DextrinizingUnit: "DextrinizingUnit", quantity.TestWeight: "TestWeight",
	quantity.Bushel: "Bushel", quantity.SpecificVolume: "SpecificVolume", quantity.SpecificEnergy: "SpecificEnergy",
	quantity.HeatCapacity: "HeatCapacity", quantity.PH: "PH", quantity.ProofGallons: "ProofGallons",
	quantity.PerYear: "PerYear", quantity.StrengthPerYear: "StrengthPerYear",
	quantity.Area: "Area", quantity.Flow: "Flow", quantity.HeatTransfer: "HeatTransfer", quantity.MassFlow: "MassFlow", quantity.PureAlcohol: "PureAlcohol",
	quantity.SpiritYield: "SpiritYield",
}
