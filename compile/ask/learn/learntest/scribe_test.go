package learntest

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/check"
	"newmake/lang/diag"
)

// invented is the history of the invented house for the tests of `learn`: six runs, the third
// with rakes that stuck for an hour and were not written down, and an alcoholometer
// that reads 1.2 % abv more from the fourth on.
const invented = "../../../../examples/lantern-hollow/runs/2026.batch"

// TestInventedRuns writes the history where there is none, and wants one that can be read. What
// happened in a house does not change when a model does, so it is not written anew.
func TestInventedRuns(t *testing.T) {
	h, err := check.Load(filepath.FromSlash("../../../../examples/lantern-hollow"), check.Options{})
	require.NoError(t, err)
	b, list := h.Batch("Ferry Landing")
	require.NotNil(t, b, list)
	inv := Invent(b, rand.New(rand.NewPCG(26, 3)))
	text := "# The first six runs of 2026. Lantern Hollow is an invented house, and its runs are invented.\n\n"
	for i := range 6 {
		n, err := inv.Run()
		require.NoError(t, err)
		if i == 2 {
			for s := range n.Mashed.Steps {
				if s >= 4 { // from the first heating on
					n.Mashed.Steps[s].EndS += 3600
				}
			}
		}
		if i == 3 {
			inv.Off["alcoholometer"] += .012
		}
		text += inv.Text(fmt.Sprintf("26-%02d", i+1), time.Date(2026, 1, 6+7*i, 7, 0, 0, 0, time.UTC), n) + "\n"
	}
	laid, list := lang.Format(diag.NewSource("runs.batch", []byte(strings.TrimSpace(text)+"\n")))
	require.Empty(t, list)
	if _, err := os.Stat(filepath.FromSlash(invented)); os.IsNotExist(err) {
		require.NoError(t, os.WriteFile(filepath.FromSlash(invented), laid, 0o644))
	}
	dir := filepath.FromSlash("../../../../examples/lantern-hollow")
	h, err = check.Load(dir, check.Options{})
	require.NoError(t, err)
	require.Subset(t, h.RunNumbers(), []string{"26-01", "26-02", "26-03", "26-04", "26-05", "26-06"})
	for _, n := range h.RunNumbers() {
		run, list := h.Run(n)
		require.NotNil(t, run)
		assert.False(t, list.HasErrors(), list.Error())
	}
}
