package work

import (
	"errors"
	"slices"
	"sync"
	"time"

	"newmake/compile/plan"
	"newmake/compile/stage/ferment"
	"newmake/compile/stage/schedule"
	"newmake/lang/recipe"
	"newmake/lang/zone"
)

// Clock is the time at which a batch starts, and the hours of its house.
type Clock struct {
	start time.Time
	zone  *time.Location
	shift recipe.Shift
	crew  int
}

// ErrZone says that the plant's zone is not known.
var ErrZone = errors.New("the zone is not known")

// ClockOf reads a batch's clock. The error is ErrZone, or says why the start is
// not one moment.
func ClockOf(b *recipe.Batch) (Clock, error) {
	p, s := b.Plant, b.Start
	zone := zoneOf(p.Zone)
	if zone == nil {
		return Clock{}, ErrZone
	}
	start, err := schedule.Civil(s.Year, s.Month, s.Day, s.Hour, s.Minute, zone)
	return Clock{start, zone, p.Shift, p.Crew}, err
}

// zones are those that were read, by name: reading one takes files and as long as
// a stage of a batch.
var zones sync.Map

// zoneOf is the zone of a name, nil if it is not known.
func zoneOf(name string) *time.Location {
	if z, ok := zones.Load(name); ok {
		return z.(*time.Location)
	}
	found, err := zone.Load(name)
	if err != nil {
		return nil
	}
	zones.Store(name, found)
	return found
}

// FermentS is how long the wash stands in the fermenter by the clock, when jobs
// are the work up to the stripping run.
func (c Clock) FermentS(jobs []Job) float64 {
	line, _ := split(jobs)
	for _, slot := range c.place(line) {
		if slot.Key == fermentKey {
			return slot.End.Sub(slot.Start).Seconds()
		}
	}
	return 0
}

// Scheduled is the work on the clock, as the plan has it, and the slots of all of
// it.
func (c Clock) Scheduled(b *recipe.Batch, jobs []Job, curve []ferment.Point) (plan.Schedule, []schedule.Slot) {
	line, beside := split(jobs)
	slots := c.place(line)
	steps := make([]plan.Step, 0, 2*len(slots))
	for i, slot := range slots {
		steps = append(steps, step(b, line[i], slot))
		if slot.Key == fermentKey {
			steps = append(steps, c.rounds(slot, curve, b.Ferm.AsItFills)...)
		}
	}
	all := make([]schedule.Slot, 0, len(slots)+len(beside))
	all = append(all, slots...)
	for _, j := range beside {
		at := slices.IndexFunc(all, func(s schedule.Slot) bool { return s.Key == j.After })
		if at < 0 {
			continue
		}
		slot := schedule.Run(schedule.Input{Start: all[at].End, Shift: c.shift, Zone: c.zone, Tasks: []schedule.Task{j.Task}})[0]
		all = append(all, slot)
		steps = append(steps, step(b, j, slot))
	}
	slices.SortStableFunc(steps, func(a, b plan.Step) int { return plan.Moment(a.Start).Compare(plan.Moment(b.Start)) })
	out := scheduleOf(steps, slots, c.start)
	out.NameReadings()
	out.Vessels = occupancy(all)
	return out, all
}

// Shifted is the line of work as it would fall if it were begun so many days later, at
// the same hour.
func (c Clock) Shifted(jobs []Job, days int) []schedule.Slot {
	line, _ := split(jobs)
	c.start = c.start.AddDate(0, 0, days)
	return c.place(line)
}

func (c Clock) place(line []Job) []schedule.Slot {
	tasks := make([]schedule.Task, len(line))
	for i, j := range line {
		tasks[i] = j.Task
	}
	return schedule.Run(schedule.Input{Start: c.start, Shift: c.shift, Crew: c.crew, Zone: c.zone, Tasks: tasks})
}

// split parts the line of work from what is done beside it.
func split(jobs []Job) (line, beside []Job) {
	line = make([]Job, 0, len(jobs))
	for _, j := range jobs {
		if j.After != "" {
			beside = append(beside, j)
		} else {
			line = append(line, j)
		}
	}
	return line, beside
}
