// Package compile turns a checked batch into a plan: one stage of the trade
// after the other, each a pure function of what the stages before gave.
//
//	mash -> ferment -> strip -> spirit -> reduction -> cask
//
// Data flows one way, as values. The stages give numbers (package numbers); from
// the numbers come the jobs and their place on the clock (work), what a distiller
// should know (notice), and the plan's parts (report, law, promise).
package compile

import (
	"math"
	"strings"

	"newmake/compile/law"
	"newmake/compile/lot"
	"newmake/compile/notice"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/promise"
	"newmake/compile/report"
	"newmake/compile/stage/schedule"
	"newmake/compile/work"
	"newmake/lang/diag"
	"newmake/lang/parallel"
	"newmake/lang/recipe"
)

// Compile computes a batch. The list holds what computing has shown: errors
// where the batch cannot work, warnings where the trade would frown. The plan
// is nil if a stage could not be computed at all; a plan that comes with errors
// shows how the batch would go wrong, and is not to be worked from.
func Compile(b *recipe.Batch) (*plan.Plan, diag.List) {
	return CompileIn(b, work.Hours{})
}

// CompileIn is Compile of a batch some of whose work is done in given hours; what has none
// goes by the batch's own clock.
func CompileIn(b *recipe.Batch, hours work.Hours) (*plan.Plan, diag.List) {
	p, list := compiled(b, &numbers.Memo{}, Printed, hours)
	if p != nil {
		p.Round()
	}
	return p, list
}

// Purpose is what a batch is computed for.
type Purpose uint8

const (
	Calculated Purpose = iota // for numbers to work with: no congeners, nothing rounded
	Checked                   // for what there is to be said of it: congeners only by constants of the house, nothing rounded
	Printed                   // for people: all of it
)

// Numbers runs the stages of a batch and no more: no words, no notices, no plan.
// What it gives with an error is as far as it came.
func Numbers(b *recipe.Batch, memo *numbers.Memo, why Purpose) (*numbers.Batch, error) {
	n, _, err := stages(b, memo, why, work.Hours{})
	return n, err
}

// stages gives the numbers of a batch, and the work up to the end of its stripping run,
// which the ferment waits for.
func stages(b *recipe.Batch, memo *numbers.Memo, why Purpose, hours work.Hours) (n *numbers.Batch, toWashRun []work.Job, err error) {
	b = lot.OnBasis(b.AsToday())
	n = &numbers.Batch{Batch: b}
	numbers.BoilsAhead(memo, b)
	if n.Mashed, err = numbers.Mash(memo, b); err != nil {
		return n, toWashRun, err
	}
	if toWashRun, err = fermentAndStrip(n, memo, hours); err != nil {
		return n, toWashRun, err
	}
	if n.Distilled, err = numbers.Distilled(memo, b, n.Stripped.LowWines); err != nil {
		return n, toWashRun, err
	}
	if why != Calculated {
		n.Ways = numbers.Ways(memo, b, n.Stripped.LowWines, n.Distilled.Run)
	}
	n.Reduced = numbers.Reduced(b, n.Distilled.Hearts)
	n.Filled, err = numbers.Filled(b, n.Reduced)
	return n, toWashRun, err
}

// Outcome is a batch's numbers as its plan has them, not rounded: no words, no work,
// no clock, no costs and no law.
func Outcome(b *recipe.Batch, memo *numbers.Memo) (*plan.Plan, error) {
	n, err := Numbers(b, memo, Calculated)
	if err != nil {
		return nil, err
	}
	p := report.Plan(n)
	hearts, lowWines := lot.Of(n.Distilled.Hearts), lot.Of(n.Stripped.LowWines)
	p.Promises = promise.Answered(promise.Answers(n.Batch, p, lowWines, hearts))
	p.Summary = report.Summary(p, lowWines, hearts)
	if what := p.NoNumber(); what != "" {
		return nil, &numbers.Failure{Stage: numbers.Planning, Err: &numbers.RanAway{What: what}}
	}
	return p, nil
}

// mostPasses is how often a batch is computed to bring ferment and clock
// together; a second pass does it but for a change of the clocks.
const mostPasses = 3

// fermentAndStrip runs the fermenter and the wash still. A ferment goes on until
// somebody is there to light the still; when that is longer than was asked for,
// both are computed again with the hours that the clock gives. The jobs are the work so
// far.
func fermentAndStrip(n *numbers.Batch, memo *numbers.Memo, hours work.Hours) (jobs []work.Job, err error) {
	clock, noClock := work.ClockOf(n.Batch)
	clock = clock.In(hours)
	stands := 0.0
	for range mostPasses {
		if n.Fermented, err = numbers.Fermented(memo, n.Batch, n.Mashed, stands); err != nil {
			return nil, err
		}
		if n.Stripped, err = numbers.Stripped(memo, n.Batch, n.Fermented.Wash); err != nil {
			return nil, err
		}
		jobs = work.ToWashRun(n)
		if noClock != nil {
			return jobs, nil
		}
		stands = clock.FermentS(jobs)
		if math.Abs(stands-n.Fermented.ForS) < lot.SecondsPerMin {
			return jobs, nil
		}
	}
	return jobs, nil
}

// compiled is the numbers of a batch, what they show, and the plan that is made
// of them.
func compiled(b *recipe.Batch, memo *numbers.Memo, why Purpose, hours work.Hours) (*plan.Plan, diag.List) {
	n, toWashRun, err := stages(b, memo, why, hours)
	list := notice.Stages(n, err)
	if err != nil {
		return nil, list
	}
	congeners := followed(n, why)
	p := report.Plan(n)
	list = append(list, notice.Cask(n.Batch, n.Filled, p.Cask)...)
	if p.Card, err = report.Card(n.Batch, n.Distilled.Hearts, n.Reduced); err != nil {
		list = append(list, notice.Failed(n, err)...)
	}

	hearts, lowWines := lot.Of(n.Distilled.Hearts), lot.Of(n.Stripped.LowWines)
	jobs := work.All(toWashRun, n, p.Cask, p.Reduction)
	p.Bill.Additions = work.Additions(jobs)
	if why != Checked { // they are words alone
		p.Cautions = work.Cautions(n.Batch, jobs, p.Cask)
	}
	clock, err := work.ClockOf(n.Batch)
	if err != nil {
		return nil, append(list, notice.Start(n.Batch, err)...)
	}
	var slots []schedule.Slot
	clock = clock.In(hours)
	p.Schedule, slots = clock.Scheduled(n.Batch, jobs, n.Fermented.Curve)
	p.Law = law.Held(n.Batch, hearts, distilled(slots), p.Cask)
	list = append(list, notice.Law(n.Batch, p.Law)...)
	p.Batch.Start = p.Schedule.Start
	p.Plant.Tanks = report.Tanks(n, p)
	list = append(list, notice.Schedule(n.Batch, slots)...)
	list = append(list, notice.OtherStart(n.Batch, slots, func(days int) []schedule.Slot { return clock.Shifted(jobs, days) })...)
	p.Cost = report.Cost(n.Batch, p, hearts)

	answers := promise.Answers(n.Batch, p, lowWines, hearts)
	p.Promises = promise.Answered(answers)
	list = append(list, notice.Promises(n.Batch, answers)...)
	p.Summary = report.Summary(p, lowWines, hearts)
	if p.Congeners, err = congeners(); err != nil {
		return nil, notice.Stages(n, err)
	}
	if what := p.NoNumber(); what != "" {
		return nil, notice.Failed(n, &numbers.Failure{Stage: numbers.Planning, Err: &numbers.RanAway{What: what}})
	}
	p.Notices = notice.InPlan(list)
	return p, list
}

// followed begins to follow the congeners through the spirit run, and gives what waits
// for them. Only their own part of the plan needs them: so that is made beside all the
// others.
func followed(n *numbers.Batch, why Purpose) (wait func() (*plan.Congeners, error)) {
	if why == Printed || numbers.OwnVolatile(n.Batch) {
		return parallel.Begin(func() (*plan.Congeners, error) {
			all, err := numbers.Followed(n.Batch, n.Distilled.Run)
			return report.Congeners(all, n.Models["congener"]), err
		})
	}
	_, err := numbers.Volatile(n.Batch)
	return func() (*plan.Congeners, error) { return nil, err }
}

// distilled is from the first charge of a still to the end of the last run.
func distilled(slots []schedule.Slot) law.Days {
	var d law.Days
	for _, s := range slots {
		if s.Stage != "strip" && s.Stage != "spirit" {
			continue
		}
		if d.From.IsZero() {
			d.From = s.Start
		}
		if !strings.HasSuffix(s.Key, ".clean") {
			d.To = s.End
		}
	}
	return d
}
