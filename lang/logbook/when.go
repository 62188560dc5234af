package logbook

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/record"
	"newmake/lang/tree"
)

// clock is how far the lines of a stage have come.
type clock struct {
	dated bool     // its day has been named
	lines []*timed // those that have a time, in order
	now   *timed   // of the line at hand, nil where it has none
}

// timed is a line that has a time.
type timed struct {
	when      tree.When
	time      time.Time // that holds: the corrected one, where it was corrected
	day       record.Date
	corrected *record.Correction // nil if it was not
}

// at is what the time stands on.
func (t *timed) at() diag.Span {
	if t.corrected != nil {
		return t.corrected.Place
	}
	return t.when.At()
}

// when finds the moment of a line. A day is the first of its name on or after the
// line above; a clock without one is on the day of the line above, and does not go
// back.
func (r *reader) when(l *tree.Node) record.When {
	w := l.When
	r.clock.now = nil
	switch {
	case w.Date != nil:
		r.day, r.clock.dated = record.ReadDate(w.Date.Text), true
	case w.Day != nil:
		r.day, r.clock.dated = next(r.day, w.Day.Text), true
	case w.Clock != nil && !r.clock.dated:
		r.clock.dated = true
		r.diags.Add(diag.Diagnostic{Code: diag.CodeNoDay, At: w.Clock.At, Summary: "the first clock of a stage needs its day",
			Help: "write the day or the date before it: `" + lang.Days[r.day.Weekday()] + " " + w.Clock.Text + "`, `" + r.day.String() + " " + w.Clock.Text + "`"})
	}
	if w.Date != nil && r.day.Compare(r.run.Date) < 0 && !r.early {
		r.early = true // once is enough: the lines below go by it
		help := "look at the two days"
		if r.of == "run" {
			help = "if the table of a sheet was filled in, it was that of another day: `newmake plan --on` plans for the day of the run"
		}
		r.diags.Add(diag.Diagnostic{Code: diag.CodeImprobable, Severity: diag.Warning, At: w.Date.At,
			Summary: fmt.Sprintf("`%s` is before the day of this %s, %s", r.day, r.of, r.run.Date), Help: help})
	}
	out := record.When{Date: r.day}
	if w.Clock == nil {
		return out
	}
	out.Clock = w.Clock.Text
	t, ok := r.moment(w)
	if !ok {
		return out
	}
	out.Time = t
	r.clock.now = &timed{when: w, time: t, day: r.day}
	r.clock.lines = append(r.clock.lines, r.clock.now)
	return out
}

// inOrder holds the times of a stage against each other, once all are read and corrected.
func (r *reader) inOrder() {
	var last *timed
	for _, t := range r.clock.lines {
		switch {
		case last == nil || !t.time.Before(last.time):
			last = t
		case t.corrected == nil && last.corrected != nil:
			r.movedWrong(last, t, "later than the line below it")
			last = t
		case t.corrected != nil:
			r.movedWrong(t, last, "earlier than the line above it")
		default:
			r.goesBack(t, last)
		}
	}
}

// movedWrong speaks of a line whose time was corrected to one that its neighbours do not
// leave room for.
func (r *reader) movedWrong(t, beside *timed, how string) {
	c := t.corrected
	r.diags.Add(diag.Diagnostic{Code: diag.CodeTimeBack, At: c.Place, Summary: fmt.Sprintf("by this correction `%s` is of %s, %s", c.OldClock, t.time.Format("15:04 on 2006-01-02"), how),
		Related: []diag.Related{{At: beside.at(), Text: "this is of " + beside.time.Format("15:04 on 2006-01-02")}},
		Help:    "the day stays where none is written: `" + c.OldClock + " to " + record.DateOf(t.time).After(1).String() + " " + c.NewClock + "` is of the next"})
}

// next is the first day of a name on or after a date.
func next(from record.Date, day string) record.Date {
	for i := range 7 {
		if d := from.After(i); lang.Days[d.Weekday()] == day {
			return d
		}
	}
	return from
}

// goesBack speaks of a line that is earlier than the one above it.
func (r *reader) goesBack(back, above *timed) {
	w := back.when
	d := diag.Diagnostic{Code: diag.CodeTimeBack, At: w.At(), Related: []diag.Related{{At: above.at(), Text: "the line above is of this time"}}}
	d.Summary = fmt.Sprintf("`%s` is earlier than the line above it", w.At().Text())
	switch {
	case w.Day == nil && w.Date == nil:
		day := lang.Days[back.day.After(1).Weekday()]
		d.Help = "write `" + day + " " + w.Clock.Text + "` if it is of the next day; else put the line where it belongs"
		at := diag.Span{Src: w.Clock.At.Src, Start: w.Clock.At.Start, End: w.Clock.At.Start}
		d.Fix = &diag.Fix{At: at, Text: day + " ", Label: "write `" + day + " " + w.Clock.Text + "`", Guess: true}
	case w.Day != nil:
		d.Help = "put the line where it belongs; a day a week on is written as its date, `" + back.day.After(7).String() + " " + w.Clock.Text + "`"
	default:
		d.Help = "put the line where it belongs in time"
	}
	r.diags.Add(d)
}

// moment is a clock on the day at hand, in the zone of the run. An hour that the
// clocks leave out is none, and of one that comes twice the offset says which.
func (r *reader) moment(w tree.When) (time.Time, bool) {
	hour, minute, second := parseClock(w.Clock.Text)
	candidates := moments(r.day, hour, minute, second, r.Zone)
	shown := r.day.String() + " " + w.Clock.Text
	d := diag.Diagnostic{Code: diag.CodeNoHour, At: w.At()}
	if w.Offset != nil {
		for _, t := range candidates {
			if t.Format("-07:00") == w.Offset.Text {
				return t, true
			}
		}
	}
	switch {
	case len(candidates) == 0:
		d.Summary = fmt.Sprintf("there is no %s on the clocks of %s: they were put forward over it", shown, r.Zone)
		d.Help = "write the time that the clock on the wall showed"
	case w.Offset != nil:
		d.Summary = fmt.Sprintf("at %s the clocks of %s were not `%s` from UTC", shown, r.Zone, w.Offset.Text)
		d.Help = "write " + offsets(candidates) + ", or leave it out where the hour comes once"
	case len(candidates) > 1:
		d.Summary = fmt.Sprintf("%s comes twice on the clocks of %s", shown, r.Zone)
		d.Help = "say which: " + offsets(candidates)
	default:
		return candidates[0], true
	}
	r.diags.Add(d)
	return time.Time{}, false
}

// offsets lists what tells moments of the same clock apart.
func offsets(candidates []time.Time) string {
	var out []string
	for i, t := range candidates {
		out = append(out, "`"+t.Format("15:04 -07:00")+"`"+[...]string{"", " for the second"}[min(i, 1)])
	}
	return strings.Join(out, ", ")
}

// moments are those at which the clocks of a zone show a time on a day: one, none
// where they were put forward over it, two where they were put back.
func moments(day record.Date, hour, minute, second int, zone *time.Location) []time.Time {
	wall := time.Date(day.Year, day.Month, day.Day, hour, minute, second, 0, time.UTC)
	var out []time.Time
	const most = 26 * time.Hour // no offset is larger, and none changes by more
	for _, side := range []time.Time{wall.Add(-most), wall.Add(most)} {
		_, offset := side.In(zone).Zone()
		t := wall.Add(-time.Duration(offset) * time.Second).In(zone)
		y, m, d := t.Date()
		if y == wall.Year() && m == wall.Month() && d == wall.Day() && t.Hour() == wall.Hour() && t.Minute() == wall.Minute() && (len(out) == 0 || !out[0].Equal(t)) {
			out = append(out, t)
		}
	}
	if len(out) == 2 && out[1].Before(out[0]) {
		out[0], out[1] = out[1], out[0]
	}
	return out
}

// parseClock reads 15:04 or 15:04:05, which the lexer found to be one.
func parseClock(text string) (hour, minute, second int) {
	part := strings.Split(text, ":")
	hour, _ = strconv.Atoi(part[0])
	minute, _ = strconv.Atoi(part[1])
	if len(part) > 2 {
		second, _ = strconv.Atoi(part[2])
	}
	return hour, minute, second
}
