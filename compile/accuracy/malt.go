package accuracy

import (
	"maps"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/starch"
	"newmake/compile/matter/stream"
	"newmake/compile/stage/ferment"
	"newmake/compile/stage/mash"
	"newmake/lang/recipe"
)

// malts are grains of the library and their shares.
type malts []struct {
	name  string
	share float64
}

// held is a mash of 400 kg at one temperature, in a vessel that weighs and loses
// nothing: it rests for each of the minutes.
func (m *measurer) held(of malts, litresPerKg, tempC float64, minutes ...float64) mash.Result {
	return m.heldIn(m.mashModel(), of, litresPerKg, tempC, minutes...)
}

const heldKg = 400.0

func (m *measurer) heldIn(model *recipe.Model, of malts, litresPerKg, tempC float64, minutes ...float64) mash.Result {
	in := mash.Input{
		Cooker:     recipe.Vessel{Kind: recipe.Cooker, HoldsM3: 3, MetalKg: 1e-6, LossW: 1e-6},
		PressurePa: 101325, AmbientC: 20, WaterC: 12, Model: model, Bill: recipe.Bill{TotalKg: heldKg},
	}
	add := recipe.MashStep{Verb: recipe.MashAdd, DurationS: 1}
	for i, g := range of {
		in.Bill.Lines = append(in.Bill.Lines, recipe.BillLine{Grain: library().Grains[g.name], MassKg: g.share * heldKg, Share: g.share})
		add.Grains = append(add.Grains, i)
	}
	water := recipe.MashStep{Verb: recipe.MashWater, VolumeM3: litresPerKg * heldKg / 1000, TempC: tempC + 5, DurationS: 1}
	var r mash.Result
	for range 4 { // the strike that gives the temperature
		in.Steps = []recipe.MashStep{water, add}
		for _, t := range minutes {
			in.Steps = append(in.Steps, rest(t))
		}
		r = m.mash(in)
		if m.err != nil {
			return mash.Result{Steps: make([]mash.Step, len(in.Steps))}
		}
		water.TempC += tempC - r.Steps[1].EndC
	}
	return r
}

// unboiled is the ferment of a whole mash, grain in, from 20 to 30 C.
func (m *measurer) unboiled(r mash.Result, hours float64) ferment.Result {
	wort := r.Out
	wort.TempC = 20
	f, err := ferment.Run(ferment.Input{
		Wort: wort, PH: r.PH, Enzymes: r.Enzymes, Yeast: library().Yeasts["distillers-yeast"], PitchKg: 0.002 * r.Out.WaterKg,
		Vessel: recipe.Vessel{Kind: recipe.Fermenter, HoldsM3: 5}, CoolW: 50e3, WaterC: 10, AmbientC: 20, HoldLowC: 18, HoldHighC: 30,
		DurationS: hours * hour, Mash: m.mashModel(), Model: library().Models["ferment"],
	})
	if err != nil {
		m.fail(err)
	}
	return f
}

// litresPerTonne is the alcohol from a mash of malt that stood 75 min at tempC.
func (m *measurer) litresPerTonne(tempC float64) float64 {
	return litres(m.unboiled(m.held(malts{{"two-row-malt", 1}}, 4, tempC, 75), 60))
}

// aleMalt is the alcohol from a mash of malt kilned as for ale, in L a tonne of it at the
// moisture of the two-row malt.
func (m *measurer) aleMalt() float64 {
	dry := func(name string) float64 { return 1 - library().Grains[name].Moisture }
	l := litres(m.unboiled(m.held(malts{{"pale-ale-malt", 1}}, 4, 64, 75), 60))
	return l * dry("two-row-malt") / dry("pale-ale-malt")
}

func litres(f ferment.Result) float64 { return f.Wash.PureAlcoholM3() * 1000 / heldKg * 1000 }

// realDegree is the share of the extract that is fermented, %, as a laboratory
// finds it.
func (m *measurer) realDegree(tempC float64) float64 {
	r := m.held(malts{{"two-row-malt", 1}}, 4, tempC, 75)
	return 100 * (1 - m.realExtract(m.unboiled(r, 60).Wash)/m.realExtract(r.Out))
}

// realExtract is what a laboratory finds dissolved, kg: alcohol boiled off and
// replaced by water, then by density.
func (m *measurer) realExtract(w stream.Stream) float64 {
	mass := w.LiquidKg()
	w.WaterKg += w.EthanolKg
	w.EthanolKg = 0
	return mass * m.must(fluid.PlatoFromSG(w.SG()))
}

// labMash is what the laboratory reckons from its mash.
type labMash struct{ fermentable, litres float64 }

// laboratory is the distilling laboratory's mash: ground so fine that all starch
// is reached, 65 C for an hour, made up to 9 L/kg and fermented unboiled; the
// fermentable share by 81.46 times the fall of gravity (Bringhurst et al. 1996).
func (m *measurer) laboratory() labMash {
	model := *m.mashModel()
	model.Values = maps.Clone(model.Values)
	model.Values["access-malt"] = 1
	r := m.heldIn(&model, malts{{"two-row-malt", 1}}, 9, 65, 60)
	f := m.unboiled(r, 72)
	return labMash{fermentable: 81.46 * (r.Out.SG() - f.FinalSG) / (r.Out.SG() - 1), litres: litres(f)}
}

// sugarShare is the sugar of a mash of malt, % of all that its starch could give.
func (m *measurer) sugarShare(litresPerKg float64) float64 {
	g := library().Grains["two-row-malt"]
	r := m.held(malts{{"two-row-malt", 1}}, litresPerKg, 63, 60)
	return 100 * r.Out.SugarKg() / (heldKg * (1 - g.Moisture) * (g.Starch*starch.PerMaltose + g.Sugars))
}

// allRye is the alcohol of half rye and half rye malt, % of what Gay-Lussac's
// equation makes of starch and sugars.
func (m *measurer) allRye() float64 {
	of := malts{{"rye", 0.5}, {"rye-malt", 0.5}}
	theoryL := 0.0
	for _, l := range of {
		g := library().Grains[l.name]
		theoryL += l.share * heldKg * (1 - g.Moisture) * (g.Starch*starch.PerGlucose + g.Sugars) * 0.5114 / 0.78924
	}
	return 100 * m.unboiled(m.held(of, 3.5, 64, 70), 72).Wash.PureAlcoholM3() * 1000 / theoryL
}

// cornBy is the alcohol in L a tonne of a corn mash that is cooked and converted by
// so much of distillers' malt alone.
func (m *measurer) cornBy(malt float64) float64 {
	in := cooker("corn", heldKg)
	in.Bill.Lines = []recipe.BillLine{
		{Grain: library().Grains["corn"], MassKg: (1 - malt) * heldKg, Share: 1 - malt},
		{Grain: library().Grains["distillers-malt"], MassKg: malt * heldKg, Share: malt},
	}
	in.Steps = []recipe.MashStep{
		{Verb: recipe.MashWater, VolumeM3: 3.2 * heldKg / 1000, TempC: 15}, {Verb: recipe.MashAdd, Grains: []int{0}},
		to(recipe.MashHeat, 88), rest(45), to(recipe.MashCool, 64.5), {Verb: recipe.MashAdd, Grains: []int{1}}, rest(60), to(recipe.MashCool, 26),
	}
	return litres(m.unboiled(m.mash(in), 84))
}

// harris are the limits of Harris and MacWilliam: the thickest mash, in % malt,
// that dissolves more than 95 % of its carbohydrate.
var harris = []mashLimit{{62.7, 60, 20.5}, {62.7, 180, 37.5}, {65.5, 60, 42}, {65.5, 180, 50}}

type mashLimit struct{ tempC, minutes, percent float64 }

// thickest is the model's limit.
func (h mashLimit) thickest(m *measurer) float64 {
	low, high := 5.0, 60.0
	for range 12 {
		mid := (low + high) / 2
		if m.held(malts{{"two-row-malt", 1}}, (100-mid)/mid, h.tempC, h.minutes).Conversion > 0.95 {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}
