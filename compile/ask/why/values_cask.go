package why

import (
	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// Of reduction, filling and the years in wood.
var caskValues = []value{
	{
		name: "entry", also: []string{"caskEntryAbvPct", "entry-proof", "entry-strength"}, title: "strength at entry",
		stage: inCask, model: gauging, needs: inWood, inputs: []source{at(recipe.PathEntry)},
		amount: func(a *asked) plan.Quantity { return a.p.Cask.Entry.At() },
		work:   func(a *asked) []Line { return a.workTarget(a.p.Cask.Entry, a.b.Cask.Entry) },
	},
	{
		name: "water-to-add", also: []string{"reduction-water", "water-to-reduce"}, title: "water that brings the hearts down",
		stage: inCask, model: gauging, needs: reduced, from: []string{"hearts", "proof", "entry"}, inputs: []source{at(recipe.PathEntry, recipe.PathBottle, recipe.PathAmbient)},
		amount: func(a *asked) plan.Quantity { return a.p.Reduction.Water() },
		note: func(a *asked) string {
			return a.mass(a.p.Reduction.WaterScaleKg).Text() + " on the scale, to " + a.u.Strength(a.p.Reduction.To.Strength())
		},
		work: workReduction,
	},
	{
		name: "at-entry", also: []string{"entry-volume", "reduced"}, title: "spirit when it is reduced",
		stage: inCask, model: gauging, needs: reduced, from: []string{"hearts", "water-to-add"}, inputs: []source{at(recipe.PathEntry, recipe.PathBottle)},
		amount: func(a *asked) plan.Quantity { return a.p.Reduction.To.Volume() },
		note:   func(a *asked) string { return "at " + a.u.Strength(a.p.Reduction.To.Strength()) },
		work: func(a *asked) []Line {
			r := a.p.Reduction
			hearts, water, lost := a.volume(r.From), a.quantity(r.Water()), a.quantity(r.Contraction())
			unmixed := hearts
			unmixed.Value += water.Value
			return []Line{
				a.workToVolume(r.To),
				work("unmixed", unmixed, of(hearts, "hearts"), plus(water, "water")),
				work("mixed", a.volume(r.To), of(unmixed, "unmixed"), minus(lost, "contraction")),
			}
		},
	},
	{
		name: "casks", also: []string{"casksFilled"}, title: "casks filled",
		stage: inCask, model: gauging, from: []string{"at-entry"}, inputs: []source{at(recipe.PathFill)},
		amount: func(a *asked) plan.Quantity { return plan.Of(float64(a.p.Cask.Casks), plan.Each) },
		work:   workCasks,
	},
	{
		name: "leftover", also: []string{"leftoverL", "left-over"}, title: "left over at entry strength",
		stage: inCask, model: gauging, from: []string{"at-entry", "casks"}, inputs: []source{at(recipe.PathFill)},
		amount: func(a *asked) plan.Quantity { return a.p.Cask.Leftover.Volume() },
		work:   workLeftover,
	},
	{
		name: "cask-loss", also: []string{"angels-share", "loss", "caskLossPct"}, title: "lost from the cask by the end of its rest",
		stage: inCask, model: maturing, needs: forecast, from: []string{"entry"},
		inputs: []source{at(recipe.PathFill, recipe.PathRest, recipe.PathClimate, recipe.PathPlantClimate, recipe.PathLoss, recipe.PathLossFirst), climateFigures},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Cask.CaskLossPct, plan.Percent) },
		work: func(a *asked) []Line {
			fill, last := a.p.Cask.Fill.VolumeL, a.lastYear().VolumeL
			return []Line{
				work("gone, at "+a.twentyC(), a.litres(fill-last), of(a.litres(fill), "filled"), minus(a.litres(last), "left")),
				work("of the fill", percent(a.p.Cask.CaskLossPct, 1), of(a.litres(fill-last), "gone"), over(a.litres(fill), "filled")),
			}
		},
	},
	{
		name: "bottles", title: "bottles in the end",
		stage: inCask, model: maturing, from: []string{"casks", "cask-loss", "at-entry"}, inputs: []source{at(recipe.PathBottle, recipe.PathRest, recipe.PathFill, recipe.PathStandard)},
		amount: func(a *asked) plan.Quantity { return plan.Of(float64(a.p.Cask.Bottles), plan.Each) },
		work:   workBottles,
	},
}

// inWood says that the batch goes into casks; reduced, that water is added to
// it; forecast, that a cask is filled.
func inWood(a *asked) bool   { return a.p.Cask.SizeL > 0 }
func reduced(a *asked) bool  { return a.p.Reduction != nil }
func forecast(a *asked) bool { return a.p.Cask.Fill != nil && len(a.p.Cask.Forecast) > 0 }

func (a *asked) lastYear() plan.CaskYear { return a.p.Cask.Forecast[len(a.p.Cask.Forecast)-1] }

// lookWeight reads a strength's alcohol by weight.
func (a inUnits) lookWeight(says string, w float64, s plan.Strength) Line {
	f := fluid.MassFracFromABV
	from, by := a.strength(s), 100.0
	if a.us() {
		f, by = fluid.MassFracFromProof, 1
	}
	read := func(x []float64) float64 {
		w, err := f(x[0] / by)
		if err != nil {
			return 0
		}
		return 100 * w
	}
	return look(says, "OIML R 22", percent(w, 2), read, of(from, ""))
}

// workTarget shows a strength that is asked for at 20 C, and in proof to who counts in it.
func (a inUnits) workTarget(s plan.Strength, asked recipe.Strength) []Line {
	w, err := fluid.MassFracFromABV(s.AbvPct / 100)
	if err != nil {
		return nil
	}
	weight := percent(100*w, 2)
	lines := []Line{
		a.lookWeight("alcohol by weight, of "+said(asked), 100*w, s),
		look("at 20 C", "OIML R 22", Number{s.AbvPct, "% vol", 1}, func(x []float64) float64 { return 100 * fluid.ABVFromMassFrac(x[0]/100) }, of(weight, "by weight")),
	}
	if a.us() {
		lines = append(lines, look("at 60 F", "OIML R 22", Number{s.Proof, "proof", 1}, func(x []float64) float64 { return fluid.ProofFromMassFrac(x[0] / 100) }, of(weight, "by weight")))
	}
	return lines
}

// workReduction goes by mass: water brings no alcohol.
func workReduction(a *asked) []Line {
	r, h := a.p.Reduction, a.p.Stream(plan.StreamHearts)
	all := h.MassKg + r.WaterKg
	w := 100 * h.EthanolKg / all
	tempC, at := 20.0, "by volume at 20 C"
	if a.us() {
		tempC, at = fluid.SixtyF, "by volume at 60 F"
	}
	return []Line{
		a.lookWeight("alcohol by weight when reduced", w, r.To.Strength()),
		work("all of it when reduced", a.mass(all), of(a.mass(h.EthanolKg), "alcohol in the hearts"), over(percent(w, 2), "")),
		work("water to add", a.mass(r.WaterKg), of(a.mass(all), "when reduced"), minus(a.mass(h.MassKg), "hearts")),
		work(at, a.quantity(r.Water()), of(a.mass(r.WaterKg), ""), over(a.density(fluid.WaterDensity(tempC)), "")),
	}
}

// workCasks counts casks at the gauge's own temperature, in the batch's own
// units: that is what a written size means.
func workCasks(a *asked) []Line {
	k := a.p.Cask
	if !inWood(a) || a.p.Reduction == nil {
		return nil
	}
	own := *a
	if own.u = measure.SI; a.b.Gauge == recipe.US {
		own.u = measure.US
	}
	spirit, size := own.volume(a.p.Reduction.To), own.litres(k.SizeL)
	many := bare(spirit.Value/size.Value, 2)
	lines := []Line{work("casks, at the temperature of the gauge", many, of(spirit, "at entry strength"), over(size, "a cask"))}
	if k.LastFill == nil {
		return append(lines, whole("whole ones", many, k.Casks))
	}
	return append(lines,
		whole("whole ones", many, k.Casks-1),
		work("with the last, which is filled a little short", bare(float64(k.Casks), 0), fixed("", float64(k.Casks-1), "", "whole"), fixed("+", 1, "", "from 97 % full on")))
}

func workLeftover(a *asked) []Line {
	k := a.p.Cask
	if a.p.Reduction == nil || !inWood(a) {
		return nil
	}
	all := a.volume(a.p.Reduction.To)
	if k.Fill == nil {
		return []Line{work("no cask is filled", a.volume(k.Leftover), of(all, "at entry strength"))}
	}
	if k.LastFill != nil {
		return []Line{work("nothing is left: the last cask takes it", a.volume(k.Leftover), of(all, "at entry strength"), minus(all, "in casks"))}
	}
	filled := a.volume(k.Fill.Times(float64(k.Casks)))
	return []Line{
		work("in casks", filled, of(a.volume(*k.Fill), "a cask"), fixed("x", float64(k.Casks), "", "")),
		work("left over", a.volume(k.Leftover), of(all, "at entry strength"), minus(filled, "in casks")),
	}
}

func workBottles(a *asked) []Line {
	k := a.p.Cask
	if k.BottleL == 0 || a.p.Reduction == nil {
		return nil
	}
	size := fixed("/", k.BottleL, "L", "a bottle")
	if !inWood(a) {
		litres := Number{lot.VolumeM3(a.b.Gauge, a.p.Reduction.To) * lot.LitresPerM3, "L", 1}
		n := bare(litres.Value/k.BottleL, 1)
		return []Line{work("bottles, at "+a.bottledAt(), n, of(litres, "when reduced"), size), whole("whole ones", n, k.Bottles)}
	}
	if !forecast(a) {
		return nil
	}
	casks := float64(k.Casks)
	if k.LastFill != nil && k.Casks > 1 {
		casks += k.LastFill.VolumeL/k.Fill.VolumeL - 1
	}
	filled := times(bare(casks, 0), "casks, as full ones")
	if a.b.Gauge != recipe.US {
		each := a.lastYear().PureL
		all := each * casks
		litres := Number{100 * all / k.BottleAt.AbvPct, "L", 1}
		n := bare(litres.Value/k.BottleL, 1)
		return []Line{
			work("alcohol after the rest", Number{all, "LPA", 2}, of(Number{each, "LPA", 2}, "in a cask"), filled),
			work("volume at bottling strength, 20 C", litres, of(Number{all, "LPA", 2}, ""), over(Number{k.BottleAt.AbvPct, "% vol", 2}, ""), perHundred("x")),
			work("bottles", n, of(litres, ""), size),
			whole("whole ones", n, k.Bottles),
		}
	}
	each := a.lastYear().ProofGallons
	all := each * casks
	gallons := Number{100 * all / k.BottleAt.Proof, "gal", 2}
	litresPerGallon := plan.RoundTo(fluid.USGallonM3*lot.LitresPerM3, 6)
	n := bare(gallons.Value*litresPerGallon/k.BottleL, 1)
	return []Line{
		work("alcohol after the rest", Number{all, "PG", 2}, of(Number{each, "PG", 2}, "in a cask"), filled),
		work("volume at bottling strength, 60 F", gallons, of(Number{all, "PG", 2}, ""), over(Number{k.BottleAt.Proof, "proof", 1}, ""), perHundred("x")),
		work("bottles", n, of(gallons, ""), fixed("x", litresPerGallon, "L", "a gallon"), size),
		whole("whole ones", n, k.Bottles),
	}
}

// bottledAt is the temperature at which the bottles of the house hold their size.
func (a *asked) bottledAt() string {
	if a.b.Gauge == recipe.US {
		return "60 F"
	}
	return "20 C"
}

// yearsOf is an age in words.
func yearsOf(age float64) string {
	if age == 1 {
		return "1 year"
	}
	return trimmed(age) + " years"
}

// yearValue is the row of one year of the forecast.
func yearValue(i int, age float64) value {
	there := func(a *asked) bool { return i < len(a.p.Cask.Forecast) }
	v := value{
		name: "year-" + trimmed(age), title: "a cask at the age of " + yearsOf(age),
		stage: inCask, model: maturing, given: true, needs: there, from: []string{"at-entry", "entry", "cask-loss"},
		inputs: []source{at(recipe.PathFill, recipe.PathEntry, recipe.PathClimate, recipe.PathPlantClimate, recipe.PathLoss, recipe.PathLossFirst), climateFigures, woodFigure("soak"),
			constant("cask", "soak-time", "wood-water", "size-power")},
		amount: func(a *asked) plan.Quantity { return a.p.Cask.Forecast[i].Volume() },
		note: func(a *asked) string {
			y := a.p.Cask.Forecast[i]
			return "at " + a.u.Strength(plan.Strength{AbvPct: y.AbvPct, Proof: y.Proof})
		},
		work: func(a *asked) []Line {
			y := a.p.Cask.Forecast[i]
			now := caskLot(y)
			lines := []Line{work("alcohol", a.pure(now), of(a.volume(now), ""), times(a.strength(now.Strength()), ""), perHundred("/"))}
			if i == 0 {
				return lines
			}
			before := a.volume(caskLot(a.p.Cask.Forecast[i-1]))
			gone := before
			gone.Value -= a.volume(now).Value
			return append(lines,
				work("gone since year "+trimmed(a.p.Cask.Forecast[i-1].AgeYears), gone, of(before, "then"), minus(a.volume(now), "now")),
				work("of what was there", percent(100*gone.Value/before.Value, 1), of(gone, "gone"), over(before, "then")))
		},
	}
	if i == 0 {
		v.from = []string{"at-entry", "entry"}
	}
	return v
}

func caskLot(y plan.CaskYear) plan.Lot {
	return plan.Lot{VolumeL: y.VolumeL, AbvPct: y.AbvPct, Proof: y.Proof, PureL: y.PureL, ProofGallons: y.ProofGallons, WineGallons: y.WineGallons}
}

// trimmed writes an age without decimals that say nothing.
func trimmed(age float64) string { return fixed("", plan.RoundTo(age, 2), "", "").Text() }
