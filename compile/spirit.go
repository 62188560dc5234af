package compile

import (
	"fmt"

	"newmake/compile/matter/stream"
	"newmake/compile/plan"
	"newmake/compile/stage/still"
	"newmake/lang/diag"
)

// Strengths of a spirit charge: the usual limit, above which the first of the
// hearts is lost among the heads, and the one at which its vapour is a danger
// well below the boil (common practice).
const (
	chargeUsual = 0.32
	chargeMost  = 0.40
)

// spirit runs the spirit still: the steady state if feints return, else the
// first batch.
func (c *compiler) spirit() bool {
	s := c.b.Spirit
	charges := max(s.Charges, 1)
	in := c.spiritInput()
	run, tried := still.Run{}, 0
	var err error
	if s.Feints {
		run, tried, err = c.memo.steady(in)
	} else {
		run, err = c.memo.spirit(in)
	}
	if err != nil {
		return c.fail(diag.CodeStillFailed, "the spirit run", err, "spirit")
	}
	c.distilled = run
	c.hearts = run.Fraction(still.Hearts).Stream.Scale(float64(charges))
	c.p.Spirit = runPlan(s.Still, run, charges)
	if s.Feints {
		c.returned = returnedFeints(run, in.LowWines)
		returned := lotOf(c.returned)
		c.p.Spirit.FeintsReturned, c.p.Spirit.SteadyTried = &returned, tried
		if c.purpose != calculated && !c.firstBatch(in, charges) {
			return false
		}
	}
	feints := lotOf(run.Feints()).Times(float64(charges))
	c.p.Spirit.Feints = &feints
	c.spiritTold(run)
	c.runWork("spirit", s.Still, run, charges)
	return true
}

// spiritInput is one charge of the spirit run, before feints are returned to it.
func (c *compiler) spiritInput() still.SpiritInput {
	s := c.b.Spirit
	return still.SpiritInput{
		Setting: c.setting(s.Still), LowWines: c.lowWines.Scale(1 / float64(max(s.Charges, 1))),
		ForeshotsM3: s.ForeshotsM3, GaugeC: c.gaugeC(), HeartsFrom: placelessCut(s.HeartsFrom), HeartsTo: placelessCut(s.HeartsTo), Stop: s.Stop,
	}
}

// returnedFeints is what a steady run's charge holds besides its low wines.
func returnedFeints(run still.Run, lowWines stream.Stream) stream.Stream {
	f := run.Charge.Minus(lowWines)
	f.TempC = lowWines.TempC
	return f
}

// firstBatch is the run of a house that has no feints yet. Its charges hand
// theirs on.
func (c *compiler) firstBatch(in still.SpiritInput, charges int) bool {
	first := &plan.First{}
	var hearts, feints stream.Stream
	for i := range charges {
		in.Feints = feints
		run, err := c.memo.spirit(in)
		if err != nil {
			return c.fail(diag.CodeStillFailed, "the first spirit run", err, "spirit")
		}
		if i == 0 {
			first.Charge = lotOf(run.Charge)
		}
		feints = run.Feints()
		hearts = hearts.Plus(run.Fraction(still.Hearts).Stream)
		first.SpiritHours += run.DurationS / secondsPerH
	}
	first.Hearts, first.Feints = lotOf(hearts), lotOf(feints)
	c.p.First = first
	return true
}

func (c *compiler) spiritTold(run still.Run) {
	s := c.b.Spirit
	what := "the spirit charge, hot,"
	if s.Feints {
		what = "the spirit charge with its feints, hot,"
	}
	c.vessel(s.Still, "spirit", run.MostFill*s.Still.HoldsM3, what,
		"`charges 2`, a later stop of the wash run for less and stronger low wines, or a larger still",
		"a still needs room over the charge to part vapour from spray")
	c.boiler(s.Still, "spirit")
	c.runTold("spirit", run)
	if run.ChargeABV <= chargeUsual {
		return
	}
	d := diag.Diagnostic{
		Code: diag.CodeChargeStrong, At: c.where("spirit.charge", "spirit"),
		Summary: fmt.Sprintf("the spirit charge is %s", c.say.Strength(strengthAbv(run.ChargeABV))),
		Help:    "bring it down with water, or strip further",
		Reason: fmt.Sprintf("it is kept under about %s: a stronger one gives its heads and hearts up in a rush, and its vapour takes fire sooner (common practice)",
			c.say.Abv(30)),
	}
	if run.ChargeABV > chargeMost {
		c.tellAs(diag.Error, d)
		return
	}
	c.tell(d)
}
