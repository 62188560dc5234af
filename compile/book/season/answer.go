package season

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"newmake/compile/book/season/search"
	"newmake/compile/lot"
	"newmake/compile/matter/stream"
	"newmake/compile/plan"
	"newmake/compile/stage/schedule"
	"newmake/lang/recipe"
	"newmake/lang/sorting"
)

// answer is the plan as it is given.
func (s *solver) answer() *Season {
	out := &Season{
		Format: Format, Version: Version, Name: s.Asks.Name, Plant: s.Plant.Name, Zone: s.Plant.Zone, Units: "us",
		From: s.Asks.From.String(), To: s.Asks.To.String(), Effort: s.steps,
		Runs: []Run{}, Demands: []Demanded{}, Conflicts: []Conflict{}, Closures: []Closed{}, Weekdays: []Weekdays{}, Bottlenecks: []Relief{}, Tanks: []TankLevel{},
		BoilerKW: to(s.Plant.BoilerW/1000, 1),
	}
	for _, name := range s.Asks.Batches() {
		if s.Batches[name].Units == recipe.SI {
			out.Units = "si"
		}
	}
	present := s.present()
	number := s.numbers(present)
	for i, j := range present {
		out.Runs = append(out.Runs, s.run(i, j, number))
	}
	out.Demands = s.demanded(present, number)
	out.Closures = s.closures()
	out.Vessels = s.vessels(out.Runs)
	out.Boiler, out.Crew = s.loads(out.Runs)
	out.Conflicts = s.conflicts(out)
	out.Days = s.days(out)
	out.Tanks = s.tankLevels(present, number)
	out.Left = s.left()
	out.Changes = s.changes(out.Runs)
	out.Weekdays = s.weekdays()
	out.Gap = s.gap()
	if !s.Quick {
		s.missed(out.Demands)
		out.Capacity, out.Bottlenecks = s.bottlenecks()
	}
	out.Buy = s.buy(out)
	if s.Draws > 0 && len(out.Runs) > 0 {
		out.Odds = s.odds(out, s.Draws)
	}
	out.LeftOut = s.leftOut
	for _, d := range s.unanswered() {
		out.Demands = append(out.Demands, d)
		if out.Odds != nil {
			out.Odds.AllMet = 0
			out.Odds.Demands = append(out.Odds.Demands, DemandOdds{Batch: d.Batch})
		}
	}
	s.summary(out)
	out.Effort = s.steps
	return out
}

// numbers are those of the runs: as recorded or printed, and else counted on.
func (s *solver) numbers(present []int) []string {
	out := make([]string, len(present))
	used := map[string]bool{}
	for i, j := range present {
		out[i] = s.list[j].number
		used[out[i]] = true
	}
	n := 0
	for i := range out {
		for out[i] == "" {
			n++
			if x := strconv.Itoa(n); !used[x] {
				out[i] = x
			}
		}
	}
	return out
}

// run is run i of those that are present, work j of the list.
func (s *solver) run(i, j int, number []string) Run {
	w, f := s.list[j], s.flows.runs[i]
	r := Run{
		Number: number[i], Batch: w.course.batch.Name, Mash: s.axis.stamp(s.start(j, 0)), Done: w.done != nil,
		Fermenter: s.vessel(search.Which(s.built.fermenter[j])), Tanks: s.tanksOf(j), Tasks: s.tasks(j), Filled: s.axis.stamp(s.filled(j)),
		Feints: Flow{From: []string{}, To: []string{}}, Backset: Flow{From: []string{}, To: []string{}},
	}
	if c := w.course; c.strip >= 0 {
		from, end := s.fermenting(j)
		r.FermentHours = to(float64(end-from)/60, 2)
		r.WashWaitHours = to(max(0, float64(end-from-c.dryMin)/60), 2)
	}
	if f.err != nil {
		r.Failed = f.err.Error()
		return r
	}
	s.flowed(&r, w.course, f, number)
	return r
}

// vessel is the name of what is meant, or of what was chosen.
func (s *solver) vessel(which search.Which) string {
	if which < 0 {
		return s.built.names[s.placed.Chosen[^which]]
	}
	return s.built.names[which]
}

// tanksOf are the tanks of a run, chosen or the only ones.
func (s *solver) tanksOf(j int) []string {
	var out []string
	for _, h := range s.built.Jobs[j].Holds {
		name := s.vessel(s.built.Holds[h].Of)
		if slices.ContainsFunc(s.Plant.Tanks, func(t *recipe.Tank) bool { return t.Name == name }) {
			out = append(out, name)
		}
	}
	return out
}

// fermenting is from when to when a run ferments, until its wash is stripped.
func (s *solver) fermenting(j int) (from, end int) {
	c := s.list[j].course
	return s.start(j, 0) + c.blocks[0].minutes, s.start(j, c.strip)
}

// tasks are those of a run by the clock.
func (s *solver) tasks(j int) []Task {
	out := []Task{}
	w := s.list[j]
	c, fermenter := w.course, s.vessel(search.Which(s.built.fermenter[j]))
	for k, b := range c.blocks {
		at := s.start(j, k)
		for n, t := range b.tasks {
			one := Task{Key: t.key, Stage: t.stage, Vessel: t.vessel, Start: s.axis.stamp(at + t.from), End: s.axis.stamp(at + t.to), Attend: attends[t.attend], People: t.people, KW: to(t.powerW/1000, 1)}
			if t.vessel == c.n.Fermented.Vessel.Name {
				one.Vessel = fermenter
			}
			if n == 0 && b.after >= 0 && !b.meanwhile {
				ready := s.start(j, b.after) + b.least
				if b.also >= 0 {
					ready = max(ready, s.start(j, b.also)+c.blocks[b.also].minutes)
				}
				one.WaitMin = float64(at - ready)
			}
			if t.attend == schedule.Throughout && w.done == nil {
				one.OutOfShift = float64(s.outside(at+t.from, at+t.to))
			}
			out = append(out, one)
		}
	}
	if c.strip >= 0 {
		from, end := s.fermenting(j)
		out = append(out, Task{Key: fermentKey, Stage: "ferment", Vessel: fermenter, Attend: plan.Alone, Start: s.axis.stamp(from), End: s.axis.stamp(end)})
	}
	sorting.Stable(out, func(a, b Task) int {
		return cmp.Or(moment(a.Start).Compare(moment(b.Start)), moment(a.End).Compare(moment(b.End)))
	})
	return out
}

// flowed is what a run made, what came into it and what it left.
func (s *solver) flowed(r *Run, c *course, f *flowed, number []string) {
	of := func(runs []int) []string {
		out := []string{}
		for _, k := range runs {
			switch {
			case k == opening:
				out = append(out, FromOpening)
			case k >= 0:
				out = append(out, number[k])
			}
		}
		return out
	}
	r.LowWines, r.Hearts, r.Casks, r.Leftover = rounded(f.n.Stripped.LowWines), rounded(f.n.Distilled.Hearts), f.casks, rounded(f.leftOf)
	if f.before >= 0 {
		r.SpiritIn, r.SpiritFrom = rounded(f.n.Filled.Before), number[f.before]
	}
	r.Feints = Flow{In: rounded(f.feintsIn), From: of(f.feintsFrom), Out: rounded(f.feintsOut), To: of(f.feintsTo), OtherKind: f.other}
	r.Backset = Flow{WantedL: to(litres(wantsBackset(c.batch)), 1), From: of([]int{f.backset}), To: of(f.backsetTo)}
	if f.backsetM3 > 0 {
		r.Backset.In = plan.Lot{VolumeL: to(litres(f.backsetM3), 2)}
		r.Backset.AgeH = to(float64(f.backsetMin)/60, 1)
	}
	r.Backset.Out = rounded(f.n.Stripped.PotAle())
	r.NoKept, r.NoPotAle = f.noKept, f.noPotAle
	if steady := c.n.Distilled.Hearts.PureAlcoholM3(); steady > 0 {
		r.OfSteadyPct = to(100*f.n.Distilled.Hearts.PureAlcoholM3()/steady, 1)
	}
	pct, over := f.fill()
	r.MostFillPct, r.OverFill = to(pct, 1), over
}

// FromOpening is where something comes from that was there on the first day.
const FromOpening = "opening"

var attends = map[schedule.Attend]string{schedule.Throughout: plan.Stay, schedule.Begin: plan.Start, schedule.Unattended: plan.Alone}

// fermentKey is the ferment itself, as in a plan.
const fermentKey = "ferment.run"

func litres(m3 float64) float64 { return m3 * lot.LitresPerM3 }

// outside is how many minutes lie in no shift.
func (s *solver) outside(from, to int) int {
	n := to - from
	for _, w := range s.house.windows {
		if lo, hi := max(from, w.Open), min(to, w.Close); hi > lo {
			n -= hi - lo
		}
	}
	return max(n, 0)
}

// demanded says of each line what comes of it.
func (s *solver) demanded(present []int, number []string) []Demanded {
	out := make([]Demanded, 0, len(s.Asks.Casks)+len(s.Asks.Makes))
	for _, c := range s.Asks.Casks {
		out = append(out, Demanded{Batch: c.Batch, Wanted: WantedCasks, Amount: c.N, By: c.By.String(), For: c.For, Runs: []string{}})
	}
	for _, m := range s.Asks.Makes {
		out = append(out, Demanded{Batch: m.Batch, Wanted: WantedMashes, Runs: []string{}})
	}
	// Casks go to the lines in the order of their days.
	order := make([]int, len(s.Asks.Casks))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return s.Asks.Casks[a].By.Compare(s.Asks.Casks[b].By) })
	type full struct{ at, run int }
	left := map[string][]full{}
	fills := slices.Clone(present)
	slices.SortStableFunc(fills, func(a, b int) int { return s.filled(a) - s.filled(b) })
	for _, j := range fills {
		i := slices.Index(present, j)
		name := s.list[j].course.batch.Name
		for range s.flows.runs[i].casks {
			left[name] = append(left[name], full{s.filled(j), i})
		}
	}
	for _, k := range order {
		c, d := s.Asks.Casks[k], &out[k]
		due := s.axis.on(c.By).to
		for d.Made < c.N && len(left[c.Batch]) > 0 && left[c.Batch][0].at <= due {
			x := left[c.Batch][0]
			left[c.Batch] = left[c.Batch][1:]
			d.Made++
			d.When = s.axis.stamp(x.at)
			if !slices.Contains(d.Runs, number[x.run]) {
				d.Runs = append(d.Runs, number[x.run])
			}
		}
		d.Met = d.Made >= c.N
	}
	latest := map[int]int{} // the last mash of each line, in minutes
	for j, w := range s.list {
		k := w.demand - len(s.Asks.Casks)
		if k < 0 {
			continue
		}
		d := &out[w.demand]
		d.Amount++
		if i := slices.Index(present, j); i >= 0 {
			d.Made++
			d.Runs = append(d.Runs, number[i])
			latest[w.demand] = max(latest[w.demand], s.start(j, 0))
			d.When = s.axis.stamp(latest[w.demand])
		}
		d.Met = d.Made == d.Amount
	}
	for i := range out {
		out[i].Runs = byMash(out[i].Runs, number)
	}
	return out
}

// byMash has numbers in the order of the runs.
func byMash(of, number []string) []string {
	slices.SortStableFunc(of, func(a, b string) int { return slices.Index(number, a) - slices.Index(number, b) })
	return of
}

// What a line wants.
const (
	WantedCasks  = "casks"
	WantedMashes = "mashes"
)

func (s *solver) closures() []Closed {
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
func (s *solver) vessels(runs []Run) []Vessel {
	out := []Vessel{}
	whole := float64(s.lastMinute()-s.axis.on(s.Asks.From).from) / 60
	for _, v := range s.Plant.Vessels {
		one := Vessel{Name: v.Name, Kind: v.Kind.String(), Uses: []Use{}}
		open := whole
		for _, o := range s.house.asks[v.Name] {
			one.Out = append(one.Out, Span{From: s.axis.stamp(o.from), To: s.axis.stamp(o.to)})
			open -= float64(o.to-o.from) / 60
		}
		for _, r := range runs {
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
func (s *solver) loads(runs []Run) (heat, people []Load) {
	kw, crew := map[int]int{}, map[int]int{}
	for _, r := range runs {
		for _, t := range r.Tasks {
			from, end := s.axis.minute(moment(t.Start)), s.axis.minute(moment(t.End))
			kw[from] += int(math.Round(t.KW * 10))
			kw[end] -= int(math.Round(t.KW * 10))
			if t.Attend == plan.Start {
				end = min(end, from+beginsMin)
			}
			if t.Attend != plan.Alone {
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
func (s *solver) conflicts(out *Season) []Conflict {
	found := []Conflict{}
	var slots []schedule.Slot
	type member struct{ run, key string }
	of := map[string]member{}
	for _, r := range out.Runs {
		for i, t := range r.Tasks {
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
		for _, v := range out.Vessels { // a vessel is one's from the first task to the end of its cleaning
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

// crewMost is the most that are ever there; 0 where nobody says.
func (s *solver) crewMost() int {
	if s.Plant.Crew == 0 && !s.house.named() {
		return 0
	}
	most := 0
	for _, x := range s.axis.staff() {
		most = max(most, x.amount)
	}
	return most
}

func (s *solver) days(out *Season) []Day {
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
		one.MostKW, one.Wanted = within(out.Boiler), int(within(out.Crew))
		for _, r := range out.Runs {
			if slices.ContainsFunc(r.Tasks, func(t Task) bool {
				at := s.axis.minute(moment(t.Start))
				return t.Attend != plan.Alone && at >= d.from && at < d.to
			}) {
				one.Runs = append(one.Runs, r.Number)
			}
		}
		all = append(all, one)
	}
	return all
}

// tankLevels are the feints by their tanks, and of low wines and hearts what waits.
func (s *solver) tankLevels(present []int, number []string) []TankLevel {
	out := []TankLevel{}
	add := func(name, holds string, ofM3 float64, levels []level) {
		if len(levels) == 0 {
			return
		}
		sorting.Stable(levels, func(a, b level) int { return a.at - b.at })
		t := TankLevel{Tank: name, Holds: holds, OfL: to(litres(ofM3), 1)}
		for _, l := range levels {
			by := FromOpening
			if l.run >= 0 {
				by = number[l.run]
			}
			t.Levels = append(t.Levels, Level{At: s.axis.stamp(l.at), L: to(litres(l.m3), 1), By: by})
			t.MostL = max(t.MostL, to(litres(l.m3), 1))
		}
		t.Over = ofM3 > 0 && t.MostL > t.OfL+0.05
		out = append(out, t)
	}
	var names []string
	for name := range s.flows.feints {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		holds := 0.0
		for _, t := range s.Plant.Tanks {
			if t.Name == name {
				holds = t.HoldsM3
			}
		}
		add(name, "feints", holds, s.flows.feints[name])
	}
	for _, t := range s.Plant.Tanks {
		for _, of := range []recipe.Contents{recipe.OfLowWines, recipe.OfSpirit} {
			if t.For&of == 0 {
				continue
			}
			var levels []level
			for i, j := range present {
				for _, h := range s.built.Jobs[j].Holds {
					hold := s.built.Holds[h]
					at := int(hold.Of)
					if hold.Of < 0 {
						at = s.placed.Chosen[^hold.Of]
					}
					f := s.flows.runs[i]
					if s.built.names[at] != t.Name || f.err != nil || s.holdIs(j, hold) != of {
						continue
					}
					m3 := volume(f.n.Stripped.LowWines)
					if of == recipe.OfSpirit {
						m3 = hearts(f.n)
					}
					levels = append(levels, level{s.placed.Start[hold.From] + hold.FromTime, m3, i}, level{s.placed.Start[hold.To] + hold.ToTime, 0, i})
				}
			}
			add(t.Name, of.String(), t.HoldsM3, levels)
		}
	}
	return out
}

// holdIs says what a hold of a tank is for: it begins in the wash still, or in the spirit
// still.
func (s *solver) holdIs(j int, h search.Hold) recipe.Contents {
	block := h.From - s.built.first[j]
	if from, ok := s.list[j].course.begins("strip", "collect"); ok && from == [2]int{block, h.FromTime} {
		return recipe.OfLowWines
	}
	return recipe.OfSpirit
}

func (s *solver) left() []LeftOver {
	var out []LeftOver
	add := func(what string, of map[string]stream.Stream) {
		var names []string
		for name := range of {
			names = append(names, name)
		}
		slices.Sort(names)
		for _, name := range names {
			if l := rounded(of[name]); l.VolumeL >= litres(leastLeftM3) {
				out = append(out, LeftOver{What: what, Of: name, Lot: l})
			}
		}
	}
	add("feints", s.flows.left)
	add("spirit", s.flows.spirit)
	return out
}

// changes are what is otherwise than printed.
func (s *solver) changes(runs []Run) []Change {
	if s.Printed == nil {
		return nil
	}
	var out []Change
	first := func(r *Run, key string) string {
		for _, t := range r.Tasks {
			if t.Key == key {
				return t.Start
			}
		}
		return ""
	}
	for i := range s.Printed.Runs {
		was := &s.Printed.Runs[i]
		k := slices.IndexFunc(runs, func(r Run) bool { return r.Number == was.Number })
		if k < 0 {
			out = append(out, Change{Run: was.Number, Batch: was.Batch, What: ChangeDropped, Was: was.Mash})
			continue
		}
		for _, stage := range []struct{ what, key string }{{"mash", "mash.mill"}, {"strip", "strip.charge"}, {"spirit", "spirit.charge"}, {"fill", "fill.cask"}} {
			if a, b := first(was, stage.key), first(&runs[k], stage.key); a != b {
				out = append(out, Change{Run: was.Number, Batch: was.Batch, What: stage.what, Was: a, Is: b})
			}
		}
		if was.Fermenter != runs[k].Fermenter {
			out = append(out, Change{Run: was.Number, Batch: was.Batch, What: ChangeFermenter, Was: was.Fermenter, Is: runs[k].Fermenter})
		}
	}
	for _, r := range runs {
		if !slices.ContainsFunc(s.Printed.Runs, func(w Run) bool { return w.Number == r.Number }) {
			out = append(out, Change{Run: r.Number, Batch: r.Batch, What: ChangeNew, Is: r.Mash})
		}
	}
	return out
}

// What of a run can be otherwise, besides the words of its stages.
const (
	ChangeDropped   = "dropped"
	ChangeNew       = "new"
	ChangeFermenter = "fermenter"
)

func (s *solver) summary(out *Season) {
	present := s.present()
	m := &out.Summary
	for i, r := range out.Runs {
		m.Batches++
		if s.filledBy(present[i], s.lastMinute()) {
			m.CasksFilled += r.Casks
		} else {
			m.CasksAfter += r.Casks
		}
		m.PureAlcoholL += r.Hearts.PureL
		m.ProofGallons += r.Hearts.ProofGallons
		m.WashWaitHours += r.WashWaitHours
		for _, t := range r.Tasks {
			m.OutOfShiftH += t.OutOfShift / 60
			if t.Attend != plan.Alone {
				end := moment(t.End)
				m.PeopleHours += float64(t.People) * end.Sub(moment(t.Start)).Hours()
			}
		}
		if f := s.flows.runs[i]; f.n != nil {
			m.GrainKg += f.n.Bill.TotalKg
		}
		if r.Casks > 0 && (m.LastCaskFilled == "" || moment(r.Filled).After(moment(m.LastCaskFilled))) {
			m.LastCaskFilled = r.Filled
		}
	}
	for _, d := range out.Demands {
		if !d.Met {
			m.DemandsMissed++
		}
	}
	for _, l := range out.Boiler {
		m.MostBoilerKW = max(m.MostBoilerKW, l.Amount)
	}
	for _, l := range out.Crew {
		m.MostPeople = max(m.MostPeople, int(l.Amount))
	}
	out.CrewThere = s.crewMost()
	m.PureAlcoholL, m.ProofGallons, m.GrainKg = to(m.PureAlcoholL, 2), to(m.ProofGallons, 2), to(m.GrainKg, 1)
	m.WashWaitHours, m.OutOfShiftH, m.PeopleHours = to(m.WashWaitHours, 1), to(m.OutOfShiftH, 2), to(m.PeopleHours, 1)
}

// to rounds to so many places: what is shown is the same on every processor.
func to(x float64, places int) float64 { return plan.RoundTo(x, places) }

// rounded is a lot as it is shown.
func rounded(s stream.Stream) plan.Lot {
	l := lot.Of(s)
	return plan.Lot{
		VolumeL: to(l.VolumeL, 2), AbvPct: to(l.AbvPct, 2), PureL: to(l.PureL, 2), WineGallons: to(l.WineGallons, 3), Proof: to(l.Proof, 1),
		ProofGallons: to(l.ProofGallons, 2), MassKg: to(l.MassKg, 3),
	}
}
