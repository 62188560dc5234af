package bands_test

import (
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/ask/bands"
	"newmake/compile/ask/odds"
	"newmake/compile/measure"
	"newmake/lang/check"
)

// TestNumbersAsDrawn: of every example, the bands of the summary's numbers and the
// draws say the same. Casks jump, and what is left over with them.
func TestNumbersAsDrawn(t *testing.T) {
	h, err := check.Load(filepath.FromSlash("../../../examples/lantern-hollow"), check.Options{})
	require.NoError(t, err)
	for _, name := range h.Batches() {
		b, list := h.Batch(name)
		require.NotNil(t, b, list)
		p, said := compile.Compile(b)
		require.NotNil(t, p, said)
		bands.Put(p, b)
		trial, err := odds.Try(b, odds.UsualDraws, measure.SI)
		require.NoError(t, err)
		drawn := trial.Answer(measure.SI).Numbers
		for _, n := range p.Bands.Numbers {
			i := slices.IndexFunc(drawn, func(o odds.Number) bool { return o.Key == n.Key })
			if i < 0 || n.Key == "casksFilled" || n.Key == "leftoverL" {
				continue
			}
			bands.AsDrawn(t, name+" "+n.Key, n.Low.Value, n.Planned.Value, n.High.Value, drawn[i].Low, drawn[i].Middle, drawn[i].High)
		}
	}
}
