package show

import (
	"fmt"
	"time"
	_ "time/tzdata" // the calendar must not hang on the machine's zones

	ics "github.com/arran4/golang-ical"

	"newmake/compile/plan"
)

// timezone describes the plant's zone as far as the events reach: each change
// of offset from before the first to after the last, without rules that would
// claim to know the years beyond.
func (c *calendar) timezone() *ics.VTimezone {
	z := ics.NewTimezone(c.p.House.Zone)
	first, last := c.stamp, c.stamp
	for _, s := range c.p.Schedule.Steps {
		if t := plan.Moment(s.End); t.After(last) {
			last = t
		}
	}
	for t := first.In(c.zone); ; {
		from, next := t.ZoneBounds()
		z.Components = append(z.Components, observance(from, t))
		if next.IsZero() || next.After(last) {
			return z
		}
		t = next
	}
}

// observance is one stretch of one offset: from is where it began, zero if it
// always was; t lies in it.
func observance(from, t time.Time) ics.Component {
	name, offset := t.Zone()
	before := offset
	onset := time.Date(1970, 1, 1, 0, 0, 0, 0, time.UTC)
	if !from.IsZero() {
		_, before = from.Add(-time.Second).Zone()
		onset = from.In(time.FixedZone("", before))
	}
	base := ics.ComponentBase{}
	base.SetProperty(ics.ComponentPropertyDtStart, onset.Format(localStamp))
	base.SetProperty("TZOFFSETFROM", utcOffset(before))
	base.SetProperty("TZOFFSETTO", utcOffset(offset))
	base.SetProperty("TZNAME", name)
	if t.IsDST() {
		return &ics.Daylight{ComponentBase: base}
	}
	return &ics.Standard{ComponentBase: base}
}

func utcOffset(seconds int) string {
	sign := '+'
	if seconds < 0 {
		sign, seconds = '-', -seconds
	}
	s := fmt.Sprintf("%c%02d%02d", sign, seconds/3600, seconds/60%60)
	if seconds%60 != 0 {
		s += fmt.Sprintf("%02d", seconds%60)
	}
	return s
}
