package report

import "newmake/compile/plan"

// energyPart adds up what each stage of a plan takes; warmKWh is what keeps the
// ferment warm, pureL the alcohol of the hearts. The water of a fermenter whose
// cooling is stated as a power is not known and not counted; its heat is.
func energyPart(p *plan.Plan, warmKWh, pureL float64) plan.Energy {
	reduction := 0.0
	if p.Reduction != nil {
		reduction = p.Reduction.WaterL
	}
	charge := 0.0
	if w := p.Spirit.ChargeWater; w != nil {
		charge = float64(p.Spirit.Charges) * w.VolumeL
	}
	e := plan.Energy{Stages: []plan.StageEnergy{
		{Stage: "mash", HeatKWh: p.Mash.HeatKWh, CoolKWh: p.Mash.CoolKWh, ProcessL: p.Mash.LiquorL - p.Mash.BacksetL - p.Mash.KeptInL, CoolingWaterL: p.Mash.CoolingWaterL},
		{Stage: "ferment", HeatKWh: warmKWh, CoolKWh: p.Ferment.CoolKWh, CoolingWaterL: p.Ferment.CoolingWaterL},
		{Stage: "strip", HeatKWh: p.Strip.HeatKWh, CoolKWh: p.Strip.CoolKWh, CoolingWaterL: p.Strip.CoolingWaterL},
		{Stage: "spirit", HeatKWh: p.Spirit.HeatKWh, CoolKWh: p.Spirit.CoolKWh, ProcessL: charge, CoolingWaterL: p.Spirit.CoolingWaterL},
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
	return e
}
