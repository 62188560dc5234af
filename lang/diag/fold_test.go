package diag

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// On a terminal the first line breaks at words, whatever its place takes; elsewhere it is one.
func TestFold(t *testing.T) {
	const code = Code("NM0201")
	d := Diagnostic{Code: code, Summary: "there is no grain that is called by such a name"}
	render := func(o Options) []string {
		var out strings.Builder
		require.NoError(t, Render(&out, List{d}, o))
		return strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
	}
	whole := render(Options{})
	require.Len(t, whole, 1)
	n := len(whole[0])
	assert.Equal(t, whole, render(Options{Width: n - 1}))
	assert.Equal(t, whole, render(Options{Width: n, Fold: true}))
	for width := n - 1; width >= 24; width-- {
		lines := render(Options{Width: width, Fold: true})
		assert.Greater(t, len(lines), 1)
		for _, line := range lines {
			assert.LessOrEqual(t, len(line), width)
		}
		assert.Equal(t, strings.Fields(whole[0]), strings.Fields(strings.Join(lines, " ")), "no word is lost")
	}
	lines := render(Options{Width: 24, Fold: true})
	assert.Equal(t, "error NM0201: there is", lines[0])
	assert.Equal(t, "  no grain that is", lines[1])
	narrow := render(Options{Width: 14, Fold: true})
	assert.Equal(t, "error NM0201:", narrow[0], "the lead takes the line")
}
