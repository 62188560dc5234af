package made_test

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/made"
	"newmake/compile/matter/fluid"
	"newmake/lang/check"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// Grain is as the certificate of its lot has it: of two lots, by their weight; of a lot
// without one, as the library has it. What is measured by the bushel is weighed by it.
func TestCertificates(t *testing.T) {
	dir := filepath.FromSlash("../../cmd/newmake/internal/newhouse/template/us")
	const store = "store \"Loft\" {\n 2026-02-01 corn 4,000 lb lot \"C-1\", moisture 16 %, starch 70 %\n 2026-02-02 corn 4,000 lb lot \"C-2\", moisture 12 %\n 2026-02-03 corn 4,000 lb lot \"C-3\"\n}\n"
	library := check.Builtin().Library.Grains["corn"]
	for used, want := range map[string]struct{ lb, moisture, starch float64 }{
		"corn 500 lb":                                       {500, library.Moisture, library.Starch},
		`corn 500 lb lot "C-3"`:                             {500, library.Moisture, library.Starch},
		`corn 500 lb lot "C-1"`:                             {500, 0.16, 0.70},
		`corn 500 lb lot "C-2"`:                             {500, 0.12, library.Starch},
		"corn 10 bushels":                                   {560, library.Moisture, library.Starch},
		`corn 10 bushels lot "C-1"`:                         {560, 0.16, 0.70},
		"corn 100 lb lot \"C-1\"\n corn 300 lb lot \"C-2\"": {400, 0.13, (100*0.84*0.70 + 300*0.88*library.Starch) / (100*0.84 + 300*0.88)},
	} {
		t.Run(used, func(t *testing.T) {
			h, err := check.Load(dir, check.Options{Overlay: map[string][]byte{filepath.Join(dir, "run.batch"): []byte(store + "run \"26-01\" of \"First Bourbon\" on 2026-03-04 {\nused {\n" + used + "\n}\n}\n")}})
			require.NoError(t, err)
			b, list := h.Batch("First Bourbon")
			require.NotNil(t, b, list)
			r, _ := h.Run("26-01")
			corn := made.Recipe(b, r).Bill.Lines[0]
			require.Equal(t, "corn", corn.Grain.Name)
			assert.InDelta(t, want.lb*0.45359237, corn.MassKg, 1e-6)
			assert.InDelta(t, want.moisture, corn.Grain.Moisture, 1e-9)
			assert.InDelta(t, want.starch, corn.Grain.Starch, 1e-9)
			assert.Equal(t, library.Moisture, b.Bill.Lines[0].Grain.Moisture, "the batch stays as it is")
		})
	}
}

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

// Backset of which somebody wrote `none` did not go in. Water that was measured is what went in;
// where none was, it went in the place of the backset.
func TestWaterInPlaceOfBackset(t *testing.T) {
	for name, c := range map[string]struct {
		lines          string
		backset, water float64 // gal
	}{
		"nothing said":           {"used { corn 537 lb }", 47.6, 270},
		"none weighed out":       {"used { backset none }", 0, 270 + 47.6},
		"none at the cooker":     {"mash { 07:19 backset none }", 0, 270 + 47.6},
		"water measured":         {"used {\n backset none\n water 265 gal\n water 47 gal\n}", 0, 265 + 47},
		"some after all":         {"used {\n backset none\n backset 40 gal\n}", 40, 270},
		"none read, but some in": {"mash { 07:19 backset volume none }", 47.6, 270},
	} {
		h := house(t, "run \"99-01\" of \"Ferry Landing\" on 2026-03-03 {\n"+strings.NewReplacer("{ ", "{\n", " }", "\n}").Replace(c.lines)+"\n}\n")
		r, list := h.Run("99-01")
		require.False(t, list.HasErrors(), "%s: %s", name, list.Error())
		b, _ := h.Batch(r.Batch)
		var backset, water float64
		for _, s := range made.Recipe(b, r).Mash.Steps {
			switch s.Verb {
			case recipe.MashBackset:
				backset += s.VolumeM3 / quantity.USGallonM3
			case recipe.MashWater:
				water += s.VolumeM3 / quantity.USGallonM3
			}
		}
		assert.InDelta(t, c.backset, backset, 0.06, name)
		assert.InDelta(t, c.water, water, 0.06, name)
	}
}

// What was weighed to the figures of the sheet is what the recipe says; a digit more is not.
func TestToTheFiguresOfTheSheet(t *testing.T) {
	b, list := house(t, "").Batch("Ferry Landing")
	require.NotNil(t, b, list)
	water := func(text string) float64 {
		h := house(t, "run \"26-90\" of \"Ferry Landing\" on 2026-03-10 {\n  used {\n    water "+text+"\n  }\n}\n")
		r, list := h.Run("26-90")
		require.NotNil(t, r, list)
		for _, s := range made.Recipe(b, r).Mash.Steps {
			if s.Verb == recipe.MashWater {
				return s.VolumeM3 / fluid.USGallonM3
			}
		}
		return 0
	}
	should := water("none")
	require.InDelta(t, 270, should, 0.3)
	whole := math.Round(should)
	assert.Equal(t, should, water(fmt.Sprintf("%.0f gal", whole)))
	assert.Equal(t, should, water(fmt.Sprintf("%.2f gal", should)))
	assert.InDelta(t, whole+1, water(fmt.Sprintf("%.0f gal", whole+1)), 1e-9)
	assert.InDelta(t, whole-1, water(fmt.Sprintf("%.0f gal", whole-1)), 1e-9)
	assert.InDelta(t, whole+.7, water(fmt.Sprintf("%.1f gal", whole+.7)), 1e-9)
}
