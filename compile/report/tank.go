package report

import (
	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// Tanks is what waits in the tanks of the plant: the most, when that is by the clock of
// the plan, and what is left when the batch is done.
func Tanks(n *numbers.Batch, p *plan.Plan) []plan.TankUse {
	var out []plan.TankUse
	for _, u := range n.TankUses() {
		t := plan.TankUse{For: u.For.Words(), HoldsL: u.HoldsM3 * lot.LitresPerM3, FillPct: 100 * u.MostM3 / u.HoldsM3}
		for _, x := range u.Tanks {
			t.Names = append(t.Names, x.Name)
		}
		for _, c := range recipe.AllContents {
			if u.For&c == 0 {
				continue
			}
			most := waits(n, c)
			t.MostL, t.MostGallons = t.MostL+most.Value, t.MostGallons+most.Gallons
			if t.FullestAt == "" && most.Value > 0 { // feints are there before the low wines come
				t.FullestAt = fullestAt(n, p, c)
			}
			left := leftIn(n, p, c)
			t.LeftL, t.LeftGallons = t.LeftL+left.Value, t.LeftGallons+left.Gallons
		}
		if u.Charger() {
			inCharger(&t, n, p)
		}
		out = append(out, t)
	}
	return out
}

// inCharger puts right the most of a tank in which feints take the place of low wines.
func inCharger(t *plan.TankUse, n *numbers.Batch, p *plan.Plan) {
	low, made, onHand := waits(n, recipe.OfLowWines), feints(n), feintsOnHand(n)
	most := plan.Quantity{Value: low.Value + onHand.Value, Gallons: low.Gallons + onHand.Gallons}
	if made.Value > most.Value {
		most, t.FullestAt = made, fullestAt(n, p, recipe.OfFeints)
	}
	t.MostL += most.Value - low.Value - made.Value
	t.MostGallons += most.Gallons - low.Gallons - made.Gallons
}

func feintsOnHand(n *numbers.Batch) plan.Quantity {
	if n.Distilled.Returned.MassKg() <= 0 {
		return plan.Quantity{}
	}
	return lot.Of(n.Distilled.Returned).Times(float64(n.Distilled.Charges)).Volume()
}

// waits is the most of some contents that waits at a time. Spirit is counted both ways.
func waits(n *numbers.Batch, c recipe.Contents) plan.Quantity {
	switch c {
	case recipe.OfLowWines:
		return lot.Of(n.Stripped.LowWines).Volume()
	case recipe.OfFeints:
		return feints(n)
	case recipe.OfSpirit:
		hearts, reduced := lot.Of(n.Distilled.Hearts), lot.Of(n.Reduced.Spirit)
		if reducedIsMore(n) {
			return reduced.Volume()
		}
		return hearts.Volume()
	}
	return plain(n.WaitingM3(c))
}

func feints(n *numbers.Batch) plan.Quantity {
	return lot.Of(n.Distilled.Feints()).Times(float64(n.Distilled.Charges)).Volume()
}

// plain is a volume that nobody gauges: it is not brought to another temperature.
func plain(m3 float64) plan.Quantity {
	return plan.Quantity{Value: m3 * lot.LitresPerM3, Unit: plan.Litre, Gallons: m3 / fluid.USGallonM3}
}

func reducedIsMore(n *numbers.Batch) bool {
	return n.Reduced.Done && lot.Of(n.Reduced.Spirit).VolumeL > lot.Of(n.Distilled.Hearts).VolumeL
}

// leftIn is what is still there when the batch is done.
func leftIn(n *numbers.Batch, p *plan.Plan, c recipe.Contents) plan.Quantity {
	switch {
	case c == recipe.OfFeints:
		return feints(n)
	case c == recipe.OfWeakWorts:
		return plain(n.WaitingM3(c))
	case c != recipe.OfSpirit:
		return plan.Quantity{}
	case n.Filled.Done:
		return p.Cask.Leftover.Volume()
	case p.Cask.Bottles > 0:
		return plan.Quantity{}
	}
	return waits(n, c)
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
		if id = "fill.reduce"; !reducedIsMore(n) {
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
