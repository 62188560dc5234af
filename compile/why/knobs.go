package why

import (
	"maps"
	"slices"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// knob is an input that can be nudged.
type knob struct {
	name  string // "rest at 148 F"
	by    string // "+2 F"
	at    diag.Span
	stage stage // the first that feels it
	money bool  // it moves nothing but costs
	turn  func(*recipe.Batch)
}

// How far inputs are nudged.
const (
	point  = 0.01 // of a share, or of a strength
	tenth  = 1.1  // times a time, a volume, a power or a constant
	nudgeK = 1.0  // in SI; 2 F in US units
	feet   = 304.8
	metres = 300.0
)

const (
	byPoint = "+1 point"
	byTenth = "+10 %"
)

// knobs are all those of a batch, in the order of the work.
func (a *asked) knobs() []knob {
	var out []knob
	for _, some := range [][]knob{
		a.grainKnobs(), a.mashKnobs(), a.fermentKnobs(), a.stillKnobs(), a.caskKnobs(), a.plantKnobs(), a.modelKnobs(), a.priceKnobs(),
	} {
		out = append(out, some...)
	}
	return out
}

// degrees is a nudge of a temperature, and its word.
func (a *asked) degrees() (k float64, by string) {
	if a.us() {
		return 2 / 1.8, "+2 F"
	}
	return nudgeK, "+1 C"
}

func (a *asked) temp(c float64) string { return a.u.Temp(c) }

// where finds the place of a path in the texts; none if it is not written.
func (a *asked) where(paths ...string) diag.Span {
	for _, p := range paths {
		if at, ok := a.b.Where[p]; ok {
			return at
		}
	}
	return diag.Span{}
}

// strengthKnob nudges a strength in the basis in which it is written.
func strengthKnob(name string, s recipe.Strength, at diag.Span, st stage, of func(*recipe.Batch) *recipe.Strength) knob {
	by := map[recipe.StrengthBasis]string{recipe.ABV: "+1 % abv", recipe.Proof: "+2 proof", recipe.ABW: "+1 % abw"}[s.Basis]
	return knob{name: name, by: by, at: at, stage: st, turn: func(b *recipe.Batch) { of(b).Value += point }}
}

// said is a strength as it is written.
func said(s recipe.Strength) string {
	switch s.Basis {
	case recipe.Proof:
		return measure.Number(200*s.Value, 0) + " proof"
	case recipe.ABW:
		return measure.Number(100*s.Value, 0) + " % abw"
	default:
		return measure.Number(100*s.Value, 0) + " % abv"
	}
}

// clone is a batch that shares nothing that a knob turns.
func clone(b *recipe.Batch) *recipe.Batch {
	c := *b
	c.Expect = nil
	c.Bill.Lines = slices.Clone(b.Bill.Lines)
	for i, l := range c.Bill.Lines {
		g := *l.Grain
		c.Bill.Lines[i].Grain = &g
	}
	c.Mash.Steps = slices.Clone(b.Mash.Steps)
	c.Ferm.Doses = slices.Clone(b.Ferm.Doses)
	if b.Ferm.Yeast != nil {
		y := *b.Ferm.Yeast
		c.Ferm.Yeast = &y
	}
	if b.Cask.Kind != nil {
		k := *b.Cask.Kind
		c.Cask.Kind = &k
	}
	p := *b.Plant
	c.Plant = &p
	own := map[*recipe.Vessel]*recipe.Vessel{}
	vessel := func(v *recipe.Vessel) *recipe.Vessel {
		if v == nil {
			return nil
		}
		if own[v] == nil {
			w := *v
			own[v] = &w
		}
		return own[v]
	}
	c.Mash.Cooker, c.Strip.Still, c.Spirit.Still = vessel(b.Mash.Cooker), vessel(b.Strip.Still), vessel(b.Spirit.Still)
	c.Ferm.Vessels = make([]*recipe.Vessel, len(b.Ferm.Vessels))
	for i, v := range b.Ferm.Vessels {
		c.Ferm.Vessels[i] = vessel(v)
	}
	c.Costs.PerKg = maps.Clone(b.Costs.PerKg)
	return &c
}

// constant sets one figure of a model, in a copy of the model.
func constant(b *recipe.Batch, name, field string, f func(float64) float64) {
	models := maps.Clone(b.Models)
	m := *models[name]
	m.Values = maps.Clone(m.Values)
	m.Values[field] = f(m.Values[field])
	models[name] = &m
	b.Models = models
}

func (a *asked) grainKnobs() []knob {
	var out []knob
	lines := a.b.Bill.Lines
	out = append(out, knob{
		name: "all the grain, in the same liquor", by: byTenth, at: a.where("bill"), stage: inGrain,
		turn: func(b *recipe.Batch) {
			b.Bill.TotalKg *= tenth
			for i := range b.Bill.Lines {
				b.Bill.Lines[i].MassKg *= tenth
			}
		},
	})
	deg, by := a.degrees()
	for i, l := range lines {
		g := l.Grain
		if len(lines) > 1 {
			out = append(out, knob{name: g.Name, by: byPoint + " of the bill", at: a.where("bill." + g.Name), stage: inGrain, turn: func(b *recipe.Batch) { moreOf(b, i) }})
		}
		out = append(out,
			knob{name: "starch of " + g.Name, by: byPoint, at: g.Where["starch"], stage: inGrain, turn: func(b *recipe.Batch) { b.Bill.Lines[i].Grain.Starch += point }},
			knob{name: "moisture of " + g.Name, by: byPoint, at: g.Where["moisture"], stage: inGrain, turn: func(b *recipe.Batch) { b.Bill.Lines[i].Grain.Moisture += point }},
			knob{name: "gelatinization of " + g.Name, by: by, at: g.Where["gelatinizes"], stage: inMash, turn: func(b *recipe.Batch) {
				b.Bill.Lines[i].Grain.GelLowC += deg
				b.Bill.Lines[i].Grain.GelHighC += deg
			}})
		if g.LintnerPower > 0 || g.AlphaDU > 0 {
			out = append(out, knob{name: "enzymes of " + g.Name, by: byTenth, at: g.Where["power"], stage: inMash, turn: func(b *recipe.Batch) {
				b.Bill.Lines[i].Grain.LintnerPower *= tenth
				b.Bill.Lines[i].Grain.AlphaDU *= tenth
			}})
		}
	}
	return out
}

// moreOf gives line i of the bill a point more; the total stays, and the others
// give way in proportion.
func moreOf(b *recipe.Batch, i int) {
	total, was := b.Bill.TotalKg, b.Bill.Lines[i].MassKg
	now := min(was+point*total, total)
	for j := range b.Bill.Lines {
		if j != i && total > was {
			b.Bill.Lines[j].MassKg *= (total - now) / (total - was)
		}
	}
	b.Bill.Lines[i].MassKg = now
}

func (a *asked) mashKnobs() []knob {
	var out []knob
	deg, by := a.degrees()
	steps := a.b.Mash.Steps
	for i, s := range steps {
		k := knob{name: a.stepWords(s), by: byTenth, at: s.At, stage: inMash}
		switch s.Verb {
		case recipe.MashWater:
			k.turn = func(b *recipe.Batch) { b.Mash.Steps[i].VolumeM3 *= tenth }
			if s.TempC > a.b.Plant.WaterC+5 {
				out = append(out, knob{name: "water at " + a.temp(s.TempC), by: by, at: s.At, stage: inMash, turn: func(b *recipe.Batch) { b.Mash.Steps[i].TempC += deg }})
			}
		case recipe.MashBackset:
			k.turn = func(b *recipe.Batch) { b.Mash.Steps[i].VolumeM3 *= tenth }
			if s.Share > 0 {
				k.by = byPoint
				k.turn = func(b *recipe.Batch) { b.Mash.Steps[i].Share += point }
			}
		case recipe.MashDose:
			k.turn = func(b *recipe.Batch) {
				b.Mash.Steps[i].MassKg *= tenth
				b.Mash.Steps[i].Share *= tenth
			}
		case recipe.MashHeat, recipe.MashCool:
			if rests(steps, i) {
				k.name = "rest at " + a.temp(s.TempC)
			}
			k.by, k.turn = by, func(b *recipe.Batch) { b.Mash.Steps[i].TempC += deg }
		case recipe.MashRest, recipe.MashBoil:
			k.turn = func(b *recipe.Batch) { b.Mash.Steps[i].DurationS *= tenth }
		default:
			continue
		}
		out = append(out, k)
	}
	return out
}

// rests says that the mash rests where step i brings it.
func rests(steps []recipe.MashStep, i int) bool {
	for _, s := range steps[i+1:] {
		switch s.Verb {
		case recipe.MashRest:
			return true
		case recipe.MashHeat, recipe.MashCool, recipe.MashBoil:
			return false
		}
	}
	return false
}

func (a *asked) fermentKnobs() []knob {
	f := a.b.Ferm
	deg, by := a.degrees()
	out := []knob{
		{name: "yeast pitched", by: byTenth, at: a.where("ferment.pitch", "ferment"), stage: inFerment, turn: func(b *recipe.Batch) {
			b.Ferm.PitchKg *= tenth
			b.Ferm.PitchKgM3 *= tenth
		}},
		{name: "time of the ferment", by: byTenth, at: a.where("ferment.for", "ferment"), stage: inFerment, turn: func(b *recipe.Batch) { b.Ferm.DurationS *= tenth }},
	}
	if f.HoldHighC > 0 {
		out = append(out, knob{name: "hold", by: by, at: a.where("ferment.hold", "ferment"), stage: inFerment, turn: func(b *recipe.Batch) {
			b.Ferm.HoldLowC += deg
			b.Ferm.HoldHighC += deg
		}})
	}
	for i, d := range f.Doses {
		out = append(out, knob{name: "dose of " + d.Enzyme.Name, by: byTenth, at: d.At, stage: inFerment, turn: func(b *recipe.Batch) {
			b.Ferm.Doses[i].MassKg *= tenth
			b.Ferm.Doses[i].Share *= tenth
		}})
	}
	if y := f.Yeast; y != nil {
		out = append(out,
			knob{name: "growth of the yeast", by: byTenth, at: y.Where["growth"], stage: inFerment, turn: func(b *recipe.Batch) { b.Ferm.Yeast.GrowthPerS *= tenth }},
			knob{name: "ethanol limit of the yeast", by: byTenth, at: y.Where["ethanol-limit"], stage: inFerment, turn: func(b *recipe.Batch) { b.Ferm.Yeast.EthanolMostKgM3 *= tenth }},
			knob{name: "ethanol yield of the yeast", by: byPoint, at: y.Where["ethanol-yield"], stage: inFerment, turn: func(b *recipe.Batch) { b.Ferm.Yeast.EthanolYield = min(1, b.Ferm.Yeast.EthanolYield+point) }})
	}
	return out
}

func (a *asked) stillKnobs() []knob {
	s, p := a.b.Strip, a.b.Spirit
	out := []knob{
		strengthKnob("wash run to "+said(s.StopAt), s.StopAt, a.where("strip.stop", "strip"), inStrip, func(b *recipe.Batch) *recipe.Strength { return &b.Strip.StopAt }),
	}
	if p.ForeshotsM3 > 0 {
		out = append(out, knob{name: "foreshots", by: byTenth, at: a.where("spirit.foreshots", "spirit"), stage: inSpirit, turn: func(b *recipe.Batch) { b.Spirit.ForeshotsM3 *= tenth }})
	}
	return append(out,
		a.cutKnob("hearts from ", p.HeartsFrom, func(b *recipe.Batch) *recipe.Cut { return &b.Spirit.HeartsFrom }),
		a.cutKnob("hearts to ", p.HeartsTo, func(b *recipe.Batch) *recipe.Cut { return &b.Spirit.HeartsTo }),
		strengthKnob("spirit run to "+said(p.Stop), p.Stop, a.where("spirit.stop", "spirit"), inSpirit, func(b *recipe.Batch) *recipe.Strength { return &b.Spirit.Stop }))
}

func (a *asked) cutKnob(name string, c recipe.Cut, of func(*recipe.Batch) *recipe.Cut) knob {
	k := knob{at: c.At, stage: inSpirit}
	switch c.By {
	case recipe.ByStrength:
		return strengthKnob(name+said(c.Strength), c.Strength, c.At, inSpirit, func(b *recipe.Batch) *recipe.Strength { return &of(b).Strength })
	case recipe.ByVolume:
		k.name, k.by, k.turn = name+a.u.Litres(1000*c.VolumeM3), byTenth, func(b *recipe.Batch) { of(b).VolumeM3 *= tenth }
	case recipe.ByVapourTemp:
		deg, by := a.degrees()
		k.name, k.by, k.turn = name+a.temp(c.TempC), by, func(b *recipe.Batch) { of(b).TempC += deg }
	default:
		k.name, k.by, k.turn = name+measure.Number(100*c.Share, 0)+" % of the charge", byPoint, func(b *recipe.Batch) { of(b).Share += point }
	}
	return k
}

func (a *asked) caskKnobs() []knob {
	c := a.b.Cask
	out := []knob{
		strengthKnob("entry at "+said(c.Entry), c.Entry, a.where("cask.entry", "cask"), inCask, func(b *recipe.Batch) *recipe.Strength { return &b.Cask.Entry }),
		{name: "size of the cask", by: byTenth, at: a.where("cask.fill", "cask"), stage: inCask, turn: func(b *recipe.Batch) { b.Cask.SizeM3 *= tenth }},
		{name: "rest in wood", by: byTenth, at: a.where("cask.rest", "cask"), stage: inCask, turn: func(b *recipe.Batch) { b.Cask.RestS *= tenth }},
	}
	if k := c.Kind; k != nil {
		out = append(out, knob{name: "soak of the wood", by: byPoint, at: k.Where["soak"], stage: inCask, turn: func(b *recipe.Batch) { b.Cask.Kind.SoakFrac += point }})
	}
	if c.BottleAt.Value > 0 {
		out = append(out, strengthKnob("bottled at "+said(c.BottleAt), c.BottleAt, a.where("cask.bottle.at", "cask"), inCask, func(b *recipe.Batch) *recipe.Strength { return &b.Cask.BottleAt }))
	}
	for _, loss := range []struct {
		field, name, path string
		of                func(*recipe.Climate) *float64
	}{
		{"loss-first-year", "loss of the first year", "plant.loss-first-year", func(c *recipe.Climate) *float64 { return &c.LossFirstYear }},
		{"loss", "loss of a later year", "plant.loss", func(c *recipe.Climate) *float64 { return &c.LossYearly }},
	} {
		k := knob{name: loss.name, by: byPoint, stage: inCask}
		field := c.Climate.Named + "-" + loss.field
		m := a.b.Models["cask"]
		switch {
		case *loss.of(&c.Climate) > 0:
			k.at, k.turn = a.where(loss.path, "cask.climate", "plant.climate"), func(b *recipe.Batch) { *loss.of(&b.Cask.Climate) += point }
		case m != nil && m.Values[field] > 0:
			k.at, k.turn = m.Where[field], func(b *recipe.Batch) { constant(b, "cask", field, func(v float64) float64 { return v + point }) }
		default:
			continue
		}
		out = append(out, k)
	}
	return out
}

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
		{"cask", func(c *recipe.Costs) *float64 { return &c.PerCask }}, {"work", func(c *recipe.Costs) *float64 { return &c.PerHour }},
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
