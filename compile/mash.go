package compile

import (
	"fmt"

	"newmake/compile/matter/fluid"
	"newmake/compile/plan"
	"newmake/compile/stage/mash"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// mash runs the cooker.
func (c *compiler) mash() bool {
	b := c.b
	r, err := c.memo.mash(mash.Input{
		Cooker: *b.Mash.Cooker, PressurePa: c.pressurePa, AmbientC: b.Plant.AmbientC,
		WaterC: b.Plant.WaterC, HardnessPPM: b.Plant.HardnessPPM, BoilerW: b.Plant.BoilerW,
		Bill: placelessBill(b.Bill), Steps: placelessSteps(b.Mash.Steps),
		BacksetPH: b.Mash.BacksetPH, BacksetSolidsFrac: b.Mash.BacksetSolidsFrac,
		Model: b.Models["mash"],
	})
	if err != nil {
		return c.fail(diag.CodeMashFailed, "the mash", err, "mash")
	}
	c.mashed = r
	c.p.Mash = c.mashPlan()
	c.extractByGrain()
	c.vessel(b.Mash.Cooker, "mash", r.MostVolumeM3, "the mash at its fullest",
		"a smaller bill, or less liquor, or a larger cooker",
		"it rises when it is stirred and heated, and it is near the boil")
	c.boiler(b.Mash.Cooker, "mash")
	c.mashTold()
	c.mashWork()
	return true
}

var verbWords = map[recipe.MashVerb]string{
	recipe.MashWater: "water", recipe.MashBackset: "backset", recipe.MashAdd: "add", recipe.MashDose: "dose",
	recipe.MashHeat: "heat", recipe.MashRest: "rest", recipe.MashCool: "cool", recipe.MashDrain: "drain", recipe.MashBoil: "boil",
}

func (c *compiler) mashPlan() plan.Mash {
	r := c.mashed
	m := plan.Mash{
		OriginalGravitySG: r.OriginalSG, HydrometerSG: r.HydrometerSG, PH: r.PH,
		VolumeL: r.Out.VolumeM3() * litresPerM3, MostVolumeL: r.MostVolumeM3 * litresPerM3,
		LiquorGristLPerKg: r.LiquorGristLPerKg,
		GelatinizedPct:    100 * r.Gelatinized, ConversionPct: 100 * r.Conversion, FermentablePct: 100 * r.FermentableShare,
		ExtractKg: r.ExtractKg, TheoryExtractKg: r.TheoryExtractKg,
		Lautered: r.Lautered, DraffKg: r.Draff.MassKg(), Hours: r.DurationS / secondsPerH, BoilC: r.BoilC,
		HeatKWh: r.HeatJ / joulesPerKWh, CoolKWh: r.CoolJ / joulesPerKWh,
		CoolingWaterL: r.CoolingWaterM3 * litresPerM3, SteamCondensateL: r.SteamKg / fluid.WaterDensity(referenceC) * litresPerM3,
	}
	if plato, err := fluid.PlatoFromSG(r.HydrometerSG); err == nil {
		m.Plato = 100 * plato
	}
	for i, s := range c.b.Mash.Steps {
		switch s.Verb {
		case recipe.MashBackset:
			m.BacksetL += s.VolumeM3 * litresPerM3
			m.LiquorL += s.VolumeM3 * litresPerM3
		case recipe.MashWater:
			m.LiquorL += s.VolumeM3 * litresPerM3
		}
		if i >= len(r.Steps) {
			continue
		}
		st := r.Steps[i]
		m.Steps = append(m.Steps, plan.MashStep{
			ID: mashID(i), Verb: verbWords[s.Verb], Adds: c.adds(s), StartMin: st.StartS / 60, Minutes: (st.EndS - st.StartS) / 60, FromC: st.StartC, ToC: st.EndC,
			VolumeL: st.VolumeM3 * litresPerM3, HeatKWh: st.HeatJ / joulesPerKWh, CoolKWh: st.CoolJ / joulesPerKWh, Limit: st.Limit,
			GelatinizedPct: 100 * st.GelatinizedShare, ConvertedPct: 100 * st.ConvertedShare,
			AlphaLeftPct: 100 * st.AlphaLeft, BetaLeftPct: 100 * st.BetaLeft, AddedLeftPct: 100 * st.AddedLeft,
		})
	}
	if m.LiquorL > 0 {
		m.BacksetPct = 100 * m.BacksetL / m.LiquorL
	}
	m.Windows = c.windows()
	for _, p := range r.Curve {
		m.Curve = append(m.Curve, plan.MashPoint{
			Min: p.TimeS / 60, TempC: p.TempC, GelatinizedPct: 100 * p.GelatinizedShare, ConvertedPct: 100 * p.ConvertedShare,
			AlphaLeftPct: 100 * p.AlphaLeft, BetaLeftPct: 100 * p.BetaLeft, AddedLeftPct: 100 * p.AddedLeft,
		})
	}
	return m
}

// extractByGrain gives each line of the bill its part of what dissolves: the
// model mixes all starch once it has gelatinized, so the whole is shared out by
// what each line could give.
func (c *compiler) extractByGrain() {
	b := &c.p.Bill
	b.ExtractKg = c.mashed.ExtractKg
	for i, l := range c.b.Bill.Lines {
		theory := l.MassKg * (1 - l.Grain.Moisture) * mash.TheoryExtract(l.Grain)
		b.Lines[i].TheoryExtractKg = theory
		if c.mashed.TheoryExtractKg > 0 {
			b.Lines[i].ExtractKg = theory / c.mashed.TheoryExtractKg * c.mashed.ExtractKg
		}
	}
}

// mashTold says what a distiller should know of the mash.
func (c *compiler) mashTold() {
	for _, p := range c.mashed.Problems {
		c.mashProblem(p)
	}
	c.starchTold()
	if ph := c.mashed.PH; ph < 4.8 || ph > 5.9 {
		c.tell(diag.Diagnostic{
			Code: diag.CodeMashPH, At: c.where("mash"),
			Summary: fmt.Sprintf("the mash stands at pH %.1f", ph),
			Help:    "more backset or an acid lowers it, less backset or hard water raises it",
			Reason:  "malt enzymes work between about 4.8 and 5.9, best near 5.3 (common practice); the prediction is good to 0.2",
		})
	}
}

func (c *compiler) mashProblem(p mash.Problem) {
	s := c.b.Mash.Steps[p.Step]
	verb, path := verbWords[s.Verb], s.Path
	d := diag.Diagnostic{At: s.At}
	if d.At.IsZero() {
		d.At = c.where(path, "mash")
	}
	to := c.say.Temp(p.ToC)
	switch p.What {
	case mash.ProblemAboveBoil:
		d.Code = diag.CodeAboveBoil
		d.Summary = fmt.Sprintf("%s to %s: water boils at %s here", verb, c.say.Temp(s.TempC), to)
		d.Help = fmt.Sprintf("ask for less than %s, or write `boil` with a time", to)
		d.Reason = "at " + c.say.Length(c.b.Plant.ElevationM) + " the air weighs less, and an open cooker gets no hotter"
	case mash.ProblemNoHeat:
		d.Code, d.Summary = diag.CodeNoHeat, fmt.Sprintf("%q has no heat, so it cannot be heated to %s", c.b.Mash.Cooker.Name, c.say.Temp(s.TempC))
		d.Help = "state what it heats at in house.batch, or let hotter liquor in"
	case mash.ProblemLoss:
		d.Code, d.Summary = diag.CodeNoHeat, fmt.Sprintf("the mash gets no hotter than %s: the vessel loses as much heat as it gets", to)
		d.Help = "more heat, or lagging"
	case mash.ProblemNoCooling:
		d.Code, d.Summary = diag.CodeCannotCool, fmt.Sprintf("%q has no cooling, so it cannot be cooled to %s", c.b.Mash.Cooker.Name, c.say.Temp(s.TempC))
		d.Help = "state what it cools at in house.batch"
	case mash.ProblemWarmWater:
		d.Code, d.Summary = diag.CodeCannotCool, fmt.Sprintf("the mash cannot be cooled to %s: with water at %s it comes to %s", c.say.Temp(s.TempC), c.say.Temp(c.b.Plant.WaterC), to)
		d.Help = "ask for a warmer temperature, or have colder water"
	case mash.ProblemSlower:
		d.Code, d.Summary = diag.CodeSlowStep, fmt.Sprintf("this %s takes longer than the time written: the plan shows how long", verb)
		d.Help = "give it more time, or leave the time out"
	case mash.ProblemAlreadyThere:
		d.Code, d.Summary = diag.CodeAlreadyThere, fmt.Sprintf("%s to %s has nothing to do: the mash is there already", verb, c.say.Temp(s.TempC))
		d.Help = "leave the line out, or mend its temperature"
	case mash.ProblemNothingDrawn:
		d.Code, d.Summary = diag.CodeNothingDrawn, "nothing runs off: the grain keeps all the liquor"
		d.Help = "let more liquor in before it is drained"
	default:
		d.Code, d.Summary = diag.CodeEmptyStep, fmt.Sprintf("%s with nothing in the cooker", verb)
		d.Help = "let water in first"
	}
	c.tell(d)
}

// Shares below which the trade would ask what went wrong (common practice: a
// good mash converts nearly all; a tenth lost is money left in the draff).
const (
	cookedLeast    = 0.93
	convertedLeast = 0.93
	enzymesDead    = 0.05
)

// starchTold says why starch was lost, the first cause alone: what never
// gelatinized could not be converted, and dead enzymes convert nothing.
func (c *compiler) starchTold() {
	r := c.mashed
	if r.Conversion >= convertedLeast {
		return
	}
	lost := fmt.Sprintf("%.0f %% of the starch is not converted", 100*(1-r.Conversion))
	switch step, dead := c.diedIn(); {
	case r.Gelatinized < cookedLeast:
		c.tell(c.notCooked(lost))
	case dead:
		s := c.b.Mash.Steps[step]
		c.tell(diag.Diagnostic{
			Code: diag.CodeEnzymesDead, At: s.At,
			Summary: fmt.Sprintf("%s: the malt's enzymes die here, at %s", lost, c.say.Temp(max(r.Steps[step].StartC, r.Steps[step].EndC))),
			Help:    "cool the mash before the malt goes in: " + c.say.Temp(64) + " to " + c.say.Temp(67) + " suits both amylases",
			Reason:  "beta-amylase is gone within minutes above " + c.say.Temp(68) + ", alpha-amylase above " + c.say.Temp(78),
		})
	default:
		c.tell(diag.Diagnostic{
			Code: diag.CodeUnconverted, At: c.where("mash"),
			Summary: lost + ", though it is cooked and the enzymes live",
			Help:    "a longer rest, more malt of high power, or an added enzyme",
			Reason:  fmt.Sprintf("the grist has %.0f deg Lintner", c.p.Bill.LintnerDeg),
		})
	}
}

// notCooked names the grains that never came to the end of their
// gelatinization.
func (c *compiler) notCooked(lost string) diag.Diagnostic {
	d := diag.Diagnostic{
		Code: diag.CodeNotCooked, At: c.where("mash"),
		Summary: fmt.Sprintf("%s: %.0f %% never gelatinized", lost, 100*(1-c.mashed.Gelatinized)),
		Help:    "cook it hotter or longer before the malt goes in",
		Reason:  "no malt enzyme gets at starch in the granule",
	}
	worst := 0.0
	for i, s := range c.b.Mash.Steps {
		if s.Verb != recipe.MashAdd {
			continue
		}
		hottest := 0.0
		for _, later := range c.mashed.Steps[min(i, len(c.mashed.Steps)):] {
			hottest = max(hottest, later.EndC)
		}
		for _, l := range s.Grains {
			line := c.b.Bill.Lines[l]
			if short := line.Grain.GelHighC - hottest; short > 0 && short*line.MassKg > worst {
				worst = short * line.MassKg
				d.At = s.At
				d.Help = fmt.Sprintf("%s gelatinizes from %s to %s, and the mash comes to %s after it goes in: cook it",
					line.Grain.Name, c.say.Temp(line.Grain.GelLowC), c.say.Temp(line.Grain.GelHighC), c.say.Temp(hottest))
			}
		}
	}
	return d
}

// diedIn finds the step in which the malt's alpha-amylase was lost, if it was.
func (c *compiler) diedIn() (step int, dead bool) {
	before, worst := 1.0, 0.0
	for i, s := range c.mashed.Steps {
		if c.b.Mash.Steps[i].Verb == recipe.MashAdd {
			before = 1 // what was just added is alive
		}
		if drop := before - s.AlphaLeft; drop > worst && c.hasMalt() {
			worst, step = drop, i
		}
		before = s.AlphaLeft
	}
	n := len(c.mashed.Steps)
	return step, n > 0 && c.hasMalt() && c.mashed.Steps[n-1].AlphaLeft < enzymesDead
}

func (c *compiler) hasMalt() bool {
	for _, l := range c.b.Bill.Lines {
		if l.Grain.AlphaDU > 0 {
			return true
		}
	}
	return false
}
