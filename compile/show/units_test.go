package show_test

import (
	"bytes"
	"io"
	"newmake/compile/measure"
	"newmake/compile/show/csv"
	"newmake/compile/show/ics"
	"newmake/compile/show/internal/plantest"
	"newmake/compile/show/md"
	"newmake/compile/show/sheet"
	"newmake/compile/show/text"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// No rendering shows the plan's own name of a unit to a reader. JSON is the plan
// itself.
func TestUnitsInWords(t *testing.T) {
	raw := regexp.MustCompile(`delta\\?_`)
	for _, e := range plantest.Examples {
		p := plantest.Plan(t, plantest.Lantern, e.Batch)
		for _, u := range []measure.Units{measure.US, measure.SI} {
			out := map[string]func(io.Writer) error{
				"text": func(w io.Writer) error { return text.Write(w, p, text.Options{Units: u}) },
				"md":   func(w io.Writer) error { return md.Write(w, p, u) },
				"ics":  func(w io.Writer) error { return ics.Write(w, p, u) },
				"html": func(w io.Writer) error { return sheet.HTML(w, p, sheet.Options{Units: u}) },
			}
			for _, table := range csv.Tables {
				out["csv "+table] = func(w io.Writer) error { return csv.Write(w, p, table, u) }
			}
			for name, write := range out {
				var b bytes.Buffer
				require.NoError(t, write(&b), name)
				assert.Empty(t, raw.FindString(b.String()), "%s, %s, units %v", e.Batch, name, u)
			}
		}
	}
}
