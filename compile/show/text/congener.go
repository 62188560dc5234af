package text

import (
	"fmt"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
)

// congeners shows where the congeners go: one line each, and what the figures
// are worth.
func (t *text) congeners() {
	c := t.p.Congeners
	if c == nil || len(c.Each) == 0 {
		return
	}
	t.Heading("CONGENERS: estimates, to a litre of pure alcohol, the charge's being 1")
	tab := columns.Table{}
	tab.Row("congener", "foreshots", "heads", "hearts", "could be", "tails", "into hearts")
	for _, k := range c.Each {
		hearts := congenerIn(k, "hearts")
		tab.Row(k.Name, ratio(congenerIn(k, "foreshots").Relative.Value), ratio(congenerIn(k, "heads").Relative.Value),
			ratio(hearts.Relative.Value), ratio(hearts.Relative.Low)+" to "+ratio(hearts.Relative.High),
			ratio(congenerIn(k, "tails").Relative.Value), pct(hearts.SharePct.Value, 0))
	}
	tab.Write(&t.page)
	whose := "predicted, not measured"
	if c.HouseOwn {
		whose = "the house's own"
	}
	t.Para(2, 4, "could be: of the hearts. into hearts: of what the charge holds.")
	t.Para(2, 4, fmt.Sprintf("Volatilities are %s, and taken as good to %s. Methanol runs with the alcohol from the first drop to the last: no cut removes it. Foreshots are set aside whatever stands here.",
		whose, pct(c.UncertaintyPct, 0)))
}

// ratio shows how many times as much, in about two figures.
func ratio(x float64) string {
	switch {
	case x >= 9.95:
		return measure.Number(x, 0)
	case x >= 0.095:
		return measure.Number(x, 1)
	case x < 0.005:
		return "0"
	default:
		return measure.Number(x, 2)
	}
}

func congenerIn(k plan.Congener, fraction string) plan.CongenerFraction {
	for _, f := range k.Fractions {
		if f.Fraction == fraction {
			return f
		}
	}
	return plan.CongenerFraction{Fraction: fraction}
}
