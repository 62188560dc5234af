package weeks

import (
	"cmp"
	"slices"
	"strings"

	"newmake/compile/book/season"
	"newmake/compile/plan"
	"newmake/compile/work"
	"newmake/lang/sorting"
)

// Stage is what is done of a run from when to when, in which vessel, as one sees it from
// afar.
type Stage struct {
	Name     string // mash, ferment, strip, spirit, fill; with Cleaning what cleans up after it
	Cleaning bool   // it may be done by somebody else, and later
	Vessel   string
	From, To string // time
	People   int    // most at a time, of what wants somebody
	Tasks    []season.Task
}

// Stages are those of a run, in the order in which they begin.
func Stages(r season.Run) []Stage {
	var out []Stage
	for _, t := range r.Tasks {
		clean := strings.HasSuffix(t.Key, ".clean")
		n := slices.IndexFunc(out, func(s Stage) bool { return s.Name == t.Stage && s.Cleaning == clean })
		if n < 0 {
			n = len(out)
			out = append(out, Stage{Name: t.Stage, Cleaning: clean, Vessel: t.Vessel, From: t.Start, To: t.End})
		}
		s := &out[n]
		if plan.Moment(t.Start).Before(plan.Moment(s.From)) {
			s.From = t.Start
		}
		if plan.Moment(t.End).After(plan.Moment(s.To)) {
			s.To = t.End
		}
		if s.Vessel == "" {
			s.Vessel = t.Vessel
		}
		if t.Attend != plan.Alone {
			s.People = max(s.People, t.People)
		}
		s.Tasks = append(s.Tasks, t)
	}
	return out
}

// Job is what people do in a stage on a day.
type Job struct {
	Run        string   `json:"run"`
	Batch      string   `json:"batch"`
	Stage      string   `json:"stage"`          // mash, ferment, strip, spirit, fill
	Work       []string `json:"work,omitempty"` // what is done of the ferment or the fill on the day
	Cleaning   bool     `json:"cleaning,omitempty"`
	Vessel     string   `json:"vessel,omitempty"`
	From       string   `json:"from"` // RFC 3339, in the plant's zone
	To         string   `json:"to"`
	People     int      `json:"people"`
	OutOfShift bool     `json:"outOfShift,omitempty"`
	Conflict   bool     `json:"conflict,omitempty"` // it takes part in one
}

// Jobs are those of a season on a day, 2026-04-07, by the hour at which they begin.
func Jobs(s *season.Season, date string) []Job {
	clash := map[season.Member]bool{}
	for _, c := range s.Conflicts {
		for _, m := range c.Tasks {
			clash[m] = true
		}
	}
	var out []Job
	for _, r := range s.Runs {
		for _, st := range Stages(r) {
			j := Job{Run: r.Number, Batch: r.Batch, Stage: st.Name, Cleaning: st.Cleaning}
			for _, t := range st.Tasks {
				if t.Attend == plan.Alone || !strings.HasPrefix(t.Start, date) {
					continue
				}
				if j.From == "" || plan.Moment(t.Start).Before(plan.Moment(j.From)) {
					j.From = t.Start
				}
				if j.To == "" || plan.Moment(t.End).After(plan.Moment(j.To)) {
					j.To = t.End
				}
				if w := workOf(t.Key); w != "" && !slices.Contains(j.Work, w) {
					j.Work = append(j.Work, w)
				}
				j.People = max(j.People, t.People)
				j.OutOfShift = j.OutOfShift || t.OutOfShift > 0
				j.Conflict = j.Conflict || clash[season.Member{Run: r.Number, Key: t.Key}]
				if j.Vessel == "" {
					j.Vessel = t.Vessel
				}
			}
			if j.From != "" {
				out = append(out, j)
			}
		}
	}
	sorting.Stable(out, func(a, b Job) int { return plan.Moment(a.From).Compare(plan.Moment(b.From)) })
	return out
}

// works are what is done of a ferment and of a fill: of these a day has a part, and its name
// alone does not say which.
var works = map[string]string{
	"ferment.fill": "pitch", "ferment.pitch": "pitch",
	"fill.gauge": "gauge", "fill.reduce": "reduce", "fill.soak": "soak casks", "fill.cask": "fill casks", "fill.keep": "put the spirit away", "fill.bottle": "bottle",
}

func workOf(key string) string {
	if work.IsRound(key) {
		return "read the ferment"
	}
	return works[key]
}

// Standing is a vessel that holds something on a day, or is out of use.
type Standing struct {
	Vessel string `json:"vessel"`
	Run    string `json:"run,omitempty"`
	Batch  string `json:"batch,omitempty"` // "" where it is out of use
}

// Stands are the vessels in which something ferments on a day, and those that are out of
// use.
func Stands(s *season.Season, date string) []Standing {
	on := func(from, to string) bool { return day10(from) <= date && date <= day10(to) }
	var out []Standing
	for _, x := range s.Vessels {
		for _, u := range x.Uses {
			if u.Stage == "ferment" && !u.Cleaning && on(u.From, u.To) {
				out = append(out, Standing{x.Name, u.Run, u.Batch})
			}
		}
		for _, o := range x.Out {
			// what is out until midnight is in use again on that day
			if on(o.From, o.To) && !strings.HasPrefix(o.To, date+"T00:00") {
				out = append(out, Standing{Vessel: x.Name})
			}
		}
	}
	sorting.Stable(out, func(a, b Standing) int { return cmp.Compare(a.Vessel, b.Vessel) })
	return out
}

func day10(at string) string { return at[:min(len(at), len("2026-04-07"))] }
