package check

import (
	"flag"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang/quantity"
)

var _ = flag.Bool("update", false, "these tests have no golden files; for go test ./lang/... -update")

func TestForm(t *testing.T) {
	for _, c := range []struct {
		field *Field
		want  string
	}{
		{mashField.Block.Find("heat"), "heat to TEMP [in DURATION]"},
		{mashField.Block.Find("add"), "add (all | GRAIN (, GRAIN)*)"},
		{billField.Block.Any, "GRAIN (MASS | SHARE | BUSHELS | rest)"},
		{plantField.Block.Find("water"), "water TEMP [, hardness PPM]"},
		{plantField.Block.Find("shift"), "shift CLOCK to CLOCK [, DAY [to DAY] (, DAY [to DAY])*]"},
		{caskField.Block.Find("fill"), "fill VOLUME [new | used] CASK [char NUMBER]"},
		{costsField, "costs"},
	} {
		require.Equal(t, c.want, c.field.Form())
	}
	require.Equal(t, []string{"new", "used", "char"}, caskField.Block.Find("fill").Words())
	require.Equal(t, []FieldSlot{{"temp", "TEMP", quantity.Temperature, false}, {"ppm", "PPM", quantity.PartsPerMillion, false}},
		plantField.Block.Find("water").Slots())
}

func TestSpan(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		kind      quantity.Kind
		want      string
	}{
		{0, 60, quantity.Temperature, "0 C to 60 C (32 F to 140 F)"},
		{1e-4, 1, quantity.Volume, "100 mL to 1,000 L (3.38 fl oz to 264 gal)"},
		{0, 2 * dayS, quantity.Duration, "0 to 2 days"},
		{6 * hourS, dayS, quantity.Duration, "6 h to 1 day"},
		{1e-12, math.Inf(1), quantity.Mass, "more than nothing"},
		{0, math.Inf(1), quantity.Mass, "not less than nothing"},
		{0.2, 1, quantity.Strength, "20 % abv to 100 % abv (40 proof to 200 proof)"},
		{1, 50, quantity.Number, "1 to 50"},
	} {
		require.Equal(t, c.want, span(c.low, c.high, c.kind))
	}
}

// TestLimitsSaid: every limit of the table comes out in words, with its reason.
func TestLimitsSaid(t *testing.T) {
	seen := 0
	var see func(b *Block)
	see = func(b *Block) {
		fields := b.Fields
		if b.Any != nil {
			fields = append(fields[:len(fields):len(fields)], b.Any)
		}
		for _, f := range fields {
			for _, l := range f.Bounds() {
				seen++
				require.NotEmpty(t, l.Text, f.Name)
				require.NotContains(t, l.Text, "Inf", f.Name)
				require.NotEmpty(t, l.Reason, f.Name)
			}
			if f.Block != nil {
				see(f.Block)
			}
		}
	}
	see(Language)
	require.Greater(t, seen, 80)
}
