package schedule

import (
	"slices"
	"time"
)

// ConflictKind says what there is too little of.
type ConflictKind uint8

const (
	Crew   ConflictKind = iota // people
	Boiler                     // heat
	Vessel                     // a vessel wanted twice at once
)

// Conflict is a time at which tasks ask for more than there is.
type Conflict struct {
	Kind       ConflictKind
	From, To   time.Time
	Keys       []string // the tasks, in order
	Need, Have float64  // people, W, or uses of the vessel
	Vessel     string
}

// beginTakes is how long a person is taken by the start of a task that then
// goes on alone (common practice).
const beginTakes = 15 * time.Minute

// Conflicts finds where slots that overlap want more people than the crew,
// more heat than the boiler, or the same vessel. A crew or a boiler of 0 is not
// stated, and no limit.
func Conflicts(slots []Slot, crew int, boilerW float64) []Conflict {
	var out []Conflict
	for _, at := range moments(slots) {
		var people, power demand
		vessels := map[string]*demand{}
		var order []string
		for _, s := range slots {
			if !s.Start.After(at) && at.Before(s.busyUntil()) && s.Attend != Unattended {
				people.add(s, float64(max(s.People, 1)))
			}
			if s.Start.After(at) || !at.Before(s.End) {
				continue
			}
			power.add(s, s.Power)
			if s.Vessel != "" {
				if vessels[s.Vessel] == nil {
					vessels[s.Vessel] = &demand{}
					order = append(order, s.Vessel)
				}
				vessels[s.Vessel].add(s, 1)
			}
		}
		if crew > 0 && people.sum > float64(crew) {
			out = merge(out, people.conflict(Crew, at, float64(crew), ""))
		}
		if boilerW > 0 && power.sum > boilerW*(1+1e-9) {
			out = merge(out, power.conflict(Boiler, at, boilerW, ""))
		}
		for _, v := range order {
			if vessels[v].sum > 1 {
				out = merge(out, vessels[v].conflict(Vessel, at, 1, v))
			}
		}
	}
	return out
}

func (s Slot) busyUntil() time.Time {
	if s.Attend == Begin && s.Start.Add(beginTakes).Before(s.End) {
		return s.Start.Add(beginTakes)
	}
	return s.End
}

// moments are the times at which something starts, in order: a sum can only
// grow there.
func moments(slots []Slot) []time.Time {
	var out []time.Time
	for _, s := range slots {
		out = append(out, s.Start)
	}
	slices.SortFunc(out, time.Time.Compare)
	return slices.CompactFunc(out, time.Time.Equal)
}

type demand struct {
	sum  float64
	keys []string
	end  time.Time
}

func (d *demand) add(s Slot, amount float64) {
	if amount == 0 {
		return
	}
	d.sum += amount
	d.keys = append(d.keys, s.Key)
	if d.end.IsZero() || s.End.Before(d.end) {
		d.end = s.End
	}
}

func (d *demand) conflict(kind ConflictKind, at time.Time, have float64, vessel string) Conflict {
	return Conflict{Kind: kind, From: at, To: d.end, Keys: d.keys, Need: d.sum, Have: have, Vessel: vessel}
}

// merge adds a conflict, or lengthens the last one of its kind if it is of the
// same tasks.
func merge(all []Conflict, c Conflict) []Conflict {
	for i := len(all) - 1; i >= 0; i-- {
		if all[i].Kind == c.Kind && all[i].Vessel == c.Vessel {
			if slices.Equal(all[i].Keys, c.Keys) {
				all[i].To = c.To
				return all
			}
			break
		}
	}
	return append(all, c)
}

// Use is a vessel in use, from its first task to the end of its last.
type Use struct {
	Vessel, Stage string
	From, To      time.Time
}

// Occupancy lists each vessel's uses in the order in which they begin. Tasks of
// one stage in one vessel are one use, the waits between them included.
func Occupancy(slots []Slot) []Use {
	var out []Use
	for _, s := range slots {
		if s.Vessel == "" {
			continue
		}
		i := slices.IndexFunc(out, func(u Use) bool { return u.Vessel == s.Vessel && u.Stage == s.Stage })
		if i < 0 {
			out = append(out, Use{s.Vessel, s.Stage, s.Start, s.End})
			continue
		}
		if s.End.After(out[i].To) {
			out[i].To = s.End
		}
	}
	return out
}
