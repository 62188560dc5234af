package chart

import (
	"math"
	"time"
)

func hm(t time.Time) string { return t.Format("15:04") }

// clockAxis marks full steps of the clock below a panel whose x axis counts
// minutes from a start, or from before it. Times are labelled as far as there is room.
func (p panel) clockAxis(start time.Time, label string) {
	minutes := p.x.to - p.x.from
	every := 30
	for _, e := range []int{15, 30, 60, 120, 240, 720} {
		if every = e; minutes/float64(e)*52 <= p.right()-p.left() {
			break
		}
	}
	from := start.Hour()*60 + start.Minute()
	first := int(math.Ceil((float64(from)+p.x.from)/float64(every))) * every
	for m := first; float64(m-from) <= p.x.to; m += every {
		x := p.x.at(float64(m - from))
		p.c.stroke("rule", x, p.top(), x, p.bottom())
		p.c.under(x, p.bottom()+17, hm(start.Add(time.Duration(m-from)*time.Minute)))
	}
	p.c.text("axis", "middle", (p.left()+p.right())/2, p.bottom()+35, label)
}

// days are the midnights of a span, in the zone of its start.
func days(from, to time.Time) []time.Time {
	var out []time.Time
	for d := time.Date(from.Year(), from.Month(), from.Day()+1, 0, 0, 0, 0, from.Location()); d.Before(to); d = d.AddDate(0, 0, 1) {
		out = append(out, d)
	}
	return out
}
