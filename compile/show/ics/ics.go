// Package ics writes the work of a plan as a calendar.
package ics

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"strings"
	"time"

	ics "github.com/arran4/golang-ical"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/words"
	"newmake/lang/zone"
)

const (
	localStamp = "20060102T150405"
	// A step that lies longer than this is no appointment: only its end is.
	longStep = 14 * 24 * time.Hour
)

// Write writes the steps as iCalendar (RFC 5545): an event for each, in the
// plant's zone, with an alarm before those that somebody attends.
//
// Nothing in it comes from the clock. DTSTAMP, which the standard wants, is the
// start of the batch, and a UID is made of house, batch, day of start and step,
// so that a plan computed anew moves its events instead of doubling them.
func Write(w io.Writer, p *plan.Plan, u measure.Units) error {
	p = p.Strings(func(s string) string { return diag.Safe(s, false) })
	in, err := zone.Load(p.Plant.Zone)
	if err != nil {
		return err
	}
	c := calendar{p: p, u: u, zone: in, stamp: plan.Moment(p.Batch.Start)}
	cal := ics.NewCalendarFor("newmake")
	cal.SetProductId("-//newmake//run sheet//EN")
	cal.SetMethod(ics.MethodPublish)
	cal.SetXWRCalName(p.Batch.Name)
	clocks, err := c.timezone()
	if err != nil {
		return err
	}
	cal.AddVTimezone(clocks)
	for i := range p.Schedule.Steps {
		cal.AddVEvent(c.event(i))
	}
	return cal.SerializeTo(w, ics.WithNewLineWindows)
}

type calendar struct {
	p     *plan.Plan
	u     measure.Units
	zone  *time.Location
	stamp time.Time
}

func (c *calendar) event(i int) *ics.VEvent {
	s := c.p.Schedule.Steps[i]
	from, to := plan.Moment(s.Start), plan.Moment(s.End)
	say := c.u.Phrase(s.Do)
	if to.Sub(from) > longStep {
		from, say = to, "Ends: "+say
	}
	e := ics.NewEvent(c.uid(s))
	e.SetDtStampTime(c.stamp)
	c.at(e, ics.ComponentPropertyDtStart, from)
	if to.After(from) { // the standard wants an end only after the start
		c.at(e, ics.ComponentPropertyDtEnd, to)
	}
	e.SetSummary(c.p.Batch.Name + ": " + say)
	e.SetDescription(c.describe(s))
	place := c.p.Plant.Name
	if s.Vessel != "" {
		place = s.Vessel + ", " + place
	}
	e.SetLocation(place)
	if s.Attend == plan.Alone {
		e.SetTimeTransparency(ics.TransparencyTransparent)
		return e
	}
	e.SetTimeTransparency(ics.TransparencyOpaque)
	alarm := e.AddAlarm()
	alarm.SetAction(ics.ActionDisplay)
	alarm.SetDescription(say)
	alarm.SetTrigger(c.notice(i))
	return e
}

// notice is how long before a step the alarm goes: half an hour before somebody
// has to come, five minutes before the next thing that they do.
func (c *calendar) notice(i int) string {
	start := plan.Moment(c.p.Schedule.Steps[i].Start)
	for _, before := range c.p.Schedule.Steps[:i] {
		if before.Attend != plan.Alone && start.Sub(plan.Moment(before.End)) < 30*time.Minute {
			return "-PT5M"
		}
	}
	return "-PT30M"
}

func (c *calendar) at(e *ics.VEvent, name ics.ComponentProperty, t time.Time) {
	e.SetProperty(name, t.In(c.zone).Format(localStamp), ics.WithTZID(c.p.Plant.Zone))
}

// uid is stable for a step of a batch begun on a day.
func (c *calendar) uid(s plan.Step) string {
	sum := sha256.Sum256([]byte(strings.Join([]string{c.p.Plant.Name, c.p.Batch.Name, c.p.Batch.Start[:10], s.ID}, "\x00")))
	return hex.EncodeToString(sum[:12]) + "@newmake.invalid"
}

func (c *calendar) describe(s plan.Step) string {
	var lines []string
	who := map[string]string{plan.Stay: "Stay with it", plan.Start: "Start it, then it goes alone", plan.Alone: "Goes alone"}[s.Attend]
	if s.People > 1 {
		who += ": " + words.Count(s.People, "person")
		who = strings.Replace(who, "persons", "people", 1)
	}
	lines = append(lines, who+".")
	for _, r := range s.Read {
		due := measure.Clock(s.End)
		if r.At != "" {
			due = measure.Clock(r.At)
		}
		line := due + " " + r.What + ": " + strings.TrimPrefix(c.u.Quantity(r.Should), r.What+" ")
		if r.Tolerance.Unit != "" {
			line += " " + c.u.Tolerance(r.Tolerance)
		}
		lines = append(lines, line)
	}
	for _, key := range s.Cautions {
		for _, k := range c.p.Cautions {
			if k.Key == key {
				lines = append(lines, "! "+k.Title+". "+k.Text)
			}
		}
	}
	return strings.Join(lines, "\n")
}
