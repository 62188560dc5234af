package accuracy

import (
	"fmt"

	"newmake/compile"
	"newmake/compile/accuracy/published"
	"newmake/compile/measure"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/lang/check"
)

// batches runs the published grain-to-cask figures. What is published stands in
// the batches themselves, as promises.
func batches(m *measurer) Section {
	s := Section{Title: "From grain to cask",
		Text: "Two published sets of figures, each run as a whole batch of `testdata/houses`. They leave the plant and the cuts open; what is chosen there stands in the batch. The claim is the tolerance that the figures leave."}
	for _, h := range []struct{ house, source string }{
		{"grain-to-barrel", "grain-to-barrel figures, common practice"},
		{"malt-425", "425 kg of malt, an equipment maker's sheet"},
	} {
		dir, err := published.Dir("houses/" + h.house)
		if err != nil {
			m.fail(err)
			continue
		}
		house, err := check.Load(dir, check.Options{})
		if err != nil {
			m.fail(err)
			continue
		}
		b, list := house.Batch(house.BatchesIn(dir)[0])
		if b == nil {
			m.fail(list)
			continue
		}
		p, err := compile.Outcome(b, &numbers.Memo{}) // as computed: rounded, a figure may lie on a half
		if err != nil {
			m.fail(err)
			continue
		}
		u := measure.US
		if p.Batch.Units == "si" {
			u = measure.SI
		}
		for _, promise := range p.Promises {
			why := "approximation: what the figures leave open, as the batch has it"
			if promise.Tolerance.Value == 0 {
				why = "none: a count is right or wrong"
			}
			s.Rows = append(s.Rows, Row{
				Quantity: promise.What, Source: h.source + ": " + u.Quantity(promise.Promised), Range: "model " + u.Quantity(promise.Found),
				Unit: unitName(promise.Promised.Unit), Deviations: points([2]float64{promise.Found.Value, promise.Promised.Value}), Claim: promise.Tolerance.Value, Why: why,
			})
		}
		if len(p.Promises) == 0 {
			m.fail(fmt.Errorf("%s promises nothing", h.house))
		}
	}
	return s
}

// unitName is a unit of the plan as a person writes it.
func unitName(u plan.Unit) string {
	switch u {
	case plan.AbvPct:
		return "% vol"
	case plan.Each:
		return "1"
	}
	return string(u)
}
