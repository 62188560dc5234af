package schedule

import (
	"fmt"
	"newmake/lang/words"
	"strings"
	"time"
)

// lookAhead is how many shifts are tried before work is put where it does not
// fit. Shifts are alike, so two would do but for a change of the clocks.
const lookAhead = 4

// Run puts the tasks on the clock, one after the other.
func Run(in Input) []Slot {
	h := hours{in.Shift, in.Zone}
	slots := make([]Slot, 0, len(in.Tasks))
	now := in.Start.In(in.Zone)
	line := -1 // the last slot that was not done meanwhile
	for rest := in.Tasks; len(rest) > 0; {
		n := chainLength(rest)
		chain := rest[:n]
		rest = rest[n:]

		if chain[0].Meanwhile && line >= 0 {
			start, _ := h.place(slots[line].Start, chain)
			for _, task := range chain {
				s := Slot{Task: task, Start: start, End: start.Add(seconds(task.DurationS))}
				s.OutOfShift = h.beyond(s)
				slots = append(slots, s)
				start = s.End
			}
			if start.After(now) {
				now = start
			}
			continue
		}
		start, why := h.place(now, chain)
		if b, ok := in.Begun[chain[0].Stage]; ok && (len(slots) == 0 || slots[len(slots)-1].Stage != chain[0].Stage) {
			if start, why = b.At.In(in.Zone), ""; !b.Hour {
				start = start.Add(time.Duration(in.Shift.FromMinute) * time.Minute)
			}
		}
		if line >= 0 && slots[line].Elastic {
			slots[line].End = later(start, slots[line].Start)
		}
		at := start
		for i, task := range chain {
			s := Slot{Task: task, Start: at, End: at.Add(seconds(task.DurationS))}
			if i == 0 && start.After(now) {
				s.Wait, s.WaitWhy = start.Sub(now), why
			}
			s.OutOfShift = h.beyond(s)
			slots = append(slots, s)
			at = s.End
		}
		now, line = at, len(slots)-1
	}
	return slots
}

func later(a, b time.Time) time.Time {
	if a.Before(b) {
		return b
	}
	return a
}

// chainLength says how many of the first tasks belong together.
func chainLength(tasks []Task) int {
	n := 1
	for n < len(tasks) && tasks[0].Chain != "" && tasks[n].Chain == tasks[0].Chain {
		n++
	}
	return n
}

// place finds when a chain can start, and why not at once.
func (h hours) place(now time.Time, chain []Task) (time.Time, string) {
	if h.always() || chain[0].Now || (h.fits(now, chain) && !chain[0].NewDay) {
		return now, ""
	}
	windows := h.from(now, lookAhead)
	if windows[0].open.Before(now) {
		windows = windows[1:]
	}
	for _, w := range windows {
		if h.fits(w.open, chain) {
			return w.open, h.why(now, w.open, chain)
		}
	}
	// It fits no shift: begin with one, and count what runs over.
	return windows[0].open, h.why(now, windows[0].open, chain)
}

// fits reports whether all of a chain that needs people falls in shifts when it
// starts at a time.
func (h hours) fits(start time.Time, chain []Task) bool {
	at := start
	for _, t := range chain {
		end := at.Add(seconds(t.DurationS))
		if t.Attend == Begin && !h.staffed(at, at) || t.Attend == Throughout && !h.staffed(at, end) {
			return false
		}
		at = end
	}
	return true
}

// beyond is how much of a slot's attended work lies outside the shifts.
func (h hours) beyond(s Slot) time.Duration {
	switch s.Attend {
	case Throughout:
		return h.outside(s.Start, s.End)
	case Begin:
		// Only its start needs somebody: it counts as a moment.
		if !h.staffed(s.Start, s.Start) {
			return time.Minute
		}
	}
	return 0
}

// why says in words what a wait is for.
func (h hours) why(now, start time.Time, chain []Task) string {
	var parts []string
	if w := h.from(now, 1)[0]; !w.open.After(now) { // somebody is there
		switch need := attended(chain); {
		case chain[0].NewDay:
			parts = append(parts, "it wants a day of its own")
		default:
			parts = append(parts, fmt.Sprintf("%s of work does not fit before %s", hoursAndMinutes(need), w.close.Format("15:04")))
		}
	}
	if off := h.daysOff(now, start); len(off) > 0 {
		parts = append(parts, words.And(off)+" off")
	} else if len(parts) == 0 {
		parts = append(parts, "night")
	}
	return strings.Join(parts, "; ")
}

// daysOff names the days without a shift from now up to a start.
func (h hours) daysOff(now, start time.Time) []string {
	var off []string
	y, m, d := now.In(h.zone).Date()
	for i := 0; ; i++ {
		day := time.Date(y, m, d+i, 12, 0, 0, 0, h.zone)
		if ys, ms, ds := start.In(h.zone).Date(); !day.Before(time.Date(ys, ms, ds, 12, 0, 0, 0, h.zone)) {
			return off
		}
		if _, works := h.on(day); !works {
			off = append(off, day.Weekday().String())
		}
	}
}

// attended is the time from a chain's start to the end of its last attended
// task.
func attended(chain []Task) time.Duration {
	var at, need time.Duration
	for _, t := range chain {
		if t.Attend == Begin {
			need = at
		}
		at += seconds(t.DurationS)
		if t.Attend == Throughout {
			need = at
		}
	}
	return need
}

func seconds(s float64) time.Duration { return time.Duration(s * float64(time.Second)) }

func hoursAndMinutes(d time.Duration) string {
	m := int(d.Round(time.Minute) / time.Minute)
	if m < 60 {
		return fmt.Sprintf("%d min", m)
	}
	return fmt.Sprintf("%d h %02d min", m/60, m%60)
}
