package logbook

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/record"
	_ "newmake/lang/testflag"
)

// TestMoments: the clocks of New York in 2026 were put forward on 8 March over
// 02:00..03:00 and back on 1 November over 01:00..02:00 (15 USC 260a: the second
// Sunday of March, the first of November, at 2 in the morning).
func TestMoments(t *testing.T) {
	zone, err := time.LoadLocation("America/New_York")
	require.NoError(t, err)
	march, november := record.Date{Year: 2026, Month: 3, Day: 8}, record.Date{Year: 2026, Month: 11, Day: 1}
	for _, c := range []struct {
		day          record.Date
		hour, minute int
		want         []string
	}{
		{march, 1, 59, []string{"01:59 -0500"}}, {march, 2, 0, nil}, {march, 2, 59, nil}, {march, 3, 0, []string{"03:00 -0400"}},
		{november, 0, 59, []string{"00:59 -0400"}}, {november, 1, 0, []string{"01:00 -0400", "01:00 -0500"}},
		{november, 1, 59, []string{"01:59 -0400", "01:59 -0500"}}, {november, 2, 0, []string{"02:00 -0500"}},
		{march, 24, 0, []string{"00:00 -0400"}},
	} {
		var got []string
		for _, m := range moments(c.day, c.hour, c.minute, 0, zone) {
			got = append(got, m.Format("15:04 -0700"))
		}
		assert.Equal(t, c.want, got, "%s %02d:%02d", c.day, c.hour, c.minute)
	}
	// Lord Howe moves by half an hour: 2:00..2:30 is left out on 4 October 2026.
	howe, err := time.LoadLocation("Australia/Lord_Howe")
	require.NoError(t, err)
	october := record.Date{Year: 2026, Month: 10, Day: 4}
	assert.Empty(t, moments(october, 2, 15, 0, howe))
	assert.Len(t, moments(october, 2, 30, 0, howe), 1)
}

func TestNextDay(t *testing.T) {
	tuesday := record.Date{Year: 2026, Month: 3, Day: 3}
	assert.Equal(t, tuesday, next(tuesday, "tue"), "on the day of the line above")
	assert.Equal(t, "2026-03-04", next(tuesday, "wed").String())
	assert.Equal(t, "2026-03-09", next(tuesday, "mon").String(), "six days on; a week on takes a date")
}
