package accuracy

import (
	"fmt"

	"newmake/compile/internal/balling"
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/stage/ferment"
	"newmake/lang/recipe"
)

// tradeWort is one of two worts of the trade: a bourbon set of 1.060 and a malt wash of
// 1.055, with all that will ferment as sugar, so that the mash has no part.
func tradeWort(malt bool) ferment.Input {
	in := ferment.Input{
		Wort: stream.Stream{WaterKg: 1400, GlucoseKg: 26, MaltoseKg: 160, MaltotrioseKg: 36, DextrinKg: 8, SolublesKg: 15, InsolublesKg: 90, TempC: 26},
		PH:   5.3, Yeast: library().Yeasts["distillers-yeast"], PitchKg: 0.9, Vessel: recipe.Vessel{Kind: recipe.Fermenter, HoldsM3: 1.97},
		CoolW: 12000, WaterC: 14, AmbientC: 18, HoldLowC: 25.5, HoldHighC: 31, DurationS: 5 * 24 * hour,
		Mash: library().Models["mash"], Model: library().Models["ferment"],
	}
	if malt {
		in.Yeast, in.PitchKg, in.HoldLowC, in.HoldHighC = library().Yeasts["malt-whisky-yeast"], 5, 18, 32
		in.Wort = stream.Stream{WaterKg: 1450, GlucoseKg: 24, MaltoseKg: 140, MaltotrioseKg: 37, DextrinKg: 10, SolublesKg: 18, TempC: 20}
	}
	return in
}

func fermenting(m *measurer) Section {
	s := Section{Title: "Ferment",
		Text: "Growth and uptake by Warren, Hill and MacDonald (1990), temperature by Phisalaphong et al. (2006); the equations solved again by scipy agree to 0.01 % (compile/stage/ferment's tests). No published curve of a bourbon or rye ferment was found: **time to dryness is good to about 25 %**. A pitch far below the usual is slow, for it doubles five times at its full pace and no more (from memory), and how slow is held against nothing; it never makes more alcohol than a full one (a test of that package). Nitrogen sets no limit of its own, for what a mash of corn or rye holds was not found in print: a wort ferments worse below 144 mg/L of free amino nitrogen (Pugh, Maurer and Pringle, Tech. Q. Master Brew. Assoc. Am. 34 (1997) 185, abstract), but in wheat mashes, which are poor in it, nutrients made a ferment faster and no stronger (Chin and Ingledew, J. Agric. Food Chem. 41 (1993) 1156, abstract)."}
	run := func(malt bool) ferment.Result {
		r, err := ferment.Run(tradeWort(malt))
		if err != nil {
			m.fail(err)
		}
		return r
	}
	bourbon, malt := run(false), run(true)
	extract := func(w stream.Stream) float64 { // as a laboratory finds it, alcohol boiled off
		mass := w.LiquidKg()
		w.WaterKg += w.EthanolKg
		w.EthanolKg = 0
		return mass * m.must(fluid.PlatoFromSG(w.SG()))
	}
	const attenuation = 0.8146 // Bringhurst's factor, of the fall of gravity
	og := tradeWort(true).Wort.SG()
	spirit := malt.Wash.PureAlcoholM3() * 1000 / (extract(tradeWort(true).Wort) * attenuation * (og - malt.FinalSG) / (og - 1)) * 10
	sour := tradeWort(false)
	sour.Wort.BacksetKg = 9 // a tenth of the liquor, of 6 % solids
	sourMash, err := ferment.Run(sour)
	if err != nil {
		m.fail(err)
	}
	var brews [2]float64 // alcohol per extract lost, by gravity: mean of the brews
	measured := m.table("ferment/usda493_worts_and_ales_1917.csv", func(l line) (float64, float64, bool) {
		oe, ae := m.must(fluid.PlatoFromSG(l.num("wort_sg"))), m.must(fluid.PlatoFromSG(l.num("ale_sg")))
		got, want := percent(balling.AlcoholFromExtract(oe, balling.RealExtract(oe, ae)), l.num("alcohol_g_100mL")/100/l.num("ale_sg"))
		brews[0], brews[1] = brews[0]+got, brews[1]+1
		return got, want, true
	})
	balling := func(in ferment.Input, r ferment.Result) [2]float64 {
		oe, ae := m.must(fluid.PlatoFromSG(in.Wort.SG())), m.must(fluid.PlatoFromSG(r.FinalSG))
		return [2]float64{r.Wash.EthanolKg / r.Wash.LiquidKg(), balling.AlcoholFromExtract(oe, balling.RealExtract(oe, ae))}
	}
	gas := func(r ferment.Result) [2]float64 {
		return [2]float64{r.CO2Kg / r.Wash.PureAlcoholM3() / 1000, 0.754}
	}
	dryAt := func(tempC float64) float64 {
		in := tradeWort(true)
		in.Yeast, in.PitchKg = library().Yeasts["distillers-yeast"], 0.9
		in.Wort.TempC, in.AmbientC, in.HoldLowC, in.HoldHighC = tempC, tempC, tempC-1, tempC
		in.CoolW, in.WaterC, in.Vessel.HeatsW, in.DurationS = 60e3, tempC-10, 5e3, 20*24*hour
		r, err := ferment.Run(in)
		if err != nil {
			m.fail(err)
		}
		return r.DryS
	}
	pace := grid(12, 32, 10, func(tempC float64) (float64, float64) {
		return dryAt(30) / dryAt(tempC), cardinalTemperature(tempC) / cardinalTemperature(30)
	})
	s.Rows = []Row{
		{Quantity: "hours to dry", Why: "approximation: 25 %, for no published curve was found", Source: "common practice: 44-48 h", Range: "bourbon 1.060 at 26-31 °C, malt 1.055 from 20 °C", Unit: "h", Deviations: points([2]float64{bourbon.DryS / hour, 46}, [2]float64{malt.DryS / hour, 46}), Claim: 0.25 * 46, Remark: "constants tuned to it within their sources"},
		{Quantity: "pace by temperature, 30 °C being 1", Why: "none: the source is of growth alone", Source: "growth by the cardinal temperatures of Salvadó et al., Appl. Environ. Microbiol. 77 (2011) 2292: 3 (of 1.3-4.3), 32.3, 45.4 °C", Range: "held at 12-32 °C", Unit: "1", Deviations: pace, Remark: "of the hours to dry; their figures are of growth alone"},
		{Quantity: "final gravity", Why: "the source's own range: half of the wider", Source: "common practice: 0.996-1.002, 0.997-1.001", Range: "as above", Unit: "SG", Deviations: points([2]float64{sourMash.FinalSG, 0.999}, [2]float64{malt.FinalSG, 0.999}), Claim: 0.003, Remark: "bourbon with the solids of a tenth of backset"},
		{Quantity: "litres of alcohol a tonne, for 1 % of fermentable extract", Why: "none: the factor is a convention of the laboratory", Source: "Bringhurst et al., J. Inst. Brew. 102 (1996) 433: 6.11 in the laboratory, 6.06 the standard factor", Range: "malt wash, by the fall of gravity times 0.8146", Unit: "%", Deviations: percents([2]float64{spirit, 6.11}, [2]float64{spirit, 6.06})},
		{Quantity: "alcohol by original and final gravity", Why: "none: the relation is a convention, and measured brews leave it too", Source: "Balling's relation, ASBC Beer-33", Range: "both", Unit: "%", Deviations: percents(balling(tradeWort(false), bourbon), balling(tradeWort(true), malt)), Remark: "the model is low; so are measured brews, next line"},
		{Quantity: "Balling's alcohol, for comparison", Why: "none: it is not the model", Source: "Tolman and Riley, USDA Bulletin 493 (1917): brews measured before and after", Range: "wort 1.061-1.079, ale 1.012-1.025", Unit: "%", Deviations: measured, Remark: fmt.Sprintf("not the model: the relation is %s %% high in the mean", figures(brews[0]/brews[1]-100))},
		{Quantity: "carbon dioxide by litre of alcohol", Why: "none: the equation leaves growth out", Source: "Gay-Lussac's equation: 0.754 kg", Range: "both", Unit: "%", Deviations: percents(gas(bourbon), gas(malt)), Remark: "growth makes gas and no alcohol: it must be above"},
	}
	return s
}

// cardinalTemperature is the growth of Saccharomyces cerevisiae against its best: the
// cardinal temperature model with inflection (Rosso et al. 1993, from memory).
func cardinalTemperature(tempC float64) float64 {
	const least, best, most = 3, 32.3, 45.4
	return (tempC - most) * (tempC - least) * (tempC - least) /
		((best - least) * ((best-least)*(tempC-best) - (best-most)*(best+least-2*tempC)))
}
