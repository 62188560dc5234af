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
		if e.What == "wash" && e.Kind == quantity.Strength {
			p.Basis = "in the liquid, strained"
		}
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

// promised finds what the plan gives, on the basis of the promise's value.
func (c *compiler) promised(e recipe.Expect) (float64, bool) {
	p := c.p
	if lot, ok := c.promisedLot(e.What); ok {
		switch e.Kind {
		case quantity.Volume:
			return c.volumeOf(lot), true
		case quantity.Strength:
			return c.inBasis(lot, e.Strength.Basis), true
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
		return c.volumeOf(pureLot(lotOf(c.hearts))), true
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

// promisedLot finds the lot that a promise speaks of.
func (c *compiler) promisedLot(what string) (plan.Lot, bool) {
	switch what {
	case "wash":
		// Its strength is promised as it is measured, in the liquid.
		l := c.p.Ferment.Wash
		l.AbvPct, l.Proof = c.p.Ferment.Liquid.AbvPct, c.p.Ferment.Liquid.Proof
		return l, true
	case "low-wines":
		return lotOf(c.lowWines), true
	case "hearts":
		return lotOf(c.hearts), true
	case "leftover":
		return c.p.Cask.Leftover, true
	case "feints":
		if f := c.p.Spirit.Feints; f != nil {
			return *f, true
		}
	}
	return plan.Lot{}, false
}

// pureLot is the alcohol of a lot as if it stood alone, at 20 C and at 60 F.
func pureLot(l plan.Lot) plan.Lot {
	return plan.Lot{VolumeL: l.PureL, WineGallons: l.ProofGallons / 2, PureL: l.PureL, ProofGallons: l.ProofGallons}
}

// inBasis is a lot's strength as a fraction, the way the promise is written.
func (c *compiler) inBasis(l plan.Lot, b recipe.StrengthBasis) float64 {
	switch {
	case b == recipe.Proof, b == recipe.ABV && c.b.Gauge == recipe.US:
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
		lot, _ := c.promisedLot(e.What)
		if e.What == "pure-alcohol" {
			lot = pureLot(lotOf(c.hearts))
		}
		return c.ofLot(v, lot)
	case quantity.Strength:
		if e.Strength.Basis == recipe.ABV && c.b.Gauge == recipe.US {
			return strength(recipe.Strength{Value: v, Basis: recipe.Proof}).ByVolume()
		}
		if e.Strength.Basis == recipe.ABV {
			return strength(recipe.Strength{Value: v}).ByVolume()
		}
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
