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
	hours Hours
}

// Hours are those of work that was settled elsewhere.
type Hours struct {
	// Done is from when to when tasks are done, by their keys: a season sees to what one
	// batch knows nothing of.
	Done map[string]Done
	// Begun is when stages were begun, by the record of a run.
	Begun map[string]schedule.Begun
}

// Done is when a task is done, how long it has waited, and how long nobody would be there.
type Done struct {
	From, To         time.Time
	Wait, OutOfShift time.Duration
}

// In is the clock of work that is done in given hours. A task that has none follows the one
// before it as closely as it would otherwise.
func (c Clock) In(hours Hours) Clock {
	c.hours = hours
	return c
}

// settle moves slots to their given hours.
func (c Clock) settle(slots []schedule.Slot) {
	if c.hours.Done == nil {
		return
	}
	by := time.Duration(0)
	for i := range slots {
		s := &slots[i]
		s.Wait, s.WaitWhy, s.OutOfShift = 0, "", 0
		h, ok := c.hours.Done[s.Key]
		if !ok {
			s.Start, s.End = s.Start.Add(by), s.End.Add(by)
			continue
		}
		if !s.Meanwhile { // what follows it follows what goes on meanwhile
			by = h.To.Sub(s.End)
		}
		s.Start, s.End, s.Wait, s.OutOfShift = h.From.In(c.zone), h.To.In(c.zone), h.Wait, h.OutOfShift
	}
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
	return Clock{start: start, zone: zone, shift: p.Shift}, err
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
	for _, slot := range c.place(jobs) {
		if slot.Key == fermentKey {
			return slot.End.Sub(slot.Start).Seconds()
		}
	}
	return 0
}

// Scheduled is the work on the clock, as the plan has it, and the slots of all of
// it: those of the line first.
func (c Clock) Scheduled(b *recipe.Batch, jobs []Job, curve []ferment.Point) (plan.Schedule, []schedule.Slot) {
	line := c.place(jobs)
	if late := soakedLate(jobs, line); late != nil {
		jobs, line = late, c.place(late)
	}
	all := slices.Grow(slices.Clone(line), len(jobs)-len(line))
	steps := make([]plan.Step, 0, 2*len(jobs))
	for i := range jobs {
		if jobs[i].beside() {
			continue
		}
		slot := line[0]
		line = line[1:]
		steps = append(steps, step(b, &jobs[i], slot))
		if slot.Key == fermentKey {
			steps = append(steps, c.rounds(slot, curve, b.Ferm.AsItFills)...)
		}
	}
	inLine := all
	for i := range jobs {
		if !jobs[i].beside() {
			continue
		}
		at := slices.IndexFunc(all, func(s schedule.Slot) bool { return s.Key == jobs[i].After })
		if at < 0 {
			continue
		}
		one := schedule.Run(schedule.Input{Start: all[at].End, Shift: c.shift, Zone: c.zone, Tasks: []schedule.Task{jobs[i].Task}})
		c.settle(one)
		slot := one[0]
		all = append(all, slot)
		steps = append(steps, step(b, &jobs[i], slot))
	}
	out := scheduleOf(steps, inLine, c.start)
	out.NameReadings()
	out.Vessels = occupancy(all)
	return out, all
}

// Shifted is the line of work as it would fall if it were begun so many days later, at
// the same hour.
func (c Clock) Shifted(jobs []Job, days int) []schedule.Slot {
	c.start, c.hours.Begun = c.start.AddDate(0, 0, days), nil
	return c.place(jobs)
}

// place puts the line of work on the clock.
func (c Clock) place(jobs []Job) []schedule.Slot {
	tasks := make([]schedule.Task, 0, len(jobs))
	for i := range jobs {
		if !jobs[i].beside() {
			tasks = append(tasks, jobs[i].Task)
		}
	}
	slots := schedule.Run(schedule.Input{Start: c.start, Shift: c.shift, Zone: c.zone, Tasks: tasks, Begun: c.hours.Begun})
	c.settle(slots)
	return slots
}
