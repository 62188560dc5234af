package racked

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"strings"
	"time"

	ics "github.com/arran4/golang-ical"

	"newmake/compile/book/cellar"
	"newmake/lang/diag"
	"newmake/lang/sorting"
	"newmake/lang/words"
)

// due is what is to be done on a day with some casks of a run.
type due struct {
	on, what, run, batch string // on is the day on which it was, or will be, due
	rows                 []cellar.Row
}

// ICS writes the days of a cellar as iCalendar (RFC 5545), each a whole day: when the casks
// of a run are to be sampled next, when they are old enough for their standard, and when
// their rest is over. What has been due stands on the day of the
// cellar, with the day since when: nobody looks for work in the past. Nothing in it comes from
// the clock: DTSTAMP is the day of the cellar, and a UID is made of what is due, its day
// and its run, so that a cellar computed anew changes its events and doubles none.
func ICS(w io.Writer, c *cellar.Cellar) error {
	stamp, err := time.Parse(time.DateOnly, c.On)
	if err != nil {
		return err
	}
	t := page{us: c.Units == "us"}
	cal := ics.NewCalendarFor("newmake")
	cal.SetProductId("-//newmake//cellar//EN")
	cal.SetMethod(ics.MethodPublish)
	cal.SetXWRCalName("Casks")
	for _, d := range dues(c) {
		sum := sha256.Sum256([]byte(strings.Join([]string{d.what, d.on, d.run, d.batch}, "\x00")))
		e := ics.NewEvent(hex.EncodeToString(sum[:12]) + "@newmake.invalid")
		e.SetDtStampTime(stamp)
		e.SetSummary(fmt.Sprintf("%s %s · %s", d.what, words.Count(len(d.rows), "cask"), diag.Safe(d.batch)))
		var lines []string
		for _, r := range d.rows {
			lines = append(lines, t.dueLine(d, r))
		}
		if d.on < c.On {
			lines = append(lines, "due since "+d.on)
		}
		e.SetDescription(strings.Join(lines, "\n"))
		e.SetProperty(ics.ComponentPropertyDtStart, strings.ReplaceAll(max(d.on, c.On), "-", ""), ics.WithValue(string(ics.ValueDataTypeDate)))
		e.SetTimeTransparency(ics.TransparencyTransparent)
		cal.AddVEvent(e)
	}
	return cal.SerializeTo(w, ics.WithNewLineWindows)
}

const (
	toSample  = "Sample"
	oldEnough = "Old enough by law:"
	restOver  = "Rest over:"
)

// dues are the days of a cellar, in their order.
func dues(c *cellar.Cellar) []due {
	at := map[string]int{}
	var out []due
	add := func(on, what string, r cellar.Row) {
		key := strings.Join([]string{on, what, r.Run, r.Batch}, "\x00")
		i, ok := at[key]
		if !ok {
			i, at[key] = len(out), len(out)
			out = append(out, due{on: on, what: what, run: r.Run, batch: r.Batch})
		}
		out[i].rows = append(out[i].rows, r)
	}
	for _, r := range c.Casks {
		if r.Empty() {
			continue
		}
		if r.Sample != "" {
			add(r.Sample, toSample, r)
		}
		if r.Standard != nil && !r.Standard.Met {
			add(r.Standard.From, oldEnough, r)
		}
		if r.Target != nil {
			add(r.Target.On, restOver, r)
		}
	}
	sorting.Stable(out, func(a, b due) int {
		return cmp.Or(cmp.Compare(a.on, b.on), cmp.Compare(b.what, a.what), cmp.Compare(a.run, b.run))
	})
	return out
}

// dueLine is a cask with where it lies, and what it should hold when its rest is over.
func (t *page) dueLine(d due, r cellar.Row) string {
	line := diag.Safe(r.Serial)
	if place := placeOf(r); place != "" {
		line += ", " + diag.Safe(place)
	}
	switch d.what {
	case oldEnough:
		line += ": " + diag.Safe(r.Standard.Of)
	case restOver:
		line += fmt.Sprintf(": should hold %s to %s %s", t.alcohol(r.Target.Low), t.alcohol(r.Target.High), t.alcoholName())
	}
	return line
}
