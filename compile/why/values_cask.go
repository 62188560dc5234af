package why

import (
	"fmt"

	"newmake/compile/fluid"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// Of reduction, filling and the years in wood.
var caskValues = []value{
	{
		name: "entry", also: []string{"caskEntryAbvPct", "entry-proof", "entry-strength"}, title: "strength at entry", stage: inCask, model: gauging, paths: []string{"cask.entry"},
		amount: func(a *asked) plan.Quantity { return a.p.Cask.Entry.At() },
		work:   workEntry,
	},
	{
		name: "water-to-add", also: []string{"reduction-water", "water-to-reduce"}, title: "water that brings the hearts to entry strength", stage: inCask, model: gauging,
		from: []string{"hearts", "proof", "entry"}, paths: []string{"cask.entry", "plant.ambient"},
		amount: func(a *asked) plan.Quantity {
			return plan.Of(a.p.Stream(plan.StreamEntry).WaterKg-a.p.Stream(plan.StreamHearts).WaterKg, plan.Kilogram)
		},
		note: func(a *asked) string {
			if a.p.Reduction == nil {
				return "none: the hearts are not stronger than that"
			}
			return a.u.Litres(a.p.Reduction.WaterL)
		},
		work: func(a *asked) []Line {
			r, e, h := a.p.Reduction, a.p.Stream(plan.StreamEntry), a.p.Stream(plan.StreamHearts)
			if r == nil {
				return nil
			}
			w := 100 * e.EthanolKg / e.MassKg
			return []Line{
				a.lookWeight("alcohol by weight at entry", w, a.p.Cask.Entry),
				work("all of it at entry", a.mass(e.MassKg), of(a.mass(h.EthanolKg), "alcohol in the hearts"), over(percent(w, 2), "")),
				work("water to add", a.mass(r.WaterKg), of(a.mass(e.MassKg), "at entry"), minus(a.mass(h.MassKg), "hearts")),
				work("by volume at 20 C (68 F)", a.litres(r.WaterL), of(a.mass(r.WaterKg), ""), over(a.density(fluid.WaterDensity(20)), "")),
			}
		},
	},
	{
		name: "at-entry", also: []string{"entry-volume", "reduced"}, title: "spirit at entry strength", stage: inCask, model: gauging, from: []string{"hearts", "water-to-add", "entry"},
		paths:  []string{"cask.entry"},
		amount: func(a *asked) plan.Quantity { return a.reduced().Volume() },
		work: func(a *asked) []Line {
			r := a.p.Reduction
			if r == nil {
				return nil
			}
			unmixed := r.From.VolumeL + r.WaterL
			return []Line{
				a.workToVolume(r.To),
				work("unmixed, at 20 C (68 F)", a.litres(unmixed), of(a.litres(r.From.VolumeL), "hearts"), plus(a.litres(r.WaterL), "water")),
				work("mixed, at 20 C (68 F)", a.litres(r.To.VolumeL), of(a.litres(unmixed), "unmixed"), minus(a.litres(r.ContractionL), "contraction")),
			}
		},
	},
	{
		name: "casks", also: []string{"casksFilled"}, title: "casks filled", stage: inCask, model: gauging, from: []string{"at-entry"}, paths: []string{"cask.fill"},
		amount: func(a *asked) plan.Quantity { return plan.Of(float64(a.p.Cask.Casks), plan.Each) },
		work: func(a *asked) []Line {
			v, size := a.reduced().VolumeL, a.p.Cask.SizeL
			many := bare(v/size, 2)
			return []Line{
				work("casks, at 20 C (68 F)", many, of(a.litres(v), "at entry strength"), over(a.litres(size), "a cask")),
				{Says: "whole ones", Terms: []Term{of(many, "")}, Whole: true, Result: &Number{Value: float64(a.p.Cask.Casks)}},
			}
		},
	},
	{
		name: "leftover", also: []string{"leftoverL", "left-over"}, title: "left over at entry strength", stage: inCask, model: gauging, from: []string{"at-entry", "casks"}, paths: []string{"cask.fill"},
		amount: func(a *asked) plan.Quantity { return a.p.Cask.Leftover.Volume() },
		work: func(a *asked) []Line {
			k := a.p.Cask
			if k.Fill == nil {
				return []Line{work("no cask is filled", a.volume(k.Leftover), of(a.volume(a.reduced()), "at entry strength"))}
			}
			filled := scale(*k.Fill, float64(k.Casks))
			at := "20 C"
			if a.us() {
				at = "60 F"
			}
			return []Line{
				work("in casks, at "+at, a.volume(filled), of(a.volume(*k.Fill), "a cask"), fixed("x", float64(k.Casks), "", "")),
				work("left over", a.volume(k.Leftover), of(a.volume(a.reduced()), "at entry strength"), minus(a.volume(filled), "in casks")),
			}
		},
	},
	{
		name: "angels", also: []string{"angels-share", "loss", "angelsPct"}, title: "lost from the cask by the end of its rest", stage: inCask, needs: forecast, model: maturing, from: []string{"entry"},
		paths:  []string{"cask.fill", "cask.rest", "cask.climate", "plant.climate", "plant.loss", "plant.loss-first-year"},
		amount: func(a *asked) plan.Quantity { return plan.Of(a.p.Cask.AngelsPct, plan.Percent) },
		work: func(a *asked) []Line {
			last, ok := a.lastYear()
			if !ok {
				return nil
			}
			size := a.p.Cask.SizeL
			return []Line{
				work("gone", a.litres(size-last.VolumeL), of(a.litres(size), "filled"), minus(a.litres(last.VolumeL), "left")),
				work("of the fill", percent(a.p.Cask.AngelsPct, 1), of(a.litres(size-last.VolumeL), "gone"), over(a.litres(size), "filled")),
			}
		},
	},
	{
		name: "bottles", title: "bottles after the rest", stage: inCask, model: maturing, from: []string{"casks", "angels"},
		paths:  []string{"cask.bottle", "cask.rest", "cask.fill", "style"},
		amount: func(a *asked) plan.Quantity { return plan.Of(float64(a.p.Cask.Bottles), plan.Each) },
		work:   workBottles,
	},
}

func (a *asked) reduced() plan.Lot {
	if r := a.p.Reduction; r != nil {
		return r.To
	}
	return plan.Lot{}
}

// forecast says that there is one: at least one cask is filled.
func forecast(a *asked) bool { return len(a.p.Cask.Forecast) > 0 }

func (a *asked) lastYear() (plan.CaskYear, bool) {
	f := a.p.Cask.Forecast
	if len(f) == 0 {
		return plan.CaskYear{}, false
	}
	return f[len(f)-1], true
}

// lookWeight reads a strength's alcohol by weight.
func (a *asked) lookWeight(says string, w float64, s plan.Strength) Line {
	read := func(x []float64) float64 {
		f, err := fluid.MassFracFromABV(x[0] / 100)
		if err != nil {
			return 0
		}
		return 100 * f
	}
	if a.us() {
		read = func(x []float64) float64 {
			f, err := fluid.MassFracFromProof(x[0])
			if err != nil {
				return 0
			}
			return 100 * f
		}
	}
	return look(says, "OIML R 22", percent(w, 2), read, of(a.strength(s), ""))
}

// workEntry shows the entry strength at both temperatures.
func workEntry(a *asked) []Line {
	e := a.p.Cask.Entry
	w, err := fluid.MassFracFromABV(e.AbvPct / 100)
	if err != nil {
		return nil
	}
	from := a.lookWeight("alcohol by weight", 100*w, e)
	if a.b.Cask.Entry.Basis == recipe.Proof && !a.us() {
		from = look("alcohol by weight", "OIML R 22", percent(100*w, 2), func(x []float64) float64 {
			f, _ := fluid.MassFracFromProof(x[0])
			return 100 * f
		}, of(Number{e.Proof, "proof", 1}, "as written"))
	}
	return []Line{
		from,
		look("at 20 C", "OIML R 22", Number{e.AbvPct, "% vol", 1}, func(x []float64) float64 { return 100 * fluid.ABVFromMassFrac(x[0]/100) }, of(percent(100*w, 2), "by weight")),
		look("at 60 F", "OIML R 22", Number{e.Proof, "proof", 1}, func(x []float64) float64 { return fluid.ProofFromMassFrac(x[0] / 100) }, of(percent(100*w, 2), "by weight")),
	}
}

func workBottles(a *asked) []Line {
	k := a.p.Cask
	last, ok := a.lastYear()
	if !ok || k.BottleL == 0 {
		return nil
	}
	at := min(k.BottleAt.AbvPct, last.AbvPct)
	all := last.PureL * float64(k.Casks)
	litres := 100 * all / at
	bottles := litres / k.BottleL
	n := bare(bottles, 1)
	return []Line{
		work("alcohol after the rest", Number{all, "LPA", 2}, of(Number{last.PureL, "LPA", 2}, "in a cask"), fixed("x", float64(k.Casks), "", "casks")),
		work("volume at bottling strength, 20 C", Number{litres, "L", 1}, of(Number{all, "LPA", 2}, ""), over(Number{at, "% vol", 2}, ""), perHundred("x")),
		work("bottles", n, of(Number{litres, "L", 1}, ""), fixed("/", k.BottleL, "L", "a bottle")),
		{Says: "whole ones", Terms: []Term{of(n, "")}, Whole: true, Result: &Number{Value: float64(k.Bottles)}},
	}
}

// yearValue is the row of one year of the forecast.
func yearValue(i int, age float64) value {
	name := "year-" + trimmed(age)
	from := []string{"entry"}
	if i > 0 {
		from = append(from, "angels")
	}
	year := func(a *asked) plan.CaskYear {
		if i < len(a.p.Cask.Forecast) {
			return a.p.Cask.Forecast[i]
		}
		return plan.CaskYear{}
	}
	return value{
		name: name, given: true, needs: func(a *asked) bool { return i < len(a.p.Cask.Forecast) }, title: fmt.Sprintf("a cask after %s years", trimmed(age)), stage: inCask, model: maturing, from: from,
		paths:  []string{"cask.fill", "cask.entry", "cask.climate", "plant.climate", "plant.loss", "plant.loss-first-year", "wood.soak", "model.cask.soak-time", "model.cask.wood-water", "model.cask.size-power"},
		amount: func(a *asked) plan.Quantity { return plan.Of(year(a).VolumeL, plan.Litre) },
		note: func(a *asked) string {
			return "at " + a.u.Strength(plan.Strength{AbvPct: year(a).AbvPct, Proof: year(a).Proof})
		},
		work: func(a *asked) []Line {
			y := year(a)
			lines := []Line{work("alcohol", Number{y.PureL, "LPA", 1}, of(Number{y.VolumeL, "L", 1}, "at 20 C"), times(Number{y.AbvPct, "% vol", 1}, ""), perHundred("/"))}
			if i == 0 || i >= len(a.p.Cask.Forecast) {
				return lines
			}
			before := a.p.Cask.Forecast[i-1]
			gone := before.VolumeL - y.VolumeL
			return append(lines,
				work("gone since year "+trimmed(before.AgeYears), a.litres(gone), of(a.litres(before.VolumeL), "then"), minus(a.litres(y.VolumeL), "now")),
				work("of what was there", percent(100*gone/before.VolumeL, 1), of(a.litres(gone), "gone"), over(a.litres(before.VolumeL), "then")))
		},
	}
}

// trimmed writes an age without decimals that say nothing.
func trimmed(age float64) string {
	return fixed("", plan.RoundTo(age, 2), "", "").Text()
}
