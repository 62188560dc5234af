package report

import (
	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// What complete conversion gives, by mass: glucose from starch takes up water,
// 180.156/162.140; ethanol from glucose, 2 x 46.069/180.156 (Gay-Lussac).
const (
	glucosePerStarch  = 180.156 / 162.140
	ethanolPerGlucose = 2 * 46.069 / 180.156
)

// theoryLPA is the pure alcohol that a mass of grain would give if all its
// starch and sugar became ethanol. It follows the yields that Saskatchewan
// Agriculture and Food (1993) prints: see the test.
func theoryLPA(g *recipe.Grain, massKg float64) float64 {
	dry := massKg * (1 - g.Moisture)
	return dry * (g.Starch*glucosePerStarch + g.Sugars) * ethanolPerGlucose / lot.EthanolKgPerL
}

// yieldPart holds the alcohol of the wash and of the hearts against the grain.
func yieldPart(n *numbers.Batch) plan.Yield {
	tonnes := n.Bill.TotalKg / 1000
	if tonnes <= 0 {
		return plan.Yield{}
	}
	theory := 0.0
	for _, l := range n.Bill.Lines {
		theory += theoryLPA(l.Grain, l.MassKg)
	}
	hearts, wash, bushels := lot.Of(n.Distilled.Hearts), lot.Of(n.Fermented.Wash), n.Bill.TotalKg/lot.KgPerBushel
	return plan.Yield{
		TheoryLPAPerTonne: theory / tonnes, WashLPAPerTonne: wash.PureL / tonnes, HeartsLPAPerTonne: hearts.PureL / tonnes,
		OfTheoryPct:     100 * wash.PureL / theory,
		WashPGPerBushel: wash.ProofGallons / bushels, HeartsPGPerBushel: hearts.ProofGallons / bushels,
	}
}
