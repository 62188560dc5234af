package why

import (
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/starch"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

func (a *asked) starchIn() float64 { return a.p.Stream(plan.StreamGrain).RawStarchKg }

// stepWords is a step of the mash as it is written.
func stepWords(s recipe.MashStep) string { return place("", s.At).Text }

// stepByStep adds up something of the mash's steps.
func (a *asked) stepByStep(total Number, what func(plan.MashStep) Number) Line {
	return adding("step by step", total, a.p.Mash.Steps, func(i int, s plan.MashStep) Term { return of(what(s), stepWords(a.b.Mash.Steps[i])) })
}

func workStarch(a *asked) []Line {
	var lines []Line
	var all []Term
	for _, l := range a.b.Bill.Lines {
		g := l.Grain
		kg := l.MassKg * (1 - g.Moisture) * g.Starch
		lines = append(lines, work("in "+g.Name, a.mass(kg), of(a.mass(l.MassKg), "as bought"),
			times(percent(100*(1-g.Moisture), 1), "dry"), times(percent(100*g.Starch, 1), "starch")))
		all = append(all, of(a.mass(kg), "in "+g.Name))
	}
	return append(lines, work("in all", a.mass(a.starchIn()), sum(all)...))
}

func workTheoryExtract(a *asked) []Line {
	var lines []Line
	var all []Term
	for _, l := range a.b.Bill.Lines {
		g := l.Grain
		dry := l.MassKg * (1 - g.Moisture)
		share := g.Extract
		if share == 0 {
			share = g.Starch*starch.PerMaltose + g.Sugars + g.Solubles
			lines = append(lines, work("extract of "+g.Name, percent(100*share, 2), of(percent(100*g.Starch, 1), "starch"), times(bare(starch.PerMaltose, 4), "as maltose"),
				plus(percent(100*g.Sugars, 1), "sugars"), plus(percent(100*g.Solubles, 1), "solubles")))
		}
		lines = append(lines, work("from "+g.Name, a.mass(dry*share), of(a.mass(l.MassKg), "as bought"),
			times(percent(100*(1-g.Moisture), 1), "dry"), times(percent(100*share, 2), "extract")))
		all = append(all, of(a.mass(dry*share), "from "+g.Name))
	}
	return append(lines, work("in all", a.mass(a.p.Mash.TheoryExtractKg), sum(all)...))
}

// workGravity goes from what is dissolved to the gravity.
func (a *asked) workGravity(sg float64, dissolved ...Term) []Line {
	w := a.p.Stream(plan.StreamWort)
	solids := 0.0
	for _, t := range dissolved {
		solids += t.Value
	}
	water := a.mass(w.WaterKg)
	share := 100 * solids / (solids + water.Value)
	liquid := water
	liquid.Value += solids
	return []Line{
		work("the liquid", liquid, append(dissolved, plus(water, "water in the wort"))...),
		work("plato: dissolved, by weight", percent(share, 2), of(Number{solids, water.Unit, water.Places}, "dissolved"), over(liquid, "the liquid")),
		look("gravity at 20/20 C", "NBS Circular 440", gravity(sg), func(x []float64) float64 { return fluid.SGFromPlato(x[0] / 100) },
			of(bare(share, 2), "plato")),
	}
}

// workVolume goes from masses to the volume of a wort or wash at a temperature.
func (a inUnits) workVolume(s plan.Stream, tempC, litres float64) []Line {
	liquid := s.LiquidKg()
	volume := 1000 * liquidM3(s, tempC)
	rho := 1000 * liquid / volume
	at := a.number(plan.Of(tempC, plan.Celsius)).Text()
	dissolved := []Term{of(a.mass(s.WaterKg), "water")}
	if s.EthanolKg > 0 {
		dissolved = append(dissolved, plus(a.mass(s.EthanolKg), "alcohol"))
	}
	dissolved = append(dissolved, plus(a.mass(s.DissolvedKg()), "dissolved"))
	return []Line{
		work("the liquid", a.mass(liquid), dissolved...),
		work("its volume at "+at, a.litres(volume), of(a.mass(liquid), "liquid"), over(a.density(rho), "(OIML R 22, NBS Circular 440)")),
		work("what is not dissolved", a.litres(1000*s.SuspendedKg()*fluid.GrainDisplacement), of(a.mass(s.SuspendedKg()), "grain matter and yeast"),
			times(a.room(fluid.GrainDisplacement), "")),
		work("together", a.litres(litres), of(a.litres(volume), "liquid"), plus(a.litres(litres-volume), "not dissolved")),
	}
}

// workWortWater is the water of the mash, less what sugars bind and draff keeps.
func workWortWater(a *asked) []Line {
	p := a.p
	all := []Term{}
	in := 0.0
	for _, s := range []struct{ name, what string }{
		{plan.StreamWater, "liquor"}, {plan.StreamBackset, "of the backset"}, {plan.StreamGrain, "in the grain"}, {plan.StreamKeptIn, "of the kept water"}, {plan.StreamSteam, "condensed steam"},
	} {
		if kg := p.Stream(s.name).WaterKg; kg > 0 {
			all = append(all, of(a.mass(kg), s.what))
			in += kg
		}
	}
	out := []Term{of(a.mass(in), "water in")}
	draff, wort := p.Stream(plan.StreamDraff).WaterKg, p.Stream(plan.StreamWort).WaterKg
	kept := p.Stream(plan.StreamKept).WaterKg
	out = append(out, minus(a.mass(in-draff-wort-kept), "bound as starch is split"))
	if kept > 0 {
		out = append(out, minus(a.mass(kept), "kept for the next mash"))
	}
	if draff > 0 {
		out = append(out, minus(a.mass(draff), "kept by the draff"))
	}
	return []Line{work("water in", a.mass(in), sum(all)...), work("in the wort", a.mass(wort), out...)}
}

func workLiquorGrist(a *asked) []Line {
	liquorL, grainKg := 0.0, 0.0
	for _, s := range a.b.Mash.Steps {
		if s.Verb == recipe.MashDrain && grainKg > 0 {
			break
		}
		if s.Verb == recipe.MashWater || s.Verb == recipe.MashBackset {
			liquorL += 1000 * s.VolumeM3
		}
		for _, i := range s.Grains {
			grainKg += a.b.Bill.Lines[i].MassKg
		}
	}
	if !a.us() {
		return []Line{work("by the kg", Number{a.p.Mash.LiquorGristLPerKg, "L/kg", 2}, of(a.litres(liquorL), "liquor"), over(a.mass(grainKg), "grain"))}
	}
	bushels := grainKg / fluid.PoundKg / 56
	return []Line{
		work("distiller's bushels, 56 lb of any grain", Number{bushels, "bu", 2}, of(a.mass(grainKg), "grain"), fixed("/", 56, "lb", "")),
		work("by the bushel", Number{gristUS(a.p.Mash.LiquorGristLPerKg), "gal" + measure.PerBushel, 1}, of(a.litres(liquorL), "liquor"), over(Number{bushels, "bu", 2}, "")),
	}
}

// gristUS is liquor to grist in gallons to a distiller's bushel.
func gristUS(litrePerKg float64) float64 {
	return litrePerKg * fluid.PoundKg * 56 / (1000 * fluid.USGallonM3)
}

// workPH mixes the buffers, in mEq by kg as the model's constants are.
func workPH(a *asked) []Line {
	m := a.b.Models["mash"].Values
	var lines []Line
	var buffers, pulls []Term
	buffer, pull := 0.0, 0.0
	add := func(what string, kg, perKg, ph float64) {
		b := kg * perKg
		lines = append(lines, work("buffer of "+what, bare(b, 0), of(Number{kg, "kg", 1}, what), fixed("x", perKg, "mEq/kg", "")))
		buffers = append(buffers, of(bare(b, 0), what))
		lines = append(lines, work("pull of "+what, bare(b*ph, 0), of(bare(b, 0), "buffer"), fixed("x", plan.RoundTo(ph, 6), "pH", "")))
		pulls = append(pulls, of(bare(b*ph, 0), what))
		buffer, pull = buffer+b, pull+b*ph
	}
	for _, sort := range []struct {
		what, word string
		is         func(*recipe.Grain) bool
	}{
		{"malt", "malt", func(g *recipe.Grain) bool { return g.Malted && !g.Roasted }},
		{"raw grain", "raw", func(g *recipe.Grain) bool { return !g.Malted && !g.Roasted }},
		{"roasted grain", "roasted", func(g *recipe.Grain) bool { return g.Roasted }},
	} {
		kg := 0.0
		for _, s := range a.b.Mash.Steps {
			for _, i := range s.Grains {
				if l := a.b.Bill.Lines[i]; sort.is(l.Grain) {
					kg += l.MassKg
				}
			}
		}
		if kg > 0 {
			add(sort.what, kg, m[sort.word+"-buffer"], m[sort.word+"-pH"])
		}
	}
	if kg := a.p.Stream(plan.StreamBackset).MassKg; kg > 0 {
		ph := a.b.Mash.BacksetPH
		if ph == 0 {
			ph = m["backset-pH"]
		}
		add("backset", kg, m["backset-buffer"], ph)
	}
	waterKg := a.p.Stream(plan.StreamWater).WaterKg
	for _, s := range a.b.Mash.Steps[len(recipe.WortSteps(a.b.Mash.Steps)):] {
		if s.Verb == recipe.MashWater {
			waterKg -= s.VolumeM3 * fluid.WaterDensity(s.TempC) // for the next mash
		}
	}
	alkali := m["hardness-to-alkali"] * a.b.Plant.HardnessPPM / 50.04 * waterKg
	lines = append(lines, work("alkali of the water", bare(alkali, 0), of(Number{waterKg, "kg", 1}, "water"),
		fixed("x", a.b.Plant.HardnessPPM, "ppm", "hardness"), fixed("x", m["hardness-to-alkali"], "", "as alkali"), fixed("/", 50.04, "mg/mEq", "")))
	pulls = append(pulls, of(bare(alkali, 0), "water"))
	total := pull + alkali
	if x := a.p.Mash.SaltsMEq; x != 0 {
		pulls, total = append(pulls, of(bare(x, 0), "gypsum and lime")), total+x
	}
	if x := a.p.Mash.AcidMEq; x > 0 {
		pulls, total = append(pulls, of(bare(-x, 0), "acid, as it gives off at this pH")), total-x
	}
	return append(lines,
		work("pulls together", bare(total, 0), sum(pulls)...),
		work("buffers together", bare(buffer, 0), sum(buffers)...),
		work("pH", Number{a.p.Mash.PH, "pH", 2}, of(bare(total, 0), "pulls"), over(bare(buffer, 0), "buffers")))
}
