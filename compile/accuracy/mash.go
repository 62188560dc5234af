package accuracy

import (
	"fmt"
	"maps"
	"math"

	"newmake/compile/accuracy/published"
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/starch"
	"newmake/compile/matter/stream"
	"newmake/compile/stage/ferment"
	"newmake/compile/stage/mash"
	"newmake/lang/check"
	"newmake/lang/recipe"
)

const (
	hour  = 3600.0
	galM3 = fluid.USGallonM3
	lbKg  = fluid.PoundKg
)

func library() *recipe.Library { return &check.Builtin().Library }

func mashing(m *measurer) Section {
	s := Section{Title: "Mash",
		Text: "Kinetics of Brandam et al. (2003), constants from memory, with the amylases' lives, the dextrins and limit dextrinase fitted together to the lines below; each constant says so in the library, and `go run ./compile/accuracy/mashfit` fits them again by least squares and prints them with their residuals: the library is within one standard deviation of what that finds. Koljonen et al. (1995) found a model of the mash within 6 % in fermentable sugar on the same malt, 10 % on others: reckon with that. Limit dextrinase is bound and protected in the mash and goes on in the fermenter, so an unboiled wash loses little by a hotter rest, and a boiled wort much."}
	two := malts{{"two-row-malt", 1}}
	muller := m.held(two, 2.5, 65, 10, 20, 30).Steps
	lost := func(i int) float64 { return 100 * (1 - muller[2+i].BetaLeft) }
	lab := m.laboratory()
	var level published.Deviations
	best64 := m.litresPerTonne(64)
	for t := 61.0; t <= 66; t++ {
		level.Add(100*(m.litresPerTonne(t)/best64-1), 0)
	}
	full := m.held(two, 4, 65, 60).Out.SugarKg()
	early := points([2]float64{100 * m.held(two, 4, 63, 10).Out.SugarKg() / full, 97.5}, [2]float64{100 * m.held(two, 4, 58.6, 10).Out.SugarKg() / full, 61.7})
	var thick published.Deviations
	for _, h := range harris {
		thick.Add(h.thickest(m), h.percent)
	}
	var yields published.Deviations
	for _, c := range []struct {
		grain           string
		access, gallons float64
	}{
		{"corn", 1, 2.85}, {"corn", 2.65 / 2.85, 2.65}, {"sorghum", 2.65 / 2.85, 2.60}, {"barley", 2.65 / 2.85, 2.50}, {"rye", 1, 2.40},
	} {
		yields.Add(percent(m.yieldOf(c.grain, c.access), c.gallons))
	}
	rests := points([2]float64{m.attenuation(65), 82}, [2]float64{m.attenuation(70), 70}, [2]float64{m.attenuation(75), 50}, [2]float64{m.attenuation(80), 30})
	best, driest := 0.0, 0.0
	for t := 58.0; t <= 66; t += 0.5 {
		if a := m.attenuation(t); a > best {
			best, driest = a, t
		}
	}
	wort := m.wort()
	var calcium published.Deviations
	for _, c := range [][2]float64{{0, 5.74}, {100, 5.48}, {200, 5.39}, {300, 5.28}} {
		in := cooker("two-row-malt", 400)
		in.HardnessPPM = 0
		in.Steps = []recipe.MashStep{{Verb: recipe.MashWater, VolumeM3: 1.2, TempC: 70}, {Verb: recipe.MashAdd, Grains: []int{0}}}
		in.Treatment.GypsumKg = c[0] / 1e6 * 1200 * 172.17 / 40.08
		calcium.Add(m.mash(in).PH, c[1])
	}
	var corn published.Deviations
	whole := m.cornBy(0.14)
	for _, malt := range []float64{0.08, 0.10, 0.12} {
		corn.Add(100*m.cornBy(malt)/whole, 100)
	}
	s.Rows = []Row{
		{Quantity: "extract into three waters, of what is dissolved", Why: "none: no published series was found", Source: "from memory: 98-99 % of the laboratory's extract, read as 98.5", Range: "all malt, waters of 2.7, 1.9 and 1.9 L/kg", Unit: "%",
			Deviations: points([2]float64{m.threeWaters(), 98.5}), Remark: "each water mixes with what the bed holds: a real bed is washed better than that"},
		{Quantity: "pH of a mash by its calcium", Why: "none: quoted at second hand, and the mash of the source is not known", Source: "Taylor, as quoted in Briggs et al., Brewing: Science and Practice (2004): 5.74, 5.48, 5.39, 5.28 with 0, 100, 200, 300 mg/L", Range: "all malt, 3 L/kg", Unit: "pH", Deviations: calcium, Remark: "the first 100 mg/L do twice what the model says, the rest as much"},
		{Quantity: "sugars of wort, share of its carbohydrate", Why: "the source's own range is 2 either way; the rest is approximation", Source: "MEBAK B-590.12.139: 74-78 %, read as 76", Range: "all malt, 63, 72, 78 °C", Unit: "%",
			Deviations: points([2]float64{100 * wort.SugarKg() / carbohydrate(wort), 76}), Claim: 3, Remark: "hydrolysis fitted to it"},
		{Quantity: "maltose, maltotriose, glucose, dextrins of wort", Why: "the source's own ranges are 3 to 3.5 either way; the rest is approximation", Source: "common practice: 50, 12-18, 12-18, 20-27 % of carbohydrate", Range: "the same", Unit: "%",
			Deviations: points([2]float64{100 * wort.MaltoseKg / carbohydrate(wort), 50}, [2]float64{100 * wort.MaltotrioseKg / carbohydrate(wort), 15},
				[2]float64{100 * wort.GlucoseKg / carbohydrate(wort), 15}, [2]float64{100 * wort.DextrinKg / carbohydrate(wort), 23.5}), Claim: 5, Remark: "hydrolysis fitted to it; errors from the middle of the range"},
		{Quantity: "beta-amylase lost at 65 °C", Why: "the source is read off a figure, at second hand: the largest seen, rounded up", Source: "Muller, Brewing Research Foundation 1991, as quoted: 50 % in 10 min, 83 % in 30, 92 % in 60", Range: "65 °C, 2.5 L/kg", Unit: "% of it",
			Deviations: points([2]float64{lost(0), 50}, [2]float64{lost(1), 83}, [2]float64{lost(2), 92}), Claim: 2, Remark: "fitted to it"},
		{Quantity: "sugar within 10 min, that of 65 °C and 60 min being 100 %", Why: "none: whether the source warmed its mash up to the rest was not read", Source: "Rittenauer et al., Foods 10 (2021) 1733: 97.5 % at 61.4-64.5 °C, 61.7 % at 57.5-59.8, read at 63 and 58.6", Range: "all malt, 4 L/kg", Unit: "%", Deviations: early, Remark: "the model is slower at first"},
		{Quantity: "thickest mash of which 95 % of the starch dissolves", Why: "none: an abstract, and its limits are ranges", Source: "Harris and MacWilliam, Carbohydrates in malting and brewing X, J. Inst. Brew. (1961), abstract: 16-25, 33-42, 42 and 50 %, read at the middle", Range: "62.7 °C 1 h and 3 h, 65.5 °C 1 h and 3 h", Unit: "% malt", Deviations: thick,
			Remark: "the model has one limit at a temperature, however long the rest"},
		{Quantity: "sugar of all there could be, in 6 and in 2.5 L/kg", Why: "none: the temperatures of the source were not read", Source: "De Schepper and Courtin, Food Hydrocolloids (2022) 107745, abstract: 79 and 66 %", Range: "one rest of an hour at 63 °C", Unit: "%", Deviations: points([2]float64{m.sugarShare(6), 79}, [2]float64{m.sugarShare(2.5), 66}),
			Remark: "**not met**: the source loses by thickness and the model gains; twice as steep a rise of gelatinization as the model's would contradict the line above"},
		{Quantity: "alcohol a tonne of malt by the rest, that of 64 °C being 100 %", Why: "common practice: no harm below 65.5 °C, the laboratory's mash at 65", Source: "common practice: even", Range: "61-66 °C, 4 L/kg, unboiled", Unit: "%", Deviations: level, Claim: 3},
		{Quantity: "alcohol a tonne of malt after a rest at 70 °C, that of 64 °C being 100 %", Why: "none: no published yield of unboiled wash by hotter rests was found", Source: "none for unboiled wash; boiled wort ferments to 70 of the 82 % of 65 °C (below), or 85 %, and an unboiled one loses less", Range: "4 L/kg, unboiled", Unit: "%", Deviations: points([2]float64{100 * m.litresPerTonne(70) / m.litresPerTonne(64), 85}), Remark: "above the source, as it should be"},
		{Quantity: "alcohol a tonne of malt kilned as for ale, that of a distilling malt of the same extract being 100 %", Why: "none: no published yield of the two side by side was found", Source: "none; what is held is the sign, for of green malt's limit dextrinase an ale kiln leaves 15 %, a lager kiln 76 % (Sissons, Taylor and Proudlove, J. ASBC 53 (1995) 104)", Range: "64 °C, 4 L/kg, unboiled, 60 h", Unit: "%", Deviations: points([2]float64{100 * m.aleMalt() / best64, 100}), Remark: "the lower yield is the model's own, by limit dextrinase and weaker amylases; moisture apart"},
		{Quantity: "alcohol of a corn mash by its malt, that of 14 % distillers' malt being 100 %", Why: "common practice: bourbon is converted so; a twentieth for what is not said", Source: "common practice: 8-12 % of distillers' malt convert the bill", Range: "8, 10, 12 % of malt, cooked, 64.5 °C, 3.2 L/kg, 84 h", Unit: "%", Deviations: corn, Claim: 5,
			Remark: fmt.Sprintf("of 1 %% of malt, for which nothing was found in print, the model makes %.0f %%", 100*m.cornBy(0.01)/whole)},
		{Quantity: "fermentable extract of the laboratory's mash, unboiled", Why: "the source's own range: half of it, doubled for the malt", Source: "Bringhurst et al., J. Inst. Brew. 102 (1996) 433, for the relation; common practice: 86-88 %", Range: "65 °C, 60 min, 9 L/kg", Unit: "%", Deviations: points([2]float64{lab.fermentable, 87}), Claim: 2},
		{Quantity: "alcohol of the same", Why: "the library's malt is not the source's: its extract is 76.4 % as is", Source: "common practice: 410 L a tonne in a typical year", Range: "the same", Unit: "L/t", Deviations: points([2]float64{lab.litres, 410}), Claim: 12},
		{Quantity: "real degree of fermentation in the plant", Why: "none: common practice is of whole plants", Source: "common practice: 82-85 %", Range: "65 °C, 4 L/kg, 60 h", Unit: "%", Deviations: points([2]float64{m.realDegree(65), 83.5}), Remark: "the model is above practice: it counts no wort held back and no weak yeast"},
		{Quantity: "alcohol of half rye, half rye malt, of theory", Why: "none: the rye malt of the source is not known", Source: "Balcerek et al., abstract: 75.4 %, the least of its mashes", Range: "64 °C, 70 min, 3.5 L/kg", Unit: "%", Deviations: points([2]float64{m.allRye(), 75.4}), Remark: "the model is high: the limit dextrinase of rye malt is put as that of barley"},
		{Quantity: "rest of the most fermentable wort", Why: "none: one published point", Source: "Hamilton and Lewis, Tech. Q. Master Brew. Assoc. Am. 11 (1974) 31, abstract: 62.5 °C", Range: "58-66 °C, one rest", Unit: "°C", Deviations: points([2]float64{driest, 62.5}), Remark: "the model's wort ferments best at the least of these rests; the source weighs extract too"},
		{Quantity: "apparent attenuation by the rest, wort boiled", Why: "none: quoted at second hand", Source: "Chandrasekhar, as quoted in a public weblog (2014): 82, 70, 50, 30 %; a tenth of the grist dextrin malt", Range: "65, 70, 75, 80 °C, 3 L/kg", Unit: "%", Deviations: rests,
			Remark: "alpha-amylase's life fitted to it"},
		{Quantity: "ethanol from corn, milo, barley, rye", Why: "none: the starch of the source's grain is not known", Source: "The Alcohol Textbook, 4th ed., Table 2", Range: "2.40-2.85 US gal of ethanol in 56 lb", Unit: "%", Deviations: yields,
			Remark: "one number fitted, on corn; largest: barley, of another harvest's starch"},
	}
	return s
}

// yieldOf is the ethanol, in US gallons from 56 lb, of a grain cooked alone with
// both preparations and converted for four days at 95 % of the stoichiometric
// yield.
func (m *measurer) yieldOf(grain string, access float64) float64 {
	const kg = 400.0
	model := *library().Models["mash"]
	model.Values = maps.Clone(model.Values)
	model.Values["access-raw"] = access
	liquefying, saccharifying := library().Enzymes["alpha-amylase"], library().Enzymes["glucoamylase"]
	in := cooker(grain, kg)
	in.Model = &model
	in.Steps = []recipe.MashStep{
		{Verb: recipe.MashWater, VolumeM3: 380 * galM3, TempC: fluid.FahrenheitToC(60)}, {Verb: recipe.MashAdd, Grains: []int{0}},
		dose(liquefying, 0.0005*kg), to(recipe.MashHeat, fluid.FahrenheitToC(190)), rest(60),
		to(recipe.MashCool, fluid.FahrenheitToC(140)), dose(saccharifying, 0.0008*kg), rest(30), to(recipe.MashCool, fluid.FahrenheitToC(85)),
	}
	r := m.mash(in)
	k, err := starch.ConstantsFrom(&model)
	if err != nil {
		m.fail(err)
		return 0
	}
	e := r.Enzymes.Clone()
	after := starch.StateOf(r.Out, e)
	for h := 0.0; h < 96; h += 0.25 {
		k.Run(&after, &e, 31, 5+(4.0-5)*math.Min(1, h/48), 900)
	}
	glucose := after.GlucoseKg + after.MaltoseKg*starch.PerGlucose/starch.PerMaltose + after.MaltotrioseKg*starch.PerGlucose/starch.PerMaltotriose
	return 0.95 * 0.5114 * glucose / fluid.Density(1, 20) / galM3 / (kg / (56 * lbKg))
}

// wort is that of an all-malt mash of 3.5 L/kg.
func (m *measurer) wort() stream.Stream {
	in := cooker("two-row-malt", 400)
	in.HardnessPPM, in.Model = 0, m.mashModel()
	in.Steps = []recipe.MashStep{
		{Verb: recipe.MashWater, VolumeM3: 1.4, TempC: 69.5}, {Verb: recipe.MashAdd, Grains: []int{0}}, rest(40),
		to(recipe.MashHeat, 72), rest(25), to(recipe.MashHeat, 78), rest(10),
	}
	return m.mash(in).Out
}

// attenuation is the fall of gravity, %, of a boiled wort from a rest of an hour at tempC in
// 3 L/kg of malt.
func (m *measurer) attenuation(tempC float64) float64 {
	at := func(strike float64) mash.Result {
		in := cooker("two-row-malt", 400)
		in.PressurePa, in.HardnessPPM, in.Model = 101325, 0, m.mashModel()
		in.Steps = []recipe.MashStep{{Verb: recipe.MashWater, VolumeM3: 1.2, TempC: strike}, {Verb: recipe.MashAdd, Grains: []int{0}}, rest(60)}
		return m.mash(in)
	}
	low, high := tempC, tempC+25
	for range 25 {
		if mid := (low + high) / 2; at(mid).Out.TempC > tempC {
			high = mid
		} else {
			low = mid
		}
	}
	r := at(low)
	in := tradeWort(false)
	in.Wort, in.Enzymes, in.PitchKg, in.DurationS = r.Out, starch.Enzymes{BranchedShare: r.Enzymes.BranchedShare, ClosedShare: r.Enzymes.ClosedShare}, 1, 8*24*hour
	in.Wort.TempC, in.Mash = 25, m.mashModel()
	f, err := ferment.Run(in)
	if err != nil {
		m.fail(err)
	}
	return 100 * (r.Out.SG() - f.FinalSG) / (r.Out.SG() - 1)
}

func carbohydrate(s stream.Stream) float64 { return s.SugarKg() + s.DextrinKg + s.GelStarchKg }

// cooker is a craft cooker with one grain of the library.
func cooker(grain string, kg float64) mash.Input {
	return mash.Input{
		Cooker:     recipe.Vessel{Kind: recipe.Cooker, HoldsM3: 520 * galM3, HeatsW: 170e3, CoolsW: 120e3},
		PressurePa: 97200, AmbientC: 20, WaterC: 14.4, HardnessPPM: 90, BoilerW: 500e3, Model: library().Models["mash"],
		Bill: recipe.Bill{TotalKg: kg, Lines: []recipe.BillLine{{Grain: library().Grains[grain], MassKg: kg, Share: 1}}},
	}
}

func (m *measurer) mash(in mash.Input) mash.Result {
	r, err := mash.Run(in)
	if err != nil {
		m.fail(err)
	}
	return r
}

func to(verb recipe.MashVerb, tempC float64) recipe.MashStep {
	return recipe.MashStep{Verb: verb, TempC: tempC}
}

func rest(minutes float64) recipe.MashStep {
	return recipe.MashStep{Verb: recipe.MashRest, DurationS: 60 * minutes}
}

func dose(z *recipe.Enzyme, kg float64) recipe.MashStep {
	return recipe.MashStep{Verb: recipe.MashDose, Enzyme: z, MassKg: kg}
}

// threeWaters is the extract that three waters draw out of the malt, of all that is
// dissolved.
func (m *measurer) threeWaters() float64 {
	const kg = 400
	in := cooker("two-row-malt", kg)
	drain := recipe.MashStep{Verb: recipe.MashDrain, DurationS: hour}
	water := func(litrePerKg, tempC float64) recipe.MashStep {
		return recipe.MashStep{Verb: recipe.MashWater, VolumeM3: litrePerKg * kg / 1000, TempC: tempC}
	}
	in.Steps = []recipe.MashStep{water(2.7, 73), {Verb: recipe.MashAdd, Grains: []int{0}}, rest(60), drain, water(1.9, 76), rest(15), drain, water(1.9, 82), drain}
	r := m.mash(in)
	out, left := r.Out.ExtractKg(), r.Draff.ExtractKg()
	return 100 * out / (out + left)
}
