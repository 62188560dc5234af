package why

import (
	"newmake/compile/matter/fluid"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// Of the grain and the mash.
var mashValues = []value{
	{
		name: "grain", also: []string{"bill", "grist"}, title: "the grain", stage: inGrain, model: written, inputs: []source{at(recipe.PathBill)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.b.Bill.TotalKg, plan.Kilogram) },
		work: func(a *asked) []Line {
			return []Line{adding("by the bill", a.mass(a.b.Bill.TotalKg), a.b.Bill.Lines, func(_ int, l recipe.BillLine) Term { return of(a.mass(l.MassKg), l.Grain.Name) })}
		},
	},
	{
		name: "starch", title: "starch in the grain", stage: inGrain, model: analysis, from: []string{"grain"},
		inputs: []source{at(recipe.PathBill), grainFigure("moisture", "starch")},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.starchIn(), plan.Kilogram) },
		work:   workStarch,
	},
	{
		name: "theory-extract", also: []string{"theoryExtractKg"}, title: "extract if all starch dissolved", stage: inGrain, model: analysis, from: []string{"grain"},
		inputs: []source{at(recipe.PathBill), grainFigure("moisture", "starch", "sugars", "solubles", "extract")},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.TheoryExtractKg, plan.Kilogram) },
		work:   workTheoryExtract,
	},
	{
		name: "gelatinized", also: []string{"cooked", "gelatinizedPct"}, title: "starch gelatinized", stage: inMash, model: gelatinizing, from: []string{"starch"},
		inputs: []source{stepLines("heat", "rest", "cool"), grainFigure("gelatinizes"), constant("mash", "access-raw", "access-malt", "gel-rate")},
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
		inputs: []source{stepLines(""), grainFigure("power", "alpha"), constant("mash", "alpha-half-life", "beta-half-life", "alpha-on-starch")},
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
		inputs: []source{stepLines(""), grainFigure("solubles", "sugars")},
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
		inputs: []source{stepLines(""), grainFigure("power", "alpha"), constant("mash", "beta-on-dextrin", "alpha-on-dextrin", "branched", "beta-half-life")},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Stream(plan.StreamWort).SugarKg(), plan.Kilogram) },
		work: func(a *asked) []Line {
			w := a.p.Stream(plan.StreamWort)
			return []Line{work("that a yeast can take", a.mass(w.SugarKg()), of(a.mass(w.GlucoseKg), "glucose and the like"),
				plus(a.mass(w.MaltoseKg), "maltose"), plus(a.mass(w.MaltotrioseKg), "maltotriose"))}
		},
	},
	{
		name: "fermentable", also: []string{"fermentability", "fermentablePct"}, title: "fermentable share of the extract, before the fermenter", stage: inMash, model: converting,
		from: []string{"wort-sugar", "extract"}, inputs: []source{stepLines("rest", "cool")},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.FermentablePct, plan.Percent) },
		work: func(a *asked) []Line {
			return []Line{work("sugars in the extract", percent(a.p.Mash.FermentablePct, 1),
				of(a.mass(a.p.Stream(plan.StreamWort).SugarKg()), "sugars"), over(a.mass(a.p.Mash.ExtractKg), "extract"))}
		},
	},
	{
		name: "original-gravity", also: []string{"originalGravitySG", "og"}, title: "original gravity, from the grain alone", stage: inMash, model: gravityTable,
		from: []string{"extract", "wort-water"}, inputs: []source{stepLines("water", "backset"), at(recipe.PathBill)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.OriginalGravitySG, plan.SG) },
		work: func(a *asked) []Line {
			return a.workGravity(a.p.Mash.OriginalGravitySG, of(a.mass(a.p.Mash.ExtractKg), "extract"))
		},
	},
	{
		name: "hydrometer", also: []string{"hydrometerSG", "plato"}, title: "what the hydrometer reads when the yeast goes in", stage: inMash, model: gravityTable,
		from: []string{"extract", "wort-water"}, inputs: []source{stepLines("water", "backset"), backsetFigure(recipe.PathBacksetSolids)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.HydrometerSG, plan.SG) },
		work: func(a *asked) []Line {
			return a.workGravity(a.p.Mash.HydrometerSG, of(a.mass(a.p.Mash.ExtractKg), "extract"),
				plus(a.mass(a.p.Stream(plan.StreamWort).BacksetKg), "solids of the backset"))
		},
	},
	{
		name: "wort-water", also: []string{"water-in-the-wort"}, title: "water in the wort", stage: inMash, model: arithmetic, from: []string{"liquor"},
		inputs: []source{stepLines("water", "backset"), grainFigure("moisture")},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Stream(plan.StreamWort).WaterKg, plan.Kilogram) },
		work:   workWortWater,
	},
	{
		name: "liquor", inUS: "mash-water", also: []string{"mash-water"}, title: "liquor, water and backset", stage: inMash, model: arithmetic, inputs: []source{stepLines("water", "backset")},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.LiquorL, plan.Litre) },
		work: func(a *asked) []Line {
			return []Line{adding("let in", a.litres(a.p.Mash.LiquorL), a.b.Mash.Steps, func(_ int, s recipe.MashStep) Term {
				if s.Verb == recipe.MashWater || s.Verb == recipe.MashBackset || s.Verb == recipe.MashSparge {
					return of(a.litres(1000*s.VolumeM3), stepWords(s))
				}
				return Term{}
			})}
		},
	},
	{
		name: "liquor-grist", inUS: "water-to-grain", also: []string{"water-to-grain", "liquor-to-grist", "liquorGristLPerKg"}, title: "liquor to grist, before the first drain", stage: inMash, model: arithmetic,
		from: []string{"liquor", "grain"}, inputs: []source{stepLines("water", "backset"), at(recipe.PathBill)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.LiquorGristLPerKg, litrePerKg) },
		work:   workLiquorGrist,
	},
	{
		name: "ph", also: []string{"mash-ph", "pH"}, title: "pH of the mash", stage: inMash, model: buffers,
		inputs: []source{stepLines("backset"), at(recipe.PathAcid, recipe.PathGypsum, recipe.PathLime, recipe.PathWater), constant("mash", "malt-pH", "malt-buffer", "raw-pH", "raw-buffer"),
			backsetFigure(recipe.PathBacksetPH), constant("mash", "backset-buffer", "hardness-to-alkali")},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.PH, plan.PH) },
		work:   workPH,
	},
	{
		name: "wort", also: []string{"wort-volume", "to-the-fermenter"}, title: "what goes to the fermenter, at the temperature of the set", stage: inMash, model: wortVolume,
		from: []string{"extract", "wort-water"}, inputs: []source{stepLines("water", "backset"), at(recipe.PathBill), stepLines("drain")},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.VolumeL, plan.Litre) },
		work: func(a *asked) []Line {
			w := a.p.Stream(plan.StreamWort)
			return a.workVolume(w, a.p.Ferment.PitchC, a.p.Mash.VolumeL)
		},
	},
	{
		name: "mash", also: []string{"mashHours", "mash-hours", "mash-time"}, title: "time in the cooker", stage: inMash, model: heating,
		inputs: []source{stepLines(""), vesselFigure("cooker", "heats", "cools", "metal"), at(recipe.PathBoiler, recipe.PathWater), rate("water-in"), rate("grain-in")},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.Hours, plan.Hour) },
		work: func(a *asked) []Line {
			total := minutes(60 * a.p.Mash.Hours)
			return []Line{a.stepByStep(total, func(s plan.MashStep) Number { return minutes(s.Minutes) }), work("in hours", hours(a.p.Mash.Hours), of(total, "in the cooker"), fixed("/", 60, "", ""))}
		},
	},
	{
		name: "mash-heat", title: "heat of the mash", stage: inMash, model: heating,
		inputs: []source{stepLines("water", "heat"), vesselFigure("cooker", "heats", "metal"), at(recipe.PathWater)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.HeatKWh, plan.KilowattH) },
		work: func(a *asked) []Line {
			return []Line{a.stepByStep(kWh(a.p.Mash.HeatKWh), func(s plan.MashStep) Number { return kWh(s.HeatKWh) })}
		},
	},
	{
		name: "mash-cooling", title: "cooling of the mash", stage: inMash, model: cooling,
		inputs: []source{stepLines("water", "cool", "drain", "sparge"), vesselFigure("cooker", "cools"), at(recipe.PathWortCooler, recipe.PathWater)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Mash.CoolKWh, plan.KilowattH) },
		note: func(a *asked) string {
			return "with " + a.u.Litres(a.p.Mash.CoolingWaterL) + " of water that comes in at " + a.temp(a.p.Plant.WaterC)
		},
		work: func(a *asked) []Line {
			return []Line{a.stepByStep(kWh(a.p.Mash.CoolKWh), func(s plan.MashStep) Number { return kWh(s.CoolKWh) })}
		},
	},
}

// litrePerKg is liquor to grist: measure shows it by the bushel in US units.
const litrePerKg plan.Unit = "L/kg"

// liquidM3 is the volume of what would pass a filter.
func liquidM3(s plan.Stream, tempC float64) float64 {
	fermented := s.FermentedKg()
	return fluid.WashVolumeM3(s.WaterKg, s.EthanolKg, s.DissolvedKg()-fermented, fermented, tempC)
}
