package weeks

import (
	"fmt"
	"io"
	"time"

	"newmake/compile/ask/weeks"
	"newmake/compile/book/season"
	"newmake/compile/measure"
	"newmake/compile/show/columns"
	"newmake/compile/show/text"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// WeeksOf is how many weeks a season touches, Monday to Sunday.
func WeeksOf(s *season.Season) int {
	from, to := moment(s.From), moment(s.To)
	if from.IsZero() || to.Before(from) {
		return 0
	}
	return int(to.Sub(monday(from)).Hours()/24)/7 + 1
}

// monday is that of a day's week.
func monday(d time.Time) time.Time { return d.AddDate(0, 0, -(int(d.Weekday())+6)%7) }

// wall is one week as it hangs on the wall.
type wall struct {
	Title string
	Days  []wallDay
}

type wallDay struct {
	Date   string // 2026-04-07
	Day    string // Tue 7 Apr
	Hours  string // of the shift and who is there, or that nobody is
	Jobs   []job
	Stands []string // what stands in the vessels, and wants nobody
}

// job is what people do in a stage on a day.
type job struct {
	Clock, Until  string
	What, Where   string
	People        string
	Out, Conflict bool
}

// week gathers one week, counted from 1.
func (v say) week(n int) wall {
	first := monday(moment(v.s.From)).AddDate(0, 0, 7*(n-1))
	w := wall{Title: fmt.Sprintf("Week %d of %d, %s to %s", n, WeeksOf(v.s), first.Format("2 January"), first.AddDate(0, 0, 6).Format("2 January 2006"))}
	for i := range 7 {
		date := first.AddDate(0, 0, i).Format(time.DateOnly)
		if date < v.s.From || date > v.s.To {
			continue
		}
		w.Days = append(w.Days, v.wallDay(date))
	}
	return w
}

func (v say) wallDay(date string) wallDay {
	d := wallDay{Date: date, Day: day(date), Hours: "nobody is there"}
	for _, x := range v.s.Days {
		if x.Date == date {
			switch {
			case x.Closed:
				d.Hours = closed(x.Why)
			case x.Open != "":
				d.Hours = fmt.Sprintf("%s to %s, %s there, %d wanted at most", measure.Clock(x.Open), measure.Clock(x.Close), words.CountOf(x.People, "person", "people"), x.Wanted)
			}
		}
	}
	for _, j := range weeks.Jobs(v.s, date) {
		d.Jobs = append(d.Jobs, jobOf(j))
	}
	for _, x := range weeks.Stands(v.s, date) {
		if x.Batch == "" {
			d.Stands = append(d.Stands, diag.Safe(x.Vessel)+": out of use")
			continue
		}
		d.Stands = append(d.Stands, fmt.Sprintf("%s: %s, run %s", diag.Safe(x.Vessel), diag.Safe(x.Batch), diag.Safe(x.Run)))
	}
	return d
}

// jobOf is a job in words.
func jobOf(j weeks.Job) job {
	out := job{Clock: measure.Clock(j.From), Until: measure.Clock(j.To), Where: diag.Safe(j.Vessel), Out: j.OutOfShift, Conflict: j.Conflict,
		What: JobName(j), People: words.CountOf(j.People, "person", "people")}
	if !measure.SameDay(j.From, j.To) {
		out.Until += " " + moment(j.To).Format("Mon")
	}
	return out
}

// JobName is what a job is, and of which run.
func JobName(j weeks.Job) string {
	what := stageWord(j.Stage, j.Cleaning)
	if len(j.Work) > 0 {
		what = words.And(j.Work)
	}
	return fmt.Sprintf("%s: %s, run %s", what, diag.Safe(j.Batch), diag.Safe(j.Run))
}

// WeekText writes one week for a terminal.
func WeekText(w io.Writer, s *season.Season, n int, o Options) error {
	v := of(s)
	p := &page{columns.Writer{Bold: o.Bold}, v, all}
	x := v.week(n)
	p.Strong(diag.Safe(s.Name) + ": " + x.Title)
	for _, d := range x.Days {
		p.Heading(d.Day + ": " + d.Hours)
		for _, j := range d.Jobs {
			line := j.What
			if j.Where != "" {
				line += ", " + j.Where
			}
			line += ", " + j.People
			if j.Out {
				line += ", OUT OF THE SHIFT"
			}
			if j.Conflict {
				line = "! " + line
			}
			p.Item("  "+j.Clock+" to "+j.Until, 20, line)
		}
		for _, st := range d.Stands {
			p.Para(2, 4, st)
		}
	}
	p.Gap()
	p.Para(0, 0, text.SafetyLine)
	_, err := io.WriteString(w, p.String())
	return err
}
