// Package blank holds the readings of a run against the blanks of a plan: which
// reading answers which blank, what was read unasked, and what stays open. Whoever
// asks what a run tells of a plan (review, learn) begins here.
package blank

import (
	"slices"
	"strconv"
	"strings"
	"time"

	"newmake/compile/plan"
	"newmake/lang/record"
)

// Planned is what a plan said of a run: it is kept beside the record, so that the
// readings can be held against the sheet that was worked from.
type Planned struct {
	Format  string       `json:"format"`
	Version string       `json:"version"`
	Batch   string       `json:"batch"`
	Start   string       `json:"start"` // RFC 3339
	Source  *plan.Source `json:"source,omitempty"`
	Mash    []MashStep   `json:"mash"`
	Blanks  []plan.Blank `json:"blanks"`
	Cost    *plan.Cost   `json:"cost,omitempty"` // by the prices of the day; none where no prices were stated
}

// Format and Version name the shape of Planned as JSON.
const (
	Format  = "newmake.planned"
	Version = "1.0"
)

// MashStep is a line of the recipe's mash, by which a record names it.
type MashStep struct {
	ID   string   `json:"id"`
	Verb string   `json:"verb"`
	Adds []string `json:"adds,omitempty"`
}

// Of is what a plan says of a run of it.
func Of(p *plan.Plan) *Planned {
	out := &Planned{Format: Format, Version: Version, Batch: p.Batch.Name, Start: p.Schedule.Start, Source: p.Source, Blanks: p.Blanks(), Cost: p.Cost}
	out.Blanks = append(out.Blanks, left(p, out.Blanks)...)
	for _, s := range p.Mash.Steps {
		out.Mash = append(out.Mash, MashStep{s.ID, s.Verb, s.Adds})
	}
	return out
}

// leastLeftL is what is left over from which on it is gauged.
const leastLeftL = 0.05

// left are the blanks of what is left when the casks are full: who fills them puts it away, and
// no step of the plan is for that alone.
func left(p *plan.Plan, all []plan.Blank) []plan.Blank {
	i := slices.IndexFunc(all, func(b plan.Blank) bool { return b.Step == "fill.cask" })
	if i < 0 || p.Cask.Leftover.VolumeL <= leastLeftL {
		return nil
	}
	var out []plan.Blank
	for _, of := range []struct {
		kind       record.What
		instrument string
		should     plan.Quantity
	}{{record.Volume, "dipstick or measure", p.Cask.Leftover.Volume()}, {record.Strength, "spirit hydrometer", p.Cask.Leftover.Strength().At()}} {
		out = append(out, plan.Blank{ID: keep + "." + string(of.kind), Stage: string(record.Fill), Step: keep, Kind: of.kind, What: "left", Instrument: of.instrument, Due: all[i].Due, Should: of.should})
	}
	return out
}

// keep is the step of what no cask takes.
const keep = "fill.keep"

// Answer is a reading of a run, with the blank that it fills.
type Answer struct {
	Blank   *plan.Blank   // nil of what was read unasked
	Visit   *record.Visit // nil of what was weighed out
	Used    *record.Used  // nil of what was read on a visit
	Reading *record.Reading
	// More are further lines of the same thing that was weighed out: it came of
	// several sacks, and together they are the amount.
	More []*record.Used
}

// Filled is a plan's blanks with a run's readings.
type Filled struct {
	Answers []Answer      // in the order of the blanks
	Unasked []Answer      // readings that no blank asks for, in the order of the record
	Open    []*plan.Blank // not answered: nothing stands there, or `none`
	Blank   []Answer      // of those open: the word stands in the record, without a value yet
	None    []Answer      // of those open: it was written down that nothing was read
}

// Match finds which blank each reading of a run answers. A step is found by its word,
// a fraction by the cut that ends it, a round of the ferment and an hour of a still by
// their time; what was read and never asked for stands in Unasked.
func Match(p *Planned, run *record.Run) *Filled {
	m := &matcher{planned: p, run: run, byID: map[string]*plan.Blank{}, taken: map[string]*Answer{}}
	for i := range p.Blanks {
		m.byID[p.Blanks[i].ID] = &p.Blanks[i]
	}
	m.used()
	m.visits()
	out := &Filled{Unasked: m.unasked}
	for i := range p.Blanks {
		b := &p.Blanks[i]
		if a := m.taken[b.ID]; a != nil && a.Reading.State == record.Read {
			out.Answers = append(out.Answers, *a)
		} else {
			out.Open = append(out.Open, b)
			switch {
			case a == nil:
			case a.Reading.State == record.Blank:
				out.Blank = append(out.Blank, *a)
			case a.Reading.State == record.None:
				out.None = append(out.None, *a)
			}
		}
	}
	return out
}

type matcher struct {
	planned *Planned
	run     *record.Run
	byID    map[string]*plan.Blank
	taken   map[string]*Answer
	unasked []Answer
}

// used finds the blank of each weight: a grain by its name, water, backset and the
// rest by what they are, one after the other where the plan has several.
func (m *matcher) used() {
	for i := range m.run.Used {
		u := &m.run.Used[i]
		a := Answer{Used: u, Reading: &u.Amount}
		id := plan.Used + "." + u.What
		if m.byID[id] == nil {
			id = ""
			for _, b := range m.planned.Blanks {
				if b.Stage == plan.Used && b.What == u.What && (id == "" || m.taken[id] != nil && m.taken[b.ID] == nil) {
					id = b.ID
				}
			}
		}
		switch before := m.taken[id]; {
		case id == "":
			m.unasked = append(m.unasked, a)
		case before != nil && before.Reading.Kind == a.Reading.Kind:
			before.More = append(before.More, u)
		default:
			m.take(id, a)
		}
	}
}

// take answers a blank.
func (m *matcher) take(id string, a Answer) {
	a.Blank = m.byID[id]
	m.taken[id] = &a
}

// still is how far a run of a still has come.
type still struct {
	prefix   string    // strip, spirit.2
	fraction string    // that runs now
	first    time.Time // the first drop
	charge   int
}

// visits goes through the record in order and finds the step of each visit.
func (m *matcher) visits() {
	stage, gauged := -1, 0
	var now still
	last := "" // the step of the visit before
	for i := range m.run.Visits {
		v := &m.run.Visits[i]
		name := m.run.Stages[v.Stage].Name
		if v.Stage != stage {
			stage, last = v.Stage, ""
			if now.prefix == "" || !strings.HasPrefix(now.prefix, string(name)) {
				now = still{}
			}
		}
		step, ended := "", true
		switch name {
		case record.Mash:
			if step = m.mashStep(v); step == "" && v.Word == "" {
				step = last
			}
		case record.Ferment:
			step = m.fermentStep(v)
		case record.Strip, record.Spirit:
			step, ended = m.stillStep(&now, name, v)
		case record.Fill:
			switch v.Word {
			case "hearts":
				step = "fill.gauge"
			case "reduce":
				m.water(v)
				continue
			case "gauge":
				if step = "fill.reduce"; gauged > 0 {
					step = "fill.cask"
				}
				gauged++
			case "into":
				step = "fill.cask"
			case "left":
				step = keep
			}
		}
		for j := range v.Read {
			m.reading(step, ended, now, Answer{Visit: v, Reading: &v.Read[j]})
		}
		if step != "" {
			last = step
		}
	}
}

// reading finds the blank of a reading among those of a step: the one at its end, or
// the one whose time is nearest.
func (m *matcher) reading(step string, ended bool, now still, a Answer) {
	id := step + "." + string(a.Reading.What)
	switch {
	case step == "" || a.Reading.What == record.Lost:
	case ended:
		if m.byID[id] != nil && m.taken[id] == nil {
			m.take(id, a)
			return
		}
	default:
		if id := m.nearest(id, now, a.Visit.When); id != "" {
			m.take(id, a)
			return
		}
	}
	m.unasked = append(m.unasked, a)
}

// nearest finds the blank of an hourly reading that is nearest in time, counted from
// the first drop, and is not taken; in their order where no time is known.
func (m *matcher) nearest(id string, now still, when record.When) string {
	var best string
	var off time.Duration
	begin := m.due(now.prefix + ".heat." + string(record.Spout))
	for _, b := range m.planned.Blanks {
		if !strings.HasPrefix(b.ID, id+".") || m.taken[b.ID] != nil {
			continue
		}
		due := m.due(b.ID)
		if !when.Known() || now.first.IsZero() || begin.IsZero() || due.IsZero() {
			return b.ID
		}
		d := (when.Time.Sub(now.first) - due.Sub(begin)).Abs()
		if d <= mostOff && (best == "" || d < off) {
			best, off = b.ID, d
		}
	}
	return best
}

// mostOff is how far an hourly reading may lie from the blank that it answers: half
// the time between two.
const mostOff = 30 * time.Minute

func (m *matcher) due(id string) time.Time {
	b := m.byID[id]
	if b == nil || b.Due == "" {
		return time.Time{}
	}
	return plan.Moment(b.Due)
}

// mashStep is the step of the recipe that a visit of the cooker is of, "" if it is of
// none.
func (m *matcher) mashStep(v *record.Visit) string {
	nth := 0
	for _, s := range m.planned.Mash {
		if s.Verb != v.Word {
			continue
		}
		nth++
		if len(v.Names) > 0 {
			if slices.ContainsFunc(v.Names, func(n string) bool { return n == "all" || slices.Contains(s.Adds, n) }) {
				return s.ID
			}
		} else if nth == v.Nth {
			return s.ID
		}
	}
	return ""
}

// fermentStep is the step of a visit of the fermenter. A round is that of its day, or
// of the nearest hour where a day has several.
func (m *matcher) fermentStep(v *record.Visit) string {
	switch v.Word {
	case "pump":
		return "ferment.fill"
	case "pitch":
		return "ferment.pitch"
	case "":
	default:
		return ""
	}
	best, off := "", 24*time.Hour
	for _, b := range m.planned.Blanks {
		if b.Stage != "ferment" || !strings.HasPrefix(b.Step, "ferment.round.") || b.Step == best || m.visited(b.Step) {
			continue
		}
		due := m.due(b.ID)
		d := time.Duration(0)
		if v.When.Known() {
			d = v.When.Time.Sub(due).Abs()
		}
		if record.DateOf(due) == v.When.Date && d < off {
			best, off = b.Step, d
		}
	}
	return best
}

// visited reports whether a blank of a step is answered.
func (m *matcher) visited(step string) bool {
	for id := range m.taken {
		if m.byID[id].Step == step {
			return true
		}
	}
	return false
}

// endedBy is the fraction that each turn of the spout ends.
var endedBy = map[string]string{"heads": "foreshots", "hearts": "heads", "tails": "hearts"}

// stillStep is the step of a visit of a still, and whether it is its end.
func (m *matcher) stillStep(s *still, name record.StageName, v *record.Visit) (step string, ended bool) {
	if charge := max(v.Charge, 1); charge != s.charge {
		*s = still{prefix: m.charge(name, charge), charge: charge}
	}
	running := "tails"
	if name == record.Strip {
		running = "collect"
	}
	switch v.Word {
	case "charge":
		if m.alone(v) {
			return s.prefix + ".charge", true
		}
	case "first-drop":
		s.first, s.fraction = v.When.Time, "collect"
		if name == record.Spirit {
			s.fraction = "foreshots"
		}
		return s.prefix + ".heat", true
	case "to":
		s.fraction = v.Of
		return s.prefix + "." + endedBy[v.Of], true
	case "off":
		return s.prefix + "." + running, true
	case "low-wines", "feints":
		return s.prefix + ".stop", true
	case "":
		if s.fraction != "" {
			return s.prefix + "." + s.fraction, false
		}
	}
	return "", true
}

// charge is the key of a charge, of which the plan may have one or several.
func (m *matcher) charge(name record.StageName, n int) string {
	one := string(name)
	for _, b := range m.planned.Blanks {
		if b.Step == one+".charge" {
			return one
		}
	}
	return one + "." + strconv.Itoa(n)
}

// alone reports whether a line is all of a charge: what goes in from several places has a
// line for each, and no blank asks for one of them.
func (m *matcher) alone(v *record.Visit) bool {
	n := 0
	for i := range m.run.Visits {
		if o := &m.run.Visits[i]; o.Stage == v.Stage && o.Word == "charge" && o.Charge == v.Charge {
			n++
		}
	}
	return n == 1 || v.Of == ""
}

// water finds the blank of the water that hearts are reduced with.
func (m *matcher) water(v *record.Visit) {
	for i := range v.Read {
		a := Answer{Visit: v, Reading: &v.Read[i]}
		id := ""
		for _, b := range m.planned.Blanks {
			if b.Stage == plan.Used && b.Step == "fill.reduce" && b.Kind == record.Volume && v.Read[i].What == record.Water {
				id = b.ID
			}
		}
		if id == "" || m.taken[id] != nil {
			m.unasked = append(m.unasked, a)
			continue
		}
		m.take(id, a)
	}
}
