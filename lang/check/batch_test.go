package check

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

func TestLibraryIsClean(t *testing.T) {
	assert.Empty(t, saidOf(fromText()))
	lib := Builtin()
	for name, g := range lib.Library.Grains {
		for _, field := range []string{"moisture", "power", "alpha"} {
			assert.NotEmpty(t, g.Source[field], "grain %s in stdlib: write its %s, and where the figure comes from in the remark of the line", name, field)
		}
		assert.False(t, g.House)
		assert.NotEmpty(t, g.Cereal, name)
	}
	for name, s := range lib.Library.Standards {
		require.NotEmpty(t, s.Conditions, name)
		for _, c := range s.Conditions {
			assert.NotEmpty(t, c.Test, name)
			assert.NotEmpty(t, c.Law, name)
		}
	}
	assert.InDelta(t, 0.138, lib.Library.Grains["corn"].Moisture, 1e-12)
	assert.InDelta(t, 0.427/3600, lib.Library.Yeasts["distillers-yeast"].GrowthPerS, 1e-12)
	assert.InDelta(t, 95, lib.Library.Enzymes["alpha-amylase"].HalfLifeC, 1e-12)
	assert.InDelta(t, 220.6e3, lib.Library.Models["mash"].Values["gel-energy-below"], 1e-6)
	assert.True(t, lib.Library.Woods["charred-oak"].Charred)
}

// TestExamplesAreClean: the checker has nothing to say of the house that the
// documentation shows, nor of the houses that the published checks use.
func TestExamplesAreClean(t *testing.T) {
	for _, dir := range []string{"../../examples/lantern-hollow", "../../testdata/houses/grain-to-barrel", "../../testdata/houses/malt-425"} {
		h, err := Load(dir, Options{})
		require.NoError(t, err)
		require.NotEmpty(t, h.Batches())
		assert.Empty(t, h.Check(), dir)
		for _, name := range h.Batches() {
			b, list := h.Batch(name)
			assert.Empty(t, list, name)
			assert.NotNil(t, b, name)
		}
	}
}

// read makes a batch of a variant of the fixtures' base.
func read(t *testing.T, body string) (*recipe.Batch, diag.List) {
	t.Helper()
	h, err := LoadFS(bench(t, map[string]string{"v.batch": body}), "", Options{})
	require.NoError(t, err)
	names := h.BatchesIn("v.batch")
	require.NotEmpty(t, names)
	return h.Batch(names[0])
}

func TestBatchInSI(t *testing.T) {
	b, list := read(t, "batch \"V\" from \"Base\" {\n}\n")
	require.Empty(t, list)
	require.NotNil(t, b)
	assert.Equal(t, "Base", b.Parent)
	assert.InDelta(t, 900*0.45359237, b.Bill.TotalKg, 1e-9)
	assert.InDelta(t, 0.7, b.Bill.Lines[0].Share, 1e-12)
	assert.Equal(t, "corn", b.Bill.Lines[0].Grain.Name)
	assert.Equal(t, recipe.Start{Year: 2026, Month: 3, Day: 3, Hour: 7}, b.Start)

	water, backset := b.Mash.Steps[0], b.Mash.Steps[1]
	assert.InDelta(t, 315*3.785411784e-3, water.VolumeM3, 1e-12)
	assert.InDelta(t, 14.444, water.TempC, 1e-3)
	assert.InDelta(t, 0.15, backset.VolumeM3/(backset.VolumeM3+water.VolumeM3), 1e-12, "a share of all the liquor")
	assert.InDelta(t, 0.15, b.Mash.BacksetShare, 1e-12)
	assert.Equal(t, []int{0}, b.Mash.Steps[3].Grains)
	assert.InDelta(t, 0.0004*b.Bill.TotalKg, b.Mash.Steps[2].MassKg, 1e-12, "the middle of 0.02..0.06 %")

	assert.Len(t, b.Ferm.Vessels, 2)
	assert.InDelta(t, 0.6, b.Ferm.PitchKgM3, 1e-12)
	assert.InDelta(t, 90*3600, b.Ferm.DurationS, 1e-9)
	assert.Equal(t, "Wash still", b.Strip.Still.Name)
	assert.True(t, b.Spirit.Feints)
	assert.Equal(t, recipe.Cut{By: recipe.ByStrength, Strength: recipe.Strength{Value: 0.8}, At: b.Spirit.HeartsFrom.At}, b.Spirit.HeartsFrom)
	assert.InDelta(t, 0.57, b.Cask.Entry.Value, 1e-12)
	assert.Equal(t, recipe.Proof, b.Cask.Entry.Basis)
	assert.True(t, b.Cask.New)
	assert.Equal(t, 3, b.Cask.Char)
	assert.InDelta(t, 4*365.25*86400, b.Cask.RestS, 1e-6)
}

func TestWhere(t *testing.T) {
	b, _ := read(t, "batch \"V\" from \"Base\" {\n cask {\n entry 110 proof\n }\n}\n")
	require.NotNil(t, b)
	for path, text := range map[string]string{
		"bill.rye":           "rye 16 %",
		"mash":               `mash in "Kettle"`,
		"mash.water":         "water 315 gal at 58 F",
		"mash.backset":       "backset 15 %",
		"mash.step.5":        "heat to 190 F",
		"mash.step.5.to":     "190 F",
		"mash.step.8.rye":    "rye",
		"mash.step.9.for":    "20 min",
		"ferment.pitch":      "pitch distillers-yeast 0.6 g/L",
		"ferment.hold":       "hold 78..88 F",
		"ferment.for":        "for 90 h",
		"strip.stop":         "stop at 2 % abv",
		"spirit.foreshots":   "foreshots 0.5 gal",
		"spirit.hearts.from": "80 % abv",
		"spirit.hearts.to":   "63 % abv",
		"spirit.stop":        "stop at 4 % abv",
		"cask.entry":         "entry 110 proof",
		"cask.fill":          "fill 53 gal new charred-oak char 3",
		"cask.rest":          "rest 48 months",
		"cask.bottle.at":     "94 proof",
		"start":              "start 2026-03-03 07:00",
		"standard":           "standard bourbon",
		"plant.elevation":    "elevation 1,150 ft",
	} {
		assert.Equal(t, text, strings.Join(strings.Fields(b.Where[recipe.ParsePath(path)].Text()), " "), path)
	}
}

func TestUnitsAreThoseOfTheFile(t *testing.T) {
	b, _ := read(t, "batch \"V\" from \"Base\" {\n  cask {\n    fill 200 L new charred-oak\n  }\n}\n")
	require.NotNil(t, b)
	assert.Equal(t, recipe.US, b.Units, "a variant is written as what it varies, for the most part")
	h, err := LoadFS(bench(t, map[string]string{"si.batch": "batch \"M\" {\n  start 2026-03-03\n  bill {\n    two-row-malt 400 kg\n  }\n  mash {\n    water 1200 L at 72 C\n    add all\n    rest 60 min\n    cool to 25 C\n  }\n" +
		"  ferment {\n    pitch distillers-yeast\n    hold 25..31 C\n    for 4 days\n  }\n  strip {\n    stop at 2 % abv\n  }\n  spirit {\n    foreshots 4 L\n    hearts from 15 L to 62 % abv\n  }\n}\n"}), "", Options{})
	require.NoError(t, err)
	b, _ = h.Batch("M")
	require.NotNil(t, b)
	assert.Equal(t, recipe.SI, b.Units)
	b, _ = read(t, "batch \"V\" from \"Base\" {\n  units us\n  cask {\n    fill 200 L new charred-oak\n  }\n}\n")
	require.NotNil(t, b)
	assert.Equal(t, recipe.US, b.Units)
}

func TestBill(t *testing.T) {
	for _, c := range []struct {
		bill string
		kg   []float64
	}{
		{"  bill {\n    corn 600 lb\n    rye 100 kg\n    distillers-malt 2 distillers-bushel\n  }", []float64{600 * quantity.PoundKg, 100, 112 * quantity.PoundKg}},
		{"  bill {\n    corn 10 bushel\n    rye 10 distillers-bushel\n    distillers-malt 2 bushel\n  }", []float64{560 * quantity.PoundKg, 560 * quantity.PoundKg, 68 * quantity.PoundKg}},
		{"  bill 1,000 lb {\n    corn rest\n    rye 10 %\n    distillers-malt 140 lb\n  }", []float64{760 * quantity.PoundKg, 100 * quantity.PoundKg, 140 * quantity.PoundKg}},
		{"  bill 500 kg {\n    corn 70.02 %\n  }", []float64{350.1, 80, 70}},
	} {
		b, list := read(t, "batch \"V\" from \"Base\" {\n"+c.bill+"\n  standard whisky\n}\n")
		require.NotNil(t, b, "%s\n%s", c.bill, list.Error())
		require.Len(t, b.Bill.Lines, len(c.kg))
		for i, kg := range c.kg {
			assert.InDelta(t, kg, b.Bill.Lines[i].MassKg, 1e-9, c.bill)
		}
	}
}

func TestCutsOfEveryKind(t *testing.T) {
	for text, want := range map[string][2]recipe.Cut{
		"160 proof to 62 % abv":           {{By: recipe.ByStrength, Strength: recipe.Strength{Value: 0.8, Basis: recipe.Proof}}, {By: recipe.ByStrength, Strength: recipe.Strength{Value: 0.62}}},
		"5 L to 120 L":                    {{By: recipe.ByVolume, VolumeM3: 0.005}, {By: recipe.ByVolume, VolumeM3: 0.12}},
		"80 C to 90 C":                    {{By: recipe.ByVapourTemp, TempC: 80}, {By: recipe.ByVapourTemp, TempC: 90}},
		"3 % of charge to 65 % of charge": {{By: recipe.ByShare, Share: 0.03}, {By: recipe.ByShare, Share: 0.65}},
		"5 L to 62 % abv":                 {{By: recipe.ByVolume, VolumeM3: 0.005}, {By: recipe.ByStrength, Strength: recipe.Strength{Value: 0.62}}},
	} {
		b, list := read(t, "batch \"V\" from \"Base\" {\n  spirit {\n    hearts from "+text+"\n  }\n}\n")
		require.NotNil(t, b, "%s: %s", text, list.Error())
		got := [2]recipe.Cut{b.Spirit.HeartsFrom, b.Spirit.HeartsTo}
		got[0].At, got[1].At = diag.Span{}, diag.Span{}
		assert.InDelta(t, want[0].VolumeM3, got[0].VolumeM3, 1e-12)
		assert.InDelta(t, want[1].TempC, got[1].TempC, 1e-9)
		assert.Equal(t, want[0].By, got[0].By, text)
		assert.Equal(t, want[1].By, got[1].By, text)
		assert.Equal(t, want[0].Strength, got[0].Strength, text)
		assert.InDelta(t, want[0].Share, got[0].Share, 1e-12, text)
	}
}

func TestExpect(t *testing.T) {
	b, list := read(t, `batch "V" from "Base" {
  promise hearts 38 gal within 2 gal
  promise hearts 134 proof within 3 proof
  promise casks 1
  promise original-gravity 1.062 within 0.003
  promise wash 400 gal within 5 gal in 9 of 10
}
`)
	require.NotNil(t, b, list.Error())
	require.Len(t, b.Promises, 5)
	assert.Equal(t, 9, b.Promises[4].OfRuns)
	assert.Equal(t, 10, b.Promises[4].InRuns)
	assert.Zero(t, b.Promises[3].InRuns)
	assert.Equal(t, quantity.Volume, b.Promises[0].Kind)
	assert.InDelta(t, 2*quantity.USGallonM3, b.Promises[0].Tolerance, 1e-12)
	assert.Equal(t, recipe.Strength{Value: 0.67, Basis: recipe.Proof}, b.Promises[1].Strength)
	assert.InDelta(t, 0.015, b.Promises[1].Tolerance, 1e-12)
	assert.Equal(t, quantity.Number, b.Promises[2].Kind)
	assert.Zero(t, b.Promises[2].Tolerance)
	assert.InDelta(t, 0.003, b.Promises[3].Tolerance, 1e-12)
}

// What the house has today, and water in the charge.
func TestToday(t *testing.T) {
	b, list := read(t, "batch \"V\" from \"Base\" {\n feints none yet\n backset none yet\n spirit {\n charge low-wines, feints, water to 28 % abv\n }\n}\n")
	require.Empty(t, list)
	assert.Equal(t, recipe.Today{FeintsSaid: true, NoBackset: true}, b.Today)
	assert.Equal(t, recipe.Strength{Value: 0.28}, b.Spirit.WaterTo)
	assert.True(t, b.Spirit.Feints)
	assert.InDelta(t, b.SupplyC(), b.Mash.Steps[1].TempC, 1e-12, "water for want of backset comes from the supply")

	b, list = read(t, "batch \"V\" from \"Base\" {\n feints 20 gal at 70 proof\n}\n")
	require.Empty(t, list)
	assert.InDelta(t, 20*3.785411784e-3, b.Today.FeintsM3, 1e-12)
	assert.InDelta(t, 0.35, b.Today.FeintsAt.Value, 1e-12)
	assert.Equal(t, recipe.Proof, b.Today.FeintsAt.Basis)
	assert.Zero(t, b.Spirit.WaterTo)

	b, _ = read(t, "batch \"V\" from \"Base\" {\n}\n")
	assert.Zero(t, b.Today)
}

// TestTwoStillsAlike: where no run names its still, each of two that hold the same has
// one; a larger one strips.
func TestTwoStillsAlike(t *testing.T) {
	for _, c := range []struct{ first, second, strips, spirits string }{
		{"600 gal", "600 gal", "A", "B"},
		{"599 gal", "600 gal", "B", "A"},
		{"601 gal", "600 gal", "A", "B"},
	} {
		plant := "plant \"Alike\" {\n elevation 10 ft\n water 58 F\n cooker \"K\" {\n holds 520 gal\n heats 130 kW\n cools 120 kW\n }\n" +
			" fermenter \"F\" {\n holds 540 gal\n }\n still \"A\" {\n holds " + c.first + "\n heats 100 kW\n agitator yes\n }\n still \"B\" {\n holds " + c.second + "\n heats 100 kW\n agitator yes\n }\n}\n"
		base, err := os.ReadFile("testdata/base.batch")
		require.NoError(t, err)
		text := plant + strings.NewReplacer(`"Bench"`, `"Alike"`, `"Base"`, `"Of two stills"`, ` in "Kettle"`, "", ` in "Wash still"`, "", ` in "Spirit still"`, "").Replace(string(base))
		b, list := read(t, text)
		require.NotNil(t, b, "%v", list)
		assert.Equal(t, [2]string{c.strips, c.spirits}, [2]string{b.Strip.Still.Name, b.Spirit.Still.Name}, "%v", c)
	}
}
