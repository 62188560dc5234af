package still

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

// A search finds its zero, and in few steps: it is made for each cut of each run.
func TestFallToIsFoundInFewSteps(t *testing.T) {
	for _, c := range []struct {
		what string
		most int // evaluations, for all five zeros
		f    func(x, at float64) float64
	}{
		{"a straight line", 106, func(x, at float64) float64 { return at - x }},
		{"a line in ln x", 25, func(x, at float64) float64 { return math.Log(at / x) }},
		{"steep at one end", 201, func(x, at float64) float64 { return 1/x - 1/at }},
	} {
		n := 0
		for _, at := range []float64{0.6, 0.3, 0.1, 0.01, 1e-3} {
			u := fallTo(0.7, func(x float64) float64 { n++; return c.f(x, at) })
			assert.InEpsilon(t, at, math.Exp(u), 1e-9, c.what)
		}
		assert.LessOrEqual(t, n, c.most, c.what)
	}
	assert.Equal(t, math.Inf(1), fallTo(0.5, func(x float64) float64 { return 0.5 - x }), "it is there already")
	assert.Equal(t, math.Inf(-1), fallTo(0.5, func(x float64) float64 { return -x }), "it never is")
	assert.Equal(t, math.Inf(-1), fallTo(leastX, func(x float64) float64 { return -1 }), "nowhere to fall to")
}

// What is boiled ahead is what a text may ask for.
func TestWhatBoils(t *testing.T) {
	for _, c := range []struct {
		pressurePa, reflux float64
		want               bool
	}{
		{fluid.MinPressurePa, 0, true}, {fluid.MinPressurePa - 1, 0, false}, {fluid.MaxPressurePa, MostReflux, true}, {fluid.MaxPressurePa + 1, 0, false},
		{101325, MostReflux, true}, {101325, MostReflux + 1e-6, false}, {101325, -1e-6, false},
	} {
		s := setting(1, 10e3, c.reflux)
		s.PressurePa = c.pressurePa
		assert.Equal(t, c.want, s.boils(), "%v", c)
	}
}

// Where the house does not say, a preheater passes 800 W/(m2 K) and brings the wash to 65 C
// at most.
func TestPreheaterThatIsNotDescribed(t *testing.T) {
	wash, ale := washFor(20)
	heats := func(p recipe.Preheater) Preheat {
		return Preheated(PreheatInput{Wash: wash, PotAle: ale, Preheater: p, LastsS: 3600})
	}
	assert.Equal(t, heats(recipe.Preheater{AreaM2: 0.5, WM2K: 800, WashC: 65}).ToC, heats(recipe.Preheater{AreaM2: 0.5}).ToC)
	assert.Less(t, heats(recipe.Preheater{AreaM2: 0.5}).ToC, 64.0, "its surface is what limits it")
	assert.InDelta(t, 65, heats(recipe.Preheater{AreaM2: 50}).ToC, 1e-9)
	assert.Zero(t, heats(recipe.Preheater{AreaM2: 50, WashC: 20}).HeatJ, "no warmer than it is")
	assert.Zero(t, Preheated(PreheatInput{Wash: ale, PotAle: ale, Preheater: recipe.Preheater{AreaM2: 50, WashC: 100}, LastsS: 3600}).HeatJ, "no pot ale that is hotter")
	assert.Zero(t, Preheated(PreheatInput{Wash: wash, PotAle: ale, Preheater: recipe.Preheater{AreaM2: 50}}).HeatJ, "it lasts no time")
	assert.Zero(t, heatCapacity(stream.Stream{}, 20, 30))
}

// The uncertainty of the volatilities may be nothing, and is less than tenfold.
func TestUncertaintyOfVolatilities(t *testing.T) {
	for u, ok := range map[float64]bool{0: true, 9.99: true, 10: false, -0.01: false} {
		_, err := ReadVolatilities(withValues(t, map[string]float64{"uncertainty": u}))
		assert.Equal(t, ok, err == nil, "%g: %v", u, err)
	}
}
