package season

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"newmake/compile/plan"
	"newmake/compile/stage/schedule"
	"newmake/compile/work"
	"newmake/lang/sorting"
)

func (s *answer) closures() []Closed {
	out := []Closed{}
	for _, c := range s.Asks.Closed {
		out = append(out, Closed{From: c.From.String(), To: c.To.String(), Why: c.Why})
	}
	for _, w := range s.Asks.Without {
		c := Closed{From: w.From.String(), To: w.To.String(), Vessel: w.Name, Why: w.Why}
		if w.Person {
			c.Vessel, c.Person = "", w.Name
		}
		out = append(out, c)
	}
	sorting.Stable(out, func(a, b Closed) int { return cmp.Compare(a.From, b.From) })
	return out
}

// vessels are the uses of each vessel: a run's, from its first task to its cleaning.
func (s *answer) vessels() []Vessel {
	out := []Vessel{}
	whole := float64(s.lastMinute()-s.axis.on(s.Asks.From).from) / 60
	for _, v := range s.Plant.Vessels {
		one := Vessel{Name: v.Name, Kind: v.Kind.String(), Uses: []Use{}}
		open := whole
		for _, o := range s.house.asks[v.Name] {
			one.Out = append(one.Out, Span{From: s.axis.stamp(o.from), To: s.axis.stamp(o.to)})
			open -= float64(o.to-o.from) / 60
		}
		for _, r := range s.out.Runs {
			var uses []Use
			for _, t := range r.Tasks {
				if t.Vessel != v.Name {
					continue
				}
				clean := ends(t.Key, "clean")
				if n := len(uses); n > 0 && uses[n-1].Stage == t.Stage && uses[n-1].Cleaning == clean {
					if moment(t.End).After(moment(uses[n-1].To)) {
						uses[n-1].To = t.End
					}
					continue
				}
				uses = append(uses, Use{Run: r.Number, Batch: r.Batch, Stage: t.Stage, From: t.Start, To: t.End, Cleaning: clean})
			}
			one.Uses = append(one.Uses, uses...)
		}
		sorting.Stable(one.Uses, func(a, b Use) int { return moment(a.From).Compare(moment(b.From)) })
		for _, u := range one.Uses {
			one.BusyHours += moment(u.To).Sub(moment(u.From)).Hours()
		}
		if open > 0 {
			one.BusyPct = to(100*one.BusyHours/open, 1)
		}
		one.BusyHours = to(one.BusyHours, 1)
		out = append(out, one)
	}
	return out
}

// loads are the heat and the people, from time to time.
func (s *answer) loads() (heat, people []Load) {
	kw, crew := map[int]int{}, map[int]int{}
	for _, r := range s.out.Runs {
		for _, t := range r.Tasks {
			from, end := s.axis.minute(moment(t.Start)), s.axis.minute(moment(t.End))
			kw[from] += int(math.Round(t.KW * 10))
			kw[end] -= int(math.Round(t.KW * 10))
			if t.Attend == plan.Start {
				end = min(end, from+beginsMin)
			}
			if t.Attend != plan.Alone && !work.IsRound(t.Key) {
				crew[from] += t.People
				crew[end] -= t.People
			}
		}
	}
	load := func(change map[int]int, unit float64) []Load {
		out := []Load{}
		for _, x := range steps(change, 0, s.axis.minutes) {
			out = append(out, Load{At: s.axis.stamp(x.from), Amount: float64(x.amount) / unit})
		}
		return out
	}
	return load(kw, 10), load(crew, 1)
}

// conflicts are those that are left: of what was begun.
func (s *answer) conflicts() []Conflict {
	found := []Conflict{}
	var slots []schedule.Slot
	type member struct{ run, key string }
	of := map[string]member{}
	for _, r := range s.out.Runs {
		for i, t := range r.Tasks {
			if work.IsRound(t.Key) {
				continue
			}
			key := r.Number + "\x00" + t.Key + "\x00" + strconv.Itoa(i)
			of[key] = member{r.Number, t.Key}
			slot := schedule.Slot{Task: schedule.Task{Key: key, People: t.People, Power: t.KW * 1000, Attend: schedule.Throughout}, Start: moment(t.Start), End: moment(t.End)}
			switch t.Attend {
			case plan.Start:
				slot.Attend = schedule.Begin
			case plan.Alone:
				slot.Attend = schedule.Unattended
			}
			slots = append(slots, slot)
		}
		for _, v := range s.out.Vessels { // a vessel is one's from the first task to the end of its cleaning
			var from, until string
			for _, u := range v.Uses {
				if u.Run != r.Number {
					continue
				}
				if from == "" {
					from = u.From
				}
				until = u.To
			}
			if from != "" {
				key := r.Number + "\x00" + v.Name
				of[key] = member{r.Number, ""}
				slots = append(slots, schedule.Slot{Task: schedule.Task{Key: key, Vessel: v.Name, Attend: schedule.Unattended}, Start: moment(from), End: moment(until)})
			}
		}
	}
	for _, c := range schedule.Conflicts(slots, s.crewMost(), s.Plant.BoilerW) {
		one := Conflict{Kind: conflictKinds[c.Kind], Vessel: c.Vessel, From: s.axis.stamp(s.axis.minute(c.From)), To: s.axis.stamp(s.axis.minute(c.To)), Need: c.Need, Have: c.Have}
		if c.Kind == schedule.Boiler {
			one.Need, one.Have = to(c.Need/1000, 1), to(c.Have/1000, 1)
		}
		for _, k := range c.Keys {
			one.Tasks = append(one.Tasks, Member{of[k].run, of[k].key})
		}
		found = append(found, one)
	}
	return found
}

var conflictKinds = map[schedule.ConflictKind]string{schedule.Crew: "crew", schedule.Boiler: "boiler", schedule.Vessel: "vessel"}

func (s *answer) days() []Day {
	all := []Day{}
	for i := range s.axis.days {
		d := &s.axis.days[i]
		if !s.Asks.Has(d.date) {
			continue
		}
		one := Day{Date: d.date.String(), Runs: []string{}}
		if d.closed != nil {
			one.Closed, one.Why = true, d.closed.Why
		}
		for k, p := range d.people {
			one.People += p.people
			if k == 0 || s.axis.minute(moment(one.Open)) > p.open {
				one.Open = s.axis.stamp(p.open)
			}
			if k == 0 || s.axis.minute(moment(one.Close)) < p.close {
				one.Close = s.axis.stamp(p.close)
			}
			if p.who != "" {
				one.Who = append(one.Who, p.who)
			}
		}
		within := func(loads []Load) float64 {
			most := 0.0
			for n, l := range loads {
				next := s.axis.minutes
				if n+1 < len(loads) {
					next = s.axis.minute(moment(loads[n+1].At))
				}
				if at := s.axis.minute(moment(l.At)); at < d.to && next > d.from {
					most = max(most, l.Amount)
				}
			}
			return most
		}
		one.MostKW, one.Wanted = within(s.out.Boiler), int(within(s.out.Crew))
		for _, r := range s.out.Runs {
			if slices.ContainsFunc(r.Tasks, func(t Task) bool {
				at := s.axis.minute(moment(t.Start))
				return t.Attend != plan.Alone && at >= d.from && at < d.to
			}) {
				one.Runs = append(one.Runs, r.Number)
				one.Wanted = max(one.Wanted, 1)
			}
		}
		all = append(all, one)
	}
	return all
}
