package work

import (
	"slices"
	"time"

	"newmake/compile/plan"
	"newmake/compile/stage/schedule"
	"newmake/lang/recipe"
)

var attendWords = map[schedule.Attend]string{
	schedule.Unattended: plan.Alone, schedule.Begin: plan.Start, schedule.Throughout: plan.Stay,
}

// step is a piece of work on the clock, as the run sheet has it.
func step(b *recipe.Batch, j *Job, s schedule.Slot) plan.Step {
	out := plan.Step{
		ID: s.Key, Title: j.titled(), Mark: j.Mark, Stage: s.Stage, Vessel: s.Vessel, Start: rfc3339(s.Start), End: rfc3339(s.End),
		DurationMin: s.End.Sub(s.Start).Minutes(), When: j.When, Do: j.Do, Attend: attendWords[s.Attend], Cautions: j.Cautions,
		WaitMin: s.Wait.Minutes(), WaitWhy: s.WaitWhy, OutOfShift: s.OutOfShift.Minutes(), Line: line(b, j.Path),
	}
	if s.Attend != schedule.Unattended {
		out.People = max(s.People, 1)
	}
	out.Read = slices.Grow(out.Read, len(j.Read)) // none stay none
	for _, r := range j.Read {
		if r.AtS >= 0 {
			r.At = rfc3339(s.Start.Add(time.Duration(r.AtS * float64(time.Second))))
		}
		out.Read = append(out.Read, r.Reading)
	}
	return out
}

func scheduleOf(steps []plan.Step, slots []schedule.Slot, start time.Time) plan.Schedule {
	steps, days := inOrder(steps)
	out := plan.Schedule{Start: rfc3339(start), Steps: steps, Days: days}
	end := start
	for _, s := range slots {
		if s.Stage != "cask" && s.End.After(end) {
			end = s.End
		}
		out.OutOfShiftH += s.OutOfShift.Hours()
	}
	out.End, out.ElapsedHours = rfc3339(end), end.Sub(start).Hours()
	if n := len(slots); n > 0 && slots[n-1].Key == restKey {
		out.Samples = samples(slots[n-1])
	}
	for _, s := range steps {
		hours := s.DurationMin / 60
		if s.Attend == plan.Start {
			hours = min(hours, beginsMin/60.0)
		}
		out.PeopleHours += hours * float64(s.People)
	}
	return out
}

// occupancy is each vessel's time, until it is clean again.
func occupancy(slots []schedule.Slot) []plan.Occupancy {
	out := []plan.Occupancy{}
	for _, u := range schedule.Occupancy(slots) {
		out = append(out, plan.Occupancy{
			Vessel: u.Vessel, Use: u.Stage, From: rfc3339(u.From), To: rfc3339(u.To), Hours: u.To.Sub(u.From).Hours(),
		})
	}
	return out
}

// line is the line of the text that a path stands on, 0 if it has none.
func line(b *recipe.Batch, path recipe.Path) int {
	n, _ := b.Where[path].Position()
	return n
}

// rfc3339 writes a time as the sheet has it: to the minute.
func rfc3339(t time.Time) string { return t.Round(time.Minute).Format(time.RFC3339) }
