package work

import (
	"slices"
	"time"

	"newmake/compile/plan"
)

// beginsMin is how long a person is taken by the start of a step that then goes on
// alone (common practice).
const beginsMin = 15

// daysOf are the days on which somebody is wanted, in order. A step belongs to the
// day on which it starts.
func daysOf(steps []plan.Step) []plan.Day {
	var out []plan.Day
	var of [][]plan.Step
	for _, s := range steps {
		if s.Attend == plan.Alone {
			continue
		}
		date := plan.Moment(s.Start).Format(time.DateOnly)
		if n := len(out); n == 0 || out[n-1].Date != date {
			out, of = append(out, plan.Day{Date: date, From: s.Start, To: s.Start}), append(of, nil)
		}
		d := &out[len(out)-1]
		if to := wantedUntil(s); to.After(plan.Moment(d.To)) {
			d.To = rfc3339(to)
		}
		if !slices.Contains(d.Stages, s.Stage) {
			d.Stages = append(d.Stages, s.Stage)
		}
		if w := workWord(s.ID); w != "" && !slices.Contains(d.Work, w) {
			d.Work = append(d.Work, w)
		}
		of[len(of)-1] = append(of[len(of)-1], s)
	}
	for i := range out {
		out[i].People = mostPeople(of[i])
		if len(out[i].Work) == 0 {
			out[i].Work = []string{"clean"}
		}
	}
	return out
}

// mostPeople is the largest number of people wanted at one moment. It can only grow
// where a step starts. What is done at once is done by whoever begins the next step
// then, and wants somebody besides only while another step goes on.
func mostPeople(steps []plan.Step) int {
	most := 0
	for _, at := range steps {
		now, moment := at.People, plan.Moment(at.Start)
		atOnce := !moment.Before(wantedUntil(at))
		for _, s := range steps {
			from := plan.Moment(s.Start)
			if s.ID != at.ID && moment.Before(wantedUntil(s)) && (from.Before(moment) || !atOnce && from.Equal(moment)) {
				now += s.People
			}
		}
		most = max(most, now)
	}
	return most
}

// wantedUntil is until when a step takes its people.
func wantedUntil(s plan.Step) time.Time {
	end := plan.Moment(s.End)
	if s.Attend != plan.Start {
		return end
	}
	if began := plan.Moment(s.Start).Add(beginsMin * time.Minute); began.Before(end) {
		return began
	}
	return end
}
