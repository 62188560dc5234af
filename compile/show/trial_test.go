package show_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show"
	"newmake/lang/diag"
)

func ferryTrial(t testing.TB) show.Trial {
	return show.Trial{
		planOf(t, "examples/lantern-hollow", "Ferry Landing"), planOf(t, "examples/lantern-hollow", "Ferry Landing, more rye"),
	}
}

func TestTrialGolden(t *testing.T) {
	trial := ferryTrial(t)
	var b bytes.Buffer
	require.NoError(t, trial.Text(&b, show.Options{}))
	golden(t, "ferry-landing-variants.txt", b.String())
	b.Reset()
	require.NoError(t, trial.Markdown(&b, show.Options{Units: measure.SI}))
	golden(t, "ferry-landing-variants.md", b.String())
	b.Reset()
	require.NoError(t, trial.JSON(&b))
	golden(t, "ferry-landing-variants.json", b.String())
}

// TestTrialMarks: a number is marked exactly where it is said otherwise than of
// the first plan, however many plans there are.
func TestTrialMarks(t *testing.T) {
	trial := ferryTrial(t)
	for range 60 {
		trial = append(trial, trial[0])
	}
	var b bytes.Buffer
	require.NoError(t, trial.Text(&b, show.Options{}))
	marks := 0
	for _, line := range strings.Split(b.String(), "\n") {
		assert.LessOrEqual(t, diag.Width(line), 80)
		if strings.HasPrefix(line, "  oats") {
			marks += strings.Count(line, "*")
		}
	}
	assert.Equal(t, 1, marks)
	assert.Contains(t, b.String(), "\n  BJ ")

	var d struct {
		Batches []struct{ Differs []string }
	}
	b.Reset()
	require.NoError(t, trial.JSON(&b))
	require.NoError(t, json.Unmarshal(b.Bytes(), &d))
	require.Len(t, d.Batches, 62)
	assert.Empty(t, d.Batches[0].Differs)
	assert.Contains(t, d.Batches[1].Differs, "heartsVolumeL")
	assert.NotContains(t, d.Batches[1].Differs, "casksFilled")
	assert.Empty(t, d.Batches[61].Differs)
}

// TestTrialHarmless: names and changes are shown, not obeyed.
func TestTrialHarmless(t *testing.T) {
	trial := ferryTrial(t)
	odd := *trial[1]
	odd.Batch.Name, odd.Batch.Changes = "\x1b]8;;x\a<b>", []string{"style \u202e| x"}
	odd.Bill.Lines = append([]plan.Grain{}, odd.Bill.Lines...)
	odd.Bill.Lines[0].Name = "\x1b[2J"
	trial[1] = &odd
	for _, write := range []func(*bytes.Buffer) error{
		func(b *bytes.Buffer) error { return trial.Text(b, show.Options{}) },
		func(b *bytes.Buffer) error { return trial.Markdown(b, show.Options{}) },
		func(b *bytes.Buffer) error { return trial.JSON(b) },
	} {
		var b bytes.Buffer
		require.NoError(t, write(&b))
		assert.NotContains(t, b.String(), "\x1b")
		assert.NotContains(t, b.String(), "\u202e")
	}
}
