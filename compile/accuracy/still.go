package accuracy

import (
	"math"

	"newmake/compile/accuracy/published"
	"newmake/compile/matter/exchanger"
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// ethanolWater is the mixture of the stills at a pressure.
func ethanolWater(pa float64) still.Mixture {
	return func(x float64) (float64, float64) { return fluid.BubblePointC(x, pa) }
}

// raoult is methanol-water, ideal, at 760 mmHg by Antoine's equation.
func raoult(x float64) (tempC, y float64) {
	methanol := func(t float64) float64 { return math.Pow(10, 8.081-1582/(t+239.7)) }
	water := func(t float64) float64 { return math.Pow(10, 8.071-1731/(t+233.4)) }
	low, high := 50.0, 110.0
	for range 80 {
		mid := (low + high) / 2
		if x*methanol(mid)+(1-x)*water(mid) < 760 {
			low = mid
		} else {
			high = mid
		}
	}
	return low, x * methanol(low) / 760
}

func distillation(m *measurer) Section {
	s := Section{Title: "Distillation",
		Text: "The integrator is exact to far more than its equilibrium: what errs is y (see above). Perry's example is printed from a graphical treatment; scipy over the same measured points, joined by a monotone cubic, gives an integral of 0.356 and a mean of 0.461. Trade checks are common practice, and ranges: the error is the distance to the middle. No table of flows at the spout was found in print: the pace that holds where a batch writes none is common practice for the foreshots and Nicol's (in Russell (ed.), Whisky (2003), ch. 5) for the hearts, and what is held here is the heat that a flow takes."}
	integral := func(name string, mixture func(l line) still.Mixture) published.Deviations {
		return m.table("oracle/still.csv", func(l line) (float64, float64, bool) {
			if l.Row["case"] != name {
				return 0, 0, false
			}
			left, _ := still.Simple(mixture(l), l.num("x0"), l.num("x"))
			got, want := percent(-math.Log(left), l.num("integral"))
			return got, want, true
		})
	}
	model := func(l line) still.Mixture { return ethanolWater(l.num("pressure_Pa")) }
	constant := integral("const", func(l line) still.Mixture {
		a := l.num("parameter")
		return func(x float64) (float64, float64) { return 100 - 20*x, a * x / (1 + x*(a-1)) }
	})
	left, over := still.Simple(ethanolWater(fluid.StandardPressurePa), 0.18, 0.06)
	methanol, average := still.Simple(raoult, 0.82, 0.42)

	wash := m.stillRun(0.08, 3, 0, 0.01)
	low := wash.Fraction(still.LowWines)
	first := m.stillRun(0.25, 1, 0, 0.02).Curve[0].ABV
	heat, water := m.spoutHeat()
	oilOut := exchanger.CounterHotOutC(100, 213.1, 30, 835.6, 38.1*math.Pi*0.025*65.9)
	s.Rows = []Row{
		{Quantity: "Rayleigh's integral, constant volatility 1.5-20", Why: "arithmetic: the integrator's steps", Source: "exact solution, by scipy", Range: "x 0.4 to 0.02", Unit: "%", Deviations: constant, Claim: 0.001},
		{Quantity: "Rayleigh's integral, methanol-water, ideal", Why: "arithmetic: the integrator's steps", Source: "scipy", Range: "x 0.82 to 0.01", Unit: "%", Deviations: integral("raoult", func(line) still.Mixture { return raoult }), Claim: 0.001},
		{Quantity: "Rayleigh's integral, the model's equilibrium", Why: "arithmetic: the integrator's steps", Source: "scipy, the model written out again", Range: "x 0.6 to 0.0003, 72-101.3 kPa", Unit: "%", Deviations: integral("nrtl", model), Claim: 0.001},
		{Quantity: "Rayleigh's integral", Why: "none: it is the error in y, claimed above", Source: "scipy over Carey and Lewis's points, no model", Range: "x 0.18 to 0.06, 0.0925 to 0.02", Unit: "%", Deviations: integral("carey", model), Remark: "the model's error in y"},
		{Quantity: "moles left of 100", Why: "none: it is the error in y, claimed above", Source: "Perry's, section 13, simple batch distillation: 70.0", Range: "x 0.18 to 0.06", Unit: "mol", Deviations: points([2]float64{100 * left, 70.0}), Remark: "the model's error in y"},
		{Quantity: "mean of the distillate", Why: "none: it is the error in y, claimed above", Source: "Perry's, section 13: 0.46", Range: "x 0.18 to 0.06", Unit: "x", Deviations: points([2]float64{over, 0.46}), Remark: "printed to 0.01"},
		{Quantity: "moles over of 75, methanol-water", Why: "none: the mixture is not one of newmake's", Source: "open lecture notes: 62.5", Range: "x 0.82 to 0.42", Unit: "mol", Deviations: points([2]float64{75 * (1 - methanol), 62.5})},
		{Quantity: "mean of the same distillate", Why: "none: the mixture is not one of newmake's", Source: "open lecture notes: 0.90", Range: "x 0.82 to 0.42", Unit: "x", Deviations: points([2]float64{average, 0.90})},
		{Quantity: "low wines of 8 % wash to 1 %", Why: "the source's own range: half of it", Source: "common practice: 20-25 %", Range: "no reflux", Unit: "% vol", Deviations: points([2]float64{100 * low.ABV, 22.5}), Claim: 2.5},
		{Quantity: "low wines of 3,000 L", Why: "the source's own range: half of it", Source: "common practice: a bit over 1,000 L, read as 1,000-1,250", Range: "no reflux", Unit: "L", Deviations: points([2]float64{1000 * low.VolumeM3, 1125}), Claim: 125},
		{Quantity: "first strength from 25 %", Why: "print rounding: half of 1", Source: "common practice: about 73 %", Range: "no reflux", Unit: "% vol", Deviations: points([2]float64{100 * first, 73}), Claim: 0.5},
		{Quantity: "oil out of a counter-current cooler, which a preheater is reckoned as", Why: "print rounding: the area is printed to three figures", Source: "Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, 6th ed., example 11.1, figures from memory: 60 °C", Range: "oil 213.1 W/K at 100 °C, water 835.6 W/K at 30 °C, 38.1 W/(m² K), 65.9 m of 25 mm", Unit: "°C", Deviations: points([2]float64{oilOut, 60}), Claim: 0.1},
		{Quantity: "water out of the same, by the heat that the oil gives up", Why: "print rounding: half of 0.1", Source: "the same: 40.2 °C", Range: "the same", Unit: "°C", Deviations: points([2]float64{30 + 213.1*(100-oilOut)/835.6, 40.2}), Claim: 0.05},
		{Quantity: "heat of the pot, by the flow at the spout", Why: "arithmetic: the vapour alone, and a tenth for the pot that warms", Source: "latent heats of Perry's, 8th ed., Table 2-150 (ethanol) and IAPWS SR1-86 (water), unmixed", Range: "75.7 L/h of 78 to 62 %, no reflux, no losses", Unit: "%", Deviations: heat, Claim: 10},
		{Quantity: "condenser water, by the flow at the spout", Why: "arithmetic: the same latent heats, and what cools", Source: "the same, and heat capacities of Perry's, 7th ed., p. 2-184", Range: "75.7 L/h of 78 to 62 % at 20 °C, water from 14 to 50 °C", Unit: "%", Deviations: water, Claim: 3},
	}
	return s
}

// spoutHeat is the heat of the pot and the water of the condenser for a flow that
// is held, in percent off what the spirit's own vapour takes.
func (m *measurer) spoutHeat() (heat, water published.Deviations) {
	const litresPerH, hot, out = 75.7, 1e-9, 50.0
	w := m.must(fluid.MassFracFromABV(0.30))
	kg := 1.0 * fluid.Density(w, 20)
	pace := recipe.FractionPace{FlowM3S: litresPerH / 1000 / 3600}
	strength := func(abv float64) recipe.Cut { return recipe.Cut{Strength: recipe.Strength{Value: abv}} }
	r, err := still.SpiritRun(still.SpiritInput{
		Setting: still.Setting{
			Still:      recipe.Vessel{Name: "still", HoldsM3: 1.5, HeatsW: 250e3, LossW: hot, MetalKg: hot, Condenser: recipe.Condenser{WaterOutC: out, DistillateC: 20}},
			PressurePa: fluid.StandardPressurePa, AmbientC: 20, WaterC: 14,
		},
		LowWines: stream.Stream{EthanolKg: kg * w, WaterKg: kg * (1 - w), TempC: 20}, HeartsFrom: strength(0.78), HeartsTo: strength(0.62), Stop: recipe.Strength{Value: 0.619},
		Pace: recipe.Pace{Foreshots: pace, Heads: pace, Hearts: pace, Tails: pace},
	})
	if err != nil {
		m.fail(err)
		return
	}
	latent, cooling, inPot := 0.0, 0.0, 0.0
	for _, f := range r.Fractions {
		// kJ/kg at the boiling points, and kJ/(kg K) between them and 20 C.
		latent += 845*f.EthanolKg + 2256.5*f.WaterKg
		if mass := f.EthanolKg + f.WaterKg; mass > 0 {
			cooling += mass * fluid.HeatCapacity(f.EthanolKg/mass, 50) / 1000 * 60
		}
		inPot += f.HeatJ / 1000
	}
	got, want := percent(inPot, latent)
	heat = points([2]float64{got, want})
	got, want = percent(r.CoolingWaterM3, (latent+cooling)/(4.18*(out-14)*999.2))
	return heat, points([2]float64{got, want})
}

// stillRun boils a charge down to a strength at the spout, at 1 atm.
func (m *measurer) stillRun(abv, volumeM3, reflux, stop float64) still.Run {
	w := m.must(fluid.MassFracFromABV(abv))
	kg := volumeM3 * fluid.Density(w, 20)
	r, err := still.Strip(still.StripInput{
		Setting: still.Setting{
			Still:      recipe.Vessel{Name: "still", HoldsM3: 4, HeatsW: 250e3, Reflux: reflux},
			PressurePa: fluid.StandardPressurePa, AmbientC: 20, WaterC: 14,
		},
		Wash: stream.Stream{EthanolKg: kg * w, WaterKg: kg * (1 - w), TempC: 20}, Stop: recipe.Strength{Value: stop},
	})
	if err != nil {
		m.fail(err)
		return still.Run{Curve: []still.Point{{}}}
	}
	return r
}
