package reviewed_test

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/ask/review"
	"newmake/compile/measure"
	"newmake/compile/show/reviewed"
	"newmake/lang/check"
)

// reviewOf reviews a run of the invented house.
func reviewOf(t *testing.T, number string, u measure.Units) (*review.Answer, string) {
	t.Helper()
	h, err := check.Load("../../../examples/lantern-hollow", check.Options{})
	require.NoError(t, err)
	run, list := h.Run(number)
	require.NotNil(t, run, list)
	b, list := h.Batch(run.Batch)
	require.NotNil(t, b, list)
	a, err := review.Of(review.Question{Batch: b, Run: run, Instrument: h.Instrument, Units: u})
	require.NoError(t, err)
	b.Start.Year, b.Start.Month, b.Start.Day = run.Date.Year, int(run.Date.Month), run.Date.Day
	p, list := compile.Compile(b)
	require.NotNil(t, p, list)
	var out bytes.Buffer
	require.NoError(t, reviewed.HTML(&out, a, p))
	return a, out.String()
}

// The page needs nothing else, and has a cross for each reading that has a place, a box round
// each that is not what it should be.
func TestPage(t *testing.T) {
	for _, u := range []measure.Units{measure.US, measure.SI} {
		a, page := reviewOf(t, "26-03", u)
		off := 0
		for _, m := range a.Marks {
			if m.Off {
				off++
			}
		}
		require.Greater(t, len(a.Marks), 15)
		require.Positive(t, off)
		assert.Equal(t, 2*(len(a.Marks)+off), strings.Count(page, `class="taken"`), "on paper and on a narrow screen")
		assert.Empty(t, regexp.MustCompile(`(src|href)=|https?:|<script|style="|@import|url\((?:[^#])`).FindAllString(page, -1))
		for _, words := range []string{"Run 26-03 of Ferry Landing", "The alcohol balances.", "minutes of the heat", "not what it should be."} {
			assert.Contains(t, page, words)
		}
	}
}

// Nothing that was written in a record is more than text on the page.
func TestPageIsText(t *testing.T) {
	a, _ := reviewOf(t, "26-03", measure.US)
	a.Run, a.Lines[0].Words = "<b>x</b>\x1b[31m", "</td><script>1</script>"
	h, err := check.Load("../../../examples/lantern-hollow", check.Options{})
	require.NoError(t, err)
	b, _ := h.Batch("Ferry Landing")
	p, _ := compile.Compile(b)
	var out bytes.Buffer
	require.NoError(t, reviewed.HTML(&out, a, p))
	assert.NotContains(t, out.String(), "<script")
	assert.NotContains(t, out.String(), "<b>x")
	assert.NotContains(t, out.String(), "\x1b")
}
