package review

import (
	"math"

	"newmake/compile/blank"
	"newmake/compile/lot"
	"newmake/compile/plan"
	"newmake/lang/record"
)

// keptPlan fills in what the plan that was kept beside a run predicts, where the text from which
// it was made can't be found. A reading that the plan does not mention stays without a prediction.
func (a *Answer) keptPlan(kept *blank.Planned, run *record.Run) {
	type key struct {
		visit *record.Visit
		what  record.What
	}
	should := map[key]float64{}
	for _, x := range blank.Match(kept, run).Answers {
		if si, ok := inSI(x.Blank.Should); ok && x.Visit != nil {
			should[key{x.Visit, x.Reading.What}] = si
		}
	}
	for i := range a.Lines {
		l := &a.Lines[i]
		l.Plan = math.NaN()
		if v, ok := should[key{l.Visit, l.What}]; ok {
			l.Plan = v
		}
	}
}

// keptHearts is the alcohol that such a plan has in the hearts; NaN where it has none.
func keptHearts(kept *blank.Planned) float64 {
	for _, step := range []string{"fill.gauge", "spirit.hearts", "spirit.1.hearts"} {
		volume, abv := math.NaN(), math.NaN()
		for _, b := range kept.Blanks {
			v, ok := inSI(b.Should)
			switch {
			case b.Step != step || !ok:
			case b.Kind == record.Volume:
				volume = v
			case b.Kind == record.Strength:
				abv = v
			}
		}
		if v := volume * abv; !math.IsNaN(v) {
			return v
		}
	}
	return math.NaN()
}

// inSI is a quantity of a plan as a Line has it.
func inSI(q plan.Quantity) (float64, bool) {
	switch q.Unit {
	case plan.Litre:
		return q.Value / lot.LitresPerM3, true
	case plan.AbvPct:
		return q.Value / 100, true
	case plan.LitrePerH:
		return q.Value / lot.LitresPerM3 / lot.SecondsPerHour, true
	case plan.Celsius, plan.SG, plan.PH:
		return q.Value, true
	}
	return 0, false
}
