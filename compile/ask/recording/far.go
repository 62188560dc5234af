package recording

import (
	"fmt"

	"newmake/compile/blank"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/quantity"
)

// farTimes is how many times an amount may be what was planned, or a part of it, before it
// is asked about (own rule: a lot or a house differs by less, and a slip in the unit or a place
// by more).
const farTimes = 2.5

// Far says of what stands in the page, and did not in the one before, what is far from the plan.
// It is kept: it may have been so.
func (p *Page) Far(was *Page) []string {
	if p.Planned == nil {
		return nil
	}
	before := map[string]bool{}
	for _, a := range blank.Match(p.Planned, was.Run).Answers {
		before[a.Blank.ID] = len(a.More) == 0
	}
	var out []string
	for _, a := range blank.Match(p.Planned, p.Run).Answers {
		if said, ok := p.far(a); ok && !before[a.Blank.ID] {
			out = append(out, said)
		}
	}
	return out
}

// far says how far an amount is from what was planned, if it is.
func (p *Page) far(a blank.Answer) (string, bool) {
	should, kind := inKilogramsOrLitres(a.Blank.Should)
	v, ok := a.Reading.Holds()
	if !ok || should <= 0 || v.Kind != kind {
		return "", false
	}
	is := v.SI
	for _, u := range a.More {
		if more, ok := u.Amount.Holds(); ok && more.Kind == kind {
			is += more.SI
		}
	}
	what, planned := a.Blank.What, p.units.Quantity(a.Blank.Should)
	if a.Used == nil {
		what = "the " + string(a.Blank.Kind)
	}
	switch times := is / should; {
	case times > farTimes:
		return fmt.Sprintf("`%s` of %s is %s times the %s of the plan", v, what, measure.Number(times, places(times)), planned), true
	case times < 1/farTimes:
		return fmt.Sprintf("`%s` of %s is little beside the %s of the plan", v, what, planned), true
	}
	return "", false
}

func places(times float64) int {
	if times < 10 {
		return 1
	}
	return 0
}

// inKilogramsOrLitres is an amount of a plan in SI, and of what kind it is; 0 of all else.
func inKilogramsOrLitres(q plan.Quantity) (float64, quantity.Kind) {
	switch q.Unit {
	case plan.Kilogram:
		return q.Value, quantity.Mass
	case plan.Litre:
		return q.Value / 1000, quantity.Volume
	}
	return 0, quantity.None
}
