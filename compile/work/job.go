// Package work is what people do for a batch: the jobs in order with their words,
// readings and dangers, and their place on the clock.
package work

import (
	"slices"

	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/schedule"
	"newmake/lang/recipe"
)

// Job is one piece of work: the task that the schedule places, and what a run
// sheet says of it.
type Job struct {
	schedule.Task
	When     *plan.Phrase // what shows that it is time; nil where only the clock does
	Do       plan.Phrase
	Title    plan.Phrase  // where titleOf has none for its key
	Mark     *plan.Phrase // of what decides its day
	Read     []Reading
	Cautions []string        // keys
	Measured []plan.Addition // what is measured out for it
	Path     recipe.Path     // of the line in the text that asks for it
	After    string          // not in the line of work: done beside it, once this task has ended
}

// beside reports whether a job is not in the line of work.
func (j *Job) beside() bool { return j.After != "" }

// Reading is what an instrument should say, at a time from the task's start;
// below 0, at its end.
type Reading struct {
	plan.Reading
	AtS float64
}

// All is the work of a batch, from the mill to the wood, of that up to the end of its
// stripping run. The filling is told by the plan's own numbers.
func All(toWashRun []Job, n *numbers.Batch, fill plan.Cask, reduction *plan.Reduction) []Job {
	return slices.Concat(toWashRun, spiritJobs(n), fillJobs(n, fill, reduction))
}

// ToWashRun is the work up to the end of the stripping run.
func ToWashRun(n *numbers.Batch) []Job {
	return slices.Concat(mashJobs(n), fermentJobs(n), stripJobs(n))
}

// Additions is all that is measured out besides the grain, in the order of use.
func Additions(jobs []Job) []plan.Addition {
	out := []plan.Addition{}
	for _, j := range jobs {
		out = append(out, j.Measured...)
	}
	return out
}

// How long work takes that no model computes (common practice, at this scale).
const (
	minute = 60.0

	weighS      = 10 * minute
	pumpSetupS  = 10 * minute
	pitchS      = 10 * minute
	cleanS      = 45 * minute
	roundS      = 10 * minute
	dischargeS  = 30 * minute
	gaugeS      = 20 * minute
	reduceS     = 90 * minute
	settleS     = 24 * lot.SecondsPerHour
	fillSetupS  = 15 * minute
	fillS       = 15 * minute        // each cask
	soakS       = 10 * minute        // each cask
	bottleS     = 30.0               // each bottle, filled and closed by hand
	roundMinute = 9 * 60             // of the day, at which the ferment is read
	readEveryS  = lot.SecondsPerHour // on a still
	readHeartsS = 30 * minute        // while the hearts run
	heavyCaskM3 = 0.100              // from here on two people fill it
	hotC        = 60                 // a mash that scalds
)
