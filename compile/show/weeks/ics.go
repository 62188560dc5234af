package weeks

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	ics "github.com/arran4/golang-ical"

	"newmake/compile/ask/weeks"
	"newmake/compile/book/season"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// ICS writes the stages of a season's runs that want somebody as iCalendar (RFC 5545),
// and its closures as whole days. It is one calendar, to be put over the one before: the
// UID of an event is made of house, season, run and step, where a run is the third of its
// batch, say, whether it is to come or made by now; so an event moves and is not doubled.
// sequence is how many commits its sources have had: SEQUENCE, which rises as the texts
// change. Nothing in it comes from the clock: DTSTAMP is the first day of the season.
func ICS(w io.Writer, s *season.Season, sequence int) error {
	stamp := moment(s.From)
	if stamp.IsZero() {
		return fmt.Errorf("a season begins on a day, not on %q", s.From)
	}
	cal := ics.NewCalendarFor("newmake")
	cal.SetProductId("-//newmake//season//EN")
	cal.SetMethod(ics.MethodPublish)
	cal.SetXWRCalName(diag.Safe(s.Name))
	event := func(parts ...string) *ics.VEvent {
		sum := sha256.Sum256([]byte(strings.Join(append([]string{s.Plant, s.Name}, parts...), "\x00")))
		e := ics.NewEvent(hex.EncodeToString(sum[:12]) + "@newmake.invalid")
		e.SetDtStampTime(stamp)
		e.SetSequence(sequence)
		cal.AddVEvent(e)
		return e
	}
	nth := map[string]int{}
	numbers := map[string]string{}
	batch := map[string]season.Run{}
	for _, r := range s.Runs {
		nth[r.Batch]++
		numbers[r.Number] = strconv.Itoa(nth[r.Batch])
		batch[r.Number] = r
	}
	days := map[string]int{} // of a stage of a run, so far
	for at := moment(s.From).AddDate(0, 0, -before); at.Before(moment(s.To).AddDate(0, 0, after)); at = at.AddDate(0, 0, 1) {
		date := at.Format(time.DateOnly)
		for _, j := range weeks.Jobs(s, date) {
			name := j.Stage
			if j.Cleaning {
				name += ", clean"
			}
			days[j.Run+"\x00"+name]++
			e := event(j.Batch, numbers[j.Run], name, strconv.Itoa(days[j.Run+"\x00"+name]))
			e.SetStartAt(moment(j.From))
			e.SetEndAt(moment(j.To))
			title := JobName(j)
			if j.Conflict {
				title = "! " + title
			}
			e.SetSummary(title)
			if j.Vessel != "" {
				e.SetLocation(diag.Safe(j.Vessel))
			}
			e.SetDescription(about(of(s).u, date, batch[j.Run], j))
		}
	}
	for i, c := range s.Closures {
		if c.Vessel != "" || c.Person != "" {
			continue
		}
		e := event("closed", strconv.Itoa(i))
		to := moment(c.To).AddDate(0, 0, 1) // the end of a whole day is the next (RFC 5545, 3.6.1)
		e.SetSummary(strings.TrimSuffix("Closed: "+diag.Safe(c.Why), ": "))
		e.SetProperty(ics.ComponentPropertyDtStart, moment(c.From).Format("20060102"), ics.WithValue(string(ics.ValueDataTypeDate)))
		e.SetProperty(ics.ComponentPropertyDtEnd, to.Format("20060102"), ics.WithValue(string(ics.ValueDataTypeDate)))
		e.SetTimeTransparency(ics.TransparencyTransparent)
	}
	return cal.SerializeTo(w, ics.WithNewLineWindows)
}

// before and after are how many days of work a season may have beyond its own: of runs that
// were begun, and of those that are filled later.
const (
	before = 60
	after  = 60
)

// about is what is to be done in a stage on a day, a line for each task with its clock.
func about(u measure.Units, date string, r season.Run, j weeks.Job) string {
	lines := []string{words.CountOf(j.People, "person", "people") + " at most at a time."}
	for _, t := range r.Tasks {
		if dateOf(t.Start) != date || t.Stage != j.Stage || strings.HasSuffix(t.Key, ".clean") != j.Cleaning {
			continue
		}
		how := "goes alone"
		switch t.Attend {
		case plan.Stay:
			how = "stay with it"
		case plan.Start:
			how = "start it"
		}
		title := u.BriefPhrase(t.Title)
		if title == "" {
			title = t.Key
		}
		lines = append(lines, fmt.Sprintf("%s to %s %s: %s", measure.Clock(t.Start), measure.Clock(t.End), diag.Safe(title), how))
	}
	lines = append(lines, fmt.Sprintf("The sheet: newmake plan --batch %q --on %s -o sheet.html", diag.Safe(r.Batch), dateOf(r.Mash)))
	return strings.Join(lines, "\n")
}
