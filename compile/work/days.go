package work

import (
	"slices"
	"time"

	"newmake/compile/plan"
	"newmake/lang/sorting"
)

// beginsMin is how long a person is taken by the start of a step that then goes on
// alone (common practice).
const beginsMin = 15

// stint is a step with the time in which it takes its people.
type stint struct {
	*plan.Step
	from, until time.Time
}

// stintsOf reads the clock of each step once.
func stintsOf(steps []plan.Step) []stint {
	out := make([]stint, len(steps))
	for i := range steps {
		s := &steps[i]
		from, end := plan.Moment(s.Start), plan.Moment(s.End)
		if began := from.Add(beginsMin * time.Minute); s.Attend == plan.Start && began.Before(end) {
			end = began
		}
		out[i] = stint{s, from, end}
	}
	return out
}

// inOrder are the steps by their start, and the days on which somebody is wanted. A step
// belongs to the day on which it starts.
func inOrder(steps []plan.Step) ([]plan.Step, []plan.Day) {
	stints := stintsOf(steps)
	sorting.Stable(stints, func(a, b stint) int { return a.from.Compare(b.from) })
	sorted := make([]plan.Step, len(steps))
	for i, s := range stints {
		sorted[i] = *s.Step
	}
	return sorted, daysOf(slices.DeleteFunc(stints, func(s stint) bool { return s.Attend == plan.Alone }))
}

// daysOf parts what wants somebody, in order, by days.
func daysOf(stints []stint) []plan.Day {
	var out []plan.Day
	for len(stints) > 0 {
		date := stints[0].from.Format(time.DateOnly)
		n := 1
		for n < len(stints) && stints[n].from.Format(time.DateOnly) == date {
			n++
		}
		out = append(out, dayOf(date, stints[:n]))
		stints = stints[n:]
	}
	return out
}

// dayOf is a day of those who are wanted on it, one at least.
func dayOf(date string, stints []stint) plan.Day {
	d := plan.Day{Date: date, From: stints[0].Start, People: mostPeople(stints)}
	to := stints[0].from
	for _, s := range stints {
		if s.until.After(to) {
			to = s.until
		}
		if !slices.Contains(d.Stages, s.Stage) {
			d.Stages = append(d.Stages, s.Stage)
		}
		if w := workWord(s.ID); w != "" && !slices.Contains(d.Work, w) {
			d.Work = append(d.Work, w)
		}
	}
	d.To = rfc3339(to)
	if len(d.Work) == 0 {
		d.Work = []string{"clean"}
	}
	return d
}

// mostPeople is the largest number of people wanted at one moment. It can only grow
// where a step starts. What is done at once is done by whoever begins the next step
// then, and wants somebody besides only while another step goes on.
func mostPeople(stints []stint) int {
	most := 0
	for _, at := range stints {
		now, atOnce := at.People, !at.from.Before(at.until)
		for _, s := range stints {
			if s.ID != at.ID && at.from.Before(s.until) && (s.from.Before(at.from) || !atOnce && s.from.Equal(at.from)) {
				now += s.People
			}
		}
		most = max(most, now)
	}
	return most
}
