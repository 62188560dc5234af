package revision

import (
	"fmt"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/front"
)

// TestLearnedBefore: a run is set against what the house knew when it was made. What was
// learned on a later day, or of the run itself, does not move its plan.
func TestLearnedBefore(t *testing.T) {
	const text = "learned \"Lantern Hollow\" on %s {\n  model 1\n  from %q\n  cooker-heat of \"Copper kettle\" 80 %%, 76..84 %%, from 100 %%\n}\n"
	for _, c := range []struct {
		on, from string
		taught   bool
		note     string
	}{
		{"2026-02-09", "26-05", true, ""},
		{"2026-02-10", "26-05", true, ""},
		{"2026-02-11", "26-05", false, `what was learned on 2026-02-11 is left out, as run "26-06" was made without it`},
		{"2026-02-09", "26-06", false, `what was learned on 2026-02-09 is left out, as run "26-06" was made without it`},
	} {
		t.Run(c.on+" from "+c.from, func(t *testing.T) {
			house := filepath.FromSlash("../../../examples/lantern-hollow")
			src, err := front.Load(front.Place{Path: house, Overlay: map[string][]byte{filepath.Join(house, "learned.batch"): fmt.Appendf(nil, text, c.on, c.from)}})
			require.NoError(t, err)
			run, said := src.House.Run("26-06") // of 2026-02-10, without a sheet
			require.False(t, said.HasErrors())
			b, _, note := NewWorked(src, false).Of(run)
			require.NotNil(t, b)
			assert.Equal(t, c.taught, b.Learned != nil)
			assert.Equal(t, c.note, note)

			run.Sheet = "0123456789ab" // that nobody has
			_, _, note = NewWorked(src, false).Of(run)
			assert.Contains(t, note, "is not in the history")
			if c.note != "" {
				assert.Contains(t, note, ", and "+c.note)
			}
		})
	}
}
