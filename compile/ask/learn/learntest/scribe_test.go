package learntest

import (
	"bytes"
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
	"newmake/lang/testflag"
)

// invented is the history of the invented house for the tests of `learn`: six runs, the third
// with rakes that stuck for an hour and were not written down, and an alcoholometer
// that reads 1.2 % abv more from the fourth on.
const invented = "../../../../testdata/runs/lantern-hollow.batch"

// TestInventedRuns writes the history, with -update, and wants it as it was.
func TestInventedRuns(t *testing.T) {
	h, err := check.Load(filepath.FromSlash("../../../../examples/lantern-hollow"), check.Options{})
	require.NoError(t, err)
	b, list := h.Batch("Ferry Landing")
	require.NotNil(t, b, list)
	inv := Invent(b, rand.New(rand.NewPCG(26, 3)))
	text := "# Six invented runs of Ferry Landing: go test ./compile/ask/learn/learntest -update\n\n"
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
			inv.Off["alcoholmeter"] += .012
		}
		text += inv.Text(fmt.Sprintf("26-%02d", i+1), time.Date(2026, 1, 6+7*i, 7, 0, 0, 0, time.UTC), n) + "\n"
	}
	laid, list := lang.Format(diag.NewSource("runs.batch", []byte(strings.TrimSpace(text)+"\n")))
	require.Empty(t, list)
	if testflag.Update() {
		require.NoError(t, os.WriteFile(filepath.FromSlash(invented), laid, 0o644))
		return
	}
	was, err := os.ReadFile(filepath.FromSlash(invented))
	require.NoError(t, err)
	assert.True(t, bytes.Equal(was, laid), "the models have moved: go test ./compile/ask/learn/learntest -update writes the runs anew")
}
