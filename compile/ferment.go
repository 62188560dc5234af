package compile

import (
	"fmt"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/plan"
	"newmake/compile/stage/ferment"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// gasLitresPerMole is the volume of a mole of gas at 20 C and 101.325 kPa.
const gasLitresPerMole = 24.055

const co2GramsPerMole = 44.0095

// ferment runs the fermenter. Of the vessels allowed it takes the first that
// holds the wash, for one batch finds them all empty.
func (c *compiler) ferment() bool {
	b := c.b
	wort := c.mashed.Out
	washM3 := wort.VolumeM3()
	if len(b.Ferm.Vessels) == 0 {
		return c.fail(diag.CodeFermentFailed, "the ferment", fmt.Errorf("the plant has no fermenter"), "ferment")
	}
	c.fermenter = b.Ferm.Vessels[0]
	for _, v := range b.Ferm.Vessels {
		if washM3 <= v.HoldsM3*fillMost(v) {
			c.fermenter = v
			break
		}
	}
	pitchKg := b.Ferm.PitchKg
	if pitchKg == 0 {
		pitchKg = b.Ferm.PitchKgM3 * washM3
	}
	r, err := c.memo.ferment(ferment.Input{
		Wort: wort, PH: c.mashed.PH, Enzymes: c.mashed.Enzymes, Doses: placelessDoses(b.Ferm.Doses),
		Yeast: b.Ferm.Yeast, PitchKg: pitchKg, Vessel: *c.fermenter, CoolW: c.fermenter.CoolsW,
		WaterC: b.Plant.WaterC, AmbientC: b.Plant.AmbientC, PressurePa: c.pressurePa,
		HoldLowC: b.Ferm.HoldLowC, HoldHighC: b.Ferm.HoldHighC, DurationS: c.fermentS(),
		Mash: b.Models["mash"], Model: b.Models["ferment"],
	})
	if err != nil {
		c.pitchTold(wort.TempC)
		return c.fail(diag.CodeFermentFailed, "the ferment", err, "ferment")
	}
	c.fermented = r
	c.p.Ferment = c.fermentPlan(pitchKg, washM3)
	c.vessel(c.fermenter, "ferment", washM3, "the wash",
		"a smaller batch, or a larger fermenter", "a ferment needs headspace: a grain wash heads and foams over")
	c.fermentTold()
	c.fermentWork()
	return true
}

// fermentS is how long the wash ferments: as asked, or as long as it stands.
func (c *compiler) fermentS() float64 { return max(c.b.Ferm.DurationS, c.stoodS) }

func (c *compiler) fermentPlan(pitchKg, washM3 float64) plan.Ferment {
	r, b := c.fermented, c.b.Ferm
	wash, grain := lotOf(r.Wash), r.Wash
	grain.BacksetKg = 0
	f := plan.Ferment{
		Yeast: b.Yeast.Name, PitchKg: pitchKg, PitchGPerL: pitchKg / washM3, PitchC: c.mashed.Out.TempC,
		HoldLowC: b.HoldLowC, HoldHighC: b.HoldHighC, Hours: c.fermentS() / secondsPerH, AskedHours: b.DurationS / secondsPerH, DryHours: r.DryS / secondsPerH,
		FinalGravitySG: r.FinalSG, FinalGrainSG: grain.SG(), Wash: wash, Liquid: liquidStrength(r.Wash),
		AbvPct: wash.AbvPct, WashVolumeL: wash.VolumeL, PureL: wash.PureL, ProofGallons: wash.ProofGallons,
		AttenuationPct: 100 * r.Attenuation, SugarLeftKg: r.SugarLeftKg, PH: r.PH, SourHours: r.SourS / secondsPerH,
		PeakC: r.PeakTempC, PeakHours: r.PeakS / secondsPerH, PeakHeatKW: r.PeakHeatW / 1000, CoolKWh: r.CoolJ / joulesPerKWh,
		CO2Kg: r.CO2Kg, CO2M3: r.CO2Kg / co2GramsPerMole * gasLitresPerMole,
	}
	f.Account = plan.Account{
		SugarTakenKg: r.SugarTakenKg, SugarLeftKg: r.SugarLeftKg, EthanolYieldPct: 100 * r.EthanolYield, YeastGrownKg: r.GrownKg,
		GlycerolKg: r.GlycerolKg, VentEthanolKg: r.VentEthanol, VentWaterKg: r.VentWater, CO2Kg: r.CO2Kg,
	}
	for _, p := range r.Curve {
		f.Curve = append(f.Curve, plan.FermentPoint{
			Hour: p.TimeS / secondsPerH, TempC: p.TempC, SG: p.SG, AbvPct: 100 * p.ABV, PH: p.PH,
			YeastGPerL: p.YeastKgM3, HeatKW: p.HeatW / 1000, CO2Kg: p.CO2Kg, CoolingPct: 100 * p.Cooling,
		})
	}
	return f
}

// liquidStrength is that of what runs through a sieve.
func liquidStrength(s stream.Stream) plan.Strength {
	at := func(tempC float64) float64 {
		return s.EthanolKg / fluid.Density(1, tempC) / s.LiquidVolumeM3(tempC)
	}
	if s.LiquidKg() <= 0 {
		return plan.Strength{}
	}
	return plan.Strength{AbvPct: 100 * at(referenceC), Proof: 200 * at(fluid.SixtyF)}
}

// pitchTold says if the wort is too hot or too cold for the yeast.
func (c *compiler) pitchTold(atC float64) {
	y := c.b.Ferm.Yeast
	if y == nil {
		return
	}
	d := diag.Diagnostic{At: c.where("ferment.pitch", "ferment"),
		Summary: fmt.Sprintf("%s goes into wort at %s; it works from %s to %s", y.Name, c.say.Temp(atC), c.say.Temp(y.LowC), c.say.Temp(y.HighC))}
	switch {
	case y.HighC > 0 && atC > y.HighC+0.05:
		d.Code, d.Help = diag.CodePitchHot, "cool the mash further before it is set"
		d.Reason = "it dies quickly above " + c.say.Temp(y.MostC)
		if atC <= y.MostC {
			d.Reason = "hot yeast makes harsh spirit, and little of it"
			c.tellAs(diag.Warning, d)
			return
		}
		c.tell(d)
	case y.LowC > 0 && atC < y.LowC-0.05:
		d.Code, d.Help, d.Reason = diag.CodePitchCold, "set it warmer", "cold yeast starts slowly, and others start first"
		c.tell(d)
	}
}

const dryLate = 0.90 // of the time: dry no later than this leaves something in hand

// fermentTold says what a distiller should know of the ferment.
func (c *compiler) fermentTold() {
	r, b := c.fermented, c.b.Ferm
	c.pitchTold(c.mashed.Out.TempC)
	hours := c.fermentS() / secondsPerH
	if r.DryS == 0 {
		c.tell(diag.Diagnostic{
			Code: diag.CodeNotDry, At: c.where("ferment.for", "ferment"),
			Summary: fmt.Sprintf("it is not dry after %.0f h: %s of sugar is left", hours, c.say.Mass(r.SugarLeftKg)),
			Help:    "more time, more yeast, a warmer set, or a mash with less sugar",
			Reason:  "sugar in the wash still scorches and foams, and is spirit lost",
		})
	} else if r.DryS > dryLate*c.fermentS() {
		c.tellAs(diag.Note, diag.Diagnostic{
			Code: diag.CodeNotDry, At: c.where("ferment.for", "ferment"),
			Summary: fmt.Sprintf("it is dry after %.0f h of %.0f: nothing in hand", r.DryS/secondsPerH, hours),
			Help:    "the time to dryness is good to about a quarter: give it longer",
		})
	}
	c.heatTold(b.Yeast)
}

// heatTold says if the ferment gets too warm, and why.
func (c *compiler) heatTold(y *recipe.Yeast) {
	r := c.fermented
	if y.HighC == 0 || r.PeakTempC <= max(y.HighC, c.b.Ferm.HoldHighC)+0.5 {
		return
	}
	d := diag.Diagnostic{
		At:      c.where("ferment.hold", "ferment"),
		Summary: fmt.Sprintf("the ferment comes to %s; %s works up to %s", c.say.Temp(r.PeakTempC), y.Name, c.say.Temp(y.HighC)),
		Reason: fmt.Sprintf("it gives off %s at its greatest, and %q takes out %s at most",
			c.say.Power(r.PeakHeatW/1000), c.fermenter.Name, c.say.Power(c.fermenter.CoolsW/1000)),
		Help: "a cooler set, less yeast, or more cooling", Related: c.declared(c.fermenter),
	}
	if r.PeakTempC > y.MostC && y.MostC > 0 {
		d.Code = diag.CodeYeastKilled
	} else {
		d.Code = diag.CodeFermentHot
	}
	c.tell(d)
}
