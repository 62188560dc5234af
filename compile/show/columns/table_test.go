package columns

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestTable(t *testing.T) {
	var w Writer
	tab := Table{Left: map[int]bool{2: true}}
	tab.Row("grain", "weigh out", "from")
	tab.Row("corn", "1,000 lb", "house")
	tab.Row("rye")
	tab.Write(&w)
	assert.Equal(t, "  grain  weigh out  from\n  corn    1,000 lb  house\n  rye\n", w.String())
}

// A first column that is too wide goes over several lines; none is lost, and the
// page is kept. At one column less it still stands on one line.
func TestTableGivesWay(t *testing.T) {
	lines := func(first int) []string {
		var w Writer
		tab := Table{}
		tab.Row(strings.Repeat("word ", first/5)+strings.Repeat("x", first%5), strings.Repeat("9", 30))
		tab.Write(&w)
		return strings.Split(strings.TrimSuffix(w.String(), "\n"), "\n")
	}
	fits := Page - tableIndent - tableGap - 30
	assert.Len(t, lines(fits), 1)
	broken := lines(fits + 1)
	assert.Len(t, broken, 2)
	for _, l := range broken {
		assert.LessOrEqual(t, Width(l), Page)
	}
	assert.Equal(t, fits/5, strings.Count(strings.Join(broken, " "), "word"))
}
