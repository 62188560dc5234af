package weeks

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"time"

	"newmake/compile/book/season"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
	"newmake/compile/show/text"
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
	Hours  string // of the shift; "" if nobody works
	Why    string // why nobody does
	People string
	Jobs   []job
	Stands []string // what stands in the vessels, and wants nobody
}

// job is one stage of a run, as far as it falls on a day.
type job struct {
	Clock, Until string
	What, Where  string
	People       string
	Out          bool // out of the shift
	Conflict     bool
	at, to       time.Time
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
	d := wallDay{Date: date, Day: day(date)}
	for _, x := range v.s.Days {
		if x.Date == date {
			d.Why = safe(x.Why)
			if x.Open != "" {
				d.Hours = measure.Clock(x.Open) + " to " + measure.Clock(x.Close)
				d.People = fmt.Sprintf("%s there, %d wanted at most", words.CountOf(x.People, "person", "people"), x.Wanted)
			}
		}
	}
	clash := v.members()
	for _, r := range v.s.Runs {
		for _, s := range stages(r) {
			if j, ok := jobOn(date, r, s, clash); ok {
				d.Jobs = append(d.Jobs, j)
			}
		}
	}
	slices.SortStableFunc(d.Jobs, func(a, b job) int { return cmp.Or(a.at.Compare(b.at), cmp.Compare(a.What, b.What)) })
	for _, x := range v.s.Vessels {
		for _, u := range x.Uses {
			if u.Stage == "ferment" && !u.Cleaning && dateOf(u.From) <= date && date <= dateOf(u.To) {
				d.Stands = append(d.Stands, fmt.Sprintf("%s: %s, run %s", safe(x.Name), safe(u.Batch), safe(u.Run)))
			}
		}
		for _, o := range x.Out {
			if dateOf(o.From) <= date && date <= dateOf(o.To) {
				d.Stands = append(d.Stands, fmt.Sprintf("%s: out of use", safe(x.Name)))
			}
		}
	}
	return d
}

// members are the tasks that take part in a conflict.
func (v say) members() map[season.Member]bool {
	out := map[season.Member]bool{}
	for _, c := range v.s.Conflicts {
		for _, m := range c.Tasks {
			out[m] = true
		}
	}
	return out
}

// jobOn is what people do in a stage on a day.
func jobOn(date string, r season.Run, s stage, clash map[season.Member]bool) (job, bool) {
	var j job
	var from, to string
	most := 0
	for _, t := range s.Tasks {
		if t.Attend == plan.Alone || dateOf(t.Start) != date {
			continue
		}
		if from == "" || moment(t.Start).Before(moment(from)) {
			from = t.Start
		}
		if to == "" || moment(t.End).After(moment(to)) {
			to = t.End
		}
		most = max(most, t.People)
		j.Out = j.Out || t.OutOfShift > 0
		j.Conflict = j.Conflict || clash[season.Member{Run: r.Number, Key: t.Key}]
		if j.Where == "" {
			j.Where = safe(t.Vessel)
		}
	}
	if from == "" {
		return j, false
	}
	j.at, j.to, j.Clock, j.Until = moment(from), moment(to), measure.Clock(from), measure.Clock(to)
	if dateOf(to) != date {
		j.Until += " " + moment(to).Format("Mon")
	}
	j.What = fmt.Sprintf("%s: %s, run %s", stageWord(s.Name), safe(r.Batch), safe(r.Number))
	j.People = words.CountOf(most, "person", "people")
	return j, true
}

// WeekText writes one week for a terminal.
func WeekText(w io.Writer, s *season.Season, n int, o Options) error {
	v := of(s)
	p := &page{columns.Writer{Bold: o.Bold}, v, all}
	x := v.week(n)
	p.Strong(safe(s.Name) + ": " + x.Title)
	for _, d := range x.Days {
		head := d.Day
		switch {
		case d.Why != "":
			head += ": closed, " + d.Why
		case d.Hours == "":
			head += ": nobody is there"
		default:
			head += ": " + d.Hours + ", " + d.People
		}
		p.Heading(head)
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
