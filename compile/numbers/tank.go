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
				u.MostM3 += n.waitingM3(c)
			}
		}
		done |= u.For
		out = append(out, u)
	}
	return out
}

// HotLiquorK is how much warmer than the supply water is that a tank has heated
// beforehand.
const HotLiquorK = 5

// waitingM3 is the most of some contents that waits at a time, spirit at 20 C.
func (n *Batch) waitingM3(c recipe.Contents) float64 {
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
		return n.hotWortsM3()
	case recipe.OfWeakWorts:
		return n.Mashed.Kept.VolumeM3
	default:
		return n.liquorM3(c)
	}
	return litres / lot.LitresPerM3
}

// hotWortsM3 is what stands in the underback at most: worts that are not cooled as
// they run, until a `cool` sends them on.
func (n *Batch) hotWortsM3() float64 {
	most, before := 0.0, 0.0
	for i, s := range n.Mash.Steps {
		if i >= len(n.Mashed.Steps) {
			break
		}
		switch runsOff := s.Verb == recipe.MashDrain && !s.NextMash || s.Verb == recipe.MashSparge; {
		case runsOff && s.CooledC == 0:
			most = max(most, n.Mashed.Steps[i].VolumeM3-before)
		case runsOff, s.Verb == recipe.MashCool && n.Mashed.InFermenter:
			before = n.Mashed.Steps[i].VolumeM3
		}
	}
	return most
}

// liquorM3 is the greatest amount of hot or cold liquor, or all the backset, that a
// mash takes at once.
func (n *Batch) liquorM3(c recipe.Contents) float64 {
	most := 0.0
	for _, s := range n.Mash.Steps {
		switch {
		case s.Verb == recipe.MashBackset && c == recipe.OfBackset:
			most += s.VolumeM3
		case s.Verb != recipe.MashWater && s.Verb != recipe.MashSparge, c == recipe.OfBackset:
		case (s.TempC >= n.SupplyC()+HotLiquorK) == (c == recipe.OfHotLiquor):
			most = max(most, s.VolumeM3)
		}
	}
	return most
}
