package numbers

import (
	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// TankUse is tanks that share what waits in them: those for the same, and those
// that one of them joins because it is for several.
type TankUse struct {
	Tanks   []*recipe.Tank
	For     recipe.Contents
	HoldsM3 float64       // all of them
	Most    plan.Quantity // that waits in them together, in litres and gallons
	// FeintsLast says that the tanks are fullest when the last feints come, though low
	// wines waited in them before.
	FeintsLast bool
}

// MostM3 is the most that waits in the tanks together, spirit at 20 C.
func (u TankUse) MostM3() float64 { return u.Most.Value / lot.LitresPerM3 }

// TankUses are the tanks of the plant by what a batch puts into them. All that a
// stage makes, of all its charges, waits until the next begins; a mash takes one
// water after the other, so its tank needs to hold the greatest.
func (n *Batch) TankUses() []TankUse {
	var out []TankUse
	done := recipe.Contents(0)
	for _, t := range n.Plant.Tanks {
		if t.For&done != 0 {
			continue
		}
		u := TankUse{For: t.For, Most: plan.Quantity{Unit: plan.Litre}}
		for before := recipe.Contents(0); before != u.For; {
			before = u.For
			for _, x := range n.Plant.TanksFor(u.For) {
				u.For |= x.For
			}
		}
		u.Tanks = n.Plant.TanksFor(u.For)
		for _, x := range u.Tanks {
			u.HoldsM3 += x.HoldsM3
		}
		for _, c := range recipe.AllContents {
			if u.For&c == 0 || u.charger() && c == recipe.OfFeints {
				continue // feints take the place of the low wines
			}
			w := n.Waiting(c)
			if u.charger() && c == recipe.OfLowWines {
				w, u.FeintsLast = n.inCharger()
			}
			u.Most.Value, u.Most.Gallons = u.Most.Value+w.Value, u.Most.Gallons+w.Gallons
		}
		done |= u.For
		out = append(out, u)
	}
	return out
}

// charger reports whether low wines and feints wait in the same tanks.
func (u TankUse) charger() bool {
	const both = recipe.OfLowWines | recipe.OfFeints
	return u.For&both == both
}

// inCharger is the most of low wines and feints in tanks for both, and whether that is
// the feints of this batch. Those of the batch before wait when the low wines come, and
// those of this one come as both are charged: the most is the greater of the beginning
// and the end, for between them it goes from one to the other charge by charge.
func (n *Batch) inCharger() (most plan.Quantity, feints bool) {
	low, onHand, made := n.Waiting(recipe.OfLowWines), n.charges(n.Distilled.Returned), n.Waiting(recipe.OfFeints)
	begin := plan.Quantity{Value: low.Value + onHand.Value, Unit: plan.Litre, Gallons: low.Gallons + onHand.Gallons}
	if made.Value > begin.Value {
		return made, true
	}
	return begin, false
}

// charges is what all charges of the spirit still take or give of a stream.
func (n *Batch) charges(s stream.Stream) plan.Quantity {
	return lot.Of(s).Times(float64(n.Distilled.Charges)).Volume()
}

// HotLiquorK is how much warmer than the supply water is that a tank has heated
// beforehand.
const HotLiquorK = 5

// Waiting is the most of some contents that waits at a time: spirit at 20 C, and in the
// gallons of its gauge at 60 F; what nobody gauges is brought to no other temperature.
func (n *Batch) Waiting(c recipe.Contents) plan.Quantity {
	m3 := 0.0
	switch c {
	case recipe.OfLowWines:
		return lot.Of(n.Stripped.LowWines).Volume()
	case recipe.OfFeints:
		return n.charges(n.Distilled.Feints())
	case recipe.OfSpirit:
		if n.ReducedIsMore() {
			return lot.Of(n.Reduced.Spirit).Volume()
		}
		return lot.Of(n.Distilled.Hearts).Volume()
	case recipe.OfPotAle:
		if n.Stripped.Preheat != nil {
			m3 = n.Stripped.LeftHotM3
		}
	case recipe.OfWorts:
		m3, _ = n.hotWorts()
	case recipe.OfWeakWorts:
		m3 = n.Mashed.Kept.VolumeM3
	default:
		m3, _ = n.liquor(c)
	}
	return plan.Quantity{Value: m3 * lot.LitresPerM3, Unit: plan.Litre, Gallons: m3 / fluid.USGallonM3}
}

// ReducedIsMore reports whether the hearts are reduced, and are then more than they were.
func (n *Batch) ReducedIsMore() bool {
	return n.Reduced.Done && lot.Of(n.Reduced.Spirit).VolumeL > lot.Of(n.Distilled.Hearts).VolumeL
}

// FullestStep is the step of the mash, from 0, that takes the most of some contents or
// gives the last of it; -1 where none does.
func (n *Batch) FullestStep(c recipe.Contents) int {
	switch c {
	case recipe.OfWorts:
		_, at := n.hotWorts()
		return at
	case recipe.OfWeakWorts:
		at := -1
		for i, s := range n.Mash.Steps {
			if s.Verb == recipe.MashDrain && s.NextMash {
				at = i
			}
		}
		return at
	}
	_, at := n.liquor(c)
	return at
}

// hotWorts is what stands in the underback at most, and after which step: worts that are
// not cooled as they run, until a `cool` sends them on.
func (n *Batch) hotWorts() (m3 float64, step int) {
	most, before, at := 0.0, 0.0, -1
	for i, s := range n.Mash.Steps {
		if i >= len(n.Mashed.Steps) {
			break
		}
		switch runsOff := s.Verb == recipe.MashDrain && !s.NextMash || s.Verb == recipe.MashSparge; {
		case runsOff && s.CooledC == 0:
			if m3 := n.Mashed.Steps[i].VolumeM3 - before; m3 > most {
				most, at = m3, i
			}
		case runsOff, s.Verb == recipe.MashCool && n.Mashed.InFermenter:
			before = n.Mashed.Steps[i].VolumeM3
		}
	}
	return most, at
}

// liquor is the greatest amount of hot or cold liquor that a mash takes at once, or all
// its backset, and the step that takes it first.
func (n *Batch) liquor(c recipe.Contents) (m3 float64, step int) {
	most, at := 0.0, -1
	for i, s := range n.Mash.Steps {
		switch {
		case s.Verb == recipe.MashBackset && c == recipe.OfBackset:
			if most += s.VolumeM3; at < 0 {
				at = i
			}
		case s.Verb != recipe.MashWater && s.Verb != recipe.MashSparge, c == recipe.OfBackset:
		case (s.TempC >= n.SupplyC()+HotLiquorK) == (c == recipe.OfHotLiquor):
			if s.VolumeM3 > most {
				most, at = s.VolumeM3, i
			}
		}
	}
	return most, at
}
