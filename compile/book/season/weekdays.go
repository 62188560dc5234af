package season

import "newmake/compile/book/season/search"

// Reasons for which a batch cannot be mashed on a day of the week.
const (
	NoShift     = "no shift"                             // nobody works on that day
	MashTooLong = "the mash does not fit into the shift" // of that day
	WashWaits   = "the wash would stand past its limit before its still can be lit"
)

// weekdays says for each batch on which days of the week it can be mashed at all, alone in
// the house in a week without closures or absences.
func (s *answer) weekdays() []Weekdays {
	out := []Weekdays{}
	plain := *s.Asks
	plain.Closed, plain.Without = nil, nil
	axis := newAxis(&plain, s.Plant, s.axis.zone, s.Asks.From)
	h := &house{plant: s.Plant, axis: axis, windows: axis.windows(), boilerW: s.Plant.BoilerW, asks: outages{}, more: map[string]int{}}
	for _, name := range s.Asks.Batches() {
		c := s.courses[name]
		one := Weekdays{Batch: name, Days: make([]Weekday, 7)}
		for k := range 7 {
			d := &axis.days[k]
			one.Days[int(d.date.Weekday())] = h.weekday(c, d)
		}
		out = append(out, one)
	}
	return out
}

func (h *house) weekday(c *course, d *day) Weekday {
	out := Weekday{Day: d.date.Weekday().String()}
	if len(d.people) == 0 {
		out.Why = NoShift
		return out
	}
	w := &want{course: c, from: d.from, to: d.to - 1, on: []search.Window{{Open: d.from, Close: d.to - 1}}}
	b := h.build([]*want{w})
	s, _ := search.Improve(&b.Problem, nil, 0)
	if !s.Present[0] {
		mash := *c
		mash.blocks = c.blocks[:1]
		mash.fill, mash.strip = 0, -1
		w.course = &mash
		b := h.mashAlone(w)
		if s, _ := search.Improve(&b.Problem, nil, 0); s.Present[0] {
			out.Why = WashWaits
		} else {
			out.Why = MashTooLong
		}
		return out
	}
	out.Can = true
	if c.strip >= 0 {
		at := s.Start[b.first[0]+c.strip]
		out.StripOn = h.axis.time(at).Weekday().String()
		out.WaitHours = to(float64(max(0, at-s.Start[b.first[0]]-c.blocks[0].minutes-c.dryMin))/60, 1)
	}
	return out
}

// mashAlone is the mash of a batch and nothing else.
func (h *house) mashAlone(w *want) *built {
	b := &built{resources: map[string]int{}}
	b.Horizon = h.axis.minutes
	b.Calendars = [][]search.Window{h.windows, h.axis.opens(h.windows)}
	k := w.course.blocks[0]
	b.Activities = []search.Activity{{Duration: k.minutes, Within: append(h.within(k), search.During{Calendar: b.calendar(w.on)}), Earliest: w.from, Latest: w.to}}
	b.Jobs = []search.Job{{Activities: []int{0}, Optional: true}}
	b.Costs = []search.Cost{{Kind: search.Absent, Weight: 1}}
	b.first = []int{0}
	return b
}
