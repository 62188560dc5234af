package numbers

import (
	"newmake/compile/lot"
	"newmake/lang/recipe"
)

// TankUse is tanks that share what waits in them: those for the same, and those
// that one of them joins because it is for several.
type TankUse struct {
	Tanks   []*recipe.Tank
	For     recipe.Contents
	HoldsM3 float64 // all of them
	MostM3  float64 // that waits in them together
}

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
		u := TankUse{For: t.For}
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
			if u.For&c != 0 {
				u.MostM3 += n.WaitingM3(c)
			}
		}
		if u.Charger() {
			low, feints := n.WaitingM3(recipe.OfLowWines), n.WaitingM3(recipe.OfFeints)
			u.MostM3 += max(low+n.FeintsOnHandM3(), feints) - low - feints
		}
		done |= u.For
		out = append(out, u)
	}
	return out
}

// Charger says that low wines and feints wait in the same tanks. There the feints of the
// batch before wait when the low wines come, and those of this one come as both are
// charged: the most is the greater of the beginning and the end, for between them it goes
// from one to the other charge by charge.
func (u TankUse) Charger() bool {
	const both = recipe.OfLowWines | recipe.OfFeints
	return u.For&both == both
}

// FeintsOnHandM3 is the feints that the spirit run begins with, at 20 C.
func (n *Batch) FeintsOnHandM3() float64 {
	if n.Distilled.Returned.MassKg() <= 0 {
		return 0
	}
	return lot.Of(n.Distilled.Returned).VolumeL * float64(n.Distilled.Charges) / lot.LitresPerM3
}

// HotLiquorK is how much warmer than the supply water is that a tank has heated
// beforehand.
const HotLiquorK = 5

// WaitingM3 is the most of some contents that waits at a time, spirit at 20 C.
func (n *Batch) WaitingM3(c recipe.Contents) float64 {
	litres := 0.0
	switch c {
	case recipe.OfLowWines:
		litres = lot.Of(n.Stripped.LowWines).VolumeL
	case recipe.OfFeints:
		litres = lot.Of(n.Distilled.Feints()).VolumeL * float64(n.Distilled.Charges)
	case recipe.OfSpirit:
		litres = lot.Of(n.Distilled.Hearts).VolumeL
		if n.Reduced.Done {
			litres = max(litres, lot.Of(n.Reduced.Spirit).VolumeL)
		}
	case recipe.OfPotAle:
		if n.Stripped.Preheat != nil {
			return n.Stripped.LeftHotM3
		}
		return 0
	case recipe.OfWorts:
		m3, _ := n.hotWorts()
		return m3
	case recipe.OfWeakWorts:
		return n.Mashed.Kept.VolumeM3
	default:
		m3, _ := n.liquor(c)
		return m3
	}
	return litres / lot.LitresPerM3
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
