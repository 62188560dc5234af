package made_test

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/ask/learn/learntest"
	"newmake/compile/made"
	"newmake/compile/numbers"
	"newmake/lang/check"
)

// house is the invented house with a text more.
func house(t *testing.T, text string) *check.House {
	dir := "../../examples/lantern-hollow"
	h, err := check.Load(filepath.FromSlash(dir), check.Options{Overlay: map[string][]byte{filepath.Join(dir, "runs.batch"): []byte(text)}})
	require.NoError(t, err)
	return h
}

// What is written down of a run comes back as what the stages said of it, to what is lost in
// reading and writing it.
func TestWrittenRunReadsBack(t *testing.T) {
	b, list := house(t, "").Batch("Ferry Landing")
	require.NotNil(t, b, list)
	inv := learntest.Invent(b, rand.New(rand.NewPCG(3, 4)))
	for id := range inv.Off {
		inv.Off[id] = 0
	}
	inv.Off["dip"] = 1
	n, err := compile.Numbers(inv.Recipe, &numbers.Memo{}, compile.Calculated)
	require.NoError(t, err)
	text := inv.Text("26-01", time.Date(2026, 3, 3, 7, 0, 0, 0, time.UTC), n)
	if os.Getenv("SHOW") != "" {
		t.Log(text)
	}
	h := house(t, text)
	r, list := h.Run("26-01")
	require.NotNil(t, r, list)
	require.False(t, list.HasErrors(), list.Error())

	as := made.Recipe(b, r)
	again, err := compile.Numbers(as, &numbers.Memo{}, compile.Calculated)
	require.NoError(t, err)
	readings := made.Readings(as, r, h.Instrument)
	assert.Greater(t, len(readings), 30)
	var far int
	for i := range readings {
		rd := &readings[i]
		says, ok := rd.Of(again)
		require.True(t, ok, rd.Words)
		z := (rd.Said - says) / rd.SD
		t.Logf("%-50s said %10.5g model %10.5g sd %8.3g z %.1f", rd.Words, rd.Said, says, rd.SD, z)
		if z > 2.5 || z < -2.5 {
			far++
		}
	}
	assert.LessOrEqual(t, far, 2)
}
