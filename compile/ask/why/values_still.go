package why

import (
	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/plan"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// Of the stripping run and the spirit run.
var stillValues = []value{
	{
		name: "low-wines", also: []string{"lowWinesVolumeL"}, title: "what the stripping run gives", stage: inStrip, model: distilling, from: []string{"alcohol", "pot-ale", "low-wines-abv"},
		inputs: []source{at(recipe.PathStripStop, recipe.PathStripCharges), vesselFigure("wash-still", "reflux"), at(recipe.PathElevation)},
		amount: func(a *asked) plan.Quantity { return a.lowWines().Volume() },
		note:   func(a *asked) string { return "at " + a.u.Strength(a.lowWines().Strength()) },
		work: func(a *asked) []Line {
			low, ale := a.lowWines(), a.p.Strip.Residue
			return []Line{
				work("alcohol that comes over", a.pure(low), of(a.pure(a.p.Ferment.Wash), "in the wash"), minus(a.pure(ale), "left in the pot ale")),
				a.workToVolume(low),
			}
		},
	},
	{
		name: "low-wines-abv", also: []string{"lowWinesAbvPct", "low-wines-strength", "low-wines-proof"}, title: "strength of the low wines", stage: inStrip, model: distilling,
		from: []string{"wash-abv", "low-wines-water"}, inputs: []source{at(recipe.PathStripStop), vesselFigure("wash-still", "reflux"), at(recipe.PathElevation)},
		amount: func(a *asked) plan.Quantity { return a.lowWines().Strength().At() },
		work:   func(a *asked) []Line { return a.workStrength(a.p.Stream(plan.StreamLow), a.lowWines().Strength()) },
	},
	{
		name: "low-wines-water", given: true, title: "water that comes over with the low wines", stage: inStrip, model: distilling, from: []string{"wash-abv"},
		inputs: []source{at(recipe.PathStripStop), vesselFigure("wash-still", "reflux"), at(recipe.PathElevation)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Stream(plan.StreamLow).WaterKg, plan.Kilogram) },
		work:   func(a *asked) []Line { return a.readRun(a.p.Strip) },
	},
	{
		name: "pot-ale", inUS: "stillage", also: []string{"stillage", "alcohol-left"}, title: "alcohol left in the pot ale", stage: inStrip, model: distilling, from: []string{"alcohol"},
		inputs: []source{at(recipe.PathStripStop), vesselFigure("wash-still", "reflux"), at(recipe.PathElevation)},
		amount: func(a *asked) plan.Quantity { return a.pureQuantity(a.p.Strip.Residue) },
		work: func(a *asked) []Line {
			ale := a.p.Strip.Residue
			return []Line{
				work("left", a.pure(ale), of(a.pure(a.p.Ferment.Wash), "in the wash"), minus(a.pure(a.lowWines()), "in the low wines")),
				work("of the alcohol in the wash", percent(100*ale.PureL/a.p.Ferment.PureL, 2), of(a.pure(ale), "left"), over(a.pure(a.p.Ferment.Wash), "in the wash")),
			}
		},
	},
	runHours("strip", []string{"stripHours", "strip-hours", "stripping-run", "wash-run"}, []string{"wash", "low-wines"}, at(recipe.PathBoiler, recipe.PathHeatUp, recipe.PathStripStop, recipe.PathStripPace, recipe.PathStripCharges)),
	runHeat("strip"), runWater("strip"),
	{
		name: "charge", also: []string{"spirit-charge"}, title: "charge of the spirit still", stage: inSpirit, model: steadying, from: []string{"low-wines", "feints"},
		inputs: []source{at(recipe.PathCharge, recipe.PathFeints, recipe.PathSpiritCharges)},
		amount: func(a *asked) plan.Quantity { return a.charge().Volume() },
		note:   func(a *asked) string { return "at " + a.u.Strength(a.charge().Strength()) },
		work: func(a *asked) []Line {
			c, low, back := a.charge(), a.lowWines(), a.feintsReturned()
			alcohol, mass := []Term{of(a.pure(low), "low wines")}, []Term{of(a.mass(low.MassKg), "low wines")}
			if back.MassKg > 0 {
				alcohol = append(alcohol, plus(a.pure(back), "feints returned"))
				mass = append(mass, plus(a.mass(back.MassKg), "feints returned"))
			}
			if kg := a.p.Stream(plan.StreamCut).MassKg; kg > 0 {
				mass = append(mass, plus(a.mass(kg), "water"))
			}
			return append([]Line{
				work("alcohol", a.pure(c), alcohol...),
				work("weight", a.mass(c.MassKg), mass...),
			}, append(a.workStrength(a.p.Stream(plan.StreamCharge), c.Strength()), a.workToVolume(c))...)
		},
	},
	{
		name: "hearts", also: []string{"heartsVolumeL"}, title: "the spirit that is kept, between its two cuts", stage: inSpirit, model: distilling, from: []string{"charge", "hearts-share", "proof"},
		inputs: []source{at(recipe.PathForeshots, recipe.PathHearts, recipe.PathSpiritStop, recipe.PathCharge), vesselFigure("spirit-still", "reflux"), at(recipe.PathElevation)},
		amount: func(a *asked) plan.Quantity { return a.hearts().Lot.Volume() },
		note: func(a *asked) string {
			return "at " + a.u.Strength(a.hearts().Lot.Strength()) + ", " + a.pure(a.hearts().Lot).to(1).Text()
		},
		work: func(a *asked) []Line { return []Line{a.workShare("hearts"), a.workToVolume(a.hearts().Lot)} },
	},
	{
		name: "hearts-share", given: true, title: "hearts, of the alcohol in the charge", stage: inSpirit, model: distilling, from: []string{"charge"},
		inputs: []source{at(recipe.PathForeshots, recipe.PathHearts, recipe.PathSpiritStop), vesselFigure("spirit-still", "reflux"), at(recipe.PathElevation)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.hearts().PureShare, plan.Percent) },
		work: func(a *asked) []Line {
			parts := []Term{}
			left := 100.0
			for _, f := range a.p.Spirit.Fractions {
				parts = append(parts, of(percent(f.PureShare, 1), f.Name))
				left -= f.PureShare
			}
			parts = append(parts, of(percent(left, 2), "left in the lees"))
			h := a.hearts()
			return append([]Line{
				work("all of the charge", percent(100, 1), sum(parts)...),
				reads("at the spout", Reading{"hearts begin", a.spout(h.Begins)}, Reading{"end", a.spout(h.Ends)}),
			}, a.readRun(a.p.Spirit)...)
		},
	},
	{
		name: "proof", si: "hearts-abv", also: []string{"heartsAbvPct", "hearts-abv", "hearts-proof", "hearts-strength"}, title: "strength of the hearts", stage: inSpirit, model: distilling,
		from: []string{"charge"}, inputs: []source{at(recipe.PathHearts, recipe.PathForeshots), vesselFigure("spirit-still", "reflux"), at(recipe.PathElevation)},
		amount: func(a *asked) plan.Quantity { return a.hearts().Lot.Strength().At() },
		work: func(a *asked) []Line {
			return append(a.workStrength(a.p.Stream(plan.StreamHearts), a.hearts().Lot.Strength()), a.readRun(a.p.Spirit)...)
		},
	},
	{
		name: "proof-gallons", us: true, also: []string{"heartsProofGallons"}, title: "proof gallons of hearts", stage: inSpirit, model: gauging, from: []string{"hearts", "proof"},
		inputs: []source{at(recipe.PathHearts)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.hearts().ProofGallons, plan.ProofGallon) },
		work: func(a *asked) []Line {
			h := a.hearts()
			return []Line{work("gallons by proof, at 60 F", Number{h.ProofGallons, "PG", 1}, of(Number{h.WineGallons, "gal", 2}, ""), times(Number{h.Proof, "proof", 1}, ""), perHundred("/"))}
		},
	},
	{
		name: "pure-alcohol", also: []string{"pureAlcoholL", "lpa"}, title: "pure alcohol in the hearts, at 20 C", stage: inSpirit, model: gauging, from: []string{"hearts", "proof"},
		inputs: []source{at(recipe.PathHearts)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.hearts().PureL, plan.PureLitre) },
		work: func(a *asked) []Line {
			h := a.hearts()
			return []Line{work("litres by strength, at 20 C", Number{h.PureL, "LPA", 1}, of(Number{h.VolumeL, "L", 1}, ""), times(Number{h.AbvPct, "% vol", 2}, ""), perHundred("/"))}
		},
	},
	fractionValue("foreshots", "the first of the run: set aside and never drunk", at(recipe.PathForeshots)),
	fractionValue("heads", "between foreshots and hearts, to the feints", at(recipe.PathHearts, recipe.PathForeshots)),
	fractionValue("tails", "after the hearts, to the feints", at(recipe.PathHearts, recipe.PathSpiritStop)),
	{
		name: "feints", also: []string{"feintsVolumeL"}, title: "heads and tails, which go into the next charge", stage: inSpirit, model: steadying, from: []string{"heads", "tails", "feints-abv"},
		inputs: []source{at(recipe.PathHearts, recipe.PathSpiritStop, recipe.PathCharge, recipe.PathFeints)},
		amount: func(a *asked) plan.Quantity { return a.feints().Volume() },
		note:   func(a *asked) string { return "at " + a.u.Strength(a.feints().Strength()) },
		work: func(a *asked) []Line {
			f := a.feints()
			heads, tails := fraction(a.p.Spirit, plan.StreamHeads).Lot, fraction(a.p.Spirit, plan.StreamTails).Lot
			return []Line{work("alcohol", a.pure(f), of(a.pure(heads), "heads"), plus(a.pure(tails), "tails")), a.workToVolume(f)}
		},
	},
	{
		name: "feints-abv", also: []string{"feintsAbvPct", "feints-strength", "feints-proof"}, title: "strength of the feints", stage: inSpirit, model: steadying, from: []string{"heads", "tails"},
		inputs: []source{at(recipe.PathHearts, recipe.PathSpiritStop)},
		amount: func(a *asked) plan.Quantity { return a.feints().Strength().At() },
		work: func(a *asked) []Line {
			heads, tails := a.p.Stream(plan.StreamHeads), a.p.Stream(plan.StreamTails)
			both := plan.Stream{EthanolKg: heads.EthanolKg + tails.EthanolKg, WaterKg: heads.WaterKg + tails.WaterKg}
			return append([]Line{
				work("alcohol by weight", a.mass(both.EthanolKg), of(a.mass(heads.EthanolKg), "heads"), plus(a.mass(tails.EthanolKg), "tails")),
				work("water", a.mass(both.WaterKg), of(a.mass(heads.WaterKg), "heads"), plus(a.mass(tails.WaterKg), "tails")),
			}, a.workStrength(both, a.feints().Strength())...)
		},
	},
	{
		name: "lees", inUS: "spirit-stillage", also: []string{"spirit-stillage", "spent-lees"}, title: "alcohol left in the spent lees", stage: inSpirit, model: distilling, from: []string{"charge"}, inputs: []source{at(recipe.PathSpiritStop)},
		amount: func(a *asked) plan.Quantity { return a.pureQuantity(a.p.Spirit.Residue) },
		work: func(a *asked) []Line {
			all := []Term{of(a.pure(a.charge()), "in the charge")}
			for _, f := range a.p.Spirit.Fractions {
				all = append(all, minus(a.pure(f.Lot), f.Name))
			}
			return []Line{work("left", a.pure(a.p.Spirit.Residue), all...), work("of the charge", percent(100*a.p.Spirit.Residue.PureL/a.charge().PureL, 2), of(a.pure(a.p.Spirit.Residue), "left"), over(a.pure(a.charge()), "in the charge"))}
		},
	},
	runHours("spirit", []string{"spiritHours", "spirit-hours", "spirit-run"}, []string{"charge"}, at(recipe.PathBoiler, recipe.PathSpiritStop, recipe.PathPaceForeshots, recipe.PathPaceHeads, recipe.PathPaceHearts, recipe.PathPaceTails, recipe.PathSpiritCharges)),
	runHeat("spirit"), runWater("spirit"),
}

// runs are the two runs of the stills: what a row says of each.
var runs = map[string]struct {
	title, still string
	stage        stage
	of           func(*asked) (plan.Run, *recipe.Vessel)
}{
	"strip":  {"the stripping run", "wash-still", inStrip, func(a *asked) (plan.Run, *recipe.Vessel) { return a.p.Strip, a.b.Strip.Still }},
	"spirit": {"the spirit run", "spirit-still", inSpirit, func(a *asked) (plan.Run, *recipe.Vessel) { return a.p.Spirit, a.b.Spirit.Still }},
}

// runHours, runHeat and runWater are the rows of a run's time, heat and condenser water.
func runHours(run string, also, from []string, inputs source) value {
	r := runs[run]
	return value{
		name: run, also: also, title: "time of " + r.title, stage: r.stage, model: boiling, from: from,
		inputs: []source{vesselFigure(r.still, "heats", "metal", "loses", "heated", "preheater", "reflux"), inputs},
		amount: func(a *asked) plan.Quantity { run, _ := r.of(a); return plan.Of(run.TotalHours, plan.Hour) },
		work: func(a *asked) []Line {
			run, _ := r.of(a)
			each := minutes(60 * run.Hours)
			lines := []Line{work("one charge", each, of(minutes(run.HeatUpMin), "to the first drop"), plus(minutes(60*run.Hours-run.HeatUpMin), "running"))}
			if h := run.Preheat; h != nil && h.Charges < run.Charges {
				all := minutes(60 * run.TotalHours)
				return append(lines,
					work("all charges", all, of(each, "each"), fixed("x", float64(run.Charges), "", "charges"), plus(minutes(60*(run.TotalHours-float64(run.Charges)*run.Hours)), "the first, which goes in cold")),
					work("in hours", hours(run.TotalHours), of(all, ""), fixed("/", 60, "", "")))
			}
			if run.Charges > 1 {
				return append(lines, work("all charges", hours(run.TotalHours), of(each, "each"), fixed("x", float64(run.Charges), "", "charges"), fixed("/", 60, "", "")))
			}
			return append(lines, work("in hours", hours(run.TotalHours), of(each, ""), fixed("/", 60, "", "")))
		},
	}
}

func runHeat(run string) value {
	r := runs[run]
	return value{
		name: run + "-heat", title: "heat of " + r.title, stage: r.stage, model: boiling, from: []string{run}, inputs: []source{vesselFigure(r.still, "heats", "preheater"), at(recipe.PathBoiler)},
		amount: func(a *asked) plan.Quantity { run, _ := r.of(a); return plan.Of(run.HeatKWh, plan.KilowattH) },
		work: func(a *asked) []Line {
			run, _ := r.of(a)
			if run.TotalHours == 0 {
				return nil
			}
			return []Line{work("power by time", kWh(run.HeatKWh), of(Number{run.HeatKWh / run.TotalHours, "kW", 1}, "on the average"), times(hours(run.TotalHours), ""))}
		},
	}
}

// runWater is the heat that the condenser's water takes, over what a litre of it takes as
// it warms.
func runWater(run string) value {
	r := runs[run]
	return value{
		name: run + "-water", title: "condenser water of " + r.title, stage: r.stage, model: condensing, from: []string{run + "-heat"}, inputs: []source{vesselFigure(r.still, "condenser"), at(recipe.PathWater)},
		amount: func(a *asked) plan.Quantity { run, _ := r.of(a); return plan.Of(run.CoolingWaterL, plan.Litre) },
		work: func(a *asked) []Line {
			run, v := r.of(a)
			in := a.b.SupplyC()
			out := in + still.Setting{Still: *v, WaterC: in}.CoolingRiseK()
			perLitre := fluid.WaterHeatCapacity((in+out)/2) * (out - in) * fluid.WaterDensity(in) / lot.JoulesPerKWh / lot.LitresPerM3
			per := a.either(Number{perLitre / a.litres(1).Value, "kWh/gal", 5}, Number{perLitre, "kWh/L", 5})
			return []Line{work("water from "+a.temp(in)+" to "+a.temp(out), a.litres(run.CoolingWaterL), of(kWh(run.CoolKWh), "at the condenser"), over(per, ""))}
		},
	}
}

// fractionValue is the row of a fraction that is no hearts.
func fractionValue(name, title string, inputs ...source) value {
	return value{
		name: name, title: title, stage: inSpirit, model: distilling, from: []string{"charge"},
		inputs: append(inputs, vesselFigure("spirit-still", "reflux"), at(recipe.PathElevation)),
		amount: func(a *asked) plan.Quantity { return fraction(a.p.Spirit, name).Lot.Volume() },
		note: func(a *asked) string {
			if l := fraction(a.p.Spirit, name).Lot; l.VolumeL > 0 {
				return "at " + a.u.Strength(l.Strength())
			}
			return "none"
		},
		work: func(a *asked) []Line {
			l := fraction(a.p.Spirit, name).Lot
			if l.VolumeL == 0 {
				return nil
			}
			return []Line{a.workShare(name), a.workToVolume(l)}
		},
	}
}

func (a *asked) feints() plan.Lot {
	if f := a.p.Spirit.Feints; f != nil {
		return *f
	}
	return plan.Lot{}
}

// workShare is a fraction's alcohol as a share of the charge's.
func (a *asked) workShare(name string) Line {
	f := fraction(a.p.Spirit, name)
	return work("alcohol in the "+name, a.pure(f.Lot), of(a.pure(a.charge()), "in the charge"), times(percent(f.PureShare, 1), "of it comes over as "+name))
}

// workToVolume goes from alcohol and strength to volume.
func (a inUnits) workToVolume(l plan.Lot) Line {
	at := "volume at 20 C"
	if a.us() {
		at = "volume at 60 F"
	}
	return work(at, a.volume(l), of(a.pure(l), "alcohol"), over(a.strength(l.Strength()), ""), perHundred("x"))
}

// workStrength goes from masses to a strength.
func (a inUnits) workStrength(s plan.Stream, strength plan.Strength) []Line {
	all := s.EthanolKg + s.WaterKg
	if all == 0 {
		return nil
	}
	w := 100 * s.EthanolKg / all
	read := func(x []float64) float64 { return 100 * fluid.ABVFromMassFrac(x[0]/100) }
	if a.us() {
		read = func(x []float64) float64 { return fluid.ProofFromMassFrac(x[0] / 100) }
	}
	return []Line{
		work("alcohol and water", a.mass(all), of(a.mass(s.EthanolKg), "alcohol"), plus(a.mass(s.WaterKg), "water")),
		work("alcohol by weight", percent(w, 2), of(a.mass(s.EthanolKg), "alcohol"), over(a.mass(all), "")),
		look("by volume", "OIML R 22", a.strength(strength), read, of(percent(w, 2), "by weight")),
	}
}

// readRun reads pot, vapour and spout along a run.
func (a inUnits) readRun(r plan.Run) []Line {
	var pot, spout, vapour []Reading
	n := len(r.Curve)
	const most = 7
	for i := range min(n, most) {
		p := r.Curve[i*(n-1)/max(min(n, most)-1, 1)]
		at := minutes(p.Min).to(0).Text()
		pot = append(pot, Reading{at, Number{plan.RoundTo(p.PotAbvPct, 1), "", 1}})
		spout = append(spout, Reading{at, a.spout(plan.Strength{AbvPct: p.AbvPct, Proof: p.Proof})})
		t := a.number(plan.Of(p.VapourC, plan.Celsius))
		vapour = append(vapour, Reading{at, Number{plan.RoundTo(t.Value, 1), t.Unit, 1}})
	}
	if n == 0 {
		return nil
	}
	return []Line{reads("pot, % vol at 20 C, from the fire", pot...), reads("spout", spout...), reads("vapour", vapour...)}
}
