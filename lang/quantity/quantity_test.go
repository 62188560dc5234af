package quantity_test

import (
	"bufio"
	"encoding/csv"
	"errors"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/quantity"
)

// table reads a CSV file of testdata, its comment lines left out.
func table(t *testing.T, path string) [][]string {
	t.Helper()
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(bufio.NewReader(f))
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	return rows[1:]
}

var kinds = map[string]quantity.Kind{
	"Mass": quantity.Mass, "Volume": quantity.Volume, "Length": quantity.Length, "Power": quantity.Power,
	"Energy": quantity.Energy, "Pressure": quantity.Pressure, "Concentration": quantity.Concentration,
	"SpecificVolume": quantity.SpecificVolume, "SpecificEnergy": quantity.SpecificEnergy,
	"HeatCapacity": quantity.HeatCapacity, "Flow": quantity.Flow, "Dose": quantity.Dose, "Duration": quantity.Duration,
}

// TestFactors holds the table against an independent program and a handbook.
func TestFactors(t *testing.T) {
	for _, row := range table(t, "testdata/factors.csv") {
		kind, ok := kinds[row[1]]
		require.True(t, ok, row[1])
		got, err := quantity.ToSI(1, row[0], kind)
		require.NoError(t, err)
		gnu, err := strconv.ParseFloat(row[2], 64)
		require.NoError(t, err)
		tolerance := 1e-14
		if row[0] == "inHg" {
			tolerance = 2e-7 // SP 811 prints seven digits of it, GNU Units derives it from mmHg
		}
		assert.InEpsilon(t, gnu, got, tolerance, row[0])
		if row[3] != "" {
			mantissa, _, _ := strings.Cut(row[3], "E")
			assert.Equal(t, row[3], strconv.FormatFloat(got, 'E', len(mantissa)-2, 64), "%s as printed", row[0])
		}
	}
}

// TestByDefinition: units whose factor is plain from what they are called.
func TestByDefinition(t *testing.T) {
	for _, c := range []struct {
		unit string
		kind quantity.Kind
		v    float64
		si   float64
	}{
		{"distillers-bushel", quantity.Mass, 1, 56 * 0.45359237}, // The Alcohol Textbook, 4th ed.: 56 lb of any grain
		{"kg", quantity.Mass, 3, 3}, {"g", quantity.Mass, 1, 1e-3}, {"mg", quantity.Mass, 1, 1e-6},
		{"tonne", quantity.Mass, 1, 1000}, {"t", quantity.Mass, 1, 1000},
		{"L", quantity.Volume, 1, 1e-3}, {"mL", quantity.Volume, 1, 1e-6}, {"hL", quantity.Volume, 1, 0.1}, {"m3", quantity.Volume, 1, 1},
		{"min", quantity.Duration, 45, 2700}, {"week", quantity.Duration, 1, 604800}, {"s", quantity.Duration, 1, 1},
		{"year", quantity.Duration, 1, 365.25 * 86400}, {"months", quantity.Duration, 12, 365.25 * 86400},
		{"m", quantity.Length, 1, 1}, {"kW", quantity.Power, 1, 1000}, {"MW", quantity.Power, 1, 1e6}, {"W", quantity.Power, 1, 1},
		{"MJ", quantity.Energy, 1, 1e6}, {"kJ", quantity.Energy, 1, 1e3}, {"J", quantity.Energy, 1, 1},
		{"% abv", quantity.Strength, 40, 0.40}, {"% abw", quantity.Strength, 40, 0.40}, {"proof", quantity.Strength, 114, 0.57},
		{"sg", quantity.Gravity, 1.062, 1.062}, {"", quantity.Gravity, 1.062, 1.062},
		{"%", quantity.Share, 68, 0.68}, {"% of grain", quantity.Share, 1, 0.01}, {"% of grain", quantity.Dose, 0.05, 0.0005},
		{"g/L", quantity.Concentration, 0.6, 0.6}, {"kg/m3", quantity.Concentration, 1, 1}, {"mg/L", quantity.Concentration, 1, 1e-3},
		{"mg/L", quantity.PartsPerMillion, 90, 90}, {"ppm", quantity.PartsPerMillion, 90, 90},
		{"g/gal", quantity.Concentration, 1, 1e-3 / 3.785411784e-3},
		{"g/kg", quantity.Dose, 1, 1e-3}, {"g/t", quantity.Dose, 1, 1e-6},
		{"Pa", quantity.Pressure, 1, 1}, {"kPa", quantity.Pressure, 101.325, 101325},
		{"/s", quantity.Rate, 1, 1}, {"/min", quantity.Rate, 60, 1}, {"/h", quantity.Rate, 3600, 1}, {"/day", quantity.Rate, 86400, 1},
		{"kJ/mol", quantity.MolarEnergy, 224.2, 224200}, {"J/mol", quantity.MolarEnergy, 1, 1},
		{"lintner", quantity.DiastaticPower, 120, 120},
		{"wk", quantity.DiastaticPower, 404, 120}, // lintner = (WK + 16) / 3.5 (common practice)
		{"DU", quantity.DextrinizingUnit, 50, 50},
		{"lb/bushel", quantity.TestWeight, 56, 56 * 0.45359237}, {"kg/bushel", quantity.TestWeight, 25, 25},
		{"kg/hL", quantity.TestWeight, 72.08, 25.400321776}, // 56 lb in a US bushel of 35.23907016688 L
		{"bushel", quantity.Bushel, 16, 16},
		{"gal/distillers-bushel", quantity.SpecificVolume, 30, 30 * 3.785411784e-3 / (56 * 0.45359237)},
		{"L/kg", quantity.SpecificVolume, 4, 4e-3}, {"mL/g", quantity.SpecificVolume, 4, 4e-3},
		{"kJ/kg", quantity.SpecificEnergy, 1, 1000}, {"J/kg", quantity.SpecificEnergy, 1, 1},
		{"kJ/kg/K", quantity.HeatCapacity, 4.18, 4180}, {"J/kg/K", quantity.HeatCapacity, 1, 1},
		{"pH", quantity.PH, 5.4, 5.4}, {"", quantity.PH, 5.4, 5.4},
		{"proof-gal", quantity.ProofGallons, 8.16, 8.16}, {"pg", quantity.ProofGallons, 8.16, 8.16},
		{"%/year", quantity.PerYear, 4, 0.04}, {"proof/year", quantity.StrengthPerYear, 1, 1},
		{"gal/h", quantity.Flow, 20, 20 * 3.785411784e-3 / 3600}, {"L/h", quantity.Flow, 50, 50e-3 / 3600},
		{"F/min", quantity.HeatingRate, 1.8, 1.0 / 60}, {"C/min", quantity.HeatingRate, 1, 1.0 / 60},
		{"F/h", quantity.HeatingRate, 1.8, 1.0 / 3600}, {"C/h", quantity.HeatingRate, 1, 1.0 / 3600},
		{"", quantity.Number, 3, 3}, {"", quantity.Money, 3, 3}, {"USD", quantity.Money, 3, 3},
	} {
		got, err := quantity.ToSI(c.v, c.unit, c.kind)
		require.NoError(t, err, c.unit)
		assert.InEpsilon(t, c.si, got, 1e-9, "%g %s", c.v, c.unit)
	}
}

// TestTemperatures is pitfall 1: every unit as a point and as a difference.
func TestTemperatures(t *testing.T) {
	for _, c := range []struct {
		unit        string
		v           float64
		point, diff float64
	}{
		{"C", 100, 100, 100}, {"F", 212, 100, 212.0 * 5 / 9}, {"K", 373.15, 100, 373.15},
		{"C", 0, 0, 0}, {"F", 32, 0, 32.0 * 5 / 9}, {"K", 273.15, 0, 273.15},
		{"F", 4, -28 * 5.0 / 9, 4 * 5.0 / 9}, {"F", -40, -40, -40 * 5.0 / 9}, {"C", -40, -40, -40},
		{"°F", 212, 100, 212.0 * 5 / 9}, {"ºF", 212, 100, 212.0 * 5 / 9}, {"°C", 5, 5, 5}, {"ºC", 5, 5, 5},
	} {
		point, err := quantity.ToSI(c.v, c.unit, quantity.Temperature)
		require.NoError(t, err)
		assert.InDelta(t, c.point, point, 1e-10, "%g %s as a point", c.v, c.unit)
		diff, err := quantity.ToSI(c.v, c.unit, quantity.TempDifference)
		require.NoError(t, err)
		assert.InDelta(t, c.diff, diff, 1e-10, "%g %s as a difference", c.v, c.unit)
	}
}

// TestTemperatureTypes: a point has its zero elsewhere on the other scale, a
// distance has not.
func TestTemperatureTypes(t *testing.T) {
	assert.InDelta(t, 100, float64(quantity.TempFromF(212)), 1e-12)
	assert.InDelta(t, 212, quantity.TempC(100).F(), 1e-12)
	assert.InDelta(t, 18, quantity.DeltaC(10).F(), 1e-12)
}

// TestPlato holds the curve against NBS Circular 440 (1942), table 114, apparent
// specific gravity 20/20 C of sucrose solutions.
func TestPlato(t *testing.T) {
	for _, c := range []struct{ plato, sg, within float64 }{
		{0, 1.00000, 2e-5}, {5, 1.01968, 2e-5}, {10, 1.04003, 2e-5}, {12, 1.04837, 2e-5}, {15, 1.06111, 2e-5},
		{20, 1.08297, 2e-5}, {25, 1.10564, 4e-5},
		// Beyond 25 plato, where no mash stands, the cubic leaves the table: by 0.00012 at 30.
		{30, 1.12913, 1.3e-4},
	} {
		got, err := quantity.ToSI(c.plato, "plato", quantity.Gravity)
		require.NoError(t, err)
		assert.InDelta(t, c.sg, got, c.within, "%g plato", c.plato)
		back, err := quantity.FromSI(got, "plato", quantity.Gravity)
		require.NoError(t, err)
		assert.InDelta(t, c.plato, back, 1e-9)
	}
}

// TestRoundTrip brings every unit to SI and back, as every kind it serves.
func TestRoundTrip(t *testing.T) {
	for _, u := range quantity.All() {
		assert.NotEmpty(t, u.Source, u.Name)
		for _, m := range u.Measures {
			for _, name := range append([]string{u.Name}, u.Aliases...) {
				si, err := quantity.ToSI(12.5, name, m.Kind)
				require.NoError(t, err, name)
				back, err := quantity.FromSI(si, name, m.Kind)
				require.NoError(t, err, name)
				assert.InDelta(t, 12.5, back, 1e-9, name)
			}
		}
	}
}

func TestEveryKindHasUnitsAndWords(t *testing.T) {
	for k := quantity.Number; k <= quantity.SpiritYield; k++ {
		if !quantity.AllowsBare(k) && k != quantity.UnitPrice {
			assert.NotEmpty(t, quantity.Units(k), k.String())
		}
		assert.NotEmpty(t, k.String())
	}
	assert.Equal(t, "a temperature", quantity.Temperature.String())
	assert.Equal(t, []string{"proof-gal"}, quantity.Units(quantity.ProofGallons))
	assert.Equal(t, "lb", quantity.Units(quantity.Mass)[0])
}

func TestUnitErrors(t *testing.T) {
	for _, c := range []struct {
		unit  string
		kind  quantity.Kind
		known bool
		near  string
		says  string
		hint  string
	}{
		{"oz", quantity.Volume, true, "", "`oz` is a weight, and a volume is wanted here", "`fl oz`"},
		{"ounces", quantity.Volume, true, "", "`ounces` is a weight", "`fl oz`"},
		{"gal", quantity.Mass, true, "", "`gal` is a volume, and a weight is wanted here", "weigh it"},
		{"bushel", quantity.Mass, true, "", "a number of trade bushels", "distillers-bushel"},
		{"distillers-bushel", quantity.Bushel, true, "", "is a weight", "not the grain's own"},
		{"%", quantity.Strength, true, "", "is a share", "% abv"},
		{"", quantity.Volume, false, "", "a volume needs a unit: `gal`", ""},
		{"", quantity.Strength, false, "", "needs a unit: `% abv`, `proof`", ""},
		{"gall", quantity.Volume, false, "gal", "did you mean `gal`?", ""},
		{"kgal", quantity.Volume, false, "gal", "did you mean `gal`?", ""},
		{"KG", quantity.Mass, false, "kg", "did you mean `kg`?", ""},
		{"ML", quantity.Volume, false, "mL", "did you mean `mL`?", ""},
		{"prof", quantity.Strength, false, "proof", "did you mean `proof`?", ""},
		{"f", quantity.Temperature, false, "F", "did you mean `F`?", ""},
		{"poundz", quantity.Mass, false, "lb", "did you mean `lb`?", ""},
		{"furlong", quantity.Length, false, "", "there is no unit `furlong`", ""},
		{"gal/bushel", quantity.SpecificVolume, false, "", "there is no unit", "distillers-bushel"},
	} {
		_, err := quantity.ToSI(1, c.unit, c.kind)
		require.Error(t, err, c.unit)
		var ue *quantity.UnitError
		require.True(t, errors.As(err, &ue))
		assert.Equal(t, c.known, ue.Known, c.unit)
		assert.Contains(t, err.Error(), c.says)
		assert.Contains(t, ue.Hint, c.hint)
		assert.Equal(t, quantity.Units(c.kind), ue.Serve)
		if c.near != "" {
			require.NotEmpty(t, ue.Near, c.unit)
			assert.Equal(t, c.near, ue.Near[0])
		}
		_, err = quantity.FromSI(1, c.unit, c.kind)
		require.Error(t, err)
	}
}

// TestMisspeltUnits is pitfall 2: a unit with one letter wrong is never another
// unit in silence, and the right one is offered.
func TestMisspeltUnits(t *testing.T) {
	for _, u := range quantity.All() {
		if len(u.Name) < 4 {
			continue
		}
		for i := range u.Name {
			wrong := u.Name[:i] + u.Name[i+1:]
			if _, ok := quantity.Lookup(wrong); ok {
				continue // such as F/min without its F, which is a rate
			}
			_, err := quantity.ToSI(1, wrong, u.Measures[0].Kind)
			var ue *quantity.UnitError
			require.True(t, errors.As(err, &ue), wrong)
			assert.Contains(t, ue.Near, u.Name, wrong)
		}
	}
}

// TestNoPrefixGuessing: no prefix makes a unit of one that the table does not have.
func TestNoPrefixGuessing(t *testing.T) {
	listed := map[string]bool{}
	for _, u := range quantity.All() {
		listed[u.Name] = true
		for _, a := range u.Aliases {
			listed[a] = true
		}
	}
	tried := 0
	for name := range listed {
		for _, prefix := range []string{"n", "u", "µ", "μ", "m", "c", "d", "da", "h", "k", "M", "G", "T"} {
			if made := prefix + name; !listed[made] {
				_, ok := quantity.Lookup(made)
				assert.False(t, ok, made)
				tried++
			}
		}
	}
	assert.Greater(t, tried, 1000)
}

func TestPrices(t *testing.T) {
	perKg, err := quantity.ToSI(0.25, "USD/lb", quantity.UnitPrice)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.25/0.45359237, perKg, 1e-12)
	back, err := quantity.FromSI(perKg, "USD/lb", quantity.UnitPrice)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.25, back, 1e-12)

	p, ok := quantity.ParsePrice("EUR/kWh")
	require.True(t, ok)
	assert.Equal(t, "EUR", p.Currency)
	assert.Equal(t, "kWh", p.Per.Name)
	p, ok = quantity.ParsePrice("USD/cask")
	require.True(t, ok)
	assert.Nil(t, p.Per)
	assert.Equal(t, "cask", p.PerName)
	for _, bad := range []string{"USD", "usd/lb", "USD/", "lb", "BTU/h", "", "$/lb"} {
		_, ok := quantity.ParsePrice(bad)
		assert.False(t, ok, bad)
	}
	_, err = quantity.ToSI(1, "USD/F", quantity.UnitPrice)
	require.Error(t, err)
}

func FuzzToSI(f *testing.F) {
	for _, u := range quantity.All() {
		f.Add(u.Name, 1.5, uint8(u.Measures[0].Kind))
	}
	f.Add("USD/lb", 2.0, uint8(quantity.UnitPrice))
	f.Add("", 2.0, uint8(quantity.Gravity))
	f.Fuzz(func(t *testing.T, unit string, v float64, k uint8) {
		kind := quantity.Kind(k)
		si, err := quantity.ToSI(v, unit, kind)
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		if math.IsNaN(v) || math.Abs(v) > 1e6 || unit == "plato" || strings.HasSuffix(unit, "P") {
			return
		}
		back, err := quantity.FromSI(si, unit, kind)
		require.NoError(t, err)
		require.InDelta(t, v, back, 1e-6+1e-9*math.Abs(v))
	})
}

func BenchmarkToSI(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := quantity.ToSI(190, "F", quantity.Temperature); err != nil {
			b.Fatal(err)
		}
	}
}
