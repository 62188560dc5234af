package show_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"

	ics "github.com/arran4/golang-ical"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/measure"
	"newmake/compile/plan"
	show "newmake/compile/show/ics"
	"newmake/compile/show/internal/plantest"
)

// onset is one change of clocks as a calendar states it.
type onset struct {
	at           time.Time
	from, offset int
	name         string
	daylight     bool
}

// clocksOf reads a VTIMEZONE as RFC 5545, section 3.6.5, has it read: DTSTART is
// on the clock that held before, TZOFFSETFROM.
func clocksOf(t *testing.T, z *ics.VTimezone) []onset {
	t.Helper()
	seconds := func(s string) int {
		var h, m, sec int
		n, err := fmt.Sscanf(s[1:], "%2d%2d%2d", &h, &m, &sec)
		require.True(t, n == 3 || n == 2 && len(s) == 5, "%s: %v", s, err)
		total := h*3600 + m*60 + sec
		if s[0] == '-' {
			total = -total
		}
		return total
	}
	var out []onset
	for _, c := range z.Components {
		var base ics.ComponentBase
		var daylight bool
		switch c := c.(type) {
		case *ics.Standard:
			base = c.ComponentBase
		case *ics.Daylight:
			base, daylight = c.ComponentBase, true
		default:
			t.Fatalf("%T in a VTIMEZONE", c)
		}
		value := func(name ics.ComponentProperty) string {
			p := base.GetProperty(name)
			require.NotNil(t, p, name)
			return p.Value
		}
		local, err := time.Parse("20060102T150405", value(ics.ComponentPropertyDtStart))
		require.NoError(t, err)
		from := seconds(value("TZOFFSETFROM"))
		out = append(out, onset{local.Add(-time.Duration(from) * time.Second), from, seconds(value("TZOFFSETTO")), value("TZNAME"), daylight})
	}
	return out
}

// TestZones: whatever zone and however long a cask rests, the clocks of the
// calendar are those of the zone's own table at every instant that it reaches,
// and a change is said where the table has one and nowhere else.
func TestZones(t *testing.T) {
	made := plantest.Plan(t, plantest.Lantern, "Toll Road")
	for _, name := range []string{
		"America/New_York", "Europe/London", "Asia/Tokyo", "Africa/Casablanca", "Australia/Sydney",
		"Australia/Lord_Howe", "America/Sao_Paulo", "America/Santiago", "Europe/Dublin", "Asia/Kolkata", "Asia/Gaza", "UTC",
	} {
		zone, err := time.LoadLocation(name)
		require.NoError(t, err)
		for _, years := range []int{2, 15, 40} {
			for _, begins := range []time.Time{
				time.Date(2026, 3, 3, 7, 0, 0, 0, zone), time.Date(2026, 12, 30, 7, 0, 0, 0, zone),
				time.Date(2040, 12, 31, 7, 0, 0, 0, zone), // the last day of a leap year past the end of most tables
				time.Date(2041, 7, 1, 7, 0, 0, 0, zone),
			} {
				ends := begins.AddDate(years, 0, 0)
				p := *made
				p.Plant.Zone = name
				p.Batch.Start = begins.Format(time.RFC3339)
				p.Schedule.Steps = append([]plan.Step{}, made.Schedule.Steps[:1]...)
				p.Schedule.Steps[0].Start, p.Schedule.Steps[0].End = begins.Format(time.RFC3339), ends.Format(time.RFC3339)
				var b bytes.Buffer
				require.NoError(t, show.Write(&b, &p, measure.US))
				cal, err := ics.ParseCalendar(strings.NewReader(b.String()))
				require.NoError(t, err)
				require.Len(t, cal.Timezones(), 1)
				clocks := clocksOf(t, cal.Timezones()[0])
				what := fmt.Sprintf("%s for %d years from %s", name, years, begins)
				require.NotEmpty(t, clocks, what)
				require.LessOrEqual(t, len(clocks), 4*(years+1)+1, what)
				for i, c := range clocks[1:] {
					require.True(t, c.at.After(clocks[i].at), "%s: in order", what)
					before, after := c.at.Add(-time.Second).In(zone), c.at.In(zone)
					_, was := before.Zone()
					abbreviation, is := after.Zone()
					assert.Equal(t, was, c.from, "%s: before %s", what, c.at)
					assert.Equal(t, is, c.offset, "%s: after %s", what, c.at)
					assert.Equal(t, abbreviation, c.name, "%s: after %s", what, c.at)
					assert.Equal(t, after.IsDST(), c.daylight, "%s: after %s", what, c.at)
					assert.False(t, was == is && before.IsDST() == after.IsDST() && clocks[i].name == c.name, "%s: nothing changes at %s", what, c.at)
				}
				holds := 0
				for at := begins; !at.After(ends); at = at.Add(61 * time.Hour) {
					for holds+1 < len(clocks) && !clocks[holds+1].at.After(at) {
						holds++
					}
					_, offset := at.In(zone).Zone()
					require.Equal(t, offset, clocks[holds].offset, "%s: at %s", what, at)
				}
			}
		}
	}
}
