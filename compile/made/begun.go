package made

import (
	"slices"
	"time"

	"newmake/compile/stage/schedule"
	"newmake/lang/record"
)

// Begun is when the stages of a run were begun that a house may put off, the runs of its
// stills and the fill, as far as the record says: each by its first line with a clock, or
// else with a day and something read on it.
func Begun(r *record.Run) map[string]schedule.Begun {
	out := map[string]schedule.Begun{}
	for i := range r.Visits {
		v := &r.Visits[i]
		stage := r.Stages[v.Stage].Name
		if stage != record.Strip && stage != record.Spirit && stage != record.Fill {
			continue
		}
		var b schedule.Begun
		switch {
		case v.When.Known():
			b = schedule.Begun{At: v.When.Time, Hour: true}
		case Written(v) && !v.When.Date.IsZero() && r.Zone != nil:
			d := v.When.Date
			b = schedule.Begun{At: time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, r.Zone)}
		default:
			continue
		}
		if was, ok := out[string(stage)]; !ok || b.At.Before(was.At) {
			out[string(stage)] = b
		}
	}
	return out
}

// Written reports whether a line was written by somebody who was there: it is none of the
// skeleton that waits to be filled in.
func Written(v *record.Visit) bool {
	return v.When.Known() || v.None || slices.ContainsFunc(v.Read, func(r record.Reading) bool { return r.State == record.Read })
}
