// Package search finds schedules: jobs of activities on resources, by the minute or any
// other unit of time. It knows nothing of a distillery.
//
// A job is done whole or, where it is optional, left out. Its activities have fixed
// durations, and lags between their starts that have a least and may have a most (a wash
// that sours may not wait for ever). An activity uses amounts of resources from one
// offset of its start to another, so that heat is counted by the minute, and may have to
// lie in the open windows of calendars. A hold keeps a resource from one activity to
// another, however far apart they come to lie (a fermenter, until it is clean again). Which
// resource is used may be a choice of the job's: any of three fermenters.
//
// What is better is a list of costs in levels, each level before all that follow.
//
// Four things work on a problem. Greedy places one job after the other where it ends
// soonest. Improve takes jobs out and puts them in again, a given number of times: the
// same number gives the same schedule on every machine. Exact branches and propagates
// until the best is proved, or its steps are used up. Bound is for problems too large for
// that: how many of some optional jobs there can be at most.
package search

import (
	"sort"
)

// Problem is what is to be scheduled. Times are 0 to Horizon.
type Problem struct {
	Horizon    int
	Resources  []Resource
	Calendars  [][]Window // each in order, without overlap
	Choices    []Choice
	Activities []Activity
	Lags       []Lag // of activities of one job, From before To in the job's order
	Holds      []Hold
	Jobs       []Job
	Costs      []Cost
	Sources    []Source
}

// Source is something that keeps for a while: it is there from so long after the start of
// an activity on, if that one's job is done. An activity below 0 is none: it is there from
// that time on in any case.
type Source struct{ A, After int }

// Resource is something of which there is so much at a time.
type Resource struct {
	Capacity []Step // the first at 0
}

// Step is an amount from a time on.
type Step struct{ At, Amount int }

// Window is from one time to another.
type Window struct{ Open, Close int }

// Choice is one of some resources.
type Choice struct{ Options []int }

// Which is a resource, by itself or as a job's choice.
type Which int

// Named is a resource by itself.
func Named(resource int) Which { return Which(resource) }

// Chosen is what a choice comes to.
func Chosen(choice int) Which { return Which(^choice) }

// Use is an amount of a resource from an offset of the activity's start to another.
type Use struct {
	Of       Which
	From, To int
	Amount   int
}

// During says that the part of an activity from an offset to another lies in one window
// of a calendar. Where the two are the same it is a moment, which may be at the close.
type During struct {
	Calendar int
	From, To int
}

// Activity is work that is not broken off.
type Activity struct {
	Duration         int
	Uses             []Use
	Within           []During
	Earliest, Latest int // starts; Latest 0: as late as the horizon lets it
}

// NoMost is the most of a lag that has none.
const NoMost = 1 << 30

// Lag is how long after the start of one activity another starts.
type Lag struct {
	From, To    int
	Least, Most int
}

// Hold keeps an amount of a resource from an activity's start, or so long after, to
// another's.
type Hold struct {
	Of             Which
	From, FromTime int
	To, ToTime     int
	Amount         int
}

// Job is activities that are done together.
type Job struct {
	Activities []int // an order in which no lag points back
	Choices    []int
	Holds      []int
	Optional   bool
	Alike      int // jobs of the same number that is not 0 are interchangeable
	Stride     int // how far apart starts are that are worth a look; 0: any
}

// levels is how many levels of cost there are.
const levels = 8

// Vector is a cost, level by level.
type Vector [levels]int64

// Less says that a cost is better than another.
func (v Vector) Less(o Vector) bool {
	for i := range v {
		if v[i] != o[i] {
			return v[i] < o[i]
		}
	}
	return false
}

func (v Vector) plus(o Vector) Vector {
	for i := range v {
		v[i] += o[i]
	}
	return v
}

func (v Vector) minus(o Vector) Vector {
	for i := range v {
		v[i] -= o[i]
	}
	return v
}

// Kind is what a cost is for.
type Kind uint8

// The kinds of costs. A cost of a job that is left out is none, but for Absent.
const (
	Absent    Kind = iota // Weight, where the job is left out
	Late                  // Weight, where activity A starts after At
	Over                  // Weight for each unit by which B starts later than At after A
	Start                 // Weight for each unit of A's start
	Moved                 // Weight, where A starts at another time than At
	Elsewhere             // Weight, where choice A of Job comes to another resource than At
	Makespan              // Weight for each unit of the end of what ends last
	Outside               // Weight for each unit of A, From to To after its start, in no window of calendar At
	Unfed                 // Weight, where A starts and none of the sources is there, or not for longer than At
)

// Cost is a part of what is better.
type Cost struct {
	Kind   Kind
	Level  int
	Weight int64
	Job    int // Absent, Elsewhere
	A, B   int
	At     int
	From   int // Outside
	To     int
}

// Placed is a schedule.
type Placed struct {
	Present []bool // jobs
	Start   []int  // activities; of jobs that are present
	Chosen  []int  // choices: the resource
	Cost    Vector
}

// latest is when an activity starts at the latest.
func (p *Problem) latest(a int) int {
	most := p.Horizon - p.Activities[a].Duration
	if l := p.Activities[a].Latest; l > 0 {
		return min(l, most)
	}
	return most
}

// resource is what a Which comes to.
func resource(w Which, chosen []int) int {
	if w >= 0 {
		return int(w)
	}
	return chosen[^w]
}

// priced is what one of the costs comes to for a schedule; Makespan and Unfed, which go by
// more than one job, are none.
func (p *Problem) priced(c *Cost, present bool, start, chosen []int) int64 {
	switch {
	case c.Kind == Absent:
		if !present {
			return c.Weight
		}
	case !present:
	case c.Kind == Elsewhere:
		if chosen[c.A] != c.At {
			return c.Weight
		}
	case c.Kind == Late:
		if start[c.A] > c.At {
			return c.Weight
		}
	case c.Kind == Over:
		return c.Weight * int64(max(0, start[c.B]-start[c.A]-c.At))
	case c.Kind == Start:
		return c.Weight * int64(start[c.A])
	case c.Kind == Moved:
		if start[c.A] != c.At {
			return c.Weight
		}
	case c.Kind == Outside:
		return c.Weight * int64(outside(p.Calendars[c.At], start[c.A]+c.From, start[c.A]+c.To))
	}
	return 0
}

// outside is how much from one time to another lies in no window.
func outside(calendar []Window, from, to int) int {
	n := to - from
	i := sort.Search(len(calendar), func(i int) bool { return calendar[i].Close > from })
	for ; i < len(calendar) && calendar[i].Open < to; i++ {
		n -= min(calendar[i].Close, to) - max(calendar[i].Open, from)
	}
	return n
}

// fed says that an activity that starts at a time finds a source that is there, and not for
// longer than it keeps.
func (p *Problem) fed(at, keeps int, present func(a int) bool, start []int) bool {
	for _, s := range p.Sources {
		t := s.After
		if s.A >= 0 {
			if !present(s.A) {
				continue
			}
			t += start[s.A]
		}
		if t <= at && at-t <= keeps {
			return true
		}
	}
	return false
}
