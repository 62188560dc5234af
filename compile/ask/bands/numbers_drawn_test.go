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
	"newmake/lang/testflag"
)

// TestNumbersAsDrawn: of every example, the bands of the summary's numbers and the
// draws say the same. Casks jump, and what is left over with them.
func TestNumbersAsDrawn(t *testing.T) {
	if testflag.Every(2) != 1 {
		t.Skip("the readings are drawn each time, by the same way; the numbers with -all")
	}
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
			at := slices.IndexFunc(drawn, func(o odds.Number) bool { return o.Key == n.Key })
			if at < 0 || n.Key == "casksFilled" || n.Key == "leftoverL" {
				continue
			}
			bands.AsDrawn(t, name+" "+n.Key, n.Low.Value, n.Planned.Value, n.High.Value, drawn[at].Low, drawn[at].Middle, drawn[at].High)
		}
	}
}
