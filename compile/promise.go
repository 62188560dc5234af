package compile

import (
	"fmt"
	"math"

	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// promises holds the plan against what the batch expects of itself.
func (c *compiler) promises() bool {
	for i, e := range c.b.Expect {
		found, ok := c.promised(e)
		if !ok {
			c.tell(diag.Diagnostic{
				Code: diag.CodePromiseUnknown, At: e.At, Summary: fmt.Sprintf("a plan has no `%s` in that unit", e.What),
				Help: "promise its volume, its strength, or a time",
			})
			continue
		}
		p := plan.Promise{What: e.What, Promised: c.inUnit(e, e.Value), Found: c.inUnit(e, found), Tolerance: c.marginInUnit(e)}
		off := math.Abs(found - e.Value)
		p.Kept = off <= e.Tolerance+1e-9*math.Abs(e.Value)
		c.p.Promises = append(c.p.Promises, p)
		if p.Kept {
			continue
		}
		way := "more"
		if found < e.Value {
			way = "less"
		}
		path := fmt.Sprintf("expect.%d", i+1)
		c.tell(diag.Diagnostic{
			Code: diag.CodePromiseBroken, At: c.where(path, "batch"),
			Summary: fmt.Sprintf("%s: %s is promised, the plan gives %s", e.What, c.say.Quantity(p.Promised), c.say.Quantity(p.Found)),
			Help:    fmt.Sprintf("%s %s than promised: change the batch, or the promise", c.offBy(e, off), way),
		})
	}
	return true
}

// promised finds what the plan gives, in the unit of the promise's value.
func (c *compiler) promised(e recipe.Expect) (float64, bool) {
	p := c.p
	lots := map[string]plan.Lot{
		"wash": lotOf(c.fermented.Wash), "low-wines": lotOf(c.lowWines), "hearts": lotOf(c.hearts), "leftover": p.Cask.Leftover,
	}
	if p.Spirit.Feints != nil {
		lots["feints"] = *p.Spirit.Feints
	}
	if lot, ok := lots[e.What]; ok {
		switch e.Kind {
		case quantity.Volume:
			return lot.VolumeL / litresPerM3, true
		case quantity.Strength:
			return inBasis(lot, e.Strength.Basis), true
		case quantity.ProofGallons:
			return lot.ProofGallons, true
		}
		return 0, false
	}
	switch e.What {
	case "original-gravity":
		return p.Mash.OriginalGravitySG, true
	case "final-gravity":
		return p.Ferment.FinalGravitySG, true
	case "pure-alcohol":
		return lotOf(c.hearts).PureL / litresPerM3, true
	case "casks":
		return float64(p.Cask.Casks), true
	case "mash":
		return p.Mash.Hours * secondsPerH, true
	case "dry":
		return p.Ferment.DryHours * secondsPerH, true
	case "strip":
		return p.Strip.TotalHours * secondsPerH, true
	case "spirit":
		return p.Spirit.TotalHours * secondsPerH, true
	}
	return 0, false
}

// inBasis is a lot's strength as a fraction, the way the promise is written.
func inBasis(l plan.Lot, b recipe.StrengthBasis) float64 {
	switch {
	case b == recipe.Proof:
		return l.Proof / 200
	case b == recipe.ABW && l.MassKg > 0:
		return l.PureL * ethanolKgPerL / l.MassKg
	default:
		return l.AbvPct / 100
	}
}

// inUnit says a promise's value as a Quantity.
func (c *compiler) inUnit(e recipe.Expect, v float64) plan.Quantity {
	switch e.Kind {
	case quantity.Volume:
		return plan.Of(v*litresPerM3, plan.Litre)
	case quantity.Strength:
		return strength(recipe.Strength{Value: v, Basis: e.Strength.Basis}).At()
	case quantity.ProofGallons:
		return plan.Of(v, plan.ProofGallon)
	case quantity.Duration:
		return plan.Of(v/60, plan.Minute)
	case quantity.Gravity:
		return plan.Of(v, plan.SG)
	default:
		return plan.Of(v, plan.Each)
	}
}

// marginInUnit says the margin, which is a distance and not a point.
func (c *compiler) marginInUnit(e recipe.Expect) plan.Quantity {
	switch e.Kind {
	case quantity.Strength:
		q := plan.Of(100*e.Tolerance, plan.AbvDiff)
		if e.Strength.Basis == recipe.Proof {
			q.Proof = 200 * e.Tolerance
		}
		return q
	case quantity.Gravity:
		return plan.Of(e.Tolerance, plan.SGDiff)
	default:
		return c.inUnit(e, e.Tolerance)
	}
}

func (c *compiler) offBy(e recipe.Expect, off float64) string {
	e.Tolerance = off
	return c.say.Quantity(c.marginInUnit(e))
}
