package wording

import (
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/quantity"
)

func TestRestated(t *testing.T) {
	for _, c := range []struct{ line, si string }{
		{"water 330 gal at 58 F", "water 1,250 L at 14 C"},
		{"heat to 190 F\nrest 45 min", "heat to 88 C\nrest 45 min"},
		{"bill 940 lb {", "bill 430 kg {"},
		{"hold 78..88 F", "hold 26..31 C"},
		{"hold 78-88 F", "hold 26-31 C"},
		{"gypsum 6 oz", "gypsum 170 g"},
		{"foreshots 0.5 gal", "foreshots 1.9 L"},
		{"hearts from 4 gal to 62 % abv", "hearts from 15 L to 62 % vol"},
		{"promise hearts 38 gal within 2 gal", "promise hearts 144 L within 7.6 L"},
		{"cools by jacket 60 sqft, water 20 gal/min", "cools by jacket 5.6 m2, water 76 L/min"},
		{"hearts at 20 gal/h", "hearts at 76 L/h"},
		{"mill 1,300 lb/h", "mill 590 kg/h"},
		{"corn 0.14 USD/lb", "corn 0.31 USD/kg"},
		{"water 0.006 USD/gal", "water 1.6 USD/m3"},
		{"work 28 USD/h", "work 28 USD/h"},
		{"bottle 750 mL at 94 proof", "bottle 700 mL at 47 % vol"},
		{"off-still at most 160 proof", "off-still at most 80 % vol"},
		{"elevation 1,150 ft", "elevation 350 m"},
		{"reads 1.000..1.070 SG by 0.001 SG at 60 F", "reads 1.000..1.070 SG by 0.001 SG at 20 C"},
		{"water 52 F to 68 F in aug, hardness 90 ppm", "water 11 C to 20 C in aug, hardness 90 ppm"},
		{"within 2 F", "within 1.1 C"},
		{`destroyed 12 gal "fire, 12 gal lost"`, `destroyed 45 L "fire, 12 gal lost"`},
		{"52 proof-gal", "98 LPA"},
		{"56 lb/bushel", "72 kg/hL"},
		{"2 F/min", "1.1 C/min"},
		{"count 2026-03-03 07:00 corn 1,020 lb", "count 2026-03-03 07:00 corn 460 kg"},
		{"fill 53 gal new charred-oak char 3", "fill 200 L new charred-oak char 3"},
		{"dose alpha-amylase", "dose alpha-amylase"},
		{"pitch distillers-yeast 0.6 g/L", "pitch distillers-yeast 0.6 g/L"},
		{"", ""},
	} {
		require.Equal(t, c.si, Restated(c.line, quantity.SI))
		require.Equal(t, c.line, Restated(c.line, quantity.Both))
	}
	for _, c := range []struct{ line, us string }{
		{"range 55..100 C", "range 131..212 F"},
		{"fill 200 L used bourbon-oak", "fill 53 gal used bourbon-oak"},
		{"bottle 700 mL at 46 % vol", "bottle 700 mL at 46 % vol"},
		{"barley 0.35 GBP/kg", "barley 0.16 GBP/lb"},
		{"heats 170 kW", "heats 170 kW"},
	} {
		require.Equal(t, c.us, Restated(c.line, quantity.US))
	}
}

// TestProse: of two units the reader's is left, and litres are told in litres.
func TestProse(t *testing.T) {
	for _, c := range []struct{ text, si, us string }{
		{"It dies above 155 F (68 C).", "It dies above 68 C.", "It dies above 155 F."},
		{"Corn at 185 to 200 F (85 to 93 C), or so.", "Corn at 85 to 93 C, or so.", "Corn at 185 to 200 F, or so."},
		{"At most 200 proof (100 % vol).", "At most 100 % vol.", "At most 200 proof."},
		{"Warmer by 1 C (1.8 F).", "Warmer by 1 C.", "Warmer by 1.8 F."},
		{"Write `cool to 148 F`, or `148 F`.", "Write `cool to 64 C`, or `64 C`.", "Write `cool to 148 F`, or `148 F`."},
		{"Between about 100 and 140 proof.", "Between about 50 and 70 % vol.", "Between about 100 and 140 proof."},
		{"It is 125 proof (27 CFR 5.143). Or 100 proof.", "It is 125 proof (27 CFR 5.143). Or 50 % vol.", "It is 125 proof (27 CFR 5.143). Or 100 proof."},
		{"At 60 F beside gallons, at 20 C beside litres.", "At 60 F beside gallons, at 20 C beside litres.", "At 60 F beside gallons, at 20 C beside litres."},
		{"A sixteenth of 2 pounds.", "A sixteenth of 2 pounds.", "A sixteenth of 2 pounds."},
		{"A cask of 200 L.", "A cask of 200 L.", "A cask of 200 L."},
		{"Two things (2 of them), 5 F (see 3 C).", "Two things (2 of them), 5 F (see 3 C).", "Two things (2 of them), 5 F (see 3 C)."},
	} {
		require.Equal(t, c.si, Prose(c.text, quantity.SI))
		require.Equal(t, c.us, Prose(c.text, quantity.US))
		require.Equal(t, c.text, Prose(c.text, quantity.Both))
	}
}

// An example is as the text counts, and as it was written where nobody knows that.
func TestExample(t *testing.T) {
	src := diag.NewSource("a.batch", []byte("water 5\n"))
	require.Equal(t, "`water 330 gal`", Example(src.Span(0, 1), "water 330 gal"))
	require.Equal(t, "`water 330 gal`", Example(diag.Span{}, "water 330 gal"))
	src.Units = func() quantity.System { return quantity.SI }
	require.Equal(t, "`water 1,250 L`", Example(src.Span(0, 1), "water 330 gal"))
}

// TestUnitsOf: who counts in litres is named no gallons.
func TestUnitsOf(t *testing.T) {
	require.Equal(t, []string{"% vol", "% abw"}, UnitsOf(quantity.Strength, quantity.SI))
	require.Equal(t, []string{"% abv", "proof", "% abw"}, UnitsOf(quantity.Strength, quantity.US))
	require.NotContains(t, UnitsOf(quantity.Volume, quantity.SI), "gal")
	require.Contains(t, UnitsOf(quantity.Volume, quantity.US), "mL")
	require.Contains(t, UnitsOf(quantity.Volume, quantity.Both), "imp-gal")
	for _, reader := range []quantity.System{quantity.US, quantity.SI} {
		require.NotContains(t, UnitsOf(quantity.Volume, reader), "imp-gal")
	}
}

// What is left open is asked for in the reader's units too.
func TestBlanksRestated(t *testing.T) {
	line := `into "K __ gal" __ gal, tare __ lb, __ proof at __ F`
	require.Equal(t, `into "K __ gal" __ L, tare __ kg, __ % vol at __ C`, Restated(line, quantity.SI))
	require.Equal(t, line, Restated(line, quantity.US))
}
