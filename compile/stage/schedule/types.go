// Package schedule puts a batch's work on the clock: shifts, crew, vessels.
//
// Work is a list of tasks in order. A task takes its elapsed time, whatever
// the clocks on the wall do meanwhile; what needs a person falls in the
// plant's shifts, and tasks of one chain follow one another without a wait.
// Nothing is moved in silence: each wait has its reason, and work that runs
// past the shift is counted.
package schedule

import (
	"time"

	"newmake/lang/recipe"
)

// Attend says what a task needs of people.
type Attend uint8

const (
	Unattended Attend = iota // goes on alone, also at night
	Begin                    // somebody starts it, then it goes on alone
	Throughout               // somebody stands there all along
)

// Task is one piece of work, in order.
type Task struct {
	Key       string // stable: "mash.3", "strip.heat", ...
	Stage     string // mash, ferment, strip, spirit, fill, cask
	Vessel    string
	DurationS float64
	Attend    Attend
	People    int // needed while it is attended; 0 means one
	// Chain names tasks that must follow one another without a wait: if the
	// chain does not fit in today's shift it starts at the next one.
	Chain   string
	Power   float64 // W drawn from the boiler
	NewDay  bool    // starts with a shift, never in the middle of one
	MayWait bool    // may stand for a while before it
	Now     bool    // waits for no shift: what lies outside is counted
	Elastic bool    // goes on until the next task can start (a ferment, a rest in wood)
	// Meanwhile is done while the task before it goes on, which needs nobody. What follows
	// waits for both.
	Meanwhile bool
}

// Slot is a task on the clock.
type Slot struct {
	Task
	Start, End time.Time     // in the plant's zone
	Wait       time.Duration // stood before it
	WaitWhy    string        // "night", "Sunday and Monday off", ...
	OutOfShift time.Duration // attended work that runs past the shift
}

// Input is the work and the house's hours.
type Input struct {
	Start time.Time
	Shift recipe.Shift
	Zone  *time.Location
	Tasks []Task
	Begun map[string]Begun // by the stage: when its first work was begun; what follows goes by it
}

// Begun is when a stage was begun.
type Begun struct {
	At   time.Time
	Hour bool // At has the hour; else it is the beginning of the day, and the shift's is taken
}
