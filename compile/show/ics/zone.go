package ics

import (
	"fmt"
	"sort"
	"time"

	ics "github.com/arran4/golang-ical"

	"newmake/compile/plan"
)

// timezone describes the plant's zone as far as the events reach: each change
// of offset from before the first to after the last, without rules that would
// claim to know the years beyond.
func (c *calendar) timezone() (*ics.VTimezone, error) {
	z := ics.NewTimezone(c.p.Plant.Zone)
	first, last := c.stamp, c.stamp
	for _, s := range c.p.Schedule.Steps {
		if t := plan.Moment(s.End); t.After(last) {
			last = t
		}
	}
	t := first.In(c.zone)
	from, _ := t.ZoneBounds()
	z.Components = append(z.Components, observance(from, t))
	for range mostBounds {
		next := boundAfter(t)
		if next.IsZero() || next.After(last) {
			return z, nil
		}
		if !sameClock(t, next) {
			z.Components = append(z.Components, observance(next, next))
		}
		t = next
	}
	return nil, fmt.Errorf("the clocks of %s change too often for a calendar up to the year %d", c.p.Plant.Zone, last.Year())
}

// mostBounds is how many bounds of a zone a calendar goes through. A zone has
// three or four a year, and in a leap year 24 more (see boundAfter): these are
// enough for five centuries.
const mostBounds = 5000

// boundAfter is the next time at which a zone may change its clocks, zero if it
// never does. Past the end of a zone's table time.Time.ZoneBounds bounds each
// year too, and on the last day of a leap year it gives a bound that has gone by.
// Such a day is gone through hour by hour.
func boundAfter(t time.Time) time.Time {
	_, next := t.ZoneBounds()
	if next.IsZero() || next.After(t) {
		return next
	}
	hour := t.Add(time.Hour)
	if sameClock(t, hour) {
		return hour
	}
	seconds := sort.Search(3600, func(s int) bool { return !sameClock(t, t.Add(time.Duration(s)*time.Second)) })
	return t.Add(time.Duration(seconds) * time.Second)
}

// sameClock reports whether nothing of a zone differs between two times.
func sameClock(a, b time.Time) bool {
	aName, aOffset := a.Zone()
	bName, bOffset := b.Zone()
	return aName == bName && aOffset == bOffset && a.IsDST() == b.IsDST()
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
