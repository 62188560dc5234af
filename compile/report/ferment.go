package report

import (
	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/ferment"
	"newmake/lang/recipe"
)

// dapNitrogen is that of diammonium phosphate, (NH4)2HPO4 of 132.06 g/mol, by its
// formula.
const dapNitrogen = 2 * 14.007 / 132.06

// gasLitresPerMole is the volume of a mole of gas at 20 C and 101.325 kPa.
const gasLitresPerMole = 24.055

const co2GramsPerMole = 44.0095

// fermentPart is the ferment as the plan shows it.
func fermentPart(b recipe.Ferment, setC float64, r numbers.Ferment) plan.Ferment {
	wash, grain := lot.Of(r.Wash), r.Wash
	grain.BacksetKg = 0
	f := plan.Ferment{
		AsItFills: b.AsItFills,
		Yeast:     b.Yeast.Name, PitchKg: r.PitchKg, PitchGPerL: r.PitchKg / r.WortM3, PitchC: setC,
		NutrientKg: r.NutrientKg, NutrientNMgL: 1e3 * dapNitrogen * r.NutrientKg / r.WortM3,
		HoldLowC: b.HoldLowC, HoldHighC: b.HoldHighC, Hours: r.ForS / lot.SecondsPerHour, AskedHours: b.DurationS / lot.SecondsPerHour, DryHours: r.DryS / lot.SecondsPerHour,
		FinalGravitySG: r.FinalSG, FinalGrainSG: grain.SG(), Wash: wash, Liquid: lot.Liquid(r.Wash),
		AbvPct: wash.AbvPct, WashVolumeL: wash.VolumeL, PureL: wash.PureL, ProofGallons: wash.ProofGallons,
		AttenuationPct: 100 * r.Attenuation, SugarLeftKg: r.SugarLeftKg, PH: r.PH, SourHours: r.SourS / lot.SecondsPerHour,
		PeakC: r.PeakTempC, PeakHours: r.PeakTempS / lot.SecondsPerHour, PeakHeatKW: r.PeakHeatW / 1000, CoolKWh: r.CoolJ / lot.JoulesPerKWh, CoolingWaterL: r.CoolingWaterM3 * lot.LitresPerM3,
		CO2Kg: r.CO2Kg, CO2M3: r.CO2Kg / co2GramsPerMole * gasLitresPerMole,
	}
	above, below := r.Leaves(b.HoldLowC, b.HoldHighC)
	for _, l := range []*ferment.Leaving{above, below} {
		if l != nil && f.LeavesHoldH == 0 {
			f.LeavesHoldH, f.LeavesHoldC = l.First.TimeS/lot.SecondsPerHour, l.Farthest.TempC
		}
	}
	f.Account = plan.Account{
		SugarTakenKg: r.SugarTakenKg, SugarLeftKg: r.SugarLeftKg, EthanolYieldPct: 100 * r.EthanolYield, YeastGrownKg: r.GrownKg,
		GlycerolKg: r.GlycerolKg, VentEthanolKg: r.VentEthanol, VentWaterKg: r.VentWater, CO2Kg: r.CO2Kg,
	}
	f.Curve = make([]plan.FermentPoint, 0, len(r.Curve))
	for _, p := range r.Curve {
		f.Curve = append(f.Curve, plan.FermentPoint{
			Hour: p.TimeS / lot.SecondsPerHour, TempC: p.TempC, SG: p.SG, AbvPct: 100 * p.ABV, PH: p.PH,
			YeastGPerL: p.YeastKgM3, HeatKW: p.HeatW / 1000, CO2Kg: p.CO2Kg, CoolingPct: 100 * p.Cooling,
		})
	}
	return f
}
