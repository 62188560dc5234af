package why

import (
	"maps"
	"slices"
	"strings"

	"newmake/compile/plan"
	"newmake/lang/recipe"
)

func (a *asked) plantKnobs() []knob {
	deg, by := a.degrees()
	up, upBy := metres, "+300 m"
	if a.us() {
		up, upBy = feet, "+1,000 ft"
	}
	out := []knob{
		{name: "elevation", by: upBy, at: a.where("plant.elevation", "plant"), stage: inGrain, turn: func(b *recipe.Batch) { b.Plant.ElevationM += up }},
		{name: "supply of water", by: by, at: a.where("plant.water", "plant"), stage: inMash, turn: func(b *recipe.Batch) { b.Plant.WaterC += deg }},
		{name: "hardness of the water", by: byTenth, at: a.where("plant.water", "plant"), stage: inMash, turn: func(b *recipe.Batch) { b.Plant.HardnessPPM *= tenth }},
		{name: "air of the house", by: by, at: a.where("plant.ambient", "plant"), stage: inMash, turn: func(b *recipe.Batch) {
			b.Plant.AmbientC += deg
			b.Ferm.AmbientC += deg
		}},
	}
	if a.b.Plant.BoilerW > 0 {
		out = append(out, knob{name: "boiler", by: byTenth, at: a.where("plant.boiler", "plant"), stage: inMash, turn: func(b *recipe.Batch) { b.Plant.BoilerW *= tenth }})
	}
	for _, use := range []struct {
		word, name string
		stage      stage
		of         func(*recipe.Batch) *recipe.Vessel
	}{
		{"cooker", "the cooker", inMash, func(b *recipe.Batch) *recipe.Vessel { return b.Mash.Cooker }},
		{"fermenter", "the fermenter", inFerment, func(b *recipe.Batch) *recipe.Vessel { return fermenterNamed(b, a.vessel("fermenter")) }},
		{"wash-still", "the wash still", inStrip, func(b *recipe.Batch) *recipe.Vessel { return b.Strip.Still }},
		{"spirit-still", "the spirit still", inSpirit, func(b *recipe.Batch) *recipe.Vessel { return b.Spirit.Still }},
	} {
		v := a.vessel(use.word)
		if v == nil {
			continue
		}
		power := func(name, field string, of func(*recipe.Vessel) *float64) {
			if *of(v) > 0 {
				out = append(out, knob{name: name + " of " + use.name, by: byTenth, at: v.Where[field], stage: use.stage, turn: func(b *recipe.Batch) { *of(use.of(b)) *= tenth }})
			}
		}
		power("heating", "heats", func(v *recipe.Vessel) *float64 { return &v.HeatsW })
		power("cooling", "cools", func(v *recipe.Vessel) *float64 { return &v.CoolsW })
		power("metal", "metal", func(v *recipe.Vessel) *float64 { return &v.MetalKg })
		if v.Kind == recipe.Still {
			out = append(out, knob{name: "reflux of " + use.name, by: byPoint, at: v.Where["reflux"], stage: use.stage, turn: func(b *recipe.Batch) { use.of(b).Reflux += point }})
		}
	}
	return out
}

func fermenterNamed(b *recipe.Batch, like *recipe.Vessel) *recipe.Vessel {
	for _, v := range b.Ferm.Vessels {
		if v.Name == like.Name {
			return v
		}
	}
	return b.Ferm.Vessels[0]
}

// constants of the models that are nudged by a tenth.
var constants = []struct {
	model string
	stage stage
	names []string
}{
	{"mash", inMash, []string{
		"gel-rate", "branched", "alpha-on-starch", "alpha-on-dextrin", "beta-on-dextrin", "limit-on-branch", "alpha-half-life", "beta-half-life", "limit-half-life",
		"malt-buffer", "raw-buffer", "backset-buffer", "water-flow", "grain-flow", "draff-holds",
	}},
	{"ferment", inFerment, []string{"biomass-most", "resting-rate", "glycerol-per-biomass", "heat-glucose", "wall-loss", "buffer", "lactic-growth", "lactic-most"}},
	{"cask", inCask, []string{"soak-time", "wood-water", "size-power"}},
}

func (a *asked) modelKnobs() []knob {
	var out []knob
	for _, c := range constants {
		m := a.b.Models[c.model]
		if m == nil {
			continue
		}
		for _, name := range c.names {
			if m.Values[name] == 0 {
				continue
			}
			out = append(out, knob{name: strings.ReplaceAll(name, "-", " ") + ", model " + c.model, by: byTenth, at: m.Where[name], stage: c.stage,
				turn: func(b *recipe.Batch) { constant(b, c.model, name, func(v float64) float64 { return v * tenth }) }})
		}
	}
	if m := a.b.Models["mash"]; m != nil {
		out = append(out, knob{name: "access raw, model mash", by: "-1 point", at: m.Where["access-raw"], stage: inMash,
			turn: func(b *recipe.Batch) { constant(b, "mash", "access-raw", func(v float64) float64 { return v - point }) }})
		for _, name := range []string{"malt-acidity", "raw-acidity"} {
			out = append(out, knob{name: strings.ReplaceAll(name, "-", " ") + ", model mash", by: "+0.1 pH", at: m.Where[name], stage: inMash,
				turn: func(b *recipe.Batch) { constant(b, "mash", name, func(v float64) float64 { return v + 0.1 }) }})
		}
	}
	if a.p.Stream(plan.StreamBackset).MassKg > 0 && a.b.Mash.BacksetPH > 0 {
		out = append(out, knob{name: "pH of the backset", by: "+0.1 pH", at: a.where("mash.backset"), stage: inMash, turn: func(b *recipe.Batch) { b.Mash.BacksetPH += 0.1 }})
	}
	return out
}

func (a *asked) priceKnobs() []knob {
	var out []knob
	k := a.b.Costs
	for _, p := range []struct {
		name string
		of   func(*recipe.Costs) *float64
	}{
		{"energy", func(c *recipe.Costs) *float64 { return &c.PerKWh }}, {"water", func(c *recipe.Costs) *float64 { return &c.PerM3Water }},
		{"cask", func(c *recipe.Costs) *float64 { return &c.PerCask }}, {"used-cask", func(c *recipe.Costs) *float64 { return &c.PerUsedCask }}, {"work", func(c *recipe.Costs) *float64 { return &c.PerHour }},
	} {
		if *p.of(&k) > 0 {
			out = append(out, knob{name: "price of " + p.name, by: byTenth, at: k.Where[p.name], stage: inCask, money: true, turn: func(b *recipe.Batch) { *p.of(&b.Costs) *= tenth }})
		}
	}
	for _, name := range slices.Sorted(maps.Keys(k.PerKg)) {
		out = append(out, knob{name: "price of " + name, by: byTenth, at: k.Where[name], stage: inCask, money: true, turn: func(b *recipe.Batch) { b.Costs.PerKg[name] *= tenth }})
	}
	return out
}
