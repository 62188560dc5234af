package work

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/plan"
)

// A day wants as many people as its steps want at one moment: two that overlap want
// the sum, two of which one begins as the other ends do not.
func TestDaysOf(t *testing.T) {
	step := func(id, stage, from, to, attend string, people int) plan.Step {
		return plan.Step{ID: id, Stage: stage, Start: "2026-03-" + from + ":00-05:00", End: "2026-03-" + to + ":00-05:00", Attend: attend, People: people}
	}
	charge := step("strip.charge", "strip", "07T08:00", "07T08:30", plan.Stay, 1)
	heat := step("strip.heat", "strip", "07T08:30", "07T09:30", plan.Stay, 1)
	for _, c := range []struct {
		name   string
		beside plan.Step
		people int
		to     string
	}{
		{"overlaps", step("ferment.clean", "ferment", "07T08:30", "07T09:15", plan.Stay, 1), 2, "07T09:30"},
		{"overlaps by a minute", step("ferment.clean", "ferment", "07T09:29", "07T10:15", plan.Stay, 1), 2, "07T10:15"},
		{"begins as it ends", step("ferment.clean", "ferment", "07T09:30", "07T10:15", plan.Stay, 1), 1, "07T10:15"},
		{"two people", step("fill", "fill", "07T09:30", "07T10:15", plan.Stay, 2), 2, "07T10:15"},
		{"alone", step("rest", "cask", "07T08:30", "09T09:15", plan.Alone, 0), 1, "07T09:30"},
		{"begun and left", step("soak", "fill", "07T09:30", "07T12:00", plan.Start, 1), 1, "07T09:45"},
		{"at once, meanwhile", step("dose", "mash", "07T08:40", "07T08:40", plan.Stay, 1), 2, "07T09:30"},
		{"at once, before the next", step("dose", "mash", "07T08:30", "07T08:30", plan.Stay, 1), 1, "07T09:30"},
	} {
		days := daysIn([]plan.Step{charge, heat, c.beside})
		if assert.Len(t, days, 1, c.name) {
			assert.Equal(t, c.people, days[0].People, c.name)
			assert.Equal(t, "2026-03-"+c.to+":00-05:00", days[0].To, c.name)
		}
	}
	// What somebody has begun and left takes them for a quarter of an hour, and no
	// longer.
	left := step("soak", "fill", "07T08:30", "07T12:00", plan.Start, 1)
	assert.Equal(t, 2, daysIn([]plan.Step{left, step("a", "fill", "07T08:44", "07T09:00", plan.Stay, 1)})[0].People)
	assert.Equal(t, 1, daysIn([]plan.Step{left, step("a", "fill", "07T08:45", "07T09:00", plan.Stay, 1)})[0].People)

	days := daysIn([]plan.Step{charge, heat, step("spirit.charge", "spirit", "10T22:00", "11T02:00", plan.Stay, 1), step("fill.cask", "fill", "11T07:00", "11T08:00", plan.Stay, 2)})
	assert.Equal(t, []plan.Day{
		{Date: "2026-03-07", From: "2026-03-07T08:00:00-05:00", To: "2026-03-07T09:30:00-05:00", People: 1, Stages: []string{"strip"}, Work: []string{"strip"}},
		{Date: "2026-03-10", From: "2026-03-10T22:00:00-05:00", To: "2026-03-11T02:00:00-05:00", People: 1, Stages: []string{"spirit"}, Work: []string{"spirit"}},
		{Date: "2026-03-11", From: "2026-03-11T07:00:00-05:00", To: "2026-03-11T08:00:00-05:00", People: 2, Stages: []string{"fill"}, Work: []string{"fill"}},
	}, days)
	assert.Empty(t, daysIn(nil))
}

// daysIn are the days of steps in any order.
func daysIn(steps []plan.Step) []plan.Day {
	_, days := inOrder(steps)
	return days
}
