package report

import (
	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
)

// Plan is all of a plan that the stages give, but the congeners: no work, clock, law,
// promises or notices.
func Plan(n *numbers.Batch) *plan.Plan {
	b, hearts := n.Batch, lot.Of(n.Distilled.Hearts)
	p := &plan.Plan{
		Format: plan.Format, Version: plan.Version,
		Batch: batchPart(b), Plant: plantPart(n), Bill: billPart(b, n.Mashed),
		Mash: mashPart(b, n.Mashed), Ferment: fermentPart(b.Ferm, n.Mashed.Out.TempC, n.Fermented),
		Strip: stripPart(b, n.Stripped), Spirit: spiritPart(b, n.Distilled),
		Reduction: reductionPart(hearts, n.Reduced), Cask: caskPart(n),
		Streams: streamsPart(n), Yield: yieldPart(n),
	}
	p.Energy = energyPart(p, n.Fermented.WarmJ/lot.JoulesPerKWh, hearts.PureL)
	return p
}
