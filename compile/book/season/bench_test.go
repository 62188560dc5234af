package season_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/compile/book/season"
)

// halfYear is 26 weeks of three recipes.
const halfYear = `season "Half a year" from 2026-01-06 to 2026-07-04 {
  casks   14 of "Ferry Landing" by 2026-07-04
  casks   4 of "Ferry Landing" by 2026-03-28
  casks   8 of "Low Bridge" by 2026-07-04
  make    "Toll Road" every 3 weeks
  closed  2026-04-03 to 2026-04-06 "holiday"
}
`

func BenchmarkHalfYear(b *testing.B) {
	p := problem(b, "Half a year", halfYear)
	p.Quick = true
	for b.Loop() {
		s, err := season.Plan(p)
		require.NoError(b, err)
		b.ReportMetric(float64(s.Gap.Met), "met")
		b.ReportMetric(float64(s.Gap.Most), "most")
		b.ReportMetric(float64(s.Summary.CasksFilled), "casks")
		b.ReportMetric(s.Summary.WashWaitHours, "wait-h")
	}
}
