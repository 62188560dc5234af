package starch_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/starch"
	"newmake/compile/matter/starch/starchtest"
	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

func starchStream(s *starch.State, e *starch.Enzymes) stream.Stream {
	var w stream.Stream
	s.Into(&w, e)
	return w
}

func TestConstantsFromNamesWhatIsMissing(t *testing.T) {
	_, err := starch.ConstantsFrom(nil)
	require.ErrorContains(t, err, "model mash")
	m := starchtest.Model(t)
	delete(m.Values, "gel-rate")
	delete(m.Values, "beta-half-life")
	_, err = starch.ConstantsFrom(m)
	require.EqualError(t, err, "model mash lacks gel-rate, beta-half-life")
}

// alive is what is left of alpha- and beta-amylase after minutes at tempC.
func alive(t *testing.T, tempC, minutes float64) (alpha, beta, limit float64) {
	k := constants(t)
	a, b, l := k.DeathRates(tempC)
	return math.Exp(-a * 60 * minutes), math.Exp(-b * 60 * minutes), math.Exp(-l * 60 * minutes)
}

// Muller, Brewing Research Foundation 1991, a mash of 2.5 L/kg at 65 C, as
// quoted in a public posting: beta-amylase halves about every 10 min, about
// 83 % of it destroyed after 30 min and 92 % after 60; more than half of the
// alpha-amylase is alive after 60 min. First order from 10 min gives 87.5 %
// and 98.4 %: the tail that he measured is slower than first order, so the
// 60 min figure is not met and is held loosely here. Alpha-amylase is
// gone above 80 C (common practice).
func TestHalfLives(t *testing.T) {
	_, beta10, _ := alive(t, 65, 10)
	assert.InDelta(t, 0.5, beta10, 1e-9)
	_, beta30, _ := alive(t, 65, 30)
	assert.InDelta(t, 1-0.83, beta30, 0.05)
	alpha60, beta60, _ := alive(t, 65, 60)
	assert.InDelta(t, 1-0.92, beta60, 0.07)
	assert.Greater(t, alpha60, 0.5)

	alpha, _, _ := alive(t, 80, 20)
	assert.Less(t, alpha, 0.01)
	alpha, _, _ = alive(t, 85, 10)
	assert.Less(t, alpha, 0.01)
	// Beta-amylase stands at 55-60 C, its working range (common practice).
	_, beta, _ := alive(t, 60, 60)
	assert.Greater(t, beta, 0.5)
}

// Brandam et al., Biochem. Eng. J. 13 (2003) 43, constants from memory. Alpha
// follows them; beta does not: they give 4 min at 65 C, and the stock has
// Muller's 10, with Brandam's activation energy.
func TestDeathAgainstBrandam(t *testing.T) {
	k := constants(t)
	for _, tempC := range []float64{55, 60, 65, 70, 75, 80} {
		a, b, _ := k.DeathRates(tempC)
		rt := 8.314462618 * (tempC + 273.15)
		assert.InEpsilon(t, 6.9e30*math.Exp(-224.2e3/rt), a, 0.02, "alpha at %g C", tempC)
		assert.InEpsilon(t, 4.2/10, b/(7.6e60*math.Exp(-410.7e3/rt)), 0.02, "beta at %g C", tempC)
	}
}

// The same paper's gelatinization of malt above its split at 60 C. Below, the
// constants as remembered do not meet those above at 60 C (0.0014 against
// 0.0032 /s); the code meets the upper ones, to be continuous.
func TestGelatinizationAgainstBrandam(t *testing.T) {
	k := constants(t)
	malt := starch.Granules{LowC: 52, HighC: 65}
	for _, tempC := range []float64{60, 62, 65, 70, 75} {
		want := 3.1e14 * math.Exp(-108.3e3/(8.314462618*(tempC+273.15)))
		assert.InEpsilon(t, want, k.GelRateAt(&malt, tempC), 0.04, "%g C", tempC)
	}
	assert.InEpsilon(t, k.GelRateAt(&malt, 59.8-1e-9), k.GelRateAt(&malt, 59.8), 1e-6, "continuous at the split")
}

func TestGelatinizableRisesFromNothingToAll(t *testing.T) {
	k := constants(t)
	corn := starch.Granules{LowC: 62, HighC: 75}
	last := 0.0
	for tempC := 55.0; tempC <= 80; tempC += 0.25 {
		f := k.Gelatinizable(&corn, tempC)
		assert.GreaterOrEqual(t, f, last)
		last = f
	}
	assert.Zero(t, k.Gelatinizable(&corn, 62))
	assert.InDelta(t, 0.5, k.Gelatinizable(&corn, 62+13*k.GelDonePosition/2), 1e-12)
	assert.Equal(t, 1.0, k.Gelatinizable(&corn, 75))
}

// Windows of pH (common practice): at their ends an enzyme works at 0.9 of its best
// or more, and in a soured wash at much less.
func TestAcidity(t *testing.T) {
	k := constants(t)
	rate := func(pH float64) float64 { return maltoseIn(k, pH) }
	best := rate(5.3)
	for _, pH := range []float64{5.0, 5.6} {
		assert.Greater(t, rate(pH)/best, 0.85)
	}
	assert.Less(t, rate(4.0)/best, 0.6)
	assert.Less(t, rate(7.0)/best, 0.6)
}

// maltoseIn is the maltose from straight dextrin by beta-amylase in a second.
func maltoseIn(k starch.Constants, pH float64) float64 {
	s := starch.State{WaterKg: 1000, DextrinKg: 100}
	e := starch.Enzymes{Beta: 20000}
	k.Run(&s, &e, 63, pH, 1)
	return s.MaltoseKg
}

// What the stock's own lines say of the middle doses (stdlib/enzyme.batch), in
// 3.5 L of liquor a kg of grain, at the pH where each works best.
func TestPreparationsDoWhatTheStockSays(t *testing.T) {
	k := constants(t)
	split := func(name string, dose, tempC, minutes float64) starch.State {
		z := starchtest.Enzyme(t, name)
		s := starch.State{WaterKg: 3500, GelKg: 600}
		if z.Does == recipe.Saccharifying {
			s = starch.State{WaterKg: 3500, DextrinKg: 600}
		}
		var e starch.Enzymes
		e.Dose(z, dose*1000)
		for range 100 {
			k.Run(&s, &e, tempC, (z.PHLow+z.PHHigh)/2, minutes*60/100)
		}
		return s
	}
	assert.InDelta(t, 0.01, split("alpha-amylase", 0.0004, 88, 17).GelKg/600, 0.003)
	assert.InDelta(t, 0.01, split("alpha-amylase", 0.0004, 82, 22).GelKg/600, 0.003)
	assert.InDelta(t, 0.5, split("glucoamylase", 0.00065, 31, 360).DextrinKg/600, 0.05)
	assert.InDelta(t, 0.5, split("glucoamylase", 0.00065, 60, 78).DextrinKg/600, 0.05)
}

// More of an enzyme never makes less sugar.
func TestMoreEnzymeMoreSugar(t *testing.T) {
	k := constants(t)
	sugar := func(change func(*starch.Enzymes)) float64 {
		s, e := mixed(t)
		change(&e)
		for range 180 {
			k.Run(&s, &e, 63, 5.3, 20)
		}
		return s.FermentableKg()
	}
	base := sugar(func(*starch.Enzymes) {})
	assert.Greater(t, sugar(func(e *starch.Enzymes) { e.Alpha *= 1.1 }), base)
	assert.Greater(t, sugar(func(e *starch.Enzymes) { e.Beta *= 1.1 }), base)
	assert.Greater(t, sugar(func(e *starch.Enzymes) { e.Limit *= 1.1 }), base)
	assert.Greater(t, sugar(func(e *starch.Enzymes) { e.Added[1].Activity *= 1.1 }), base)
}
