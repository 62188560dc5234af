// Package ics writes the work of a plan as a calendar.
package ics

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"strconv"
	"strings"
	"time"

	ics "github.com/arran4/golang-ical"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/words"
	"newmake/lang/zone"
)

const localStamp = "20060102T150405"

// Write writes the work as iCalendar (RFC 5545), in the plant's zone: an event for each
// day, with its steps in the description and an alarm half an hour before it begins; one
// for each still that is lit and each cut, with an alarm five minutes before; and the
// days on which the casks are sampled.
//
// Nothing in it comes from the clock. DTSTAMP, which the standard wants, is the
// start of the batch, and a UID is made of house, batch, day of start and step,
// so that a plan computed anew moves its events instead of doubling them.
func Write(w io.Writer, p *plan.Plan, u measure.Units) error {
	p = p.Strings(func(s string) string { return diag.Safe(s) })
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
	for _, d := range p.Schedule.Days {
		steps := c.steps(d)
		if len(steps) == 0 {
			continue
		}
		cal.AddVEvent(c.day(d, steps))
		for _, s := range steps {
			if decides(s) {
				cal.AddVEvent(c.moment(s))
			}
		}
	}
	for i, date := range p.Schedule.Samples {
		cal.AddVEvent(c.sample(i, date))
	}
	return cal.SerializeTo(w, ics.WithNewLineWindows)
}

type calendar struct {
	p     *plan.Plan
	u     measure.Units
	zone  *time.Location
	stamp time.Time
}

// steps are those that begin on a day.
func (c *calendar) steps(d plan.Day) []plan.Step {
	var out []plan.Step
	for _, s := range c.p.Schedule.Steps {
		if plan.Moment(s.Start).Format(time.DateOnly) == d.Date {
			out = append(out, s)
		}
	}
	return out
}

// decides reports whether a step is a moment of its own: a still is lit, or a cut is made.
func decides(s plan.Step) bool {
	switch s.ID[strings.LastIndexByte(s.ID, '.')+1:] {
	case "heat", "heads", "hearts", "tails", "stop":
		return s.Stage == "strip" || s.Stage == "spirit"
	}
	return false
}

// event is one of a key, with what all have in common.
func (c *calendar) event(key, title, describe string) *ics.VEvent {
	e := ics.NewEvent(c.uid(key))
	e.SetDtStampTime(c.stamp)
	e.SetSummary(title + " · " + c.p.Batch.Name)
	e.SetDescription(describe)
	e.SetLocation(c.p.Plant.Name)
	return e
}

// day is a day's work.
func (c *calendar) day(d plan.Day, steps []plan.Step) *ics.VEvent {
	work := strings.Join(d.Work, ", ")
	var lines []string
	for _, s := range steps {
		lines = append(lines, measure.Clock(s.Start)+" "+c.u.Phrase(s.Do), c.describe(s))
	}
	e := c.event("day."+steps[0].ID, strings.ToUpper(work[:1])+work[1:], strings.Join(lines, "\n"))
	c.at(e, ics.ComponentPropertyDtStart, plan.Moment(d.From))
	c.until(e, plan.Moment(d.From), plan.Moment(d.To))
	e.SetTimeTransparency(ics.TransparencyOpaque)
	alarm(e, "-PT30M", "Begins: "+work+" · "+c.p.Batch.Name)
	return e
}

// moment is a step that has to be caught.
func (c *calendar) moment(s plan.Step) *ics.VEvent {
	title := c.u.BriefPhrase(s.Title)
	e := c.event(s.ID, title, c.u.Phrase(s.Do)+"\n"+c.describe(s))
	if s.Vessel != "" {
		e.SetLocation(s.Vessel + ", " + c.p.Plant.Name)
	}
	c.at(e, ics.ComponentPropertyDtStart, plan.Moment(s.Start))
	e.SetTimeTransparency(ics.TransparencyTransparent) // the day takes the time already
	alarm(e, "-PT5M", title+" · "+c.p.Batch.Name)
	return e
}

// sample is a day on which the casks are sampled.
func (c *calendar) sample(i int, date string) *ics.VEvent {
	e := c.event("sample."+strconv.Itoa(i+1), "Sample the casks", "Draw a sample, and hold it against the forecast.")
	e.SetProperty(ics.ComponentPropertyDtStart, strings.ReplaceAll(date, "-", ""), ics.WithValue(string(ics.ValueDataTypeDate)))
	e.SetTimeTransparency(ics.TransparencyTransparent)
	return e
}

func alarm(e *ics.VEvent, before, say string) {
	a := e.AddAlarm()
	a.SetAction(ics.ActionDisplay)
	a.SetDescription(say)
	a.SetTrigger(before)
}

// until ends an event: the standard wants an end only after the start.
func (c *calendar) until(e *ics.VEvent, from, to time.Time) {
	if to.After(from) {
		c.at(e, ics.ComponentPropertyDtEnd, to)
	}
}

func (c *calendar) at(e *ics.VEvent, name ics.ComponentProperty, t time.Time) {
	e.SetProperty(name, t.In(c.zone).Format(localStamp), ics.WithTZID(c.p.Plant.Zone))
}

// uid is stable for a step of a batch begun on a day.
func (c *calendar) uid(key string) string {
	sum := sha256.Sum256([]byte(strings.Join([]string{c.p.Plant.Name, c.p.Batch.Name, c.p.Batch.Start[:10], key}, "\x00")))
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
