package report

import (
	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// Tanks is what waits in the tanks of the plant: the most, when that is by the clock of
// the plan, and what is left when the batch is done.
func Tanks(n *numbers.Batch, p *plan.Plan) []plan.TankUse {
	var out []plan.TankUse
	for _, u := range n.TankUses() {
		t := plan.TankUse{
			For: u.For.Words(), HoldsL: u.HoldsM3 * lot.LitresPerM3, FillPct: 100 * u.MostM3() / u.HoldsM3,
			MostL: u.Most.Value, MostGallons: u.Most.Gallons,
		}
		for _, x := range u.Tanks {
			t.Names = append(t.Names, x.Name)
		}
		for _, c := range recipe.AllContents {
			if u.For&c == 0 {
				continue
			}
			if t.FullestAt == "" && n.Waiting(c).Value > 0 { // feints are there before the low wines come
				t.FullestAt = fullestAt(n, p, c)
			}
			left := leftIn(n, p, c)
			t.LeftL, t.LeftGallons = t.LeftL+left.Value, t.LeftGallons+left.Gallons
		}
		if u.FeintsLast {
			t.FullestAt = fullestAt(n, p, recipe.OfFeints)
		}
		out = append(out, t)
	}
	return out
}

// leftIn is what is still there when the batch is done.
func leftIn(n *numbers.Batch, p *plan.Plan, c recipe.Contents) plan.Quantity {
	switch {
	case c == recipe.OfFeints, c == recipe.OfWeakWorts:
		return n.Waiting(c)
	case c != recipe.OfSpirit:
		return plan.Quantity{}
	case n.Filled.Done:
		return p.Cask.Leftover.Volume()
	case p.Cask.Bottles > 0:
		return plan.Quantity{}
	}
	return n.Waiting(c)
}

// fullestAt is when there is most of some contents: as the step begins that takes it, or
// as the one ends that gives the last of it. It is empty where the plan has no such step.
func fullestAt(n *numbers.Batch, p *plan.Plan, c recipe.Contents) string {
	var id string
	atEnd := true
	switch c {
	case recipe.OfLowWines:
		id = plan.ChargeID("strip", n.Stripped.Charges-1, n.Stripped.Charges) + ".collect"
	case recipe.OfFeints:
		id = plan.ChargeID("spirit", n.Distilled.Charges-1, n.Distilled.Charges) + ".tails"
	case recipe.OfSpirit:
		if id = "fill.reduce"; !n.ReducedIsMore() {
			id = plan.ChargeID("spirit", n.Distilled.Charges-1, n.Distilled.Charges) + ".hearts"
		}
	case recipe.OfPotAle:
		id = plan.ChargeID("strip", 0, n.Stripped.Charges) + ".stop"
	default:
		i := n.FullestStep(c)
		if i < 0 {
			return ""
		}
		id, atEnd = plan.MashStepID(i), c == recipe.OfWorts || c == recipe.OfWeakWorts
	}
	for _, s := range p.Schedule.Steps {
		switch {
		case s.ID == id && atEnd:
			return s.End
		case s.ID == id:
			return s.Start
		}
	}
	return ""
}
