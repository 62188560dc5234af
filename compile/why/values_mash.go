package why

import (
	"newmake/compile/fluid"
	"newmake/compile/plan"
	"newmake/compile/starch"
	"newmake/lang/recipe"
)

// Of the grain and the mash.
var mashValues = []value{
	{
		name: "grain", also: []string{"bill", "grist"}, title: "the grain", stage: inGrain, model: written, paths: []string{"bill"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.b.Bill.TotalKg, plan.Kilogram) },
		work: func(a *asked) []Line {
			var all []Term
			for _, l := range a.b.Bill.Lines {
				all = append(all, of(a.mass(l.MassKg), l.Grain.Name))
			}
			return []Line{work("by the bill", a.mass(a.b.Bill.TotalKg), sum(all)...)}
		},
	},
	{
		name: "starch", title: "starch in the grain", stage: inGrain, model: analysis, from: []string{"grain"},
		paths:  []string{"bill", "grain.moisture", "grain.starch"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.starchIn(), plan.Kilogram) },
		work:   workStarch,
	},
	{
		name: "theory-extract", also: []string{"theoryExtractKg"}, title: "extract if all starch dissolved", stage: inGrain, model: analysis, from: []string{"grain"},
		paths:  []string{"bill", "grain.moisture", "grain.starch", "grain.sugars", "grain.solubles", "grain.extract"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.TheoryExtractKg, plan.Kilogram) },
		work:   workTheoryExtract,
	},
	{
		name: "gelatinized", also: []string{"cooked", "gelatinizedPct"}, title: "starch gelatinized", stage: inMash, model: gelatinizing, from: []string{"starch"},
		paths:  []string{"steps.heat", "steps.rest", "steps.cool", "grain.gelatinizes", "model.mash.access-raw", "model.mash.access-malt", "model.mash.gel-rate"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.GelatinizedPct, plan.Percent) },
		work: func(a *asked) []Line {
			in, raw := a.starchIn(), a.p.Stream(plan.StreamWort).RawStarchKg+a.p.Stream(plan.StreamDraff).RawStarchKg
			return []Line{
				work("out of the granule", a.mass(in-raw), of(a.mass(in), "starch in the grain"), minus(a.mass(raw), "still raw at the end")),
				work("of the starch", percent(a.p.Mash.GelatinizedPct, 1), of(a.mass(in-raw), "gelatinized"), over(a.mass(in), "starch in the grain")),
			}
		},
	},
	{
		name: "conversion", also: []string{"converted", "conversionPct"}, title: "starch converted in the mash", stage: inMash, model: converting, from: []string{"starch", "gelatinized"},
		paths:  []string{"steps", "grain.power", "grain.alpha", "model.mash.alpha-half-life", "model.mash.beta-half-life", "model.mash.alpha-on-starch"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.ConversionPct, plan.Percent) },
		work: func(a *asked) []Line {
			wort, draff := a.p.Stream(plan.StreamWort), a.p.Stream(plan.StreamDraff)
			in, raw, gel := a.starchIn(), wort.RawStarchKg+draff.RawStarchKg, wort.GelStarchKg+draff.GelStarchKg
			return []Line{
				work("to sugars and dextrins", a.mass(in-raw-gel), of(a.mass(in), "starch in the grain"),
					minus(a.mass(raw), "raw at the end"), minus(a.mass(gel), "gelatinized and not split")),
				work("of the starch", percent(a.p.Mash.ConversionPct, 1), of(a.mass(in-raw-gel), "converted"), over(a.mass(in), "starch in the grain")),
			}
		},
	},
	{
		name: "extract", also: []string{"extractKg"}, title: "extract in the wort", stage: inMash, model: converting, from: []string{"conversion", "theory-extract"},
		paths:  []string{"steps", "grain.solubles", "grain.sugars"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.ExtractKg, plan.Kilogram) },
		work: func(a *asked) []Line {
			w := a.p.Stream(plan.StreamWort)
			return []Line{
				work("dissolved from the grain", a.mass(a.p.Mash.ExtractKg), of(a.mass(w.SugarKg()), "sugars"), plus(a.mass(w.DextrinKg), "dextrins"),
					plus(a.mass(w.GelStarchKg), "starch not split"), plus(a.mass(w.SolublesKg), "protein, gums and minerals")),
				work("of what the grain could give", percent(100*a.p.Mash.ExtractKg/a.p.Mash.TheoryExtractKg, 1),
					of(a.mass(a.p.Mash.ExtractKg), "extract"), over(a.mass(a.p.Mash.TheoryExtractKg), "if all starch dissolved")),
			}
		},
	},
	{
		name: "wort-sugar", also: []string{"sugar", "sugars"}, title: "sugars in the wort", stage: inMash, model: converting, from: []string{"conversion"},
		paths:  []string{"steps", "grain.power", "grain.alpha", "model.mash.beta-on-dextrin", "model.mash.alpha-on-dextrin", "model.mash.branched", "model.mash.beta-half-life"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Stream(plan.StreamWort).SugarKg(), plan.Kilogram) },
		work: func(a *asked) []Line {
			w := a.p.Stream(plan.StreamWort)
			return []Line{work("that a yeast can take", a.mass(w.SugarKg()), of(a.mass(w.GlucoseKg), "glucose and the like"),
				plus(a.mass(w.MaltoseKg), "maltose"), plus(a.mass(w.MaltotrioseKg), "maltotriose"))}
		},
	},
	{
		name: "fermentable", also: []string{"fermentability", "fermentablePct"}, title: "fermentable share of the extract, before the fermenter", stage: inMash, model: converting,
		from: []string{"wort-sugar", "extract"}, paths: []string{"steps.rest", "steps.cool"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.FermentablePct, plan.Percent) },
		work: func(a *asked) []Line {
			return []Line{work("sugars in the extract", percent(a.p.Mash.FermentablePct, 1),
				of(a.mass(a.p.Stream(plan.StreamWort).SugarKg()), "sugars"), over(a.mass(a.p.Mash.ExtractKg), "extract"))}
		},
	},
	{
		name: "og", also: []string{"originalGravitySG", "original-gravity"}, title: "original gravity, from the grain alone", stage: inMash, model: gravityTable,
		from: []string{"extract", "wort-water"}, paths: []string{"steps.water", "steps.backset", "bill"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.OriginalGravitySG, plan.SG) },
		work: func(a *asked) []Line {
			return a.workGravity(a.p.Mash.OriginalGravitySG, of(a.mass(a.p.Mash.ExtractKg), "extract"))
		},
	},
	{
		name: "hydrometer", also: []string{"hydrometerSG", "plato"}, title: "what the hydrometer reads when the yeast goes in", stage: inMash, model: gravityTable,
		from: []string{"extract", "wort-water"}, paths: []string{"steps.water", "steps.backset", "backset-solids"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.HydrometerSG, plan.SG) },
		work: func(a *asked) []Line {
			return a.workGravity(a.p.Mash.HydrometerSG, of(a.mass(a.p.Mash.ExtractKg), "extract"),
				plus(a.mass(a.p.Stream(plan.StreamWort).BacksetKg), "solids of the backset"))
		},
	},
	{
		name: "wort-water", also: []string{"water-in-the-wort"}, title: "water in the wort", stage: inMash, model: arithmetic, from: []string{"liquor"},
		paths:  []string{"steps.water", "steps.backset", "grain.moisture"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Stream(plan.StreamWort).WaterKg, plan.Kilogram) },
		work:   workWortWater,
	},
	{
		name: "liquor", title: "liquor, water and backset", stage: inMash, model: arithmetic, paths: []string{"steps.water", "steps.backset"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.LiquorL, plan.Litre) },
		work: func(a *asked) []Line {
			var all []Term
			for _, s := range a.b.Mash.Steps {
				if s.Verb == recipe.MashWater || s.Verb == recipe.MashBackset {
					all = append(all, of(a.litres(1000*s.VolumeM3), a.stepWords(s)))
				}
			}
			return []Line{work("let in", a.litres(a.p.Mash.LiquorL), sum(all)...)}
		},
	},
	{
		name: "liquor-grist", also: []string{"liquor-to-grist", "liquorGristLPerKg"}, title: "liquor to grist, before the first drain", stage: inMash, model: arithmetic,
		from: []string{"liquor", "grain"}, paths: []string{"steps.water", "steps.backset", "bill"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.LiquorGristLPerKg, litrePerKg) },
		work:   workLiquorGrist,
	},
	{
		name: "ph", also: []string{"mash-ph", "acidity"}, title: "pH of the mash", stage: inMash, model: buffers,
		paths: []string{"steps.backset", "plant.water", "model.mash.malt-acidity", "model.mash.malt-buffer", "model.mash.raw-acidity", "model.mash.raw-buffer",
			"backset-acidity", "model.mash.backset-buffer", "model.mash.hardness-to-alkali"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.PH, plan.PH) },
		work:   workPH,
	},
	{
		name: "wort", also: []string{"wort-volume", "to-the-fermenter"}, title: "what goes to the fermenter, at the temperature of the set", stage: inMash, model: wortVolume,
		from: []string{"extract", "wort-water"}, paths: []string{"steps.water", "steps.backset", "bill", "steps.drain"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.VolumeL, plan.Litre) },
		work: func(a *asked) []Line {
			w := a.p.Stream(plan.StreamWort)
			return a.workVolume(w, a.p.Ferment.PitchC, a.p.Mash.VolumeL)
		},
	},
	{
		name: "mash-hours", also: []string{"mashHours", "mash", "mash-time"}, title: "time in the cooker", stage: inMash, model: heating,
		paths:  []string{"steps", "cooker.heats", "cooker.cools", "cooker.metal", "plant.boiler", "plant.water", "model.mash.water-flow", "model.mash.grain-flow"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.Hours, plan.Hour) },
		work: func(a *asked) []Line {
			var all []Term
			for i, s := range a.p.Mash.Steps {
				if s.Minutes > 0 {
					all = append(all, of(minutes(s.Minutes), a.stepWords(a.b.Mash.Steps[i])))
				}
			}
			total := minutes(60 * a.p.Mash.Hours)
			return []Line{work("step by step", total, sum(all)...), work("in hours", hours(a.p.Mash.Hours), of(total, "in the cooker"), fixed("/", 60, "", ""))}
		},
	},
	{
		name: "mash-heat", title: "heat of the mash", stage: inMash, model: heating,
		paths:  []string{"steps.water", "steps.heat", "cooker.heats", "cooker.metal", "plant.water"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.HeatKWh, plan.KilowattH) },
		work: func(a *asked) []Line {
			var all []Term
			for i, s := range a.p.Mash.Steps {
				if s.HeatKWh > 0 {
					all = append(all, of(kWh(s.HeatKWh), a.stepWords(a.b.Mash.Steps[i])))
				}
			}
			return []Line{work("step by step", kWh(a.p.Mash.HeatKWh), sum(all)...)}
		},
	},
}

// litrePerKg is liquor to grist: measure shows it by the bushel in US units.
const litrePerKg plan.Unit = "L/kg"

func (a *asked) starchIn() float64 { return a.p.Stream(plan.StreamGrain).RawStarchKg }

// stepWords is a step of the mash as it is written.
func (a *asked) stepWords(s recipe.MashStep) string { return place("", s.At).Text }

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

// liquidM3 is the volume of what would pass a filter.
func liquidM3(s plan.Stream, tempC float64) float64 {
	fermented := s.FermentedKg()
	return fluid.WashVolumeM3(s.WaterKg, s.EthanolKg, s.DissolvedKg()-fermented, fermented, tempC)
}

// workVolume goes from masses to the volume of a wort or wash at a temperature.
func (a *asked) workVolume(s plan.Stream, tempC, litres float64) []Line {
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
		{plan.StreamWater, "liquor"}, {plan.StreamBackset, "of the backset"}, {plan.StreamGrain, "in the grain"}, {plan.StreamSteam, "condensed steam"},
	} {
		if kg := p.Stream(s.name).WaterKg; kg > 0 {
			all = append(all, of(a.mass(kg), s.what))
			in += kg
		}
	}
	out := []Term{of(a.mass(in), "water in")}
	draff, wort := p.Stream(plan.StreamDraff).WaterKg, p.Stream(plan.StreamWort).WaterKg
	out = append(out, minus(a.mass(in-draff-wort), "bound as starch is split"))
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
		work("by the bushel", Number{gristUS(a.p.Mash.LiquorGristLPerKg), "gal/bu", 1}, of(a.litres(liquorL), "liquor"), over(Number{bushels, "bu", 2}, "")),
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
			add(sort.what, kg, m[sort.word+"-buffer"], m[sort.word+"-acidity"])
		}
	}
	if kg := a.p.Stream(plan.StreamBackset).MassKg; kg > 0 {
		ph := a.b.Mash.BacksetPH
		if ph == 0 {
			ph = m["backset-acidity"]
		}
		add("backset", kg, m["backset-buffer"], ph)
	}
	waterKg := a.p.Stream(plan.StreamWater).WaterKg
	alkali := m["hardness-to-alkali"] * a.b.Plant.HardnessPPM / 50.04 * waterKg
	lines = append(lines, work("alkali of the water", bare(alkali, 0), of(Number{waterKg, "kg", 1}, "water"),
		fixed("x", a.b.Plant.HardnessPPM, "ppm", "hardness"), fixed("x", m["hardness-to-alkali"], "", "as alkali"), fixed("/", 50.04, "mg/mEq", "")))
	pulls = append(pulls, of(bare(alkali, 0), "water"))
	return append(lines,
		work("pulls together", bare(pull+alkali, 0), sum(pulls)...),
		work("buffers together", bare(buffer, 0), sum(buffers)...),
		work("pH", Number{a.p.Mash.PH, "pH", 2}, of(bare(pull+alkali, 0), "pulls"), over(bare(buffer, 0), "buffers")))
}
