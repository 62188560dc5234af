package still

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/fluid"
	"newmake/lang/recipe"
)

// Each kind of cut is met, not overshot.
func TestCutsAreMet(t *testing.T) {
	in := secondRun(t)
	in.ForeshotsM3 = 0.00189
	pure := in.LowWines.PureAlcoholM3()

	in.HeartsFrom, in.HeartsTo = byABV(0.755), byABV(0.635)
	r := spirit1(t, in)
	require.Empty(t, r.Problems)
	assert.InDelta(t, 0.00189, r.Fraction(Foreshots).VolumeM3, 1e-14)
	assert.InDelta(t, 0.755, r.Fraction(Hearts).StartABV, 1e-12)
	assert.InDelta(t, 0.635, r.Fraction(Hearts).EndABV, 1e-12)
	assert.InDelta(t, 0.02, r.Fraction(Tails).EndABV, 1e-12)

	// Proof stands at 60 F: 127 proof is not 63.5 % vol at 20 C.
	in.HeartsTo = recipe.Cut{Strength: recipe.Strength{Value: 127.0 / 200, Basis: recipe.Proof}}
	r = spirit1(t, in)
	w, err := fluid.MassFracFromProof(127)
	require.NoError(t, err)
	assert.InDelta(t, fluid.ABVFromMassFrac(w), r.Fraction(Hearts).EndABV, 1e-12)
	assert.NotEqual(t, 0.635, r.Fraction(Hearts).EndABV)

	in.HeartsTo = recipe.Cut{Strength: recipe.Strength{Value: 0.55, Basis: recipe.ABW}}
	r = spirit1(t, in)
	assert.InDelta(t, fluid.ABVFromMassFrac(0.55), r.Fraction(Hearts).EndABV, 1e-12)

	in.HeartsFrom = recipe.Cut{By: recipe.ByVolume, VolumeM3: 0.012}
	in.HeartsTo = recipe.Cut{By: recipe.ByVolume, VolumeM3: 0.1}
	r = spirit1(t, in)
	require.Empty(t, r.Problems)
	before := r.Fraction(Foreshots).VolumeM3 + r.Fraction(Heads).VolumeM3
	assert.InDelta(t, 0.012, before, 1e-14, "since the first drop, foreshots and all")
	assert.InDelta(t, 0.1, before+r.Fraction(Hearts).VolumeM3, 1e-13)

	// However little lies between two cuts, the run goes on behind it.
	hearts := r.Fraction(Hearts).VolumeM3
	for _, heads := range []float64{1e-5, 1e-7, 1e-8, 1e-9, 1e-11} {
		in.ForeshotsM3 = 0.012 - heads
		r = spirit1(t, in)
		require.Empty(t, r.Problems, "%g m3 of heads", heads)
		assert.InDelta(t, heads, r.Fraction(Heads).VolumeM3, 1e-13)
		assert.InDelta(t, hearts, r.Fraction(Hearts).VolumeM3, 1e-12)
	}
	in.ForeshotsM3 = 0.00189

	// Gallons are gallons at 60 F: what has run then measures the written volume
	// there, and a little more at 20 C.
	in.GaugeC = fluid.SixtyF
	in.ForeshotsM3 = 0.002
	r = spirit1(t, in)
	require.Empty(t, r.Problems)
	at60 := func(f Fraction) float64 { return spiritM3(f.EthanolKg, f.WaterKg, fluid.SixtyF) }
	assert.InDelta(t, 0.002, at60(r.Fraction(Foreshots)), 1e-14)
	assert.InDelta(t, 0.012, at60(r.Fraction(Foreshots))+at60(r.Fraction(Heads)), 1e-14)
	assert.InDelta(t, 0.1, at60(r.Fraction(Foreshots))+at60(r.Fraction(Heads))+at60(r.Fraction(Hearts)), 1e-13)
	assert.InDelta(t, 1.004, r.Fraction(Foreshots).VolumeM3/0.002, 0.001)
	in.GaugeC = 0

	in.HeartsFrom = recipe.Cut{By: recipe.ByShare, Share: 0.05}
	in.HeartsTo = recipe.Cut{By: recipe.ByShare, Share: 0.70}
	r = spirit1(t, in)
	require.Empty(t, r.Problems)
	before = r.Fraction(Foreshots).PureAlcoholM3() + r.Fraction(Heads).PureAlcoholM3()
	assert.InDelta(t, 0.05, before/pure, 1e-13)
	assert.InDelta(t, 0.70, (before+r.Fraction(Hearts).PureAlcoholM3())/pure, 1e-13)

	in.Pace = recipe.Pace{Hearts: recipe.FractionPace{FlowM3S: 70e-3 / 3600}}
	in.HeartsFrom = recipe.Cut{By: recipe.ByTime, TimeS: 20 * 60}
	in.HeartsTo = recipe.Cut{By: recipe.ByTime, TimeS: 90 * 60}
	r = spirit1(t, in)
	require.Empty(t, r.Problems)
	assert.InDelta(t, 20*60, r.Fraction(Hearts).StartS-r.HeatUpS, 1e-6, "since the first drop, foreshots and all")
	assert.InDelta(t, 90*60, r.Fraction(Hearts).EndS-r.HeatUpS, 1e-6)
	in.Pace = recipe.Pace{}

	in.HeartsFrom = recipe.Cut{By: recipe.ByVapourTemp, TempC: 86}
	in.HeartsTo = recipe.Cut{By: recipe.ByVapourTemp, TempC: 92}
	r = spirit1(t, in)
	require.Empty(t, r.Problems)
	for _, p := range r.Curve {
		switch {
		case math.Abs(p.TimeS-r.Fraction(Hearts).StartS) < 1e-6:
			assert.InDelta(t, 86, p.VapourC, 1e-6)
		case math.Abs(p.TimeS-r.Fraction(Hearts).EndS) < 1e-6:
			assert.InDelta(t, 92, p.VapourC, 1e-6)
		}
	}
}

// What is collected, boiled at its own strength, is at the temperature of the
// vapour it came from: no cut by temperature can be off by the wrong scale.
func TestVapourTemperatureIsDewPoint(t *testing.T) {
	r := spirit1(t, secondRun(t))
	for _, p := range r.Curve {
		w, err := fluid.MassFracFromABV(p.ABV)
		require.NoError(t, err)
		dewC, _ := fluid.DewPointC(fluid.MoleFrac(w), fluid.StandardPressurePa)
		require.InDelta(t, dewC, p.VapourC, 1e-5)
	}
}

func TestProblems(t *testing.T) {
	byVolume := func(m3 float64) recipe.Cut { return recipe.Cut{By: recipe.ByVolume, VolumeM3: m3} }
	for _, c := range []struct {
		name   string
		change func(*SpiritInput)
		want   []Problem
		empty  []string // fractions in which nothing is
	}{
		{"as written", func(in *SpiritInput) {}, nil, nil},
		{"hearts stronger than the run", func(in *SpiritInput) { in.HeartsFrom = byABV(0.85) },
			[]Problem{ProblemHeartsWeak}, []string{Heads}},
		{"hearts beyond the azeotrope", func(in *SpiritInput) { in.HeartsFrom = byABV(0.99) },
			[]Problem{ProblemHeartsWeak}, []string{Heads}},
		{"hearts cooler than the run", func(in *SpiritInput) { in.HeartsFrom = recipe.Cut{By: recipe.ByVapourTemp, TempC: 60} },
			[]Problem{ProblemHeartsWeak}, []string{Heads}},
		{"hearts begin in the foreshots", func(in *SpiritInput) { in.ForeshotsM3, in.HeartsFrom = 0.1, byABV(0.755) },
			[]Problem{ProblemHeartsFromPassed}, []string{Heads}},
		{"the same by volume", func(in *SpiritInput) { in.ForeshotsM3, in.HeartsFrom = 0.02, byVolume(0.01) },
			[]Problem{ProblemHeartsFromPassed}, []string{Heads}},
		{"the same by share", func(in *SpiritInput) { in.HeartsFrom = recipe.Cut{By: recipe.ByShare, Share: 0.001} },
			[]Problem{ProblemHeartsFromPassed}, []string{Heads}},
		{"cuts crossed", func(in *SpiritInput) { in.HeartsFrom, in.HeartsTo = byABV(0.60), byABV(0.70) },
			[]Problem{ProblemCutsCrossed}, []string{Hearts}},
		{"hearts never begin", func(in *SpiritInput) { in.HeartsFrom = byABV(0.01) },
			[]Problem{ProblemHeartsFromNotReached}, []string{Hearts, Tails}},
		{"hearts begin hotter than it gets", func(in *SpiritInput) { in.HeartsFrom = recipe.Cut{By: recipe.ByVapourTemp, TempC: 140} },
			[]Problem{ProblemHeartsFromNotReached}, []string{Hearts, Tails}},
		{"hearts begin after more than there is", func(in *SpiritInput) { in.HeartsFrom = byVolume(5) },
			[]Problem{ProblemHeartsFromNotReached}, []string{Hearts, Tails}},
		{"hearts never end", func(in *SpiritInput) { in.HeartsTo = byVolume(5) },
			[]Problem{ProblemHeartsToNotReached}, []string{Tails}},
		{"hearts end below the stop", func(in *SpiritInput) { in.HeartsTo = byABV(0.01) },
			[]Problem{ProblemHeartsToNotReached}, []string{Tails}},
		{"all of the alcohol", func(in *SpiritInput) { in.HeartsTo = recipe.Cut{By: recipe.ByShare, Share: 1} },
			[]Problem{ProblemHeartsToNotReached}, []string{Tails}},
		{"foreshots of more than there is", func(in *SpiritInput) { in.ForeshotsM3 = 3 },
			[]Problem{ProblemForeshotsNotReached}, []string{Heads, Hearts, Tails}},
		{"no foreshots, no heads", func(in *SpiritInput) { in.ForeshotsM3, in.HeartsFrom = 0, byVolume(0) },
			[]Problem{ProblemHeartsFromPassed}, []string{Foreshots, Heads}},
		{"water", func(in *SpiritInput) { in.LowWines.EthanolKg = 0 },
			[]Problem{ProblemNoDistillate}, []string{Foreshots, Heads, Hearts, Tails}},
		{"weaker than the stop", func(in *SpiritInput) { in.Stop = abv(0.9) },
			[]Problem{ProblemNoDistillate}, []string{Foreshots, Heads, Hearts, Tails}},
		{"no stop", func(in *SpiritInput) { in.Stop = abv(0) },
			[]Problem{ProblemStopNotReached}, nil},
	} {
		in := secondRun(t)
		c.change(&in)
		r := spirit1(t, in)
		holds(t, in.Setting, r)
		assert.Equal(t, c.want, r.Problems, c.name)
		require.Len(t, r.Fractions, 4, c.name)
		for i, name := range []string{Foreshots, Heads, Hearts, Tails} {
			assert.Equal(t, name, r.Fractions[i].Name)
		}
		for _, name := range c.empty {
			assert.Zero(t, r.Fraction(name).VolumeM3, "%s: %s", c.name, name)
		}
		assert.GreaterOrEqual(t, r.DurationS, r.HeatUpS, c.name)
	}
}

// A pot is not boiled dry, whatever the stop.
func TestPotIsNotBoiledDry(t *testing.T) {
	in := secondRun(t)
	in.LowWines, in.Stop = spirits(t, 0.6, 0.9), abv(0.001)
	r := spirit1(t, in)
	holds(t, in.Setting, r)
	assert.Contains(t, r.Problems, ProblemStopNotReached)
	moles := r.Residue.EthanolKg/fluid.MolarMassEthanol + r.Residue.WaterKg/fluid.MolarMassWater
	all := r.Charge.EthanolKg/fluid.MolarMassEthanol + r.Charge.WaterKg/fluid.MolarMassWater
	assert.InDelta(t, leastLeft, moles/all, 1e-9)
}

// No input makes a run panic, loop, or lose anything.
func FuzzSpiritRun(f *testing.F) {
	f.Add(0.25, 0.1, 0.002, 0.74, 0.62, 0.02, uint8(0), uint8(0), 101325.0)
	f.Add(0.9, 0.5, 0.0, 0.01, 0.9, 0.0, uint8(1), uint8(3), 60000.0)
	f.Add(0.0001, 0.0, 1.0, 80.0, 99.0, 1e-9, uint8(2), uint8(2), 84000.0)
	f.Fuzz(func(t *testing.T, v, reflux, foreshots, from, to, stop float64, by, by2 uint8, pa float64) {
		if !(v >= 0 && v <= 1) {
			return
		}
		cut := func(by uint8, v float64) recipe.Cut {
			return recipe.Cut{By: recipe.CutBy(by % 4), Strength: abv(v), VolumeM3: v, TempC: v, Share: v}
		}
		in := secondRun(t)
		in.LowWines = spirits(t, 0.6, v)
		in.Still.Reflux, in.ForeshotsM3, in.PressurePa, in.Stop = reflux, foreshots, pa, abv(stop)
		in.HeartsFrom, in.HeartsTo = cut(by, from), cut(by2, to)
		r, err := SpiritRun(in)
		if err != nil {
			return
		}
		holds(t, in.Setting, r)
		if _, _, err := Steady(in); err != nil {
			t.Fatal(err)
		}
	})
}
