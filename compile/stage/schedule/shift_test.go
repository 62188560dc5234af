package schedule

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"newmake/lang/recipe"
)

// What lies outside the shifts, of a span that begins and ends in one or between two,
// within a day or over several. 3 March 2026 is a Tuesday.
func TestOutsideTheShifts(t *testing.T) {
	at := func(day, hour, minute int) time.Time { return time.Date(2026, 3, day, hour, minute, 0, 0, time.UTC) }
	h := hours{tueToSat, time.UTC}
	for _, c := range []struct {
		what     string
		from, to time.Time
		hours    float64
	}{
		{"within a shift", at(3, 8, 0), at(3, 16, 0), 0},
		{"a whole shift", at(3, 7, 0), at(3, 17, 0), 0},
		{"into the evening", at(3, 16, 0), at(3, 18, 30), 1.5},
		{"from the early morning", at(3, 6, 0), at(3, 8, 0), 1},
		{"a night between two", at(3, 16, 0), at(4, 8, 0), 14},
		{"a night and no more", at(3, 17, 0), at(4, 7, 0), 14},
		{"three days", at(3, 16, 0), at(6, 8, 0), 3 * 14},
		{"over the days off", at(7, 16, 0), at(10, 8, 0), 14 + 48},
		{"all of it", at(8, 9, 0), at(8, 11, 0), 2},
	} {
		assert.InDelta(t, c.hours, h.outside(c.from, c.to).Hours(), 1e-9, c.what)
		assert.Equal(t, c.hours == 0, h.staffed(c.from, c.to), c.what)
	}
	night := hours{recipe.Shift{FromMinute: 22 * 60, ToMinute: 6 * 60, Days: [7]bool{2: true}}, time.UTC}
	assert.InDelta(t, 4, night.outside(at(3, 20, 0), at(4, 8, 0)).Hours(), 1e-9, "a shift over midnight")
	always := hours{recipe.Shift{}, time.UTC}
	assert.Zero(t, always.outside(at(3, 0, 0), at(9, 0, 0)))
	assert.True(t, always.staffed(at(3, 0, 0), at(9, 0, 0)))
}

// A round within an hour of the pitch or of the still is left out.
func TestRoundsNearTheEnds(t *testing.T) {
	at := func(hour, minute int) time.Time { return time.Date(2026, 3, 3, hour, minute, 0, 0, time.UTC) }
	count := func(from, to time.Time) int { return len(Rounds(from, to, tueToSat, time.UTC, 9*60)) }
	assert.Equal(t, 1, count(at(7, 59), at(12, 0)))
	assert.Equal(t, 0, count(at(8, 0), at(12, 0)))
	assert.Equal(t, 1, count(at(5, 0), at(10, 0)))
	assert.Equal(t, 0, count(at(5, 0), at(9, 59)))
}
