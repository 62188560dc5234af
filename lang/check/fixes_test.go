package check

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/house"
)

// TestFixesMend puts in each fix that is no guess, alone, in every text of
// mistakes: what it was offered for is gone, and nothing new is said of the text.
// What its batch then does, now that it can be read, is not counted: NM0500 on.
func TestFixesMend(t *testing.T) {
	paths, err := filepath.Glob("testdata/mistakes/*.batch")
	require.NoError(t, err)
	sure, guesses := 0, 0
	for _, path := range paths {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		name := "fixture.batch"
		if filepath.Base(path) == house.FileName {
			name = house.FileName
		}
		said := func(text string) diag.List {
			h, err := LoadFS(bench(t, map[string]string{name: text}), "", Options{})
			require.NoError(t, err)
			return slices.DeleteFunc(h.Check().Cap(), func(d diag.Diagnostic) bool { return d.Fix == nil && d.Code >= "NM0500" })
		}
		text := string(data)
		before := said(text)
		for _, d := range before {
			if d.Fix == nil {
				continue
			}
			var shown strings.Builder
			require.NoError(t, diag.Render(&shown, diag.List{d}, diag.Options{}))
			f := d.Fix
			if f.Guess {
				guesses++
				assert.NotContains(t, shown.String(), "= fix:", "a guess is asked, not offered: %s", d.Header())
				continue
			}
			sure++
			require.Equal(t, name, f.At.Src.Name)
			assert.NotContains(t, d.Help, "did you mean", d.Header())
			after := said(text[:f.At.Start] + f.Text + text[f.At.End:])
			if !assert.Equal(t, len(before)-1, len(after), "%s\n%s", d.Header(), f.Label) {
				was := map[string]int{}
				for _, a := range before {
					was[a.Summary]++
				}
				for _, a := range after {
					if was[a.Summary]--; was[a.Summary] < 0 {
						t.Log(a.Header())
					}
				}
			}
		}
	}
	assert.GreaterOrEqual(t, sure, 30, "fixes that were put in")
	assert.GreaterOrEqual(t, guesses, 10, "guesses that were left")
}
