package ledger

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/record"
)

// TestExcise is 26 USC 5001(a)(1) and (c)(1): 2.70 on the first 100,000 proof gallons of a
// calendar year, 13.34 on the next 22,130,000, 13.50 on the rest.
func TestExcise(t *testing.T) {
	on := record.Date{Year: 2026, Month: 3, Day: 31}
	for _, c := range []struct {
		law                         string
		on                          record.Date
		before, units, reduced, all float64
		known                       bool
	}{
		{"us", on, 0, 1, 2.70, 13.50, true},
		{"us", on, 99_999, 1, 2.70, 13.50, true},
		{"us", on, 100_000, 1, 13.34, 13.50, true},
		{"us", on, 99_990, 20, 27 + 133.4, 270, true},
		{"us", on, 22_229_999, 1, 13.34, 13.50, true},
		{"us", on, 22_230_000, 1, 13.50, 13.50, true},
		{"us", on, 0, 22_230_001, 270_000 + 22_130_000*13.34 + 13.50, 22_230_001 * 13.50, true},
		{"ireland", on, 0, 2, 85.14, 85.14, true},
		{"ireland", record.Date{Year: 2013, Month: 10, Day: 16}, 0, 1, 42.57, 42.57, true},
		{"ireland", record.Date{Year: 2013, Month: 10, Day: 15}, 0, 1, 0, 0, false},
		{"uk", on, 0, 1, 0, 0, false},
	} {
		reduced, full, known := dueOn(c.law, c.on, c.before, c.units)
		assert.InDelta(t, c.reduced, reduced, 1e-6*(1+c.reduced), "%+v", c)
		assert.InDelta(t, c.all, full, 1e-6*(1+c.all), "%+v", c)
		assert.Equal(t, c.known, known, "%+v", c)
	}
	assert.True(t, taxedIn("us", "USD"))
	assert.False(t, taxedIn("us", "GBP"))
}
