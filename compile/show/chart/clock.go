package chart

import (
	"math"
	"time"
)

func hm(t time.Time) string { return t.Format("15:04") }

// clockSteps are the full steps of the clock on an x axis that counts minutes from a
// start, as far as there is room to name them.
func (p panel) clockSteps(start time.Time) (minutes []float64) {
	every := 30.0
	for _, e := range []float64{5, 10, 15, 30, 60, 120, 240, 720} {
		if every = e; (p.x.to-p.x.from)/e*50 <= p.right()-p.left() {
			break
		}
	}
	from := float64(start.Hour()*60 + start.Minute())
	for m := math.Ceil((from+p.x.from)/every) * every; m-from <= p.x.to; m += every {
		minutes = append(minutes, m-from)
	}
	return minutes
}

// clockLines rules the full steps of the clock.
func (p panel) clockLines(start time.Time) {
	for _, m := range p.clockSteps(start) {
		p.c.stroke("rule", p.x.at(m), p.top(), p.x.at(m), p.bottom())
	}
}

// clockLabels names them below the panel.
func (p panel) clockLabels(start time.Time) {
	for _, m := range p.clockSteps(start) {
		p.c.under(p.x.at(m), p.bottom()+14, hm(start.Add(minutes(m))))
	}
}

// days are the midnights of a span, in the zone of its start.
func days(from, to time.Time) []time.Time {
	var out []time.Time
	for d := time.Date(from.Year(), from.Month(), from.Day()+1, 0, 0, 0, 0, from.Location()); d.Before(to); d = d.AddDate(0, 0, 1) {
		out = append(out, d)
	}
	return out
}
