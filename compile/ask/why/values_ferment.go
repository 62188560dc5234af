package why

import (
	"strconv"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/starch"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// What stoichiometry gives, by mass (package ferment holds the same figures).
const (
	ethanolPerGlucosePct = 100 * 2 * 46.069 / 180.156
	co2PerEthanol        = 44.009 / 46.069
	glucosePerMaltose    = starch.PerGlucose / starch.PerMaltose
	glucosePerTriose     = starch.PerGlucose / starch.PerMaltotriose
	gasLitresPerMole     = 24.055 // at 20 C and 101.325 kPa
	co2GramsPerMole      = 44.0095
)

// Of the ferment.
var fermentValues = []value{
	{
		name: "sugar-fermented", also: []string{"sugar-taken"}, title: "sugar that the yeast took, as glucose", stage: inFerment, model: fermentTime,
		from: []string{"wort-sugar"}, inputs: []source{at(recipe.PathFermentFor, recipe.PathPitch, recipe.PathHold), doseLines, yeastFigure("ethanol-limit", "maltotriose"), constant("mash", "limit-on-branch")},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Ferment.Account.SugarTakenKg, plan.Kilogram) },
		work:   workSugarFermented,
	},
	{
		name: "alcohol", also: []string{"wash-alcohol"}, title: "alcohol in the wash", stage: inFerment, model: fermenting,
		from: []string{"sugar-fermented"}, inputs: []source{yeastFigure("ethanol-yield", "yield-biomass"), constant("ferment", "biomass-most", "glycerol-per-biomass")},
		amount: func(a *asked) plan.Quantity { return a.pureQuantity(a.p.Ferment.Wash) },
		work:   workAlcohol,
	},
	{
		name: "wash", also: []string{"washVolumeL", "wash-volume"}, title: "what the ferment gives", stage: inFerment, model: wortVolume,
		from: []string{"wort", "alcohol"}, inputs: []source{stepLines("water", "backset"), at(recipe.PathBill)},
		amount: func(a *asked) plan.Quantity { return a.p.Ferment.Wash.Volume() },
		note: func(a *asked) string {
			return "grain and yeast in it; at " + a.u.LotAbv(a.p.Ferment.Wash)
		},
		work: func(a *asked) []Line {
			wash := a.p.Ferment.Wash
			if a.us() {
				return a.workVolume(a.p.Stream(plan.StreamWash), fluid.SixtyF, 1000*wash.WineGallons*fluid.USGallonM3)
			}
			return a.workVolume(a.p.Stream(plan.StreamWash), 20, wash.VolumeL)
		},
	},
	{
		name: "wash-abv", also: []string{"washAbvPct", "wash-strength"}, title: "strength of the wash, of the whole", stage: inFerment, model: wortVolume,
		from: []string{"alcohol", "wash"}, inputs: []source{at(recipe.PathFermentFor, recipe.PathPitch)},
		amount: func(a *asked) plan.Quantity {
			return plan.Quantity{Value: a.p.Ferment.AbvPct, Unit: plan.AbvPct, Abv60F: a.p.Ferment.Wash.Proof / 2}
		},
		note: func(a *asked) string {
			return "strained it is " + a.u.StrengthAbv(a.p.Ferment.Liquid) + ": what is not dissolved takes room and holds no alcohol"
		},
		work: func(a *asked) []Line {
			wash := a.p.Ferment.Wash
			if a.us() {
				return []Line{work("by volume at 60 F: a proof gallon is half a gallon of alcohol", percent(wash.Proof/2, 2), of(a.pure(wash), "alcohol"), fixed("/", 2, "", ""), over(a.volume(wash), "wash"))}
			}
			return []Line{work("by volume at 20 C", percent(wash.AbvPct, 2), of(a.pure(wash), "alcohol"), over(a.volume(wash), "wash"))}
		},
	},
	{
		name: "final-gravity", also: []string{"finalGravitySG", "fg"}, title: "final gravity", stage: inFerment, model: wortVolume,
		from: []string{"original-gravity", "sugar-fermented", "alcohol"}, inputs: []source{at(recipe.PathFermentFor), doseLines, constant("mash", "limit-on-branch"), backsetFigure(recipe.PathBacksetSolids)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Ferment.FinalGravitySG, plan.SG) },
		note:   func(*asked) string { return "as the hydrometer reads it, with the alcohol and the backset's solids" },
		work:   workFinalGravity,
	},
	{
		name: "attenuation", also: []string{"attenuationPct"}, title: "apparent attenuation", stage: inFerment, model: gravityTable, from: []string{"original-gravity", "final-gravity"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Ferment.AttenuationPct, plan.Percent) },
		note:   func(*asked) string { return "without the backset's solids" },
		work:   workAttenuation,
	},
	{
		name: "pitch", title: "yeast to pitch", stage: inFerment, model: written, from: []string{"wort"}, inputs: []source{at(recipe.PathPitch), yeastFigure("pitch")},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Ferment.PitchKg, plan.Kilogram) },
		work: func(a *asked) []Line {
			kg := a.p.Ferment.PitchKg
			grams := work("by the litre of wort", Number{1000 * kg, "g", 0}, of(Number{a.p.Ferment.PitchGPerL, "g/L", 2}, ""), times(Number{a.p.Mash.VolumeL, "L", 1}, "of wort"))
			if !a.us() {
				return []Line{grams, work("in kilograms", Number{kg, "kg", 3}, of(Number{1000 * kg, "g", 0}, ""), fixed("/", 1000, "g/kg", ""))}
			}
			return []Line{grams, work("in pounds", Number{kg / fluid.PoundKg, "lb", 2}, of(Number{1000 * kg, "g", 0}, ""), fixed("/", 453.59237, "g/lb", ""))}
		},
	},
	{
		name: "dry", given: true, also: []string{"dry-hours", "dryHours"}, title: "time until the wash is dry", stage: inFerment, model: fermentTime,
		from: []string{"wort-sugar", "pitch", "peak"}, inputs: []source{at(recipe.PathPitch, recipe.PathHold, recipe.PathFermentFor), yeastFigure("growth", "ethanol-limit", "lag"),
			constant("ferment", "resting-rate", "biomass-most")},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Ferment.DryHours, plan.Hour) },
		note: func(a *asked) string {
			if a.p.Ferment.DryHours == 0 {
				return "it is not dry in the time that it is given"
			}
			return "when 98 % of the sugar is gone; good to about a quarter"
		},
		work: func(a *asked) []Line {
			return []Line{
				reads("gravity on the way", a.readFerment(func(p plan.FermentPoint) Number { return Number{p.SG, "", 3} })...),
				reads("yeast alive, g/L", a.readFerment(func(p plan.FermentPoint) Number { return Number{p.YeastGPerL, "", 1} })...),
			}
		},
	},
	{
		name: "ferment", also: []string{"fermentHours", "ferment-hours"}, title: "time in the fermenter", stage: inFerment, model: written, inputs: []source{at(recipe.PathFermentFor)},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Ferment.Hours, plan.Hour) },
		note:   func(*asked) string { return "until the still is charged" },
		work: func(a *asked) []Line {
			f := a.p.Ferment
			return []Line{work("as asked, and while it stands", hours(f.Hours), of(hours(f.AskedHours), "asked for"), plus(hours(f.Hours-f.AskedHours), "until somebody lights the still"))}
		},
	},
	{
		name: "co2", also: []string{"carbon-dioxide", "co2Kg"}, title: "carbon dioxide", stage: inFerment, model: fermenting, from: []string{"alcohol"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Ferment.CO2Kg, plan.Kilogram) },
		note:   func(*asked) string { return "it fills low places and kills: keep the room aired" },
		work: func(a *asked) []Line {
			c, made := a.p.Ferment.Account, a.ethanolMade()
			from := made * co2PerEthanol
			gas := a.number(plan.Of(a.p.Ferment.CO2M3, plan.CubicMetre))
			gas.Places = 1
			perM3 := Number{co2GramsPerMole / gasLitresPerMole, "kg/m3", 4}
			if a.us() {
				perM3 = Number{co2GramsPerMole / gasLitresPerMole / fluid.PoundKg * 0.3048 * 0.3048 * 0.3048, "lb/cu ft", 4}
			}
			return []Line{
				work("with the alcohol", a.mass(from), of(a.mass(made), "alcohol made"), times(bare(co2PerEthanol, 4), "(44.009 / 46.069)")),
				work("in all", a.mass(c.CO2Kg), of(a.mass(from), "with the alcohol"), plus(a.mass(c.CO2Kg-from), "of the yeast's growth")),
				work("as gas at "+a.twentyC()+", sea level", gas, of(a.mass(c.CO2Kg), ""), over(perM3, "")),
			}
		},
	},
	{
		name: "peak", given: true, also: []string{"warmest", "peakC"}, title: "warmest of the ferment", stage: inFerment, model: fermentHeat, from: []string{"sugar-fermented"},
		inputs: []source{at(recipe.PathHold), vesselFigure("fermenter", "cools", "holds"), at(recipe.PathAmbient, recipe.PathWater), constant("ferment", "heat-glucose", "wall-loss")},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Ferment.PeakC, plan.Celsius) },
		work: func(a *asked) []Line {
			heat := a.b.Models["ferment"].Values["heat-glucose"] / 1000
			total := a.p.Ferment.Account.SugarTakenKg * heat / 3600
			return []Line{
				work("heat of all the sugar", kWh(total), of(Number{a.p.Ferment.Account.SugarTakenKg, "kg", 1}, "sugar fermented"), times(Number{heat, "kJ/kg", 0}, ""),
					fixed("/", 3600, "kJ/kWh", "")),
				work("of which the cooling takes", percent(100*a.p.Ferment.CoolKWh/total, 0), of(kWh(a.p.Ferment.CoolKWh), "cooling"), over(kWh(total), "")),
				reads("temperature on the way", a.readFerment(func(p plan.FermentPoint) Number { return a.number(plan.Of(p.TempC, plan.Celsius)).to(0) })...),
			}
		},
	},
	{
		name: "ferment-ph", given: true, also: []string{"wash-ph"}, title: "pH of the wash", stage: inFerment, model: souring, from: []string{"ph"},
		inputs: []source{at(recipe.PathFermentFor, recipe.PathHold), constant("ferment", "lactic-growth", "lactic-most", "buffer")},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Ferment.PH, plan.PH) },
		work: func(a *asked) []Line {
			s := a.p.Stream(plan.StreamWash)
			litres := 1000 * liquidM3(s, 20)
			return []Line{
				work("lactic acid", Number{1000 * s.AcidKg / litres, "g/L", 2}, of(Number{1000 * s.AcidKg, "g", 0}, "acid"), over(Number{litres, "L", 0}, "liquid")),
				reads("pH on the way", a.readFerment(func(p plan.FermentPoint) Number { return Number{p.PH, "", 2} })...),
			}
		},
	},
}

// pureQuantity is alcohol in the reader's count.
func (a inUnits) pureQuantity(l plan.Lot) plan.Quantity {
	if a.us() {
		return plan.Of(l.ProofGallons, plan.ProofGallon)
	}
	return plan.Of(l.PureL, plan.PureLitre)
}

// ethanolMade counts what left with the gas.
func (a *asked) ethanolMade() float64 {
	return a.p.Stream(plan.StreamWash).EthanolKg + a.p.Ferment.Account.VentEthanolKg
}

// readFerment reads the ferment's curve at start and end, and in between at
// seven times at most.
func (a *asked) readFerment(what func(plan.FermentPoint) Number) []Reading {
	var out []Reading
	curve := a.p.Ferment.Curve
	if len(curve) == 0 {
		return nil
	}
	last := curve[len(curve)-1].Hour
	every := 12.0
	for last/every > 8 {
		every *= 2
	}
	next := 0.0
	for i, p := range curve {
		if p.Hour >= next-1e-9 || i == len(curve)-1 {
			out = append(out, Reading{strconv.Itoa(int(p.Hour+0.5)) + " h", what(p)})
			next += every
		}
	}
	for i := range out {
		out[i].Value = out[i].shown()
	}
	return out
}

func workSugarFermented(a *asked) []Line {
	wort, wash, taken := a.p.Stream(plan.StreamWort), a.p.Stream(plan.StreamWash), a.p.Ferment.Account.SugarTakenKg
	glucose := func(s plan.Stream) float64 {
		return s.GlucoseKg + s.MaltoseKg*glucosePerMaltose + s.MaltotrioseKg*glucosePerTriose
	}
	in, left := glucose(wort), glucose(wash)
	maltose, triose := wort.MaltoseKg*glucosePerMaltose, wort.MaltotrioseKg*glucosePerTriose
	return []Line{
		work("maltose as glucose", a.mass(maltose), of(a.mass(wort.MaltoseKg), "maltose"), times(bare(glucosePerMaltose, 4), "")),
		work("maltotriose as glucose", a.mass(triose), of(a.mass(wort.MaltotrioseKg), "maltotriose"), times(bare(glucosePerTriose, 4), "")),
		work("in the wort", a.mass(in), of(a.mass(wort.GlucoseKg), "glucose"), plus(a.mass(maltose), "maltose"), plus(a.mass(triose), "maltotriose")),
		work("taken", a.mass(taken), of(a.mass(in), "in the wort"), plus(a.mass(taken+left-in), "split off dextrins in the fermenter"), minus(a.mass(left), "left")),
	}
}

func workAlcohol(a *asked) []Line {
	c, s, made := a.p.Ferment.Account, a.p.Stream(plan.StreamWash), a.ethanolMade()
	lines := []Line{
		work("made", a.mass(made), of(a.mass(c.SugarTakenKg), "sugar fermented"), times(percent(ethanolPerGlucosePct, 2), "Gay-Lussac"),
			times(percent(c.EthanolYieldPct, 2), "of that: the rest is yeast, glycerol and the like")),
		work("in the wash", a.mass(s.EthanolKg), of(a.mass(made), "made"), minus(a.mass(c.VentEthanolKg), "gone with the gas")),
	}
	if a.us() {
		return append(lines, work("in proof gallons: two to a gallon at 60 F", a.pure(a.p.Ferment.Wash), of(a.mass(s.EthanolKg), ""),
			over(a.density(fluid.Density(1, fluid.SixtyF)), "(OIML R 22)"), fixed("x", 2, "", "")))
	}
	return append(lines, work("in litres at 20 C", a.pure(a.p.Ferment.Wash), of(a.mass(s.EthanolKg), ""), over(a.density(fluid.Density(1, 20)), "(OIML R 22)")))
}

func workFinalGravity(a *asked) []Line {
	s := a.p.Stream(plan.StreamWash)
	spirit, solids := s.EthanolKg+s.WaterKg, s.DissolvedKg()
	w := s.EthanolKg / spirit
	rho := fluid.Density(w, 20)
	volume := 1000 * s.LiquidKg() / (a.p.Ferment.FinalGravitySG * fluid.WaterDensity(20))
	spiritL := 1000 * spirit / rho
	return []Line{
		work("alcohol, by weight of alcohol and water", percent(100*w, 2), of(a.mass(s.EthanolKg), "alcohol"), over(a.mass(spirit), "alcohol and water")),
		look("their density at 20 C", "OIML R 22", a.density(rho), func(x []float64) float64 { return a.density(fluid.Density(x[0]/100, 20)).Value },
			of(percent(100*w, 2), "by weight")),
		work("their volume", a.litres(spiritL), of(a.mass(spirit), "alcohol and water"), over(a.density(rho), "")),
		work("what is dissolved takes", a.litres(volume-spiritL), of(a.mass(solids), "dissolved"), times(a.room((volume-spiritL)/1000/solids), "(NBS Circular 440, CRC)")),
		work("the liquid", a.mass(s.LiquidKg()), of(a.mass(spirit), "alcohol and water"), plus(a.mass(solids), "dissolved")),
		work("its volume", a.litres(volume), of(a.litres(spiritL), "alcohol and water"), plus(a.litres(volume-spiritL), "dissolved")),
		work("gravity: its density to that of water", gravity(a.p.Ferment.FinalGravitySG), of(a.mass(s.LiquidKg()), ""), over(a.litres(volume), ""),
			over(a.density(fluid.WaterDensity(20)), "water at 20 C")),
	}
}

func workAttenuation(a *asked) []Line {
	sg := func(s plan.Stream) float64 {
		s.BacksetKg = 0
		return fluid.SG(s.LiquidKg() / liquidM3(s, 20))
	}
	plato := func(x []float64) float64 {
		p, err := fluid.PlatoFromSG(x[0])
		if err != nil {
			return 0
		}
		return 100 * p
	}
	og, fg := sg(a.p.Stream(plan.StreamWort)), sg(a.p.Stream(plan.StreamWash))
	before, after := plato([]float64{og}), plato([]float64{fg})
	return []Line{
		look("before", "NBS Circular 440", Number{before, "plato", 2}, plato, of(gravity(og), "of the grain alone")),
		look("after", "NBS Circular 440", Number{after, "plato", 2}, plato, of(gravity(fg), "without the backset's solids")),
		work("apparent attenuation", percent(a.p.Ferment.AttenuationPct, 1), of(Number{before, "plato", 2}, "before"), minus(Number{after, "plato", 2}, "after"),
			over(Number{before, "plato", 2}, "before")),
	}
}
