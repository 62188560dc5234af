package season

import (
	"time"

	"newmake/compile/book/season/search"
	"newmake/lang/recipe"
	"newmake/lang/record"
	asked "newmake/lang/season"
)

// afterDays is how many days past its last a season is looked at: what was mashed on that
// day is still distilled and filled.
const afterDays = 28

// axis is the season's time: minutes that pass, from a midnight of the plant on. The
// clocks on the wall may be put forward or back meanwhile.
type axis struct {
	zero    time.Time
	zone    *time.Location
	days    []day
	minutes int // to the end of the last day
}

// day is one day of the plant.
type day struct {
	date     record.Date
	from, to int // midnight to midnight
	people   []shift
	closed   *asked.Closed
}

// shift is hours in which so many are there.
type shift struct {
	open, close, people int
	who                 string
}

func newAxis(s *asked.Season, p *recipe.Plant, zone *time.Location, first record.Date) *axis {
	a := &axis{zone: zone, zero: time.Date(first.Year, first.Month, first.Day, 0, 0, 0, 0, zone)}
	last := s.To.After(afterDays)
	names := s.People()
	for d := first; d.Compare(last) <= 0; d = d.After(1) {
		next := d.After(1)
		at := day{date: d, from: a.minute(midnight(d, zone)), to: a.minute(midnight(next, zone)), closed: s.ClosedOn(d)}
		switch {
		case at.closed != nil:
		case len(names) == 0:
			if !always(p.Shift) && !p.Shift.Days[d.Weekday()] {
				break
			}
			at.people = append(at.people, a.shift(d, p.Shift, max(p.Crew, 1), ""))
		default:
			for _, who := range names {
				if h, there := whoIsThere(s, who, d, p); there {
					at.people = append(at.people, a.shift(d, h, 1, who))
				}
			}
		}
		a.days = append(a.days, at)
	}
	a.minutes = a.days[len(a.days)-1].to
	return a
}

// whoIsThere is somebody's hours on a day. Before and after the season people keep the
// hours that they have in it.
func whoIsThere(s *asked.Season, who string, d record.Date, p *recipe.Plant) (recipe.Shift, bool) {
	if s.Has(d) {
		return s.There(who, d)
	}
	for _, c := range s.Crew {
		if c.Who == who && (c.From == s.From && c.To == s.To || c.From.IsZero()) {
			return c.Shift, c.Shift.Days[d.Weekday()]
		}
	}
	return p.Shift, p.Shift.Days[d.Weekday()]
}

// always says that a shift without hours or days is no limit.
func always(s recipe.Shift) bool { return s.FromMinute == s.ToMinute || s.Days == [7]bool{} }

func (a *axis) shift(d record.Date, h recipe.Shift, people int, who string) shift {
	if always(h) {
		return shift{a.minute(midnight(d, a.zone)), a.minute(midnight(d.After(1), a.zone)), people, who}
	}
	end := d.Day
	if h.ToMinute <= h.FromMinute {
		end++
	}
	return shift{
		a.minute(time.Date(d.Year, d.Month, d.Day, 0, h.FromMinute, 0, 0, a.zone)),
		a.minute(time.Date(d.Year, d.Month, end, 0, h.ToMinute, 0, 0, a.zone)), people, who,
	}
}

func midnight(d record.Date, zone *time.Location) time.Time {
	return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, zone)
}

func (a *axis) minute(t time.Time) int { return int(t.Sub(a.zero) / time.Minute) }

func (a *axis) time(minute int) time.Time {
	return a.zero.Add(time.Duration(minute) * time.Minute).In(a.zone)
}

func (a *axis) stamp(minute int) string { return a.time(minute).Format(time.RFC3339) }

// on is a day by its date; nil where it is none of the axis.
func (a *axis) on(d record.Date) *day {
	i := a.days[0].date.DaysTo(d)
	if i < 0 || i >= len(a.days) {
		return nil
	}
	return &a.days[i]
}

// windows are the times in which somebody is there. Days that follow one another round
// the clock are one.
func (a *axis) windows() []search.Window {
	var out []search.Window
	for _, w := range a.staff() {
		if w.amount == 0 {
			continue
		}
		if n := len(out); n > 0 && out[n-1].Close == w.from {
			out[n-1].Close = w.to
			continue
		}
		out = append(out, search.Window{Open: w.from, Close: w.to})
	}
	return out
}

// span is an amount from one minute to another.
type span struct{ from, to, amount int }

// staff is how many are there, from minute to minute.
func (a *axis) staff() []span {
	change := map[int]int{}
	for _, d := range a.days {
		for _, s := range d.people {
			change[s.open] += s.people
			change[s.close] -= s.people
		}
	}
	return steps(change, 0, a.minutes)
}

// opens are the moments at which a window begins. Where it goes on past
// midnight, as it does round the clock, each day begins with its first shift.
func (a *axis) opens(of []search.Window) []search.Window {
	var out []search.Window
	add := func(at int) {
		if n := len(out); n == 0 || out[n-1].Open < at {
			out = append(out, search.Window{Open: at, Close: at})
		}
	}
	days := a.days
	for _, w := range of {
		add(w.Open)
		for len(days) > 0 && days[0].from < w.Close {
			first := a.minutes
			for _, s := range days[0].people {
				first = min(first, s.open)
			}
			if first > w.Open && first < w.Close && w.Open < days[0].from {
				add(first)
			}
			if days[0].to > w.Close {
				break
			}
			days = days[1:]
		}
	}
	return out
}
