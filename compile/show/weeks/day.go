package weeks

import (
	"io"
	"slices"
	"time"

	"newmake/compile/book/season"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
	"newmake/compile/show/text"
	"newmake/lang/diag"
	"newmake/lang/sorting"
)

// DaysOf are the days on which sheets have work, 2026-04-07, in order. On a day on which
// nobody is there nobody reads a ferment.
func DaysOf(s *season.Season, sheets []season.Sheet) []string {
	var out []string
	for _, x := range sheets {
		for _, step := range x.Plan.Schedule.Steps {
			if at := dateOf(step.Start); wanted(step) && !shut(s, at) && !slices.Contains(out, at) {
				out = append(out, at)
			}
		}
	}
	slices.Sort(out)
	return out
}

// wanted reports whether a step of the work wants somebody. Years in wood are no work.
func wanted(s plan.Step) bool { return s.Attend != plan.Alone && s.Stage != "cask" }

// shut reports whether nobody is there on a day of the season.
func shut(s *season.Season, date string) bool {
	return slices.ContainsFunc(s.Days, func(d season.Day) bool { return d.Date == date && d.Open == "" })
}

// DayText writes a day's sheet: what is done of each run on it, with what is measured out,
// what should be read, and the dangers in full.
func DayText(w io.Writer, s *season.Season, sheets []season.Sheet, date string) error {
	var runs []season.Sheet
	first := map[string]time.Time{}
	for _, x := range sheets {
		for _, step := range x.Plan.Schedule.Steps {
			if !wanted(step) || dateOf(step.Start) != date {
				continue
			}
			if at := moment(step.Start); first[x.Run].IsZero() || at.Before(first[x.Run]) {
				first[x.Run] = at
			}
		}
		if !first[x.Run].IsZero() {
			runs = append(runs, x)
		}
	}
	sorting.Stable(runs, func(a, b season.Sheet) int { return first[a.Run].Compare(first[b.Run]) })
	p := &page{columns.Writer{}, of(s), all}
	p.Strong("Work of " + moment(date).Format("Mon 2 Jan 2006") + ", " + diag.Safe(s.Plant))
	for _, d := range s.Days {
		if d.Date == date && d.Open != "" {
			there := measure.Clock(d.Open) + " to " + measure.Clock(d.Close)
			if len(d.Who) > 0 {
				there += ": " + diag.Safe(join(d.Who))
			}
			p.Para(0, 2, there)
		}
	}
	for _, x := range runs {
		p.Gap()
		p.Strong("RUN " + diag.Safe(x.Run))
		if _, err := io.WriteString(w, p.String()); err != nil {
			return err
		}
		if err := text.Write(w, x.Plan, text.Options{Units: p.u, Days: []string{date}}); err != nil {
			return err
		}
		p.Writer = columns.Writer{}
	}
	p.Gap()
	p.Para(0, 0, text.SafetyLine)
	_, err := io.WriteString(w, p.String())
	return err
}
