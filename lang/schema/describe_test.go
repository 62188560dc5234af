package schema

import (
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang/quantity"
)

func TestForm(t *testing.T) {
	for _, c := range []struct {
		field *Field
		want  string
	}{
		{Mash.Block.Find("heat"), "heat to TEMP [in DURATION]"},
		{Mash.Block.Find("add"), "add (all | GRAIN (, GRAIN)*)"},
		{Bill.Block.Any, "GRAIN (MASS | SHARE | BUSHELS | rest) [lot TEXT]"},
		{Plant.Block.Find("water"), "water TEMP [to TEMP in MONTH] [, hardness PPM]"},
		{Plant.Block.Find("shift"), "shift CLOCK to CLOCK [, DAY [to DAY] (, DAY [to DAY])*]"},
		{Cask.Block.Find("fill"), "fill VOLUME (new | used) WOOD [char NUMBER]"},
		{Costs, "costs"},
	} {
		require.Equal(t, c.want, c.field.Form())
	}
	require.Equal(t, []string{"new", "used", "char"}, Cask.Block.Find("fill").Words())
	require.Equal(t, []FieldSlot{{"temp", "TEMP", quantity.Temperature, false}, {"warm", "TEMP", quantity.Temperature, false}, {"ppm", "PPM", quantity.PartsPerMillion, false}},
		Plant.Block.Find("water").Slots())
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
			for _, l := range f.Bounds(quantity.Both) {
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
