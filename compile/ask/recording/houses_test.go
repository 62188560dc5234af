package recording

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/blank"
	"newmake/compile/measure"
	"newmake/lang/check"
)

// everyHouse finds the houses of a folder and below.
func everyHouse(t *testing.T, under string) []string {
	var out []string
	require.NoError(t, filepath.WalkDir(filepath.FromSlash(under), func(path string, d os.DirEntry, err error) error {
		if err == nil && d.Name() == "house.batch" {
			out = append(out, filepath.Dir(path))
		}
		return err
	}))
	return out
}

// TestSkeletonChecks: a run that was opened and not yet written in is no reason for a word of
// check, in every house that newmake comes with and makes.
func TestSkeletonChecks(t *testing.T) {
	var houses []string
	for _, under := range []string{"../../../examples", "../../../testdata/houses", "../../../cmd/newmake/internal/newhouse/template"} {
		found := everyHouse(t, under)
		require.NotEmpty(t, found, under)
		houses = append(houses, found...)
	}
	for _, dir := range houses {
		h, err := check.Load(dir, check.Options{})
		require.NoError(t, err)
		for _, name := range h.Batches() {
			b, _ := h.Ready(name)
			if b == nil {
				continue
			}
			t.Run(filepath.Base(dir)+" "+name, func(t *testing.T) { skeletonChecks(t, dir, name) })
		}
	}
}

// TestSkeletonOfAPreheater: a charge that is warmed on its way asks for its temperature.
func TestSkeletonOfAPreheater(t *testing.T) {
	dir := filepath.FromSlash("../../../examples/herring-stair")
	skeleton := skeletonChecks(t, dir, "Grey Creel")
	assert.Regexp(t, `charge +volume, strength, gravity, temperature `, skeleton)
}

// skeletonChecks opens a run of a batch and wants check to say of the house what it said
// before. It gives the run's text.
func skeletonChecks(t *testing.T, dir, name string) string {
	h, err := check.Load(dir, check.Options{})
	require.NoError(t, err)
	b, list := h.Ready(name)
	require.NotNil(t, b, list)
	before := h.Check()
	p, said := compile.Compile(b)
	require.NotNil(t, p, said)
	text, err := Skeleton(Head{"99-01", name, p.Batch.Start[:10], ""}, blank.Of(p), measure.UnitsOf(b.Units))
	require.NoError(t, err)
	with := map[string][]byte{filepath.Join(dir, "runs", "99-01.batch"): text}
	h, err = check.Load(dir, check.Options{Overlay: with})
	require.NoError(t, err)
	_, list = h.Run("99-01")
	assert.Empty(t, list, list.Error())
	assert.Len(t, h.Check(), len(before))
	return string(text)
}
