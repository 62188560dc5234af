package season

import (
	"cmp"
	"slices"
	"time"

	"newmake/compile/book/season/search"
	"newmake/lang/recipe"
	asked "newmake/lang/season"
	"newmake/lang/sorting"
)

// What there can be more of, besides a kind of vessel.
const (
	MoreTank   = "tank"
	MoreBoiler = "boiler"
	MoreCrew   = "crew"
	MoreDay    = "day"  // of the week on which the plant works too
	Later      = "by"   // days that a line's date is put off
	Opened     = "open" // days that are not closed after all
	Back       = "back" // a vessel, a tank or a person that is to be had after all
)

// relaxed is a house with one thing more.
type relaxed struct {
	relief Relief
	house  *house
}

// boilerStepW is the heat that is tried on top.
const boilerStepW = 100e3

// relaxations are the season's house with one thing more, each.
func (s *solver) relaxations() []relaxed {
	var out []relaxed
	add := func(r Relief, change func(h *house)) {
		h := *s.house
		h.more = map[string]int{}
		change(&h)
		out = append(out, relaxed{r, &h})
	}
	fermenter := false
	for _, v := range s.Plant.Vessels {
		if v.Kind == recipe.Fermenter { // one more of them, whichever it is like
			if fermenter {
				continue
			}
			fermenter = true
		}
		add(Relief{What: v.Kind.String(), Name: v.Name, Amount: 1, Unit: "each"}, func(h *house) { h.more[v.Name] = 1 })
	}
	for _, t := range s.Plant.Tanks {
		if t.For&(recipe.OfLowWines|recipe.OfSpirit) != 0 {
			add(Relief{What: MoreTank, Name: t.Name, Amount: 1, Unit: "each"}, func(h *house) { h.more[t.Name] = 1 })
		}
	}
	if s.house.boilerW > 0 {
		add(Relief{What: MoreBoiler, Name: ByBoiler, Amount: boilerStepW / 1000, Unit: "kW"}, func(h *house) { h.boilerW += boilerStepW })
	}
	if s.Plant.Crew > 0 || s.house.named() {
		add(Relief{What: MoreCrew, Name: ByCrew, Amount: 1, Unit: "each"}, func(h *house) { h.crew++ })
	}
	if !always(s.Plant.Shift) {
		for day := range 7 {
			if s.Plant.Shift.Days[day] {
				continue
			}
			add(Relief{What: MoreDay, Name: time.Weekday(day).String(), Amount: 1, Unit: "each"}, func(h *house) {
				h.axis = s.axis.withDay(time.Weekday(day), s.Plant)
				h.windows = h.axis.windows()
			})
		}
	}
	return out
}

// lifted are the season's house without one of the lines that take something away, each.
func (s *solver) lifted() []relaxed {
	var out []relaxed
	with := func(r Relief, asks asked.Season, outages outages) {
		h := *s.house
		h.axis = newAxis(&asks, s.Plant, s.axis.zone, s.axis.days[0].date)
		h.windows, h.asks = h.axis.windows(), outages
		out = append(out, relaxed{r, &h})
	}
	for i, c := range s.Asks.Closed {
		asks := *s.Asks
		asks.Closed = slices.Delete(slices.Clone(asks.Closed), i, i+1)
		with(Relief{What: Opened, Name: c.From.String(), Amount: float64(c.From.DaysTo(c.To) + 1), Unit: "days"}, asks, s.house.asks)
	}
	for i, w := range s.Asks.Without {
		asks, left := *s.Asks, s.house.asks
		asks.Without = slices.Delete(slices.Clone(asks.Without), i, i+1)
		if !w.Person {
			left = s.axis.outages(asks.Without)
		}
		with(Relief{What: Back, Name: w.Name, Amount: float64(w.From.DaysTo(w.To) + 1), Unit: "days"}, asks, left)
	}
	return out
}

// withDay is the axis of a plant that works on one day of the week more.
func (a *axis) withDay(day time.Weekday, p *recipe.Plant) *axis {
	out := *a
	out.days = slices.Clone(a.days)
	crew := 0
	for _, d := range a.days {
		n := 0
		for _, s := range d.people {
			n += s.people
		}
		crew = max(crew, n)
	}
	shift := p.Shift
	shift.Days[day] = true
	for i := range out.days {
		if d := &out.days[i]; d.date.Weekday() == day && d.closed == nil && len(d.people) == 0 {
			one := a.shift(d.date, shift, max(crew, 1), "")
			d.people = append(slices.Clone(d.people), one)
		}
	}
	return &out
}

// fewRuns is a season whose bottlenecks are looked for with all steps. A step takes the
// longer the more runs there are, and nobody waits a minute for what is beside the plan.
const fewRuns = 8

// aside is the steps of each look at a house that has something else.
func (s *solver) aside() int {
	return max(s.effort()*fewRuns/max(len(s.present()), fewRuns)/4, 1)
}

// bottlenecks says what each thing more would bring: batches of the season's recipes on top
// of those that the house can make, all filled by its last day.
func (s *solver) bottlenecks() (capacity int, out []Relief) {
	if len(s.Asks.Batches()) == 0 {
		return 0, []Relief{}
	}
	effort := s.aside()
	wants := s.filledUp()
	last := s.lastMinute()
	problem := func(h *house) *search.Problem {
		b := h.build(wants)
		for j, w := range wants { // nothing counts that is not filled by then
			if w.done == nil {
				a := &b.Activities[b.first[j]+w.course.fill]
				a.Latest = min(a.Latest, last-a.Duration)
			}
		}
		return &b.Problem
	}
	try := func(h *house, begin *search.Placed, effort int) (*search.Placed, int) {
		p, _ := search.Improve(problem(h), begin, effort)
		s.steps += effort
		n := 0
		for _, there := range p.Present {
			if there {
				n++
			}
		}
		return p, n
	}
	base, n := try(s.house, s.placed, 4*effort)
	plain := problem(s.house)
	var tried []int
	var waits []float64
	all := s.relaxations()
	for k := 0; k < len(all); k++ {
		p, m := try(all[k].house, base, effort)
		if m > n && search.Check(plain, p) == nil { // it does without: the house itself can do it
			base, n = p, m
		}
		tried, waits = append(tried, m), append(waits, to(float64(base.Cost[waiting]-p.Cost[waiting])/60, 1))
	}
	for k, r := range all {
		r.relief.Batches = max(tried[k]-n, 0)
		if r.relief.Batches == 0 {
			r.relief.WaitH = max(waits[k], 0)
		}
		out = append(out, r.relief)
	}
	sorting.Stable(out, func(a, b Relief) int {
		return cmp.Or(cmp.Compare(b.Batches, a.Batches), cmp.Compare(b.WaitH, a.WaitH))
	})
	return n, out
}

// filledUp is what the season asks for, and of each of its batches as many more as nobody
// could make.
func (s *solver) filledUp() []*want {
	out := slices.Clone(s.list)
	names := s.Asks.Batches()
	more := s.Asks.Days()*len(s.Plant.Vessels)/14/len(names) + 2
	for k, name := range names {
		for range more {
			out = append(out, &want{demand: -1, course: s.courses[name], from: s.from, to: s.lastMinute() - 1, kind: 100000 + k, extra: true})
		}
	}
	return out
}

// leastDays are the days by which a date is tried to be put off.
var leastDays = []int{1, 2, 3, 5, 7, 10, 14, 21}

// missed says of each line that is not met what stands in its way, and the least change
// that would do.
func (s *solver) missed(out []Demanded) {
	effort := s.aside()
	type tried struct {
		relief Relief
		placed *search.Placed
		built  *built
	}
	var relaxed []tried
	for i := range out {
		d := &out[i]
		if d.Met {
			continue
		}
		if relaxed == nil { // each thing more is tried once, for all lines
			s.doing(Relieving)
			for _, r := range append(s.relaxations(), s.lifted()...) {
				b := r.house.build(s.list)
				p, _ := search.Improve(&b.Problem, s.placed, effort)
				s.steps += effort
				relaxed = append(relaxed, tried{r.relief, p, b})
			}
		}
		d.Limit = ByDates
		most := 0
		for _, r := range relaxed {
			n := answered(s.list, i, r.placed, r.built) - answered(s.list, i, s.placed, s.built)
			if n > most {
				most = n
				d.Limit = limitOf(r.relief)
				least := r.relief
				least.Batches = n
				d.Least = &least
			}
		}
		if d.Enough = d.Least != nil && answered(s.list, i, s.placed, s.built)+most >= s.wantedOf(i); d.Enough {
			continue
		}
		if d.Wanted != WantedCasks {
			continue
		}
		for _, days := range leastDays {
			list := make([]*want, len(s.list))
			for j, w := range s.list {
				c := *w
				if w.demand == i && w.due > 0 {
					c.due += days * 24 * 60
					c.to += days * 24 * 60
				}
				list[j] = &c
			}
			b := s.house.build(list)
			p, _ := search.Improve(&b.Problem, s.placed, effort)
			s.steps += effort
			met := answered(list, i, p, b) >= s.wantedOf(i)
			if met {
				d.Enough = true
				d.Least = &Relief{What: Later, Name: d.By, Amount: float64(days), Unit: "days", Batches: s.wantedOf(i) - answered(s.list, i, s.placed, s.built)}
				break
			}
		}
	}
}

// Limits of a line besides those of a gap.
const (
	ByDates  = "dates"  // nothing that is tried brings more: there is too little time
	ByShift  = "shift"  // a day of the week more would
	ByClosed = "closed" // it would without a closure
)

func limitOf(r Relief) string {
	switch r.What {
	case MoreDay:
		return ByShift
	case Opened:
		return ByClosed
	case MoreBoiler, MoreCrew, recipe.Fermenter.String():
		return r.What
	}
	return r.Name
}

// wantedOf is how many batches a line wants of the search.
func (s *solution) wantedOf(demand int) int {
	n := 0
	for _, w := range s.list {
		if w.demand == demand {
			n++
		}
	}
	return n
}

// answered is how many of the wants of a line a schedule has in time.
func answered(list []*want, demand int, p *search.Placed, b *built) int {
	n := 0
	for j, w := range list {
		if w.demand != demand || !p.Present[j] {
			continue
		}
		if w.due == 0 || p.Start[b.first[j]+w.course.fill]+w.course.blocks[w.course.fill].minutes <= w.due {
			n++
		}
	}
	return n
}
