package season

import (
	"cmp"
	"slices"
	"strconv"

	"newmake/compile/book/season/search"
	"newmake/compile/lot"
	"newmake/compile/matter/stream"
	"newmake/compile/plan"
	"newmake/compile/stage/schedule"
	"newmake/compile/work"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/sorting"
)

// answer is a solution as it is told.
type answer struct {
	*solution
	order  []int    // the wants that are placed, by the start of their mash
	number []string // of the runs, in that order
	out    *Season
}

// answer is the plan as it is given.
func (s *solver) answer() *Season {
	a := &answer{solution: &s.solution, order: s.present(), out: &Season{
		Format: Format, Version: Version, Name: s.Asks.Name, Plant: s.Plant.Name, Zone: s.Plant.Zone, Units: "us",
		From: s.Asks.From.String(), To: s.Asks.To.String(),
		Runs: []Run{}, Demands: []Demanded{}, Conflicts: []Conflict{}, Closures: []Closed{}, Weekdays: []Weekdays{}, Bottlenecks: []Relief{}, Tanks: []TankLevel{},
		BoilerKW: to(s.Plant.BoilerW/1000, 1),
	}}
	a.number = a.numbers()
	out := a.out
	for _, name := range s.Asks.Batches() {
		if s.Batches[name].Units == recipe.SI {
			out.Units = "si"
		}
	}
	for i, j := range a.order {
		out.Runs = append(out.Runs, a.run(i, j))
	}
	out.Demands = a.demanded()
	out.Closures = a.closures()
	out.Vessels = a.vessels()
	out.Boiler, out.Crew = a.loads()
	out.Conflicts = a.conflicts()
	out.Days = a.days()
	out.Tanks = a.tankLevels()
	out.Left = a.left()
	out.Changes = a.changes()
	out.Weekdays = a.weekdays()
	out.Gap = s.gap()
	if !s.Quick {
		s.missed(out.Demands)
		s.doing(Weighing)
		out.Capacity, out.Bottlenecks = s.bottlenecks()
	}
	out.Buy = a.buy()
	if s.Draws > 0 && len(out.Runs) > 0 {
		s.doing(Drawing)
		out.Odds = a.odds(s.Draws)
	}
	out.LeftOut = s.leftOut
	for _, d := range s.unanswered() {
		out.Demands = append(out.Demands, d)
		if out.Odds != nil {
			out.Odds.AllMet = 0
			out.Odds.Demands = append(out.Odds.Demands, DemandOdds{Batch: d.Batch})
		}
	}
	a.summary()
	out.Effort = s.steps
	return out
}

// numbers are those of the runs: as recorded or printed, and else counted on.
func (s *answer) numbers() []string {
	out := make([]string, len(s.order))
	used := map[string]bool{}
	for i, j := range s.order {
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
func (s *answer) run(i, j int) Run {
	w, f := s.list[j], s.flows.runs[i]
	r := Run{
		Number: s.number[i], Batch: w.course.batch.Name, Mash: s.axis.stamp(s.start(j, 0)), Done: w.done != nil,
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
	s.flowed(&r, w.course, f)
	return r
}

// tasks are those of a run by the clock.
func (s *answer) tasks(j int) []Task {
	out := []Task{}
	w := s.list[j]
	c, fermenter := w.course, s.vessel(search.Which(s.built.fermenter[j]))
	for k, b := range c.blocks {
		at := s.start(j, k)
		for n, t := range b.tasks {
			one := Task{Key: t.key, Title: t.title, Stage: t.stage, Vessel: t.vessel, Start: s.axis.stamp(at + t.from), End: s.axis.stamp(at + t.to), Attend: attends[t.attend], People: t.people, KW: to(t.powerW/1000, 1)}
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
		out = append(out, Task{Key: fermentKey, Title: plan.Say("Ferment"), Stage: "ferment", Vessel: fermenter, Attend: plan.Alone, Start: s.axis.stamp(from), End: s.axis.stamp(end)})
		out = append(out, s.rounds(from, end, fermenter)...)
	}
	sorting.Stable(out, func(a, b Task) int {
		return cmp.Or(moment(a.Start).Compare(moment(b.Start)), moment(a.End).Compare(moment(b.End)))
	})
	return out
}

// rounds are the readings of a ferment, on the days on which somebody is there. They take a
// few minutes of one who does something else besides, and so they are in no one's way.
func (s *answer) rounds(from, end int, fermenter string) []Task {
	var out []Task
	all, each := work.Rounds(s.axis.time(from), s.axis.time(end), s.Plant.Shift, s.axis.zone)
	for i, at := range all {
		begin := s.axis.minute(at)
		d := s.axis.on(record.DateOf(at))
		if d == nil || !slices.ContainsFunc(d.people, func(p shift) bool { return p.open <= begin && begin < p.close }) {
			continue
		}
		out = append(out, Task{Key: work.RoundKey(i + 1), Title: plan.Say(work.RoundTitle), Stage: "ferment", Vessel: fermenter, Attend: plan.Stay, People: 1,
			Start: s.axis.stamp(begin), End: s.axis.stamp(begin + int(each.Minutes()))})
	}
	return out
}

// flowed is what a run made, what came into it and what it left.
func (s *answer) flowed(r *Run, c *course, f *flowed) {
	of := func(runs []int) []string {
		out := []string{}
		for _, k := range runs {
			switch {
			case k == opening:
				out = append(out, FromOpening)
			case k >= 0:
				out = append(out, s.number[k])
			}
		}
		return out
	}
	r.LowWines, r.Hearts, r.Casks, r.Leftover = rounded(f.n.Stripped.LowWines), rounded(f.n.Distilled.Hearts), f.casks, rounded(f.leftOf)
	if f.before >= 0 {
		r.SpiritIn, r.SpiritFrom = rounded(f.n.Filled.Before), s.number[f.before]
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

func (s *answer) summary() {
	out := s.out
	m := &out.Summary
	for i, r := range out.Runs {
		m.Batches++
		if s.filledBy(s.order[i], s.lastMinute()) {
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
