package mash

import (
	"testing"

	"newmake/compile/matter/starch"
	"newmake/compile/matter/starch/starchtest"
	"newmake/lang/recipe"
)

const (
	galM3 = 3.785411784e-3
	lbKg  = 0.45359237
)

func fahrenheit(f float64) float64 { return (f - 32) / 1.8 }

// plant is the cooker of the invented house Lantern Hollow: 520 gal, 170 kW,
// 120 kW of cooling.
func plant(t testing.TB) Input {
	return Input{
		Cooker:     recipe.Vessel{Kind: recipe.Cooker, HoldsM3: 520 * galM3, HeatsW: 170e3, CoolsW: 120e3},
		PressurePa: 97200, AmbientC: 20, WaterC: fahrenheit(58), HardnessPPM: 90, BoilerW: 500e3,
		Model: starchtest.Model(t),
	}
}

func bill(t testing.TB, names []string, kg []float64) recipe.Bill {
	var b recipe.Bill
	for i, n := range names {
		b.Lines = append(b.Lines, recipe.BillLine{Grain: starchtest.Grain(t, n), MassKg: kg[i]})
		b.TotalKg += kg[i]
	}
	for i := range b.Lines {
		b.Lines[i].Share = b.Lines[i].MassKg / b.TotalKg
	}
	return b
}

func water(gal, f float64) recipe.MashStep {
	return recipe.MashStep{Verb: recipe.MashWater, VolumeM3: gal * galM3, TempC: fahrenheit(f)}
}
func backset(gal, f float64) recipe.MashStep {
	return recipe.MashStep{Verb: recipe.MashBackset, VolumeM3: gal * galM3, TempC: fahrenheit(f)}
}
func add(lines ...int) recipe.MashStep {
	return recipe.MashStep{Verb: recipe.MashAdd, Grains: lines}
}
func heat(f float64) recipe.MashStep {
	return recipe.MashStep{Verb: recipe.MashHeat, TempC: fahrenheit(f)}
}
func cool(f float64) recipe.MashStep {
	return recipe.MashStep{Verb: recipe.MashCool, TempC: fahrenheit(f)}
}
func rest(min float64) recipe.MashStep {
	return recipe.MashStep{Verb: recipe.MashRest, DurationS: 60 * min}
}
func drain(min float64) recipe.MashStep {
	return recipe.MashStep{Verb: recipe.MashDrain, DurationS: 60 * min}
}
func dose(z *recipe.Enzyme, kg float64) recipe.MashStep {
	return recipe.MashStep{Verb: recipe.MashDose, Enzyme: z, MassKg: kg}
}

// bourbon is the oated bourbon of design.md section 1.
func bourbon(t testing.TB) Input {
	in := plant(t)
	const kg = 940 * lbKg
	in.Bill = bill(t, []string{"corn", "oats", "rye", "distillers-malt"}, []float64{.68 * kg, .10 * kg, .08 * kg, .14 * kg})
	amylase := starchtest.Enzyme(t, "alpha-amylase")
	in.Steps = []recipe.MashStep{
		water(330, 58), backset(330*.15/.85, 160), add(0), dose(amylase, .0004*kg), heat(190), rest(45),
		cool(158), add(1, 2), rest(20), cool(148), add(3), rest(60), cool(78),
	}
	return in
}

// maltWhisky is two waters on two-row malt, lautered, the first worts cooled as
// they come, so that their enzymes live.
func maltWhisky(t testing.TB) Input {
	in := plant(t)
	in.Bill = bill(t, []string{"two-row-malt"}, []float64{425})
	in.Steps = []recipe.MashStep{
		{Verb: recipe.MashWater, VolumeM3: 1.6, TempC: 69}, add(0), rest(60), drain(45), cool(66),
		{Verb: recipe.MashWater, VolumeM3: 0.4, TempC: 75}, rest(15), drain(30), cool(66),
	}
	return in
}

// must runs a mash that has to work.
func must(t testing.TB, in Input) Result {
	t.Helper()
	r, err := Run(in)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// afterFerment is what enzymes still make of the dextrins in the fermenter,
// without the yeast: sugars at the end of hours at tempC, pH falling on a line
// from the mash's to 4.0 in 48 h and staying (5.4 to 4.0 or below in the lactic
// phase, common practice).
func afterFerment(t testing.TB, r Result, hours, tempC float64) starch.State {
	t.Helper()
	k, err := starch.ConstantsFrom(starchtest.Model(t))
	if err != nil {
		t.Fatal(err)
	}
	e := r.Enzymes.Clone()
	s := starch.StateOf(r.Out, e)
	for h := 0.0; h < hours; h += 0.25 {
		pH := r.PH + (4.0-r.PH)*min(1, h/48)
		k.Run(&s, &e, tempC, pH, 900)
	}
	return s
}

// pureAlcoholL is the ethanol of all sugars at a share of the stoichiometric
// yield, in litres at 20 C.
func pureAlcoholL(s starch.State, yield float64) float64 {
	glucose := s.GlucoseKg + s.MaltoseKg*starch.PerGlucose/starch.PerMaltose +
		s.MaltotrioseKg*starch.PerGlucose/starch.PerMaltotriose
	return yield * 0.5114 * glucose / 0.78924
}
