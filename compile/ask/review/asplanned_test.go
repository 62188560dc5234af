package review_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/ask/recording/recordingtest"
	"newmake/compile/ask/review"
	"newmake/compile/measure"
	"newmake/lang/check"
	"newmake/lang/recipe"
	"newmake/lang/testflag"
)

// A run that went as its plan says has nothing to be told: no reading is out of place, the
// alcohol balances, and nothing was done otherwise. So it is in every house that newmake comes
// with and makes, and in however many charges the stills are run.
func TestAsPlanned(t *testing.T) {
	for _, dir := range houses(t) {
		h, err := check.Load(dir, check.Options{})
		require.NoError(t, err)
		ready := 0
		for _, name := range h.Batches() {
			b, _ := h.Ready(name)
			if b == nil {
				continue
			}
			if ready++; (ready-1)%testflag.Every(3) != 0 { // of each house the first at least
				continue
			}
			t.Run(filepath.Base(dir)+" "+name, func(t *testing.T) {
				t.Parallel()
				asPlanned(t, dir, b)
			})
		}
	}
}

func TestAsPlannedInCharges(t *testing.T) {
	for i, of := range []struct{ dir, name string }{{lantern, "Ferry Landing"}, {"../../../examples/herring-stair", "Grey Creel"}} {
		h, err := check.Load(filepath.FromSlash(of.dir), check.Options{})
		require.NoError(t, err)
		for charges := 1 + i%testflag.Every(2); charges <= 4; charges += testflag.Every(2) { // else 1 and 3, or 2 and 4
			b, list := h.Ready(of.name)
			require.NotNil(t, b, list)
			b = b.Clone()
			b.Strip.Charges, b.Spirit.Charges = charges, 1+charges%4
			t.Run(fmt.Sprintf("%s %d", of.name, charges), func(t *testing.T) {
				t.Parallel()
				asPlanned(t, filepath.FromSlash(of.dir), b)
			})
		}
	}
}

func asPlanned(t *testing.T, dir string, b *recipe.Batch) {
	p, said := compile.Compile(b)
	require.NotNil(t, p, said)
	u := measure.UnitsOf(b.Units)
	text := recordingtest.AsPlanned(t, "99-01", p, u)
	h, err := check.Load(dir, check.Options{Overlay: map[string][]byte{filepath.Join(dir, "runs", "99-01.batch"): []byte(text)}})
	require.NoError(t, err)
	run, list := h.Run("99-01")
	require.NotNil(t, run, list)
	require.False(t, list.HasErrors(), "%s\n%s", list.Error(), text)
	a, err := review.Of(review.Question{Batch: b, Run: run, Instrument: h.Instrument, Units: u})
	require.NoError(t, err)
	for _, l := range a.Lines {
		assert.True(t, l.Within(), "%s: %g, planned %g, as done %g", l.Words, l.Said, l.Plan, l.Made)
	}
	require.NotNil(t, a.Balance)
	assert.True(t, a.Balance.Balanced(), "chi-square %.1f of %.1f: %+v", a.Balance.Scatter, a.Balance.Limit, a.Balance.Gross)
	assert.Empty(t, a.Small)
	if a.Done != nil {
		assert.Empty(t, a.Done.Edits)
	}
	if t.Failed() {
		t.Log(text)
	}
}

// houses are those that newmake comes with and makes.
func houses(t *testing.T) []string {
	var out []string
	for _, under := range []string{"../../../examples", "../../../testdata/houses", "../../../cmd/newmake/internal/newhouse/template"} {
		require.NoError(t, filepath.WalkDir(filepath.FromSlash(under), func(path string, d os.DirEntry, err error) error {
			if err == nil && d.Name() == "house.batch" {
				out = append(out, filepath.Dir(path))
			}
			return err
		}))
	}
	require.Greater(t, len(out), 5)
	return out
}
