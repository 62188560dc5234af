package check

import (
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
)

// TestFixesOfAnswers puts in every fix that is offered for what people write
// first: nothing is left of those, and nothing new is wrong in their lines.
func TestFixesOfAnswers(t *testing.T) {
	data, err := os.ReadFile("testdata/mistakes/answers.batch")
	require.NoError(t, err)
	said := func(text string) diag.List {
		h, err := LoadFS(bench(t, map[string]string{"answers.batch": text}), "", Options{})
		require.NoError(t, err)
		return h.Check()
	}
	var fixes []diag.Fix
	unfixed := map[string]int{} // what is said without a fix, and stays
	for _, d := range said(string(data)).Cap() {
		if d.Fix != nil {
			fixes = append(fixes, *d.Fix)
		} else {
			unfixed[d.Summary]++
		}
	}
	require.GreaterOrEqual(t, len(fixes), 18)
	slices.SortFunc(fixes, func(a, b diag.Fix) int { return b.At.Start - a.At.Start })
	text := string(data)
	for _, f := range fixes {
		text = text[:f.At.Start] + f.Text + text[f.At.End:]
	}
	for _, d := range said(text).Cap() {
		if d.Code >= "NM0500" { // of the batch that the fixture makes, not of its lines
			continue
		}
		if unfixed[d.Summary]--; unfixed[d.Summary] < 0 {
			assert.Fail(t, "a fix leaves something to say", "%s:%s\n%s", d.Code, d.Summary, d.At.Text())
		}
	}
}
