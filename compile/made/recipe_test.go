package made_test

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/made"
	"newmake/lang/check"
)

// Water that goes in for want of backset is a line of its own, in what was measured and in the
// cooker; and it goes in once.
func TestWaterForWantOfBackset(t *testing.T) {
	const gal = 0.003785411784
	dir := filepath.FromSlash("../../cmd/newmake/internal/newhouse/template/us")
	for name, c := range map[string]struct {
		run           string
		first, second float64 // gal
	}{
		"nothing said":         {"", 290, 32.22},
		"measured":             {"used {\n water 288 gal\n water 30 gal\n}", 288, 30},
		"one more than waters": {"used {\n water 288 gal\n water 20 gal\n water 10 gal\n}", 288, 30},
		"dipped":               {"mash {\n 08:05 water 288 gal\n 08:06 water 318 gal\n}", 288, 30},
		"as it went in":        {"mash {\n 08:05 water 288 gal\n 08:06 water 30 gal\n}", 288, 30},
		"measured and dipped":  {"used {\n water 288 gal\n water 30 gal\n}\nmash {\n 08:05 water 287 gal\n 08:06 water 319 gal\n}", 288, 30},
		"backset after all":    {"used {\n water 288 gal\n backset 30 gal\n}", 288, 30},
		"a dip over grain":     {"mash {\n 08:05 water 288 gal\n 09:00 add corn 58 F\n}", 288, 32.22},
	} {
		t.Run(name, func(t *testing.T) {
			h, err := check.Load(dir, check.Options{Overlay: map[string][]byte{filepath.Join(dir, "run.batch"): []byte("run \"26-01\" of \"First Bourbon\" on 2026-03-04 {\n" + c.run + "\n}\n")}})
			require.NoError(t, err)
			b, list := h.Batch("First Bourbon")
			require.NotNil(t, b, list)
			r, list := h.Run("26-01")
			require.Empty(t, list)
			m := made.Recipe(b, r).Mash
			assert.InDelta(t, c.first, m.Steps[0].VolumeM3/gal, 0.01)
			assert.InDelta(t, c.second, m.Steps[1].VolumeM3/gal, 0.01)
			verb := "water"
			if name == "backset after all" {
				verb = "backset"
			}
			assert.Equal(t, verb, m.Steps[1].Verb.Word())
		})
	}
}
