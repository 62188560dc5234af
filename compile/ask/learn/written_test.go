package learn

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/ask/learn/learntest"
	"newmake/lang/check"
)

const lanternHollow = "../../../examples/lantern-hollow"

// written is an invented house whose runs were written down as people would, and read again.
func written(t *testing.T, seed uint64, n int) (*learntest.House, *Gathered) {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, os.DirFS(filepath.FromSlash(lanternHollow))))
	runs := filepath.Join(dir, "runs", "2026.batch")
	require.NoError(t, os.Remove(runs))
	h, err := check.Load(dir, check.Options{})
	require.NoError(t, err)
	b, list := h.Batch("Ferry Landing")
	require.NotNil(t, b, list)
	house := learntest.Invent(b, rand.New(rand.NewPCG(26, seed)))
	text := ""
	for i := range n {
		made, err := house.Run()
		require.NoError(t, err)
		text += house.Text(fmt.Sprintf("26-%02d", i+1), time.Date(2026, 1, 6+7*i, 7, 0, 0, 0, time.UTC), made) + "\n"
	}
	require.NoError(t, os.WriteFile(runs, []byte(text), 0o600))
	h, err = check.Load(dir, check.Options{})
	require.NoError(t, err)
	g, err := Gather(h, nil, nil, nil)
	require.NoError(t, err)
	return house, g
}

// truth is what a constant that was found really is.
func truth(house *learntest.House, f Found) (float64, bool) {
	for i, c := range house.Of {
		if c.Key() == f.Key {
			return house.Is[i], true
		}
	}
	x, ok := house.Off[f.ID]
	return x, ok
}

// calibrateWritten learns from houses by the full model, from the text of their runs.
func calibrateWritten(t *testing.T, houses, n int) (c calibrated, readings, gross int) {
	c = calibrated{runs: n, houses: houses}
	all := held{name: "all constants"}
	for seed := range houses {
		house, g := written(t, uint64(seed+1), n)
		l, err := From(g.Runs, g.Instruments)
		require.NoError(t, err)
		if !l.Converged {
			c.failed++
			continue
		}
		for _, f := range l.Found {
			x, ok := truth(house, f)
			require.True(t, ok, f.Key)
			all.add((f.Prior.Z(x) - f.Z) / f.SD)
		}
		readings, gross = readings+l.Readings+len(l.Gross), gross+len(l.Gross)
		if len(l.Gross) > 0 {
			c.gross++
		}
		if len(l.Drifts) > 0 {
			c.drifts++
		}
	}
	c.constants = []held{all}
	return c, readings, gross
}

// What is learned from the text of runs in which nothing went wrong calls no reading wrong.
func TestWrittenRuns(t *testing.T) {
	c, readings, gross := calibrateWritten(t, 2, 2)
	assert.Zero(t, c.failed)
	assert.Zero(t, gross, "of %d readings", readings)
}
