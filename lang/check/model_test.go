package check

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A house writes a constant in whatever unit measures the same, and it is the
// same constant.
func TestModelConstantInAnotherUnit(t *testing.T) {
	built := Builtin().Library.Models["ferment"].Values["maltose-half"]
	for text, want := range map[string]float64{"2 g/L": built, "2000 mg/L": built, "2 kg/m3": built, "4 g/L": 2 * built} {
		h, err := LoadFS(bench(t, map[string]string{"library.batch": "model ferment {\n  maltose-half " + text + "  # ours\n}\n"}), "", Options{})
		require.NoError(t, err)
		require.Empty(t, h.Check(), text)
		assert.InDelta(t, want, h.Library().Models["ferment"].Values["maltose-half"], 1e-12, text)
	}
}
