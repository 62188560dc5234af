package season_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/book/season"
	"newmake/compile/plan"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// keepsRules holds a plan against the rules of the work, as they stand in the problem and
// in the plans of its batches. It knows nothing of how a plan is found.
func keepsRules(t *testing.T, p *season.Problem, s *season.Season) {
	t.Helper()
	r := rules{t: t, p: p, s: s}
	zone, err := time.LoadLocation(p.Plant.Zone)
	require.NoError(t, err)
	r.zone = zone
	r.work()
	r.vessels()
	r.amounts()
	r.hours()
	r.wanted()
	r.flows()
}

type rules struct {
	t    *testing.T
	p    *season.Problem
	s    *season.Season
	zone *time.Location
}

func (r *rules) breaks(format string, args ...any) { r.t.Helper(); r.t.Errorf(format, args...) }

func key(tasks []season.Task, key string) (season.Task, bool) {
	i := slices.IndexFunc(tasks, func(t season.Task) bool { return t.Key == key })
	if i < 0 {
		return season.Task{}, false
	}
	return tasks[i], true
}

func from(t season.Task) time.Time  { return plan.Moment(t.Start) }
func until(t season.Task) time.Time { return plan.Moment(t.End) }

// work: each run has all steps of its batch's plan that want a person or a vessel, in their
// order, none shorter than there; the mash and each charge without a break; the wash
// neither before its hour nor long after.
func (r *rules) work() {
	for _, run := range r.s.Runs {
		if run.Done {
			continue
		}
		b := *r.p.Batches[run.Batch]
		mash := plan.Moment(run.Mash).In(r.zone)
		b.Start = recipe.Start{Year: mash.Year(), Month: int(mash.Month()), Day: mash.Day(), Hour: mash.Hour(), Minute: mash.Minute()}
		b.Today.FeintsSaid = true // what really went in, of whichever kind
		if in := run.Feints.In; in.MassKg > 0 {
			b.Today.FeintsM3, b.Today.FeintsAt = in.VolumeL/1000, recipe.Strength{Value: in.PureL * 0.78924 / in.MassKg, Basis: recipe.ABW} // kg a litre of ethanol at 20 C, OIML R 22
		}
		if len(run.Backset.From) == 0 {
			b.Today.NoBackset = true
		}
		if in := run.SpiritIn; in.MassKg > 0 {
			b.Today.Spirit = recipe.Before{EthanolKg: in.PureL * 0.78924, WaterKg: in.MassKg - in.PureL*0.78924}
		}
		b.Today.NoKept, b.Today.NoPotAle = run.NoKept, run.NoPotAle
		full, list := compile.Compile(&b)
		require.NotNil(r.t, full, list)
		// A last cask is filled a little short, and the whole moves as the times above do.
		if k := full.Cask; k.SizeL > 0 && math.Abs(float64(k.Casks-run.Casks)*k.SizeL+k.Leftover.VolumeL-run.Leftover.VolumeL) > 0.05*k.SizeL {
			r.breaks("run %s fills %d casks by the batch's plan and leaves %.1f L, and %d here and %.1f L", run.Number, k.Casks, k.Leftover.VolumeL, run.Casks, run.Leftover.VolumeL)
		}
		last := map[string]time.Time{}
		for _, step := range full.Schedule.Steps {
			if strings.HasPrefix(step.ID, "ferment.round") || step.Stage == "cask" || step.ID == "fill.settle" {
				continue
			}
			task, ok := key(run.Tasks, step.ID)
			if _, kept := key(run.Tasks, "fill.keep"); !ok && kept && (step.ID == "fill.cask" || step.ID == "fill.soak") {
				continue // too little alone: it goes into a cask with what the run before left
			}
			if _, filled := key(run.Tasks, "fill.cask"); !ok && filled && step.ID == "fill.keep" {
				continue // of a house at work it would fill one
			}
			if !ok {
				r.breaks("run %s has no %s", run.Number, step.ID)
				continue
			}
			if step.ID != "ferment.run" {
				// What the wash stands, and whose feints go in, moves a run by some minutes.
				if got := until(task).Sub(from(task)).Minutes(); math.Abs(got-step.DurationMin) > max(1.5, 0.1*step.DurationMin) {
					r.breaks("run %s: %s takes %.1f min by the batch's plan, and %.0f here", run.Number, step.ID, step.DurationMin, got)
				}
			}
			chain := strings.Join(strings.Split(step.ID, ".")[:len(strings.Split(step.ID, "."))-1], ".")
			if chain == "mash" || strings.HasPrefix(step.ID, "ferment.") && step.ID != "ferment.clean" {
				chain = "mash"
			}
			if strings.HasSuffix(step.ID, ".clean") || strings.HasSuffix(step.ID, ".draff") || step.Stage == "fill" {
				continue
			}
			if at, ok := last[chain]; ok && !from(task).Equal(at) && step.ID != "ferment.run" {
				r.breaks("run %s: %s begins at %s, and what is before it ends at %s", run.Number, step.ID, task.Start, at)
			}
			last[chain] = until(task)
		}
		line := []string{"mash.mill", "ferment.pitch", "strip.charge", "strip.stop", "strip.clean", "spirit.charge", "spirit.stop", "spirit.clean", "fill.gauge", "fill.reduce", "fill.soak", "fill.cask"} // the casks are soaked while the spirit settles
		var before season.Task
		for _, k := range line {
			task, ok := key(run.Tasks, k)
			if !ok {
				continue
			}
			if before.Key != "" && from(task).Before(until(before)) {
				r.breaks("run %s: %s before %s has ended", run.Number, k, before.Key)
			}
			before = task
		}
		if pitch, ok := key(run.Tasks, "ferment.pitch"); ok {
			for _, k := range []string{"strip.charge", "strip.1.charge"} {
				charge, ok := key(run.Tasks, k)
				if !ok {
					continue
				}
				stands := from(charge).Sub(until(pitch))
				asked := time.Duration(b.Ferm.DurationS * float64(time.Second))
				if stands < asked-time.Second || stands > asked+72*time.Hour+time.Minute {
					r.breaks("run %s: the wash stands for %s, asked %s", run.Number, stands, asked)
				}
				assert.InDelta(r.t, stands.Hours(), run.FermentHours, 0.01)
			}
		}
		if reduce, ok := key(run.Tasks, "fill.reduce"); ok {
			if fill, ok := key(run.Tasks, "fill.cask"); ok && from(fill).Sub(until(reduce)) < 24*time.Hour {
				r.breaks("run %s: the spirit does not settle", run.Number)
			}
		}
	}
}

// use is a run in a vessel.
type use struct {
	run      string
	from, to time.Time
}

// vessels: from its first task of a stage to the end of its cleaning a vessel is one run's,
// and none is used while it is out of use.
func (r *rules) vessels() {
	uses := map[string][]use{}
	for _, run := range r.s.Runs {
		for _, stage := range []string{"mash", "ferment", "strip", "spirit"} {
			var u *use
			vessel := ""
			for _, t := range run.Tasks {
				if t.Stage != stage || t.Vessel == "" {
					continue
				}
				if u == nil {
					vessel, u = t.Vessel, &use{run.Number, from(t), until(t)}
				}
				if t.Vessel != vessel {
					r.breaks("run %s: %s in %s and in %s", run.Number, stage, vessel, t.Vessel)
				}
				if until(t).After(u.to) {
					u.to = until(t)
				}
			}
			if u != nil {
				uses[vessel] = append(uses[vessel], *u)
			}
		}
		if low, ok := first(run.Tasks, "strip", "collect"); ok && len(run.Tanks) > 0 {
			if c, ok := lastOf(run.Tasks, "spirit", "charge"); ok {
				if tank := r.tankFor(run, recipe.OfLowWines); tank != "" {
					uses[tank] = append(uses[tank], use{run.Number, from(low), until(c)})
				}
			}
		}
	}
	for name, all := range uses {
		slices.SortFunc(all, func(a, b use) int { return a.from.Compare(b.from) })
		for i := 1; i < len(all); i++ {
			if all[i].from.Before(all[i-1].to) {
				r.breaks("%s has run %s from %s and run %s until %s", name, all[i].run, all[i].from, all[i-1].run, all[i-1].to)
			}
		}
		for _, w := range r.p.Asks.Without {
			for _, u := range all {
				if w.Name == name && !w.Person && u.from.Before(r.midnight(w.To.After(1))) && u.to.After(r.midnight(w.From)) {
					r.breaks("%s is out of use, and run %s is in it from %s to %s", name, u.run, u.from, u.to)
				}
			}
		}
	}
}

func (r *rules) tankFor(run season.Run, of recipe.Contents) string {
	for _, t := range r.p.Plant.Tanks {
		if t.For == of && slices.Contains(run.Tanks, t.Name) {
			if t.HoldsM3*1000 < run.LowWines.VolumeL-0.1 {
				r.breaks("run %s: %.0f L of low wines in a tank of %.0f", run.Number, run.LowWines.VolumeL, t.HoldsM3*1000)
			}
			return t.Name
		}
	}
	return ""
}

func first(tasks []season.Task, stage, ending string) (season.Task, bool) {
	i := slices.IndexFunc(tasks, func(t season.Task) bool { return t.Stage == stage && strings.HasSuffix(t.Key, "."+ending) })
	if i < 0 {
		return season.Task{}, false
	}
	return tasks[i], true
}

func lastOf(tasks []season.Task, stage, ending string) (out season.Task, ok bool) {
	for _, t := range tasks {
		if t.Stage == stage && strings.HasSuffix(t.Key, "."+ending) {
			out, ok = t, true
		}
	}
	return out, ok
}

func (r *rules) midnight(d record.Date) time.Time {
	return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, r.zone)
}

// amounts: at no moment is more heat drawn than the boiler has, or more people wanted than
// are there. A ferment is read by one who does something else besides, where somebody is there.
func (r *rules) amounts() {
	var all []season.Task
	for _, run := range r.s.Runs {
		for _, t := range run.Tasks {
			switch {
			case !strings.HasPrefix(t.Key, "ferment.round."):
				all = append(all, t)
			case r.there(from(t)) == 0:
				r.breaks("run %s: nobody is there to read its ferment at %s", run.Number, t.Start)
			}
		}
	}
	for _, at := range all {
		moment := from(at)
		people, kw := 0, 0.0
		for _, t := range all {
			if from(t).After(moment) {
				continue
			}
			busy := until(t)
			if t.Attend == plan.Start && from(t).Add(15*time.Minute).Before(busy) {
				busy = from(t).Add(15 * time.Minute)
			}
			if t.Attend != plan.Alone && moment.Before(busy) {
				people += t.People
			}
			if moment.Before(until(t)) {
				kw += t.KW
			}
		}
		if w := r.p.Plant.BoilerW / 1000; w > 0 && kw > w+0.5 {
			r.breaks("%.0f kW of %.0f at %s", kw, w, moment)
		}
		if there := r.there(moment); there > 0 && people > there {
			r.breaks("%d people wanted and %d there at %s", people, there, moment)
		}
	}
}

// there is how many people are there; 0 where it is outside all shifts, or not said.
func (r *rules) there(at time.Time) int {
	n := 0
	for _, h := range r.open(at) {
		n += h.people
	}
	return n
}

type opening struct {
	from, to time.Time
	people   int
}

// open are the shifts that a moment lies in.
func (r *rules) open(at time.Time) []opening {
	var out []opening
	for back := range 2 {
		d := record.DateOf(at.In(r.zone)).After(-back)
		for _, o := range r.shifts(d) {
			if !at.Before(o.from) && at.Before(o.to) {
				out = append(out, o)
			}
		}
	}
	return out
}

func (r *rules) shifts(d record.Date) []opening {
	shift := func(h recipe.Shift, people int) []opening {
		if !h.Days[d.Weekday()] {
			return nil
		}
		end := 0
		if h.ToMinute <= h.FromMinute {
			end = 1
		}
		at := func(day, minute int) time.Time {
			return time.Date(d.Year, d.Month, d.Day+day, minute/60, minute%60, 0, 0, r.zone)
		}
		return []opening{{at(0, h.FromMinute), at(end, h.ToMinute), people}}
	}
	a := r.p.Asks
	if len(a.Crew) == 0 {
		if a.ClosedOn(d) != nil {
			return nil
		}
		return shift(r.p.Plant.Shift, max(r.p.Plant.Crew, 1))
	}
	var out []opening
	for _, who := range a.People() {
		if a.Has(d) {
			if h, ok := a.There(who, d); ok {
				out = append(out, shift(h, 1)...)
			}
			continue
		}
		h := r.p.Plant.Shift
		for _, c := range a.Crew {
			if c.Who == who && c.From == a.From && c.To == a.To {
				h = c.Shift
			}
		}
		out = append(out, shift(h, 1)...)
	}
	return out
}

// hours: what wants somebody lies in the shifts; what runs over says so. Nothing is lit on
// a day that is closed.
func (r *rules) hours() {
	for _, run := range r.s.Runs {
		if run.Done {
			continue
		}
		for _, t := range run.Tasks {
			if t.Attend == plan.Alone || from(t).Equal(until(t)) {
				continue
			}
			if c := r.p.Asks.ClosedOn(record.DateOf(from(t).In(r.zone))); c != nil {
				r.breaks("run %s: %s on %s, which is closed", run.Number, t.Key, t.Start)
			}
			outside := 0.0
			for at := from(t); at.Before(until(t)); at = at.Add(time.Minute) {
				if len(r.open(at)) == 0 {
					outside++
				}
			}
			if t.Attend == plan.Start {
				outside = 0
				if len(r.open(from(t))) == 0 {
					r.breaks("run %s: nobody is there to begin %s", run.Number, t.Key)
				}
			}
			if math.Abs(outside-t.OutOfShift) > 0.5 {
				r.breaks("run %s: %s is %.0f min out of the shift, and it says %.0f", run.Number, t.Key, outside, t.OutOfShift)
			}
		}
	}
}

// wanted: what is said of the demands is so.
func (r *rules) wanted() {
	casks := map[string]int{}
	asked := map[string]int{}
	for i, d := range r.s.Demands {
		if d.Wanted == season.WantedCasks {
			c := r.p.Asks.Casks[i]
			filled := 0
			for _, run := range r.s.Runs {
				if run.Batch == c.Batch && !plan.Moment(run.Filled).After(r.midnight(c.By.After(1))) {
					filled += run.Casks
				}
			}
			asked[c.Batch] += d.Made
			casks[c.Batch] = max(casks[c.Batch], filled)
			if d.Made > filled || d.Met != (d.Made == c.N) {
				r.breaks("%d casks of %s are said to be made, and %d are filled", d.Made, c.Batch, filled)
			}
			continue
		}
		m := r.p.Asks.Makes[i-len(r.p.Asks.Casks)]
		latest := ""
		for _, number := range d.Runs {
			k := slices.IndexFunc(r.s.Runs, func(x season.Run) bool { return x.Number == number })
			on := record.DateOf(plan.Moment(r.s.Runs[k].Mash).In(r.zone))
			if at := r.s.Runs[k].Mash; latest == "" || plan.Moment(at).After(plan.Moment(latest)) {
				latest = at
			}
			if r.s.Runs[k].Batch != m.Batch || !r.p.Asks.Has(on) || m.OnWeekdays() && !m.Weekdays[on.Weekday()] || len(m.Dates) > 0 && !slices.Contains(m.Dates, on) {
				r.breaks("run %s of %s on %s is none that is asked for", number, m.Batch, on)
			}
		}
		if latest != "" && !plan.Moment(latest).Equal(plan.Moment(d.When)) {
			r.breaks("%s: the last mash is on %s, not on %s", d.Batch, latest, d.When)
		}
		if d.Made != len(d.Runs) || d.Met != (d.Made == d.Amount) {
			r.breaks("%s: %d made, runs %v", d.Batch, d.Made, d.Runs)
		}
	}
	for name, n := range asked {
		if n > casks[name] {
			r.breaks("%d casks of %s go to the lines, and %d are filled", n, name, casks[name])
		}
	}
}

// flows: what a run takes was left before it, and nothing is made or lost on the way.
func (r *rules) flows() {
	in, out, left := 0.0, 0.0, 0.0
	opened := 0.0
	for _, run := range r.s.Runs {
		in += run.Feints.In.PureL
		out += run.Feints.Out.PureL
		for _, k := range run.Feints.From {
			if k == season.FromOpening {
				continue
			}
			i := slices.IndexFunc(r.s.Runs, func(x season.Run) bool { return x.Number == k })
			stop, _ := lastOf(r.s.Runs[i].Tasks, "spirit", "stop")
			charge, _ := first(run.Tasks, "spirit", "charge")
			if from(charge).Before(until(stop)) {
				r.breaks("run %s takes feints of run %s, which has not stopped", run.Number, k)
			}
			if !slices.Contains(r.s.Runs[i].Feints.To, run.Number) {
				r.breaks("run %s takes feints of run %s, which says nothing of it", run.Number, k)
			}
		}
		for _, k := range run.Backset.From {
			if k == season.FromOpening {
				continue
			}
			i := slices.IndexFunc(r.s.Runs, func(x season.Run) bool { return x.Number == k })
			stop, _ := lastOf(r.s.Runs[i].Tasks, "strip", "stop")
			if age := plan.Moment(run.Mash).Sub(until(stop)); age < 0 || age > 72*time.Hour {
				r.breaks("run %s takes backset of run %s, %s old", run.Number, k, age)
			}
		}
	}
	for i, run := range r.s.Runs { // the last water of the mash before, whose ever that was
		uses := func(b *recipe.Batch, is func(s recipe.MashStep) bool) bool {
			return slices.ContainsFunc(b.Mash.Steps, is)
		}
		if run.Failed != "" || !uses(r.p.Batches[run.Batch], func(s recipe.MashStep) bool { return s.KeptM3 > 0 }) {
			assert.False(r.t, run.NoKept, run.Number)
			continue
		}
		if i == 0 {
			continue
		}
		before := r.s.Runs[i-1]
		pitch, _ := lastOf(before.Tasks, "mash", "pitch")
		if p, ok := key(before.Tasks, "ferment.pitch"); ok {
			pitch = p
		}
		age := plan.Moment(run.Mash).Sub(until(pitch))
		left := uses(r.p.Batches[before.Batch], func(s recipe.MashStep) bool { return s.NextMash })
		assert.Equal(r.t, !left || age < 0 || age > 72*time.Hour, run.NoKept, "run %s, %s after the mash of run %s", run.Number, age, before.Number)
	}
	for _, l := range r.s.Left {
		if l.What == "feints" {
			left += l.Lot.PureL
		}
	}
	for _, t := range r.s.Tanks {
		if t.Holds == "feints" && len(t.Levels) > 0 && t.Levels[0].By == season.FromOpening {
			opened++
		}
	}
	if opened == 0 { // else what was there on the first day is not said by itself
		uses := 0.0
		for _, run := range r.s.Runs {
			if r.p.Batches[run.Batch].Spirit.Feints {
				uses += run.Feints.Out.PureL
			}
		}
		assert.InDelta(r.t, uses, in+left, 0.05*float64(len(r.s.Runs)+1), "alcohol of the feints: %s", fmt.Sprint(out))
	}
}
