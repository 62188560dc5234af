package glance

import (
	"fmt"
	"slices"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
)

// dayLine is a day of work, or several on end that are alike.
type dayLine struct {
	day, hours, people, work string
	marks                    []string
	days                     int
}

// days is a line for each day. Days on end with nothing but a reading at the same hour
// are one line.
func (g *screen) days() []dayLine {
	var out []dayLine
	var last plan.Day
	for _, d := range g.p.Schedule.Days {
		from, to := plan.Moment(d.From), plan.Moment(d.To)
		marks := g.marks(d)
		if n := len(out); n > 0 && alike(last, d) {
			l := &out[n-1]
			l.day = strings.SplitN(l.day, "-", 2)[0][:3] + "-" + from.Format("Mon")
			l.marks[0] = strings.TrimSuffix(l.marks[0], " SG") + " / " + strings.Join(marks, " / ")
			l.days++
			last = d
			continue
		}
		l := dayLine{day: from.Format("Mon _2"), hours: from.Format("15:04-") + to.Format("15:04"), people: fmt.Sprint(d.People), work: listed(d.Work), marks: marks, days: 1}
		switch {
		case single(d) && len(marks) > 0:
			l.hours = from.Format("15:04")
		case from.Format("2006-01-02") != to.Format("2006-01-02"):
			l.hours += " +1"
		}
		out, last = append(out, l), d
	}
	return out
}

// readFerment is the work of a day on which no more than that is done.
const readFerment = "read ferment"

// single reports whether a day has a short reading and nothing else.
func single(d plan.Day) bool { return slices.Equal(d.Work, []string{readFerment}) }

// alike reports whether two days can share a line: one is the day after the other, and both
// have a reading at the same hour and nothing else.
func alike(a, b plan.Day) bool {
	return single(a) && single(b) && a.People == b.People && measure.Clock(a.From) == measure.Clock(b.From) &&
		measure.SameDay(plan.Moment(a.From).AddDate(0, 0, 1).Format("2006-01-02T15:04:05Z07:00"), b.From)
}

// marks are what decides a day, with their times where they are not its first.
func (g *screen) marks(d plan.Day) []string {
	var out []string
	for _, s := range g.p.Schedule.Steps {
		if s.Mark == nil || s.Attend == plan.Alone || plan.Moment(s.Start).Format("2006-01-02") != d.Date {
			continue
		}
		words := g.BriefPhrase(*s.Mark)
		if s.Start != d.From {
			words += " " + measure.Clock(s.Start)
		}
		out = append(out, words)
	}
	return out
}

// fold makes so many lines of the days: where there are more, those in the middle are
// counted.
func (g *screen) fold(days []dayLine, room int) []string {
	room = max(room, 3)
	gone, after := 0, len(days)
	if len(days) > room {
		after = len(days) - 1
		for _, d := range days[room-2 : after] {
			gone += d.days
		}
	}
	var widths [4]int
	for _, d := range days {
		for i, cell := range []string{d.day, d.hours, d.people, d.work} {
			widths[i] = max(widths[i], columns.Width(cell))
		}
	}
	var out []string
	for i, d := range days {
		if gone > 0 && i >= room-2 && i < after {
			if i == room-2 {
				out = append(out, fmt.Sprintf("  and %d days more: --full", gone))
			}
			continue
		}
		line := "  " + columns.Fill(d.day, widths[0]) + " " + columns.Fill(d.hours, widths[1]) + " " + columns.Right(d.people, widths[2]) + " " +
			columns.Fill(d.work, widths[3])
		out = append(out, strings.TrimRight(line+inRoom(d.marks, columns.Page-columns.Width(line)-2), " "))
	}
	return out
}

// mostWork is the room of what is done on a day.
const mostWork = 15

// listed is a list in that room. A plus says that there is more. What is read beside other
// work is the ferment.
func listed(all []string) string {
	if len(all) > 1 {
		all = slices.Clone(all)
		for i, s := range all {
			if s == readFerment {
				all[i] = "read"
			}
		}
	}
	out := ""
	for i, s := range all {
		next := strings.TrimPrefix(out+", "+s, ", ")
		left := 1
		if i == len(all)-1 {
			left = 0
		}
		if columns.Width(next)+left > mostWork {
			if out == "" {
				return columns.Cut(s, mostWork)
			}
			return out + "+"
		}
		out = next
	}
	return out
}

// inRoom joins marks as far as there is room, the last kept before those in the middle.
func inRoom(marks []string, room int) string {
	const joint = " · "
	for len(marks) > 1 && columns.Width(strings.Join(marks, joint)) > room {
		marks = slices.Delete(slices.Clone(marks), len(marks)-2, len(marks)-1)
	}
	if len(marks) == 0 {
		return ""
	}
	return "  " + columns.Cut(strings.Join(marks, joint), room)
}
