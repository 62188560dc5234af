package report

import (
	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
)

// Plan is all of a plan that the stages give: no work, clock, law, promises or
// notices.
func Plan(n *numbers.Batch) *plan.Plan {
	b, hearts := n.Batch, lot.Of(n.Distilled.Hearts)
	p := &plan.Plan{
		Format: plan.Format, Version: plan.Version,
		Batch: Batch(b), House: House(n), Bill: Bill(b, n.Mashed),
		Mash: Mash(b, n.Mashed), Ferment: Ferment(b.Ferm, n.Mashed.Out.TempC, n.Fermented),
		Strip: Strip(b, n.Stripped), Spirit: Spirit(b, n.Distilled), Congeners: Congeners(n.Congeners, b.Models["congener"]),
		Reduction: Reduction(hearts, n.Reduced), Cask: Cask(n),
		Streams: Streams(n), Yield: Yield(n),
	}
	p.Energy = Energy(p, n.Fermented.WarmJ/lot.JoulesPerKWh, hearts.PureL)
	return p
}
