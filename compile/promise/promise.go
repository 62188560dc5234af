// Package promise holds a plan against what its batch expects of itself.
package promise

import (
	"math"

	"newmake/compile/lot"
	"newmake/compile/plan"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// Answer is a promise with what the plan gives.
type Answer struct {
	plan.Promise
	Off  plan.Quantity // how far the plan is from it
	More bool          // the plan gives more than is promised
}

// Answers holds a plan against what the batch expects of it, promise by promise.
func Answers(b *recipe.Batch, p *plan.Plan, lowWines, hearts plan.Lot) []Answer {
	a := answers{b.Gauge, p, lowWines, hearts}
	out := make([]Answer, len(b.Promises))
	for i, e := range b.Promises {
		out[i] = a.answer(e)
	}
	return out
}

// answers is what the promises of a batch are answered from.
type answers struct {
	gauge            recipe.System
	plan             *plan.Plan
	lowWines, hearts plan.Lot
}

func (a answers) answer(e recipe.Promise) Answer {
	found, _ := a.promised(e) // TestEveryPromiseIsAnswered: a plan has all that can be promised
	off := distance(e, found)
	p := plan.Promise{
		What: e.What, Promised: a.inUnit(e, e.Value), Found: a.inUnit(e, found), Tolerance: a.margin(e, e.Tolerance),
		Kept: off <= e.Tolerance+1e-9*math.Abs(e.Value),
	}
	if e.InRuns > 0 {
		p.Times = &plan.Times{Of: e.OfRuns, In: e.InRuns}
	}
	if e.What == "wash" && e.Kind == quantity.Strength {
		p.Basis = "in the liquid, strained"
	}
	return Answer{Promise: p, Off: a.margin(e, off), More: found >= e.Value}
}

// promised finds what the plan gives, on the basis of the promise's value.
func (a answers) promised(e recipe.Promise) (float64, bool) {
	p := a.plan
	if l, ok := a.promisedLot(e.What); ok {
		switch e.Kind {
		case quantity.Volume:
			return lot.VolumeM3(a.gauge, l), true
		case quantity.Strength:
			return a.inBasis(l, e.Strength.Basis), true
		case quantity.ProofGallons:
			return l.ProofGallons, true
		case quantity.PureAlcohol:
			return l.PureL / lot.LitresPerM3, true
		}
		return 0, false
	}
	switch e.What {
	case "original-gravity":
		return p.Mash.OriginalGravitySG, true
	case "final-gravity":
		return p.Ferment.FinalGravitySG, true
	case "pure-alcohol":
		switch e.Kind {
		case quantity.ProofGallons:
			return a.hearts.ProofGallons, true
		case quantity.PureAlcohol:
			return a.hearts.PureL / lot.LitresPerM3, true
		}
		return lot.VolumeM3(a.gauge, pureLot(a.hearts)), true
	case "yield":
		return p.Yield.HeartsLPAPerTonne / litresATonne, true
	case "casks":
		return float64(p.Cask.Casks), true
	case "mash":
		return p.Mash.Hours * lot.SecondsPerHour, true
	case "dry":
		return p.Ferment.DryHours * lot.SecondsPerHour, true
	case "strip":
		return p.Strip.TotalHours * lot.SecondsPerHour, true
	case "spirit":
		return p.Spirit.TotalHours * lot.SecondsPerHour, true
	}
	return 0, false
}

// promisedLot finds the lot that a promise speaks of.
func (a answers) promisedLot(what string) (plan.Lot, bool) {
	switch what {
	case "wash":
		// Its strength is promised as it is measured, in the liquid.
		l := a.plan.Ferment.Wash
		l.AbvPct, l.Proof = a.plan.Ferment.Liquid.AbvPct, a.plan.Ferment.Liquid.Proof
		return l, true
	case "low-wines":
		return a.lowWines, true
	case "hearts":
		return a.hearts, true
	case "leftover":
		return a.plan.Cask.Leftover, true
	case "feints":
		if f := a.plan.Spirit.Feints; f != nil {
			return *f, true
		}
	}
	return plan.Lot{}, false
}

// litresATonne is one cubic metre a kilogram.
const litresATonne = 1e6

// pureLot is the alcohol of a lot as if it stood alone, at 20 C and at 60 F.
func pureLot(l plan.Lot) plan.Lot {
	return plan.Lot{VolumeL: l.PureL, WineGallons: l.ProofGallons / 2, PureL: l.PureL, ProofGallons: l.ProofGallons}
}

// inBasis is a lot's strength as a fraction, the way the promise is written.
func (a answers) inBasis(l plan.Lot, b recipe.StrengthBasis) float64 {
	switch {
	case b == recipe.Proof, b == recipe.ABV && a.gauge == recipe.US:
		return l.Proof / 200
	case b == recipe.ABW && l.MassKg > 0:
		return l.PureL * lot.EthanolKgPerL / l.MassKg
	default:
		return l.AbvPct / 100
	}
}

// distance is how far a value is from what is promised, in the promise's own measure:
// degrees Plato are no straight line of gravity, so a margin in them is of them.
func distance(e recipe.Promise, found float64) float64 {
	if inPlato(e) {
		return math.Abs(fromSG(found) - fromSG(e.Value))
	}
	return math.Abs(found - e.Value)
}

func inPlato(e recipe.Promise) bool {
	u, known := quantity.Lookup(e.Unit)
	return e.Kind == quantity.Gravity && known && u.Name == "plato"
}

// fromSG gives degrees Plato.
func fromSG(sg float64) float64 {
	p, _ := quantity.FromSI(sg, "plato", quantity.Gravity)
	return p
}

// inUnit says a promise's value as a Quantity.
func (a answers) inUnit(e recipe.Promise, v float64) plan.Quantity {
	switch e.Kind {
	case quantity.Volume:
		l, _ := a.promisedLot(e.What)
		if e.What == "pure-alcohol" {
			l = pureLot(a.hearts)
		}
		return lot.Written(a.gauge, v, l)
	case quantity.Strength:
		if e.Strength.Basis == recipe.ABV && a.gauge == recipe.US {
			return lot.Strength(recipe.Strength{Value: v, Basis: recipe.Proof}).ByVolume()
		}
		if e.Strength.Basis == recipe.ABV {
			return lot.Strength(recipe.Strength{Value: v}).ByVolume()
		}
		return lot.Strength(recipe.Strength{Value: v, Basis: e.Strength.Basis}).At()
	case quantity.ProofGallons:
		return plan.Of(v, plan.ProofGallon)
	case quantity.PureAlcohol:
		return plan.Of(v*lot.LitresPerM3, plan.PureLitre)
	case quantity.SpiritYield:
		return plan.Of(v*litresATonne, plan.PurePerT)
	case quantity.Duration:
		return plan.Of(v/60, plan.Minute)
	case quantity.Gravity:
		if inPlato(e) {
			return plan.Of(fromSG(v), plan.Plato)
		}
		return plan.Of(v, plan.SG)
	default:
		return plan.Of(v, plan.Each)
	}
}

// margin says a margin, which is a distance and not a point.
func (a answers) margin(e recipe.Promise, v float64) plan.Quantity {
	switch e.Kind {
	case quantity.Strength:
		q := plan.Of(100*v, plan.AbvDiff)
		if e.Strength.Basis == recipe.Proof {
			q.Proof = 200 * v
		}
		return q
	case quantity.Gravity:
		if inPlato(e) {
			return plan.Of(v, plan.PlatoDiff)
		}
		return plan.Of(v, plan.SGDiff)
	default:
		return a.inUnit(e, v)
	}
}

// Answered is the answers as the plan keeps them.
func Answered(all []Answer) []plan.Promise {
	var out []plan.Promise
	for _, a := range all {
		out = append(out, a.Promise)
	}
	return out
}
