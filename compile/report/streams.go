package report

import (
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// streamsPart lists what each stage took and gave, by mass, all charges together.
func streamsPart(n *numbers.Batch) []plan.Stream {
	out := []plan.Stream{}
	add := func(name string, s stream.Stream) {
		if s.MassKg() > 0 {
			out = append(out, streamPlan(name, s))
		}
	}
	grain, water, backset := MashTakes(n.Batch, n.Mashed.BoilC)
	add(plan.StreamGrain, grain)
	add(plan.StreamWater, water)
	add(plan.StreamBackset, backset)
	add(plan.StreamKeptIn, n.Mashed.KeptIn)
	add(plan.StreamSteam, stream.Stream{WaterKg: n.Mashed.SteamKg})
	add(plan.StreamDraff, n.Mashed.Draff)
	add(plan.StreamKept, n.Mashed.Kept.Stream)
	add(plan.StreamWort, n.Mashed.Out)
	add(plan.StreamWash, n.Fermented.Wash)
	spirits := float64(n.Distilled.Charges)
	add(plan.StreamLow, n.Stripped.LowWines)
	add(plan.StreamPotAle, n.Stripped.PotAle())
	add(plan.StreamFeints, n.Distilled.Returned.Scale(spirits))
	add(plan.StreamCut, n.Distilled.Water.Scale(spirits))
	add(plan.StreamCharge, n.Distilled.Charge.Scale(spirits))
	for _, name := range []string{still.Foreshots, still.Heads, still.Hearts, still.Tails} {
		add(name, n.Distilled.Fraction(name).Stream.Scale(spirits))
	}
	add(plan.StreamLees, n.Distilled.Residue.Scale(spirits))
	if n.Reduced.Done {
		add(plan.StreamEntry, n.Reduced.Spirit)
	}
	return out
}

// MashTakes is what the mash's steps put in. Grain is counted by its parts, as
// the mash counts it.
func MashTakes(b *recipe.Batch, boilC float64) (grain, water, backset stream.Stream) {
	solids := b.Mash.BacksetSolidsFrac
	if solids == 0 {
		solids = b.Models["mash"].Values["backset-solids"]
	}
	for _, s := range b.Mash.Steps {
		tempC := min(s.TempC, boilC)
		switch s.Verb {
		case recipe.MashWater, recipe.MashSparge:
			water.WaterKg += max(0, s.VolumeM3-s.KeptM3) * fluid.WaterDensity(tempC)
		case recipe.MashBackset:
			kg := s.VolumeM3 * fluid.SolutionDensity(solids, tempC)
			backset.WaterKg += kg * (1 - solids)
			backset.BacksetKg += kg * solids
		case recipe.MashAdd:
			for _, i := range s.Grains {
				l := b.Bill.Lines[i]
				dry := l.MassKg * (1 - l.Grain.Moisture)
				grain.WaterKg += l.MassKg - dry
				grain.RawStarchKg += dry * l.Grain.Starch
				grain.GlucoseKg += dry * l.Grain.Sugars
				grain.SolublesKg += dry * l.Grain.Solubles
				grain.InsolublesKg += dry * max(0, 1-l.Grain.Starch-l.Grain.Sugars-l.Grain.Solubles)
			}
		}
	}
	return grain, water, backset
}

func streamPlan(name string, s stream.Stream) plan.Stream {
	return plan.Stream{
		Name: name, WaterKg: s.WaterKg, EthanolKg: s.EthanolKg,
		GlucoseKg: s.GlucoseKg, MaltoseKg: s.MaltoseKg, MaltotrioseKg: s.MaltotrioseKg, DextrinKg: s.DextrinKg,
		RawStarchKg: s.RawStarchKg, GelStarchKg: s.GelStarchKg, SolublesKg: s.SolublesKg, BacksetKg: s.BacksetKg,
		AcidKg: s.AcidKg, ByproductsKg: s.ByproductsKg, YeastKg: s.YeastKg, InsolublesKg: s.InsolublesKg, MassKg: s.MassKg(),
	}
}
