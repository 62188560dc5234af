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
	"newmake/compile/show/internal/plantest"
	"newmake/compile/show/trial"
	"newmake/lang/diag"
)

func ferryTrial(t testing.TB) trial.Trial {
	return trial.Trial{
		plantest.Plan(t, plantest.Lantern, "Ferry Landing"), plantest.Plan(t, plantest.Lantern, "Ferry Landing, more rye"),
	}
}

func TestTrialGolden(t *testing.T) {
	plans := ferryTrial(t)
	var b bytes.Buffer
	require.NoError(t, plans.Text(&b, measure.US, false))
	plantest.Golden(t, "ferry-landing-variants.txt", b.String())
	b.Reset()
	require.NoError(t, plans.Markdown(&b, measure.SI))
	plantest.Golden(t, "ferry-landing-variants.md", b.String())
	b.Reset()
	require.NoError(t, plans.JSON(&b))
	plantest.Golden(t, "ferry-landing-variants.json", b.String())
}

// TestTrialMarks: a number is marked exactly where it is said otherwise than of
// the first plan, however many plans there are.
func TestTrialMarks(t *testing.T) {
	plans := ferryTrial(t)
	for range 60 {
		plans = append(plans, plans[0])
	}
	var b bytes.Buffer
	require.NoError(t, plans.Text(&b, measure.US, false))
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
	require.NoError(t, plans.JSON(&b))
	require.NoError(t, json.Unmarshal(b.Bytes(), &d))
	require.Len(t, d.Batches, 62)
	assert.Empty(t, d.Batches[0].Differs)
	assert.Contains(t, d.Batches[1].Differs, "heartsVolumeL")
	assert.NotContains(t, d.Batches[1].Differs, "casksFilled")
	assert.Empty(t, d.Batches[61].Differs)
}

// TestTrialHarmless: names and changes are shown, not obeyed.
func TestTrialHarmless(t *testing.T) {
	plans := ferryTrial(t)
	odd := *plans[1]
	odd.Batch.Name, odd.Batch.Changes = "\x1b]8;;x\a<b>", []string{"standard \u202e| x"}
	odd.Bill.Lines = append([]plan.Grain{}, odd.Bill.Lines...)
	odd.Bill.Lines[0].Name = "\x1b[2J"
	plans[1] = &odd
	for _, write := range []func(*bytes.Buffer) error{
		func(b *bytes.Buffer) error { return plans.Text(b, measure.US, false) },
		func(b *bytes.Buffer) error { return plans.Markdown(b, measure.US) },
		func(b *bytes.Buffer) error { return plans.JSON(b) },
	} {
		var b bytes.Buffer
		require.NoError(t, write(&b))
		assert.NotContains(t, b.String(), "\x1b")
		assert.NotContains(t, b.String(), "\u202e")
	}
}
