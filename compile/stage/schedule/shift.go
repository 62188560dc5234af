package schedule

import (
	"time"

	"newmake/lang/recipe"
)

// window is one shift on the clock.
type window struct{ open, close time.Time }

func (w window) holds(from, to time.Time) bool { return !from.Before(w.open) && !to.After(w.close) }

// hours gives a plant's shifts. A shift with no hours or no days stated is no
// limit: somebody is always there.
type hours struct {
	shift recipe.Shift
	zone  *time.Location
}

func (h hours) always() bool {
	return h.shift.FromMinute == h.shift.ToMinute || h.shift.Days == [7]bool{}
}

// on gives the shift that opens on the civil date of day, if there is one. A
// shift that ends at or before the time it begins ends on the next day.
func (h hours) on(day time.Time) (window, bool) {
	y, m, d := day.In(h.zone).Date()
	if !h.shift.Days[time.Date(y, m, d, 12, 0, 0, 0, h.zone).Weekday()] {
		return window{}, false
	}
	end := d
	if h.shift.ToMinute <= h.shift.FromMinute {
		end++
	}
	return window{
		open:  time.Date(y, m, d, 0, h.shift.FromMinute, 0, 0, h.zone),
		close: time.Date(y, m, end, 0, h.shift.ToMinute, 0, 0, h.zone),
	}, true
}

// from gives the shifts that end after t, in order, n of them. Eight days ahead
// there is always one.
func (h hours) from(t time.Time, n int) []window {
	y, m, d := t.In(h.zone).Date()
	var out []window
	for i := -1; len(out) < n; i++ {
		if w, ok := h.on(time.Date(y, m, d+i, 12, 0, 0, 0, h.zone)); ok && w.close.After(t) {
			out = append(out, w)
		}
	}
	return out
}

// staffed reports whether somebody is there from one time to another, without a
// break.
func (h hours) staffed(from, to time.Time) bool {
	return h.always() || h.from(from, 1)[0].holds(from, to)
}

// outside is how much of the time between two moments lies outside the shifts.
func (h hours) outside(from, to time.Time) time.Duration {
	if h.always() {
		return 0
	}
	out := to.Sub(from)
	for _, w := range h.from(from, 2+int(to.Sub(from)/(24*time.Hour))) {
		lo, hi := w.open, w.close
		if lo.Before(from) {
			lo = from
		}
		if hi.After(to) {
			hi = to
		}
		if hi.After(lo) {
			out -= hi.Sub(lo)
		}
	}
	return max(out, 0)
}

// Rounds gives the times, between two moments, at which somebody who is in the
// shift can do a daily round at a given minute of the day. A round that falls
// within an hour of either end is left out.
func Rounds(from, to time.Time, shift recipe.Shift, zone *time.Location, minute int) []time.Time {
	h := hours{shift, zone}
	y, m, d := from.In(zone).Date()
	var out []time.Time
	for i := 0; ; i++ {
		at := time.Date(y, m, d+i, 0, minute, 0, 0, zone)
		if at.After(to.Add(-time.Hour)) {
			return out
		}
		if at.After(from.Add(time.Hour)) && h.staffed(at, at) {
			out = append(out, at)
		}
	}
}
