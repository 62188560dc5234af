package compile

import (
	"fmt"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/stage/still"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// setting is a still in its place.
func (c *compiler) setting(v *recipe.Vessel) still.Setting {
	p := c.b.Plant
	return still.Setting{Still: *v, PressurePa: c.pressurePa, AmbientC: p.AmbientC, WaterC: p.WaterC, BoilerW: p.BoilerW, Boils: c.memo.boiling()}
}

// runPlan reads a run of n equal charges into the plan.
func runPlan(v *recipe.Vessel, r still.Run, charges int) plan.Run {
	n := float64(charges)
	out := plan.Run{
		Still: v.Name, Charges: charges, Charge: lotOf(r.Charge),
		HeatUpMin: r.HeatUpS / 60, Hours: r.DurationS / secondsPerH, TotalHours: n * r.DurationS / secondsPerH,
		MostFillPct: 100 * r.MostFill, Residue: lotOf(r.Residue).Times(n),
		HeatKWh: n * r.HeatJ / joulesPerKWh, CoolKWh: n * r.CondenserJ / joulesPerKWh,
		CoolingWaterL: n * r.CoolingWaterM3 * litresPerM3,
	}
	out.LossL = out.Residue.PureL
	if k := len(r.Curve); k > 0 {
		out.StopAbvPct = 100 * r.Curve[k-1].ABV
	}
	over := 0.0
	for _, f := range r.Fractions {
		before := over
		over += lotOf(f.Stream).VolumeL
		p := plan.Fraction{
			StartOverL: before, EndOverL: over,
			Name: f.Name, Lot: lotOf(f.Stream).Times(n), StartMin: f.StartS / 60, EndMin: f.EndS / 60,
			Begins: strengthAbv(f.StartABV), Ends: strengthAbv(f.EndABV),
		}
		if r.Charge.EthanolKg > 0 {
			p.PureShare = 100 * f.EthanolKg / r.Charge.EthanolKg
		}
		out.Fractions = append(out.Fractions, p)
	}
	for _, p := range r.Curve {
		out.Curve = append(out.Curve, plan.RunPoint{
			Min: p.TimeS / 60, PotC: p.PotC, VapourC: p.VapourC, AbvPct: 100 * p.ABV, Proof: strengthAbv(p.ABV).Proof,
			PotAbvPct: 100 * p.PotABV, OverL: p.OverM3 * litresPerM3, RateLPerH: p.RateM3S * litresPerM3 * secondsPerH,
			Fraction: p.Fraction,
		})
	}
	return out
}

// runTold says what went otherwise than written. use is strip or spirit.
func (c *compiler) runTold(use string, r still.Run) {
	end := 0.0
	if k := len(r.Curve); k > 0 {
		end = r.Curve[k-1].ABV
	}
	for _, p := range r.Problems {
		d := diag.Diagnostic{At: c.where(use+".stop", use)}
		switch p {
		case still.ProblemNoDistillate:
			d.Code, d.Summary = diag.CodeNoDistillate, fmt.Sprintf("the first drop is weaker than the stop: nothing comes of the %s run", use)
			d.Help = "a lower stop, or a stronger charge"
		case still.ProblemStopNotReached:
			d.Code, d.Summary = diag.CodeStopUnreached, fmt.Sprintf("the spout still runs at %s when the pot is nearly empty: the stop is never reached", c.byVolume(end))
			d.Help = "a higher stop: a pot must never boil dry"
		case still.ProblemForeshotsNotReached:
			d.Code, d.At = diag.CodeCutUnreached, c.where("spirit.foreshots", use)
			d.Summary, d.Help = "the run ends within the foreshots", "set less aside, or charge more"
		case still.ProblemHeartsWeak:
			d.Code, d.At = diag.CodeCutUnreached, c.where("spirit.hearts.from", "spirit.hearts", use)
			d.Summary, d.Help = c.heartsTooSoon(r)
		case still.ProblemHeartsFromPassed:
			d.Code, d.At = diag.CodeCutUnreached, c.where("spirit.hearts.from", "spirit.hearts", use)
			d.Summary, d.Help = "the hearts are to begin within the foreshots", "begin them later, or set less aside"
			c.tellAs(diag.Warning, d)
			continue
		case still.ProblemHeartsFromNotReached:
			d.Code, d.At = diag.CodeCutUnreached, c.where("spirit.hearts.from", "spirit.hearts", use)
			d.Summary, d.Help = "the run ends before the hearts begin", "begin them earlier, or stop later"
		case still.ProblemHeartsToNotReached:
			d.Code, d.At = diag.CodeCutUnreached, c.where("spirit.hearts.to", "spirit.hearts", use)
			d.Summary = fmt.Sprintf("the run ends before the hearts do: it stops at %s", c.byVolume(end))
			d.Help = "end the hearts earlier, or stop later"
		case still.ProblemCutsCrossed:
			d.Code, d.At = diag.CodeCutsCrossed, c.where("spirit.hearts", use)
			d.Summary, d.Help = "the hearts are to end before they begin", "strength falls through a run: the first cut is the stronger"
		case still.ProblemNotSteady:
			d.Code, d.At = diag.CodeNotSteady, c.where("spirit.charge", use)
			d.Summary = "with its feints returned the spirit run never comes to repeat itself"
			d.Help = "wider hearts, or leave the feints out of the charge"
		}
		c.tell(d)
	}
}

// tempAbove shows a temperature that is above another; where both would read the
// same it takes one more digit.
func (c *compiler) tempAbove(tempC, otherC float64) string {
	switch {
	case c.say.Temp(tempC) != c.say.Temp(otherC):
		return c.say.Temp(tempC)
	case c.say == measure.SI:
		return measure.Number(tempC, 2) + " C"
	}
	return measure.Number(tempC*1.8+32, 1) + " F"
}

// heartsTooSoon says why the cut that begins the hearts is never reached, in the
// terms in which it is written: the run starts weaker than that, or its vapour
// warmer.
func (c *compiler) heartsTooSoon(r still.Run) (summary, help string) {
	var top still.Point
	if len(r.Curve) > 0 {
		top = r.Curve[0]
	}
	if from := c.b.Spirit.HeartsFrom; from.By == recipe.ByVapourTemp {
		return fmt.Sprintf("the hearts are to begin with the vapour at %s, and it is never so cool: it starts at %s", c.say.Temp(from.TempC), c.tempAbove(top.VapourC, from.TempC)),
			"begin them at a higher temperature, strip to a stronger low wine, or return more in the head"
	}
	return fmt.Sprintf("the hearts are to begin at a strength that is never reached: the spout starts at %s", c.byVolume(top.ABV)),
		"begin them below that, strip to a stronger low wine, or return more in the head"
}
