package compile

import (
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// What complete conversion gives, by mass: glucose from starch takes up water,
// 180.156/162.140; ethanol from glucose, 2 x 46.069/180.156 (Gay-Lussac).
const (
	glucosePerStarch  = 180.156 / 162.140
	ethanolPerGlucose = 2 * 46.069 / 180.156
	ethanolKgPerL     = 0.78924 // at 20 C (OIML R 22)
)

// theoryLPA is the pure alcohol that a mass of grain would give if all its
// starch and sugar became ethanol. It follows the yields that Saskatchewan
// Agriculture and Food (1993) prints: see the test.
func theoryLPA(g *recipe.Grain, massKg float64) float64 {
	dry := massKg * (1 - g.Moisture)
	return dry * (g.Starch*glucosePerStarch + g.Sugars) * ethanolPerGlucose / ethanolKgPerL
}

// yield holds the alcohol against the grain, and adds up heat and water.
func (c *compiler) yield() bool {
	p := c.p
	tonnes := c.b.Bill.TotalKg / 1000
	theory := 0.0
	for _, l := range c.b.Bill.Lines {
		theory += theoryLPA(l.Grain, l.MassKg)
	}
	hearts, wash := lotOf(c.hearts), lotOf(c.fermented.Wash)
	y := plan.Yield{}
	if tonnes > 0 {
		y = plan.Yield{
			TheoryLPAPerTonne: theory / tonnes, WashLPAPerTonne: wash.PureL / tonnes, HeartsLPAPerTonne: hearts.PureL / tonnes,
			OfTheoryPct:     100 * wash.PureL / theory,
			WashPGPerBushel: wash.ProofGallons / p.Bill.Bushels, HeartsPGPerBushel: hearts.ProofGallons / p.Bill.Bushels,
		}
	}
	p.Yield = y
	c.energy(hearts.PureL)
	return true
}

// energy adds up what each stage takes. How much water the fermenter's coil
// uses is not modelled and not counted; its heat is.
func (c *compiler) energy(pureL float64) {
	p := c.p
	reduction := 0.0
	if p.Reduction != nil {
		reduction = p.Reduction.WaterL
	}
	e := plan.Energy{Stages: []plan.StageEnergy{
		{Stage: "mash", HeatKWh: p.Mash.HeatKWh, CoolKWh: p.Mash.CoolKWh, ProcessL: p.Mash.LiquorL - p.Mash.BacksetL, CoolingWaterL: p.Mash.CoolingWaterL},
		{Stage: "ferment", HeatKWh: c.fermented.WarmJ / joulesPerKWh, CoolKWh: p.Ferment.CoolKWh},
		{Stage: "strip", HeatKWh: p.Strip.HeatKWh, CoolKWh: p.Strip.CoolKWh, CoolingWaterL: p.Strip.CoolingWaterL},
		{Stage: "spirit", HeatKWh: p.Spirit.HeatKWh, CoolKWh: p.Spirit.CoolKWh, CoolingWaterL: p.Spirit.CoolingWaterL},
		{Stage: "reduction", ProcessL: reduction},
	}}
	for _, s := range e.Stages {
		e.HeatKWh += s.HeatKWh
		e.CoolKWh += s.CoolKWh
		e.WaterL += s.ProcessL + s.CoolingWaterL
	}
	if pureL > 0 {
		e.KWhPerLPA, e.WaterPerLPA = e.HeatKWh/pureL, e.WaterL/pureL
	}
	p.Energy = e
}
