package why

import (
	"newmake/compile/matter/fluid"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/words"
)

// Of yield, energy, money, time and place.
var houseValues = []value{
	{
		name: "yield", title: "yield in the hearts", stage: inSpirit, model: usage, from: []string{"hearts", "grain"}, inputs: []source{at(recipe.PathBill)},
		amount: func(a *asked) plan.Quantity {
			if a.us() {
				return plan.Of(a.p.Yield.HeartsPGPerBushel, pgPerBushel)
			}
			return plan.Of(a.p.Yield.HeartsLPAPerTonne, lpaPerTonne)
		},
		note: func(a *asked) string {
			if !a.us() {
				return "of grain as bought"
			}
			return "of grain as bought; a distiller's bushel is 56 lb of any grain"
		},
		work: func(a *asked) []Line {
			return a.workYield(a.hearts().Lot, a.p.Yield.HeartsPGPerBushel, a.p.Yield.HeartsLPAPerTonne)
		},
	},
	{
		name: "yield-per-tonne", also: []string{"yieldLPAPerTonne"}, title: "yield in the hearts, by the tonne", stage: inSpirit, model: usage, from: []string{"hearts", "grain"}, inputs: []source{at(recipe.PathBill)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Yield.HeartsLPAPerTonne, lpaPerTonne) },
		work:   func(a *asked) []Line { return a.workPerTonne(a.hearts().PureL, a.p.Yield.HeartsLPAPerTonne) },
	},
	{
		name: "wash-yield", title: "yield in the wash, by the tonne", stage: inFerment, model: usage, from: []string{"alcohol", "grain"}, inputs: []source{at(recipe.PathBill)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Yield.WashLPAPerTonne, lpaPerTonne) },
		work:   func(a *asked) []Line { return a.workPerTonne(a.p.Ferment.PureL, a.p.Yield.WashLPAPerTonne) },
	},
	{
		name: "theory", title: "yield in theory, by the tonne", stage: inGrain, model: usage, from: []string{"starch", "grain"}, inputs: []source{at(recipe.PathBill), grainFigure("moisture", "starch", "sugars")},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Yield.TheoryLPAPerTonne, lpaPerTonne) },
		work: func(a *asked) []Line {
			g := a.p.Stream(plan.StreamGrain)
			glucose := g.RawStarchKg*glucosePerStarch + g.GlucoseKg
			litres := glucose * ethanolPerGlucosePct / 100 / ethanolKgPerL
			return []Line{
				work("as glucose", Number{glucose, "kg", 1}, of(Number{g.RawStarchKg, "kg", 1}, "starch"), times(bare(glucosePerStarch, 4), ""), plus(Number{g.GlucoseKg, "kg", 1}, "sugars")),
				work("as alcohol", Number{litres, "LPA", 1}, of(Number{glucose, "kg", 1}, ""), times(percent(ethanolPerGlucosePct, 2), "Gay-Lussac"), over(Number{ethanolKgPerL, "kg/L", 5}, "")),
				a.workPerTonne(litres, a.p.Yield.TheoryLPAPerTonne)[0],
			}
		},
	},
	{
		name: "of-theory", also: []string{"efficiency", "washOfTheoryPct"}, title: "alcohol in the wash, of the theory", stage: inFerment, model: usage, from: []string{"wash-yield", "theory", "conversion"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Yield.OfTheoryPct, plan.Percent) },
		work: func(a *asked) []Line {
			y := a.p.Yield
			return []Line{work("of the theory", percent(y.OfTheoryPct, 1), of(Number{y.WashLPAPerTonne, "LPA/t", 1}, "in the wash"), over(Number{y.TheoryLPAPerTonne, "LPA/t", 1}, "in theory"))}
		},
	},
	{
		name: "energy", also: []string{"heat", "heatKWh"}, title: "heat of all stages", stage: inCask, model: arithmetic, from: []string{"mash-heat", "strip-heat", "spirit-heat"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Energy.HeatKWh, plan.KilowattH) },
		work: func(a *asked) []Line {
			return []Line{
				adding("stage by stage", kWh(a.p.Energy.HeatKWh), a.p.Energy.Stages, func(_ int, s plan.StageEnergy) Term { return of(kWh(s.HeatKWh), s.Stage) }),
				work("by the litre of pure alcohol", Number{a.p.Energy.KWhPerLPA, "kWh/LPA", 2}, of(kWh(a.p.Energy.HeatKWh), ""), over(Number{a.hearts().PureL, "LPA", 1}, "in the hearts")),
			}
		},
	},
	{
		name: "water", also: []string{"waterL"}, title: "water, process and cooling", stage: inCask, model: arithmetic, from: []string{"liquor", "water-to-add"}, inputs: []source{at(recipe.PathWater)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Energy.WaterL, plan.Litre) },
		work: func(a *asked) []Line {
			var all []Term
			for _, s := range a.p.Energy.Stages {
				if s.ProcessL > 0 {
					all = append(all, of(a.litres(s.ProcessL), s.Stage))
				}
				if s.CoolingWaterL > 0 {
					all = append(all, of(a.litres(s.CoolingWaterL), s.Stage+", cooling"))
				}
			}
			return []Line{work("stage by stage", a.litres(a.p.Energy.WaterL), sum(all)...)}
		},
	},
	{
		name: "cost", also: []string{"money"}, title: "cost by the house's prices", stage: inCask, model: pricing, note: uncounted, from: []string{"grain", "energy", "water", "casks", "work"}, needs: priced, money: true,
		inputs: []source{pricesUsed},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Cost.Total, plan.Unit(a.p.Cost.Currency)) },
		work: func(a *asked) []Line {
			return []Line{adding("line by line", a.money(a.p.Cost.Total), a.p.Cost.Lines, func(_ int, l plan.CostLine) Term {
				return of(a.money(l.Cost), l.What+", "+a.u.Quantity(l.Amount))
			})}
		},
	},
	{
		name: "cost-per-proof-gallon", us: true, also: []string{"cost-per-pg", "perProofGallon", "cost-a-proof-gallon", "cost-a-proof-gal", "cost-a-pg"}, title: "cost of a proof gallon of hearts", stage: inCask, model: pricing, note: uncounted, from: []string{"cost", "proof-gallons"}, needs: priced, money: true,
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Cost.PerPG, plan.Unit(a.p.Cost.Currency)) },
		work: func(a *asked) []Line {
			c := a.p.Cost
			return []Line{work("by the proof gallon", Number{c.PerPG, c.Currency, plan.MoneyPlaces(c.Currency)}, of(a.money(a.p.Cost.Total), "in all"), over(Number{a.hearts().ProofGallons, "PG", 2}, "of hearts"))}
		},
	},
	{
		name: "cost-per-lpa", also: []string{"perLPA", "cost-a-litre-of-alcohol"}, title: "cost of a litre of pure alcohol in the hearts", stage: inCask, model: pricing, note: uncounted, from: []string{"cost", "pure-alcohol"}, needs: priced, money: true,
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Cost.PerLPA, plan.Unit(a.p.Cost.Currency)) },
		work: func(a *asked) []Line {
			c := a.p.Cost
			return []Line{work("by the litre", Number{c.PerLPA, c.Currency, plan.MoneyPlaces(c.Currency)}, of(a.money(a.p.Cost.Total), "in all"), over(Number{a.hearts().PureL, "LPA", 2}, "in the hearts"))}
		},
	},
	{
		name: "cost-per-bottle", also: []string{"cost-a-bottle", "perBottle", "bottle-cost"}, title: "cost of a bottle", stage: inCask, model: pricing, from: []string{"cost", "bottles"}, money: true,
		needs:  func(a *asked) bool { return priced(a) && a.p.Cost.PerBottle > 0 },
		inputs: []source{pricesUsed, at(recipe.PathRest)},
		note:   uncounted,
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Cost.PerBottle, plan.Unit(a.p.Cost.Currency)) },
		work: func(a *asked) []Line {
			c := a.p.Cost
			all, shared := a.money(c.Total+c.Carrying), a.money((c.Total+c.Carrying)/float64(a.p.Cask.Bottles))
			var lines []Line
			if c.Carrying > 0 {
				lines = append(lines,
					work("while it lies in wood", a.money(c.Carrying), of(a.money(c.Total), "in all"), times(percent(100*a.b.Costs.CarryingPerYear, 2), "a year"), times(Number{a.b.Cask.RestS / quantity.YearS, "years", 4}, "of rest"), fixed("/", 100, "", "")),
					work("with it", all, of(a.money(c.Total), "in all"), plus(a.money(c.Carrying), "")))
			}
			lines = append(lines, work("by the bottle", shared, of(all, ""), over(bare(float64(a.p.Cask.Bottles), 0), "bottles")))
			if c.EmptyBottle > 0 {
				lines = append(lines, work("with the bottle itself", a.money(c.PerBottle), of(shared, ""), plus(a.money(c.EmptyBottle), "")))
			}
			return lines
		},
	},
	{
		name: "hours", title: "hours in the cooker, the fermenter and the stills", stage: inCask, model: timing, from: []string{"mash", "ferment", "strip", "spirit"},
		amount: func(a *asked) plan.Quantity {
			p := a.p
			return plan.Of(p.Mash.Hours+p.Ferment.Hours+p.Strip.TotalHours+p.Spirit.TotalHours, plan.Hour)
		},
		work: func(a *asked) []Line {
			p := a.p
			all := p.Mash.Hours + p.Ferment.Hours + p.Strip.TotalHours + p.Spirit.TotalHours
			return []Line{work("together", hours(all), of(hours(p.Mash.Hours), "mash"), plus(hours(p.Ferment.Hours), "ferment"),
				plus(hours(p.Strip.TotalHours), "stripping run"), plus(hours(p.Spirit.TotalHours), "spirit run"))}
		},
	},
	{
		name: "work", also: []string{"people-hours", "peopleHours", "labour"}, title: "hours of people at work", stage: inCask, model: timing, from: []string{"mash", "strip", "spirit"},
		inputs: []source{at(recipe.PathCrew, recipe.PathShift, recipe.PathRates, recipe.PathFill)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Schedule.PeopleHours, plan.Hour) },
		work: func(a *asked) []Line {
			var stages []string
			by := map[string]float64{}
			for _, s := range a.p.Schedule.Steps {
				h := s.DurationMin / 60
				if s.Attend == plan.Start {
					h = min(h, 0.25)
				}
				if _, ok := by[s.Stage]; !ok {
					stages = append(stages, s.Stage)
				}
				by[s.Stage] += h * float64(s.People)
			}
			return []Line{adding("stage by stage", hours(a.p.Schedule.PeopleHours), stages, func(_ int, s string) Term { return of(hours(by[s]), s) })}
		},
	},
	{
		name: "elapsed", given: true, also: []string{"elapsedHours"}, title: "from the start to the last cask filled", stage: inCask, model: timing, from: []string{"hours"},
		inputs: []source{at(recipe.PathStart, recipe.PathShift)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Schedule.ElapsedHours, plan.Hour) },
		note:   func(*asked) string { return "with the nights and days off between the steps" },
		work: func(a *asked) []Line {
			return []Line{work("in days", Number{a.p.Schedule.ElapsedHours / 24, "d", 2}, of(hours(a.p.Schedule.ElapsedHours), ""), fixed("/", 24, "h", "a day"))}
		},
	},
	{
		name: "boil", also: []string{"boiling-point", "waterBoilsC"}, title: "where water boils here", stage: inGrain, model: airPressure, inputs: []source{at(recipe.PathElevation)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Plant.WaterBoilsC, plan.Celsius) },
		work: func(a *asked) []Line {
			h := a.p.Plant
			height := Number{h.ElevationM, "m", 0}
			pressure := func(x []float64) float64 { return fluid.PressureAtElevation(x[0]) / 1000 }
			if a.us() {
				height = Number{h.ElevationM / 0.3048, "ft", 0}
				pressure = func(x []float64) float64 { return fluid.PressureAtElevation(x[0]*0.3048) / 1000 }
			}
			kPa := Number{h.PressureKPa, "kPa", 2}
			return []Line{
				look("air pressure", "U.S. Standard Atmosphere 1976", kPa, pressure, of(height, "above the sea")),
				look("boiling point", "IAPWS SR1-86", a.number(plan.Of(h.WaterBoilsC, plan.Celsius)),
					func(x []float64) float64 {
						v, _ := a.u.Value(plan.Of(fluid.WaterBoilC(1000*x[0]), plan.Celsius))
						return v
					}, of(kPa, "")),
			}
		},
	},
}

const (
	glucosePerStarch = 180.156 / 162.140
	ethanolKgPerL    = 0.78924

	pgPerBushel plan.Unit = "PG" + measure.PerBushel
	lpaPerTonne           = plan.PurePerT
)

// priced reports whether the house states prices.
func priced(a *asked) bool { return a.p.Cost != nil }

func (a *asked) workYield(l plan.Lot, perBushel, perTonne float64) []Line {
	if !a.us() {
		return a.workPerTonne(l.PureL, perTonne)
	}
	bushels := Number{a.p.Bill.Bushels, "bu", 2}
	return append([]Line{
		work("distiller's bushels", bushels, of(a.mass(a.b.Bill.TotalKg), "grain"), fixed("/", 56, "lb", "")),
		work("by the bushel", Number{perBushel, string(pgPerBushel), 2}, of(a.pure(l), "in the hearts"), over(bushels, "")),
	}, a.workPerTonne(l.PureL, perTonne)...)
}

func (a *asked) workPerTonne(litres, perTonne float64) []Line {
	return []Line{work("by the tonne", Number{perTonne, "LPA/t", 1}, of(Number{litres, "LPA", 1}, ""), over(Number{a.b.Bill.TotalKg / 1000, "t", 4}, "grain"))}
}

// money is an amount in the house's currency.
func (a *asked) money(amount float64) Number {
	return Number{amount, a.p.Cost.Currency, plan.MoneyPlaces(a.p.Cost.Currency)}
}

// uncounted names what has no price, and so counts as nothing in a cost.
func uncounted(a *asked) string {
	if len(a.p.Cost.Unpriced) == 0 {
		return ""
	}
	return "no price is stated for " + words.And(a.p.Cost.Unpriced) + ", counted as nothing"
}
