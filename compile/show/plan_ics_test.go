package show_test

import (
	"bytes"
	"newmake/compile/measure"
	"newmake/compile/plan"
	show "newmake/compile/show/ics"
	"newmake/compile/show/internal/plantest"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func calendarOf(t *testing.T, p *plan.Plan) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, show.Write(&b, p, measure.US))
	return b.String()
}

// unfold undoes the folding of RFC 5545, section 3.1.
func unfold(s string) []string {
	return strings.Split(strings.TrimSuffix(strings.ReplaceAll(s, "\r\n ", ""), "\r\n"), "\r\n")
}

// What the standard asks of every content line. That the whole can be read by
// somebody else's parser is checked by .ci/sheet.
func TestCalendarLines(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	p.Batch.Name = strings.Repeat("🥃", 20) + `; a, b \ c` + "\nBEGIN:VEVENT\x1b[2J"
	p.Schedule.Steps[0].Do = plan.Say(strings.Repeat("x", 200))
	text := calendarOf(t, p)
	for _, line := range strings.Split(strings.TrimSuffix(text, "\r\n"), "\r\n") {
		assert.LessOrEqual(t, len(line), 75, line)
		assert.True(t, utf8.ValidString(line), "%q is cut inside a character", line)
		assert.NotContains(t, line, "\n")
		assert.NotContains(t, line, "\x1b")
	}
	lines := unfold(text)
	events := 0
	for _, l := range lines {
		if l == "BEGIN:VEVENT" {
			events++
		}
	}
	moments := 0
	for _, s := range p.Schedule.Steps {
		if _, what, _ := strings.Cut(s.ID, "."); (s.Stage == "strip" || s.Stage == "spirit") && strings.Contains(" heat heads hearts tails stop ", " "+what+" ") {
			moments++
		}
	}
	require.Equal(t, 7, moments, "two fires, three cuts, two stops")
	assert.Equal(t, len(p.Schedule.Days)+moments+len(p.Schedule.Samples), events)
	assert.Contains(t, strings.Join(lines, "\n"), `\; a\, b \\ c`)
}

func TestCalendar(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	text := calendarOf(t, p)
	assert.Equal(t, text, calendarOf(t, p), "nothing comes from the clock")
	lines := unfold(text)
	assert.Contains(t, lines, "DTSTART;TZID=America/New_York:20260303T070000")
	assert.Contains(t, lines, "TZID:America/New_York")
	// The US turn their clocks on 8 March 2026 at 2:00 (15 U.S.C. 260a).
	assert.Contains(t, lines, "DTSTART:20260308T020000")
	assert.Contains(t, lines, "DTSTART;TZID=America/New_York:20260310T070000")

	assert.Contains(t, lines, "SUMMARY:Tails at 62 % · Ferry Landing")
	assert.Contains(t, lines, "SUMMARY:Spirit\\, reduce · Ferry Landing")
	// A cask of four years is sampled eight times, at whole days.
	assert.Contains(t, lines, "DTSTART;VALUE=DATE:20260912")
	assert.Contains(t, lines, "DTSTART;VALUE=DATE:20300312")
	assert.Len(t, p.Schedule.Samples, 8)

	alarms := 0
	uids := map[string]bool{}
	for _, l := range lines {
		if l == "BEGIN:VALARM" {
			alarms++
		}
		if uid, ok := strings.CutPrefix(l, "UID:"); ok {
			assert.False(t, uids[uid], "%s comes twice", uid)
			uids[uid] = true
		}
		assert.False(t, strings.HasPrefix(l, "DTSTAMP") && l != "DTSTAMP:20260303T120000Z", l)
	}
	assert.Equal(t, len(p.Schedule.Days)+7, alarms, "each day, each fire, each cut and each stop")

	// A plan computed anew moves its events: same names, other times.
	q := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	q.Schedule.Steps[3].Start = "2026-03-03T08:10:00-05:00"
	for _, l := range unfold(calendarOf(t, q)) {
		if uid, ok := strings.CutPrefix(l, "UID:"); ok {
			assert.True(t, uids[uid])
		}
	}
}

// Zones with a half hour, with summer in January, and with no change at all.
func TestCalendarZones(t *testing.T) {
	for zone, want := range map[string][]string{
		"Asia/Kolkata":       {"TZOFFSETTO:+0530", "DTSTART;TZID=Asia/Kolkata:20260303T173000"},
		"Australia/Hobart":   {"TZOFFSETTO:+1100", "TZOFFSETTO:+1000", "DTSTART;TZID=Australia/Hobart:20260303T230000"},
		"UTC":                {"TZOFFSETTO:+0000", "DTSTART;TZID=UTC:20260303T120000"},
		"Europe/London":      {"BEGIN:DAYLIGHT", "DTSTART;TZID=Europe/London:20260303T120000"},
		"America/Asuncion":   {"DTSTART;TZID=America/Asuncion:"},
		"Pacific/Kiritimati": {"TZOFFSETTO:+1400", "DTSTART;TZID=Pacific/Kiritimati:20260304T020000"},
	} {
		p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
		p.Plant.Zone = zone
		text := strings.Join(unfold(calendarOf(t, p)), "\n")
		for _, w := range want {
			assert.Contains(t, text, w, zone)
		}
		_, err := time.LoadLocation(zone)
		require.NoError(t, err)
	}
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	p.Plant.Zone = "Nowhere/Here"
	var b bytes.Buffer
	assert.Error(t, show.Write(&b, p, measure.US))
}
