package compile

import (
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/plan"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// streams lists what each stage took and gave, by mass, all charges together.
func (c *compiler) streams() bool {
	c.p.Streams = []plan.Stream{}
	add := func(name string, s stream.Stream) {
		if s.MassKg() > 0 {
			c.p.Streams = append(c.p.Streams, streamPlan(name, s))
		}
	}
	grain, water, backset := c.mashTakes()
	add(plan.StreamGrain, grain)
	add(plan.StreamWater, water)
	add(plan.StreamBackset, backset)
	add(plan.StreamSteam, stream.Stream{WaterKg: c.mashed.SteamKg})
	add(plan.StreamDraff, c.mashed.Draff)
	add(plan.StreamWort, c.mashed.Out)
	add(plan.StreamWash, c.fermented.Wash)
	strips, spirits := float64(max(c.b.Strip.Charges, 1)), float64(max(c.b.Spirit.Charges, 1))
	add(plan.StreamLow, c.lowWines)
	add(plan.StreamPotAle, c.stripped.Residue.Scale(strips))
	add(plan.StreamFeints, c.returned.Scale(spirits))
	add(plan.StreamCharge, c.distilled.Charge.Scale(spirits))
	for _, name := range []string{still.Foreshots, still.Heads, still.Hearts, still.Tails} {
		add(name, c.distilled.Fraction(name).Stream.Scale(spirits))
	}
	add(plan.StreamLees, c.distilled.Residue.Scale(spirits))
	if r := c.p.Reduction; r != nil {
		entry := c.hearts
		entry.WaterKg += r.WaterKg
		add(plan.StreamEntry, entry)
	}
	return true
}

// mashTakes is what the mash's steps put in. Grain is counted by its parts, as
// the mash counts it.
func (c *compiler) mashTakes() (grain, water, backset stream.Stream) {
	solids := c.b.Mash.BacksetSolidsFrac
	if solids == 0 {
		solids = c.b.Models["mash"].Values["backset-solids"]
	}
	for _, s := range c.b.Mash.Steps {
		tempC := min(s.TempC, c.mashed.BoilC)
		switch s.Verb {
		case recipe.MashWater:
			water.WaterKg += s.VolumeM3 * fluid.WaterDensity(tempC)
		case recipe.MashBackset:
			kg := s.VolumeM3 * fluid.SolutionDensity(solids, tempC)
			backset.WaterKg += kg * (1 - solids)
			backset.BacksetKg += kg * solids
		case recipe.MashAdd:
			for _, i := range s.Grains {
				l := c.b.Bill.Lines[i]
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
