package racked

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/book/cellar"
)

// TestNoFormula: a serial that begins like a formula is a text to a spreadsheet.
func TestNoFormula(t *testing.T) {
	var b strings.Builder
	c := &cellar.Cellar{Casks: []cellar.Row{{Serial: "=1+1", Place: "+loft", Verdict: "@bottle"}}}
	require.NoError(t, CSV(&b, c))
	row := strings.Split(b.String(), "\n")[1]
	assert.True(t, strings.HasPrefix(row, "'=1+1,"), row)
	assert.Contains(t, row, "'+loft")
	assert.Contains(t, row, "'@bottle")
}
