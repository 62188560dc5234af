// Package today answers what is to be done in a house on a day: the work of the runs
// that are under way, of the batches that are to begin, and the casks to be sampled.
package today

import (
	"slices"
	"strings"
	"time"

	"newmake/compile/book/cellar"
	"newmake/compile/front"
	"newmake/compile/made"
	"newmake/compile/plan"
	"newmake/compile/work"
	"newmake/lang/record"
	"newmake/lang/sorting"
)

// Format and Version name the shape of an Answer as JSON.
const (
	Format  = "newmake.today"
	Version = "1.0"
)

// Answer is what is to be done on a day.
type Answer struct {
	Format  string   `json:"format"`
	Version string   `json:"version"`
	Date    string   `json:"date"` // 2026-03-10
	Work    []Work   `json:"work"` // by the hour at which it begins
	Seasons []Season `json:"seasons"`
	Casks   Casks    `json:"casks"`
	Late    []Late   `json:"late,omitempty"`
	Next    *Next    `json:"next,omitempty"`   // the next day with work, where this one has none
	Unread  []string `json:"unread,omitempty"` // batches and runs that cannot be planned
}

// Work is the work of one batch on the day.
type Work struct {
	Batch    string         `json:"batch"`
	Run      string         `json:"run,omitempty"` // its number, where one is opened
	Units    string         `json:"units"`         // us or si
	Day      plan.Day       `json:"day"`
	Steps    []plan.Step    `json:"steps"` // those that begin on the day
	Cautions []plan.Caution `json:"cautions"`
}

// Casks are those that want somebody, by package cellar.
type Casks struct {
	Units  string `json:"units"` // us or si
	Leaks  []Cask `json:"leaks"`
	Sample []Cask `json:"sample"`   // due on the day, or before and not yet drawn
	Over   []Cask `json:"restOver"` // its rest is over, and it is still there
}

// Cask is one of them.
type Cask struct {
	Serial string `json:"serial"`
	Run    string `json:"run"`
	Batch  string `json:"batch"`
	Filled string `json:"filled"` // 2026-03-12
	Place  string `json:"place,omitempty"`
	Since  string `json:"since"` // it leaks, is due, or may be bottled
	// Kg is what a leaking cask lost beyond its like.
	Kg float64 `json:"kg,omitempty"`
}

// Any reports whether there is one.
func (c *Casks) Any() bool { return len(c.Leaks)+len(c.Sample)+len(c.Over) > 0 }

// Late is a stage of a run that was to be begun before the day, and of which the record of
// the run, which has been kept so far, says nothing.
type Late struct {
	Run     string `json:"run"`
	Batch   string `json:"batch"`
	Stage   string `json:"stage"`   // strip, spirit
	Planned string `json:"planned"` // 2026-03-12
}

// Next is a day with work after one that has none.
type Next struct {
	Date  string `json:"date"`
	Batch string `json:"batch"`
}

// longest is how many days a batch takes from the mash to the cask, and more.
const longest = 60

// Of is the work of a house on a day. What a season plans is told by the season alone: the
// start that is written in its batch, and the plan of one of its runs by itself, know nothing
// of the others.
func Of(src *front.Source, on record.Date) (*Answer, error) {
	a := &Answer{Format: Format, Version: Version, Date: on.String(), Work: []Work{}, Seasons: []Season{}, Casks: Casks{Leaks: []Cask{}, Sample: []Cask{}, Over: []Cask{}}}
	told := a.seasons(src, on)
	begun := map[string]bool{} // batch and day of start
	for _, number := range src.House.RunNumbers() {
		r, _ := src.House.Run(number)
		if r == nil || r.Batch == "" || r.Date.IsZero() {
			a.Unread = append(a.Unread, "run "+number)
			continue
		}
		begun[r.Batch+" "+r.Date.String()] = true
		if inWood(r) || told.runs[r.Number] {
			continue
		}
		if r.Date.Compare(on) > 0 || r.Date.After(longest).Compare(on) < 0 {
			continue
		}
		if err := a.plan(src, r.Batch, r.Date.String(), r, on); err != nil {
			return nil, err
		}
	}
	a.casks(src, on)
	for _, name := range src.House.Batches() {
		b, list := src.House.Batch(name)
		if b == nil || list.HasErrors() {
			a.Unread = append(a.Unread, name)
			continue
		}
		if b.Start.Assumed {
			continue
		}
		start := record.Date{Year: b.Start.Year, Month: time.Month(b.Start.Month), Day: b.Start.Day}
		switch {
		case begun[name+" "+start.String()], told.has(name, start):
		case start.Compare(on) > 0:
			a.next(start.String(), name)
		case start.After(longest).Compare(on) >= 0 && !isTrial(src, b.Parent, start):
			if err := a.plan(src, name, start.String(), nil, on); err != nil {
				return nil, err
			}
		}
	}
	sorting.Stable(a.Work, func(x, y Work) int { return plan.Moment(x.Day.From).Compare(plan.Moment(y.Day.From)) })
	if len(a.Work) > 0 || a.inSeason() {
		a.Next = nil
	}
	return a, nil
}

// isTrial reports whether a batch varies another that begins on the same day: one of the two is
// made, and it is the parent until a run says otherwise.
func isTrial(src *front.Source, parent string, start record.Date) bool {
	if parent == "" {
		return false
	}
	p, _ := src.House.Batch(parent)
	return p != nil && !p.Start.Assumed && start == record.Date{Year: p.Start.Year, Month: time.Month(p.Start.Month), Day: p.Start.Day}
}

// plan adds the work of a batch that is begun on a day. Of a run, nil for none, the stages
// that its record has begun stand when they were, and what is to come follows them.
func (a *Answer) plan(src *front.Source, name, start string, run *record.Run, on record.Date) error {
	b, err := src.Batch(name, nil)
	if err != nil {
		return err
	}
	if err := b.On(start); err != nil {
		return err
	}
	number, hours := "", work.Hours{}
	if run != nil {
		number, hours.Begun = run.Number, made.Begun(run)
	}
	planned := b.PlanIn(hours)
	if !planned.Sound() {
		a.Unread = append(a.Unread, name)
		return nil
	}
	p := planned.Plan
	if run != nil {
		a.late(p, run, on)
	}
	for _, d := range p.Schedule.Days {
		if d.Date > on.String() {
			a.next(d.Date, name)
		}
		if d.Date != on.String() {
			continue
		}
		w := Work{Batch: name, Run: number, Units: p.Batch.Units, Day: d, Cautions: []plan.Caution{}}
		var keys []string
		for _, s := range p.Schedule.Steps {
			if plan.Moment(s.Start).Format(time.DateOnly) == d.Date {
				w.Steps, keys = append(w.Steps, s), append(keys, s.Cautions...)
			}
		}
		for _, c := range p.Cautions {
			if slices.Contains(keys, c.Key) {
				w.Cautions = append(w.Cautions, c)
			}
		}
		a.Work = append(a.Work, w)
	}
	return nil
}

// late adds the first stage that the record of a run should have come to.
func (a *Answer) late(p *plan.Plan, run *record.Run, on record.Date) {
	wrote := map[record.StageName]bool{}
	for i := range run.Visits {
		wrote[run.Stages[run.Visits[i].Stage].Name] = wrote[run.Stages[run.Visits[i].Stage].Name] || made.Written(&run.Visits[i])
	}
	kept := wrote[record.Mash] || wrote[record.Ferment]
	for _, stage := range []record.StageName{record.Strip, record.Spirit} {
		i := slices.IndexFunc(p.Schedule.Steps, func(s plan.Step) bool { return s.Stage == string(stage) })
		if i < 0 || wrote[stage] {
			kept = kept || wrote[stage]
			continue
		}
		if at := plan.Moment(p.Schedule.Steps[i].Start).Format(time.DateOnly); kept && at < on.String() {
			a.Late = append(a.Late, Late{run.Number, run.Batch, string(stage), at})
		}
		return
	}
}

// next keeps the first day with work after the day asked for.
func (a *Answer) next(date, batch string) {
	if a.Next == nil || date < a.Next.Date {
		a.Next = &Next{date, batch}
	}
}

// inWood reports whether a run's spirit went into wood, by its record.
func inWood(r *record.Run) bool {
	return slices.ContainsFunc(r.Visits, func(v record.Visit) bool {
		return r.Stages[v.Stage].Name == record.Fill && v.Word == "into" && !v.When.Date.IsZero()
	})
}

// casks are those that the cellar of the house names on the day.
func (a *Answer) casks(src *front.Source, on record.Date) {
	texts, said := src.House.Inventory()
	if said.HasErrors() {
		a.Unread = append(a.Unread, "the casks")
		return
	}
	c := cellar.On(cellar.HouseOf(src.House, texts, nil), on)
	a.Casks.Units = c.Units
	for i := range c.Casks {
		r := &c.Casks[i]
		k := Cask{Serial: r.Serial, Run: r.Run, Batch: r.Batch, Filled: r.Filled, Place: strings.Join(append([]string{r.Place}, r.Spot...), ", ")}
		if r.Place == "" {
			k.Place = ""
		}
		if r.Leak != nil {
			leak := k
			leak.Since, leak.Kg = r.Leak.Since, r.Leak.Kg
			a.Casks.Leaks = append(a.Casks.Leaks, leak)
		}
		if r.Sample != "" && r.Sample <= c.On {
			k.Since = r.Sample
			a.Casks.Sample = append(a.Casks.Sample, k)
		}
		if r.Target != nil && r.Target.Over && !r.Empty() {
			k.Since = r.Target.On
			a.Casks.Over = append(a.Casks.Over, k)
		}
	}
}
