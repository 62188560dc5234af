package recording

import (
	"math"
	"slices"

	"newmake/compile/blank"
	"newmake/compile/plan"
)

// An answer that was typed a line too early stands out where it is far from what its line should
// say, and near what a line below it should. How far is counted in halves of where a reading lies
// 9 times in 10 (own rule: in one of a thousand a reading is so far off, and one that is right
// is near 9 times in 10).
const (
	slippedFar  = 2.0
	slippedNear = 1.0
	slippedBy   = 4 // lines at most
)

// weighedOff is half of where what is weighed out lies, as a part of it, where the plan has no
// such bounds (own rule: sacks and lots differ by less).
const weighedOff = 0.1

// Elsewhere is the line below another that fits what was typed for it, where it does not itself:
// somebody who types from a sheet has skipped a line. It is false where none does.
func (p *Page) Elsewhere(l Line, typed string) (Line, bool) {
	if off, ok := p.off(l, typed); !ok || off <= slippedFar {
		return Line{}, false
	}
	below := p.Lines()
	at := slices.IndexFunc(below, func(o Line) bool { return o.At.Start == l.At.Start && o.What == l.What })
	if at < 0 {
		return Line{}, false
	}
	for _, o := range below[at+1 : min(at+1+slippedBy, len(below))] {
		if off, ok := p.off(o, typed); ok && off <= slippedNear {
			return o, true
		}
	}
	return Line{}, false
}

// off is how far what was typed is from what a line should say, where it is farthest; not ok
// where it cannot stand there, or nothing of it can be told.
func (p *Page) off(l Line, typed string) (worst float64, ok bool) {
	if p.Planned == nil {
		return 0, false
	}
	then, err := p.Fill(l, typed)
	if err != nil {
		return 0, false
	}
	asked := map[string]bool{}
	for _, r := range l.Blanks {
		if r.Blank != nil {
			asked[r.Blank.ID] = true
		}
	}
	for _, a := range blank.Match(p.Planned, then.Run).Answers {
		if a.Blank == nil || !asked[a.Blank.ID] {
			continue
		}
		if off, told := halves(a); told {
			worst, ok = max(worst, off), true
		}
	}
	return worst, ok
}

// perSI is what brings a reading in SI to the unit of a plan.
var perSI = map[plan.Unit]float64{plan.Celsius: 1, plan.SG: 1, plan.PH: 1, plan.Kilogram: 1, plan.Litre: 1000, plan.LitrePerH: 3.6e6, plan.AbvPct: 100}

// halves is how far a reading is from what it should be.
func halves(a blank.Answer) (float64, bool) {
	v, ok := a.Reading.Holds()
	should := a.Blank.Should
	per := perSI[should.Unit]
	if !ok || per == 0 {
		return 0, false
	}
	by := per*v.SI - should.Value
	half := 0.0
	switch {
	case a.Used != nil:
		half = weighedOff * should.Value
	case by < 0 && a.Blank.Low != nil:
		half = should.Value - a.Blank.Low.Value
	case by >= 0 && a.Blank.High != nil:
		half = a.Blank.High.Value - should.Value
	}
	if half <= 0 {
		return 0, false
	}
	return math.Abs(by) / half, true
}
