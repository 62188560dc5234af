package cask

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/record"
)

func date(y, m, d int) record.Date { return record.Date{Year: y, Month: time.Month(m), Day: d} }

func days(all []Sampling) (out []string) {
	for _, s := range all {
		out = append(out, s.On.String())
	}
	return out
}

// Months are counted on the calendar: a cask of the 31st is sampled on the last of a
// shorter month, and on the 31st again after it.
func TestSamplings(t *testing.T) {
	for _, c := range []struct {
		filled record.Date
		years  float64
		want   []string
	}{
		{date(2026, 3, 10), 2, []string{"2026-09-10", "2027-03-10", "2027-09-10", "2028-03-10"}},
		{date(2026, 3, 31), 2, []string{"2026-09-30", "2027-03-31", "2027-09-30", "2028-03-31"}},
		{date(2025, 8, 31), 1.5, []string{"2026-02-28", "2026-08-31", "2027-02-28"}},
		{date(2027, 8, 31), 1.5, []string{"2028-02-29", "2028-08-31", "2029-02-28"}},
		{date(2028, 2, 29), 4, []string{"2028-08-29", "2029-02-28", "2029-08-29", "2030-02-28", "2030-08-29", "2031-02-28", "2031-08-29", "2032-02-29"}},
		{date(2026, 3, 10), 0.5, []string{"2026-09-10"}},
		{date(2026, 3, 10), 1.0 / 12, []string{"2026-04-10"}},
		{date(2026, 1, 31), 1.0 / 12, []string{"2026-02-28"}},
	} {
		assert.Equal(t, c.want, days(Samplings(c.filled, c.years*YearS)), c.filled)
	}
	// 365 days are a year; 100 days are no whole months, and are counted.
	assert.Equal(t, []string{"2026-09-10", "2027-03-10"}, days(Samplings(date(2026, 3, 10), 365*dayS)))
	assert.Equal(t, []string{"2026-06-18"}, days(Samplings(date(2026, 3, 10), 100*dayS)))
	assert.Equal(t, []string{"2026-09-10", "2026-09-26"}, days(Samplings(date(2026, 3, 10), 200*dayS)))
	assert.Equal(t, 48, Samplings(date(2026, 3, 10), 4*YearS)[7].Months)
}

// In every year and from every day the last sample is on the day that the rest is over,
// each is later than the one before, and no two lie within a month but the last.
func TestSamplingsOfEveryDay(t *testing.T) {
	for d := date(2023, 1, 1); d.Year < 2029; d = d.After(1) {
		all := Samplings(d, 4*YearS)
		require.Len(t, all, 8)
		for i, s := range all {
			require.Equal(t, (i+1)*sampleMonths, s.Months)
			require.LessOrEqual(t, s.On.Day, d.Day)
			require.GreaterOrEqual(t, s.On.Day, min(d.Day, 28))
		}
		require.Equal(t, RestOver(d, 4*YearS), all[7].On)
		require.Equal(t, d.Year+4, all[7].On.Year)
	}
}

// A sample that is drawn some weeks early or late stands for the day that it is nearest
// to.
func TestNextSampling(t *testing.T) {
	filled := date(2025, 8, 31)
	for last, want := range map[record.Date]string{
		filled: "2026-02-28", date(2026, 2, 10): "2026-08-31", date(2026, 3, 20): "2026-08-31", date(2026, 5, 30): "2026-08-31", date(2026, 5, 31): "2027-02-28",
		date(2026, 8, 31): "2027-02-28",
		date(2027, 2, 28): "2027-08-31", // its rest is over, and it is still there
	} {
		assert.Equal(t, want, NextSampling(filled, last, 1.5*YearS).String(), last)
	}
	assert.Equal(t, "2025-12-09", NextSampling(filled, filled, 100*dayS).String())
	assert.Equal(t, "2026-02-28", NextSampling(filled, filled, 0).String(), "of a batch that says no rest")
}

// TestSampledFor: for a day that is due counts what was sampled less than three months
// before it, or after it.
func TestSampledFor(t *testing.T) {
	due := record.Date{Year: 2025, Month: 1, Day: 18}
	for on, want := range map[string]bool{"2024-10-18": false, "2024-10-19": true, "2025-01-18": true, "2025-02-03": true, "": false} {
		assert.Equal(t, want, SampledFor(due, record.ReadDate(on)), on)
	}
}
