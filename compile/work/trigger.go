package work

import (
	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// A trigger is by what one knows that it is time for a job. The clock beside it is
// about, the trigger is what counts.

func when(text string, values ...plan.Quantity) *plan.Phrase {
	p := plan.Say(text, values...)
	return &p
}

func whenWarm(c float64) *plan.Phrase { return when("At {}", plan.Of(c, plan.Celsius)) }

func whenSpout(abv float64) *plan.Phrase {
	return when("When the spout says {}", lot.AtABV(abv).ByVolume())
}

// whenCut is what ends a fraction, and with it begins what comes next.
func (c charge) whenCut(f still.Fraction) *plan.Phrase {
	run := func() *plan.Phrase { return when("When {} of "+f.Name+" have run", lot.Of(f.Stream).Volume()) }
	by := func(cut recipe.Cut) *plan.Phrase {
		switch cut.By {
		case recipe.ByStrength:
			return whenSpout(f.EndABV)
		case recipe.ByVapourTemp:
			return when("When the vapour is at {}", plan.Of(f.EndVapourC, plan.Celsius))
		case recipe.ByTime:
			return when("{} after the first drop", plan.Of(cut.TimeS/60, plan.Minute))
		}
		return run()
	}
	switch f.Name {
	case still.Foreshots:
		return run()
	case still.Heads:
		return by(c.cuts.HeartsFrom)
	case still.Hearts:
		return by(c.cuts.HeartsTo)
	}
	return whenSpout(f.EndABV)
}

// whenMashed is what ends the last step of the mash.
func whenMashed(n *numbers.Batch) *plan.Phrase { return whenStep(n, len(n.Mash.Steps)) }

// whenStep is what ends the step before step i of the mash, if that is the thermometer.
func whenStep(n *numbers.Batch, i int) *plan.Phrase {
	if i == 0 || i > len(n.Mash.Steps) || i > len(n.Mashed.Steps) || n.Mashed.InFermenter {
		return nil
	}
	switch n.Mash.Steps[i-1].Verb {
	case recipe.MashHeat, recipe.MashCool:
		return whenWarm(n.Mashed.Steps[i-1].EndC)
	}
	return nil
}
