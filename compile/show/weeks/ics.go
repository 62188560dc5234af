package weeks

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	ics "github.com/arran4/golang-ical"

	"newmake/compile/book/season"
	"newmake/compile/measure"
	"newmake/compile/plan"
)

// ICS writes the stages of a season's runs that want somebody as iCalendar (RFC 5545),
// and its closures as whole days. It is one calendar, to be put over the one before: the
// UID of an event is made of house, season, run and step, where a run is the third of its
// batch, say, whether it is to come or made by now; so an event moves and is not doubled.
// sequence is how many commits its sources have had: SEQUENCE, which rises as the texts
// change. Nothing in it comes from the clock: DTSTAMP is the first day of the season.
func ICS(w io.Writer, s *season.Season, sequence int) error {
	v := of(s)
	stamp := moment(s.From)
	if stamp.IsZero() {
		return fmt.Errorf("a season begins on a day, not on %q", s.From)
	}
	cal := ics.NewCalendarFor("newmake")
	cal.SetProductId("-//newmake//season//EN")
	cal.SetMethod(ics.MethodPublish)
	cal.SetXWRCalName(safe(s.Name))
	event := func(parts ...string) *ics.VEvent {
		sum := sha256.Sum256([]byte(strings.Join(append([]string{s.Plant, s.Name}, parts...), "\x00")))
		e := ics.NewEvent(hex.EncodeToString(sum[:12]) + "@newmake.invalid")
		e.SetDtStampTime(stamp)
		e.SetSequence(sequence)
		cal.AddVEvent(e)
		return e
	}
	nth := map[string]int{}
	clash := v.members()
	for _, r := range s.Runs {
		nth[r.Batch]++
		for _, st := range stages(r) {
			for i, date := range attendedOn(st) {
				j, _ := jobOn(date, r, st, clash)
				e := event(r.Batch, strconv.Itoa(nth[r.Batch]), st.Name, strconv.Itoa(i))
				e.SetStartAt(j.at)
				e.SetEndAt(j.to)
				title := j.What
				if j.Conflict {
					title = "! " + title
				}
				e.SetSummary(title)
				if j.Where != "" {
					e.SetLocation(j.Where)
				}
				e.SetDescription(about(date, r, st, j))
			}
		}
	}
	for i, c := range s.Closures {
		if c.Vessel != "" || c.Person != "" {
			continue
		}
		e := event("closed", strconv.Itoa(i))
		to := moment(c.To).AddDate(0, 0, 1) // the end of a whole day is the next (RFC 5545, 3.6.1)
		e.SetSummary(strings.TrimSuffix("Closed: "+safe(c.Why), ": "))
		e.SetProperty(ics.ComponentPropertyDtStart, moment(c.From).Format("20060102"), ics.WithValue(string(ics.ValueDataTypeDate)))
		e.SetProperty(ics.ComponentPropertyDtEnd, to.Format("20060102"), ics.WithValue(string(ics.ValueDataTypeDate)))
		e.SetTimeTransparency(ics.TransparencyTransparent)
	}
	return cal.SerializeTo(w, ics.WithNewLineWindows)
}

// attendedOn are the days on which a stage wants somebody.
func attendedOn(s stage) []string {
	var out []string
	for _, t := range s.Tasks {
		if d := dateOf(t.Start); t.Attend != plan.Alone && !slices.Contains(out, d) {
			out = append(out, d)
		}
	}
	slices.Sort(out)
	return out
}

// about is what is to be done in a stage on a day, a line for each task with its clock.
func about(date string, r season.Run, s stage, j job) string {
	lines := []string{j.People + " at most at a time."}
	for _, t := range s.Tasks {
		if dateOf(t.Start) != date {
			continue
		}
		how := "goes alone"
		switch t.Attend {
		case plan.Stay:
			how = "stay with it"
		case plan.Start:
			how = "start it"
		}
		lines = append(lines, fmt.Sprintf("%s to %s %s: %s", measure.Clock(t.Start), measure.Clock(t.End), safe(t.Key), how))
	}
	lines = append(lines, fmt.Sprintf("The sheet: newmake plan --batch %q --on %s -o sheet.html", safe(r.Batch), dateOf(r.Mash)))
	return strings.Join(lines, "\n")
}
