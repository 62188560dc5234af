package daily_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/ask/today"
	"newmake/compile/show/daily"
	_ "newmake/lang/testflag"
)

// Casks of one fill that are due for the same stand together: what they share is said once.
func TestCasksTogether(t *testing.T) {
	cask := func(serial, filled, place string) today.Cask {
		return today.Cask{Serial: serial, Batch: "Ferry Landing", Filled: filled, Place: place, Since: "2026-03-14"}
	}
	a := &today.Answer{Date: "2026-03-15", Casks: today.Casks{Units: "us", Sample: []today.Cask{
		cask("A-1", "2023-09-14", "Rack house, row 1, tier 2"),
		cask("A-2", "2024-01-10", "Rack house, row 1, tier 3"),
		cask("A-3", "2023-09-14", "Rack house, row 1, tier 4"),
	}, Over: []today.Cask{cask("B-1", "2020-01-01", "Cellar"), cask("B-2", "2020-01-01", "")}}}
	var out strings.Builder
	require.NoError(t, daily.Text(&out, a, false))
	assert.Contains(t, out.String(), `
CASKS
  sample      2 casks (Ferry Landing, filled 2023-09-14, Rack house): due since
              2026-03-14: A-1 (row 1, tier 2); A-3 (row 1, tier 4)
              A-2 (Ferry Landing, filled 2024-01-10, Rack house, row 1, tier 3):
              due since 2026-03-14
  rest over   2 casks (Ferry Landing, filled 2020-01-01): since 2026-03-14: B-1
              (Cellar); B-2; of each, taste it, and bottle or say how long
`)
}
