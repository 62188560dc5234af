package ledger

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/check"
	"newmake/lang/record"
)

// TestExcise is 26 USC 5001(a)(1) and (c)(1): 2.70 on the first 100,000 proof gallons of a
// calendar year, 13.34 on the next 22,130,000, 13.50 on the rest. Elsewhere the rates stand with
// the day from which they hold, and the day before has the one before, or none.
func TestExcise(t *testing.T) {
	day := func(s string) record.Date { return record.ReadDate(s) }
	on := day("2026-03-31")
	countries := check.Builtin().Library.Countries
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
		{"us", day("2018-01-01"), 0, 1, 2.70, 13.50, true},
		{"us", day("2017-12-31"), 0, 1, 13.50, 13.50, true},
		{"ireland", on, 0, 2, 85.14, 85.14, true},
		{"ireland", day("2013-10-16"), 0, 1, 42.57, 42.57, true},
		{"ireland", day("2013-10-15"), 0, 1, 0, 0, false},
		{"uk", day("2023-07-31"), 0, 1, 0, 0, false},
		{"uk", day("2025-01-31"), 0, 1, 31.64, 31.64, true},
		{"uk", day("2025-02-01"), 0, 1, 32.79, 32.79, true},
		{"uk", day("2026-01-31"), 0, 1, 32.79, 32.79, true},
		{"uk", day("2026-02-01"), 0, 1, 33.99, 33.99, true},
		{"canada", day("2024-03-31"), 0, 1, 13.303, 13.303, true},
		{"canada", day("2024-04-01"), 0, 1, 13.569, 13.569, true},
		{"canada", on, 0, 1, 13.840, 13.840, true},
		{"australia", on, 0, 1, 0, 0, false},
		{"eu", on, 0, 1, 0, 0, false},
	} {
		require.Contains(t, countries, c.law)
		reduced, full, known := dueOn(countries[c.law], c.on, c.before, c.units)
		assert.InDelta(t, c.reduced, reduced, 1e-6*(1+c.reduced), "%+v", c)
		assert.InDelta(t, c.all, full, 1e-6*(1+c.all), "%+v", c)
		assert.Equal(t, c.known, known, "%+v", c)
	}
	assert.True(t, taxedIn(countries["us"], "USD"))
	assert.False(t, taxedIn(countries["us"], "GBP"))
	assert.Equal(t, []string{"2.70 USD up to 100000 from 2018-01-01: 26 USC 5001(c)(1)(A); the day from memory",
		"13.34 USD up to 22230000 from 2018-01-01: 26 USC 5001(c)(1)(B): the next 22,130,000; the day from memory", "13.50 USD: 26 USC 5001(a)(1)"}, sources(countries["us"], on))
}

// TestEveryRateHasItsSource: a rate of the library says where it stands, and whether it was read
// there.
func TestEveryRateHasItsSource(t *testing.T) {
	for name, c := range check.Builtin().Library.Countries {
		assert.NotEmpty(t, c.Source["records"], "%s: how far its law was read", name)
		for _, r := range c.Excise {
			assert.NotEmpty(t, r.Source, "%s: %v", name, r)
		}
	}
}
