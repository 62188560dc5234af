package still

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/fluid"
)

// The exact solution of Rayleigh's equation for constant volatility a:
//
//	ln(W0/W) = [ln(x0/x) + a ln((1-x)/(1-x0))]/(a-1)
//
// The tolerance is what the series and the integrator claim.
func TestRayleighConstantVolatility(t *testing.T) {
	for _, a := range []float64{1.5, 2.5, 9, 20} {
		for _, x0 := range []float64{0.01, 0.1, 0.4, 0.8} {
			for _, share := range []float64{0.9, 0.5, 0.05, 1e-4} {
				x := x0 * share
				p, from := bare(ideal{a}, 0, 100, x0)
				end, _ := p.walk(from, math.Log(x), nil, nil)
				want := (math.Log(x0/x) + a*math.Log((1-x)/(1-x0))) / (a - 1)
				assert.InEpsilon(t, want, math.Log(100/end.pot), 1e-8, "a %g, x %g to %g", a, x0, x)
			}
		}
	}
}

// Differential condensation of a vapour, exact for constant volatility: with
// x* = the liquid in equilibrium with y, b = a-1,
//
//	ln(V0/V) = (a/b) [ln x* - ln(1-x*)/a - (b/a) ln(1 + b x*)] between the ends
//
// A volatility of 20 kept up to pure vapour is steeper than ethanol-water,
// which begins at 12.6 and falls; there the series is good to 3e-4 only.
func TestHeadConstantVolatility(t *testing.T) {
	for a, good := range map[float64]float64{1.5: 1e-6, 2.5: 1e-6, 9: 2e-6, 20: 3e-4} {
		f := func(x float64) float64 {
			b := a - 1
			return a / b * (math.Log(x) - math.Log(1-x)/a - b/a*math.Log(1+b*x))
		}
		for _, reflux := range []float64{0.01, 0.1, 0.3, 0.5} {
			b := newBoil(ideal{a}, reflux)
			for _, x := range []float64{1e-5, 0.001, 0.02, 0.1, 0.3, 0.7} {
				_, y := ideal{a}.bubble(x)
				// The head's own liquid, by bisection on the exact solution.
				lo, hi := x, 1.0
				for range 100 {
					mid := (lo + hi) / 2
					if f(mid)-f(x) < -math.Log(1-reflux) {
						lo = mid
					} else {
						hi = mid
					}
				}
				_, want := ideal{a}.bubble(lo)
				assert.InDelta(t, want, b.vapour(x), good*want, "a %g, reflux %g, x %g, pot's vapour %g", a, reflux, x, y)
			}
		}
	}
}

// The same for ethanol-water, against a fine integration of the condensation
// in equal steps of ln V, with fluid's own dew points and none of the series.
func TestHeadAgainstFineSteps(t *testing.T) {
	const pa = 90e3
	b := newBoil(ethanolWater{pa}, 0.3)
	for _, x := range []float64{0.002, 0.03, 0.1, 0.25, 0.6} {
		_, y := fluid.BubblePointC(x, pa)
		const steps = 60
		h := -math.Log1p(-0.3) / steps
		slope := func(y float64) float64 {
			_, liquid := fluid.DewPointC(y, pa)
			return y - liquid
		}
		for range steps { // classical Runge-Kutta
			k1 := slope(y)
			k2 := slope(y + h/2*k1)
			k3 := slope(y + h/2*k2)
			k4 := slope(y + h*k3)
			y += h / 6 * (k1 + 2*k2 + 2*k3 + k4)
		}
		assert.InEpsilon(t, y, b.vapour(x), 2e-7, "x %g", x)
	}
}

// The three ways to see a head, at 20 % returned (see the package's doc). The
// one used stands between, and all are stronger than no head. The weakest and
// the strongest are 2 to 3 points of strength apart at most.
func TestHeadLimits(t *testing.T) {
	const reflux = 0.2
	plain := newBoil(ethanolWater{fluid.StandardPressurePa}, 0)
	head := newBoil(ethanolWater{fluid.StandardPressurePa}, reflux)
	strength := func(y float64) float64 { return 100 * fluid.ABVFromMassFrac(fluid.MassFrac(y)) }
	for _, x := range []float64{0.005, 0.02, 0.05, 0.0925, 0.2} {
		y0 := plain.vapour(x)
		_, _, flash := fluid.PartialCondenser(y0, reflux, fluid.StandardPressurePa)
		counter := (y0 - reflux*x) / (1 - reflux) // condensate leaves in equilibrium with the pot's vapour
		got := head.vapour(x)
		t.Logf("pot %.1f %%: no head %.2f, flash %.2f, differential %.2f, countercurrent %.2f %% vol",
			strength(x), strength(y0), strength(flash), strength(got), strength(counter))
		assert.Less(t, y0, flash)
		assert.Less(t, flash, got)
		assert.Less(t, got, counter)
	}
}

// Perry's Chemical Engineers' Handbook, section 13, simple batch distillation:
// 100 mol of ethanol-water at x = 0.18 boiled to 0.06 at 1 atm. Printed:
// integral 0.358, W 70.0, mean xD 0.46, from a graphical treatment of
// equilibrium data.
func TestPerryBatchExample(t *testing.T) {
	run := func(m equilibrium) (integral, w, xD float64) {
		p, from := bare(m, 0, 100, 0.18)
		end, _ := p.walk(from, math.Log(0.06), nil, nil)
		return math.Log(100 / end.pot), end.pot, (18 - 0.06*end.pot) / (100 - end.pot)
	}
	// The NRTL model: 0.349, 70.5, 0.467, as an independent quadrature has it.
	// It differs from the print by 2.5 % in the
	// integral, 0.5 mol in W and 0.007 in xD. That is the model's own error in y,
	// up to 0.013 against Carey and Lewis: near x = 0.1 it has more ethanol.
	integral, w, xD := run(ethanolWater{fluid.StandardPressurePa})
	t.Logf("NRTL: integral %.4f, W %.2f, xD %.4f; printed 0.358, 70.0, 0.46", integral, w, xD)
	assert.InDelta(t, 0.349, integral, 0.0005)
	assert.InDelta(t, 70.5, w, 0.05)
	assert.InDelta(t, 0.467, xD, 0.0005)
	assert.InDelta(t, 0.358, integral, 0.010)
	assert.InDelta(t, 70.0, w, 0.6)
	assert.InDelta(t, 0.46, xD, 0.008)
}

// raoult is methanol-water, ideal, at 760 mmHg by Antoine's equation.
type raoult struct{}

func (raoult) bubble(x float64) (tempC, y float64) {
	methanol := func(t float64) float64 { return math.Pow(10, 8.081-1582/(t+239.7)) }
	water := func(t float64) float64 { return math.Pow(10, 8.071-1731/(t+233.4)) }
	lo, hi := 50.0, 110.0
	for range 80 {
		mid := (lo + hi) / 2
		if x*methanol(mid)+(1-x)*water(mid) < 760 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo, x * methanol(lo) / 760
}

// Open lecture notes, from memory: 75 mol of methanol-water at 0.82
// run until what is collected averages 0.90: D 62.5, W 12.5, x 0.42. Printed
// to 3 figures from a spreadsheet of coarse steps.
func TestMethanolWaterRaoult(t *testing.T) {
	p, from := bare(raoult{}, 0, 75, 0.82)
	average := func(n node) float64 {
		over := 75 - n.pot
		if over < 1e-9 {
			return -1
		}
		return 0.90 - (0.82*75-n.pot*n.x())/over
	}
	end, reached := p.walk(from, math.Log(1e-4), average, nil)
	require.True(t, reached)
	t.Logf("D %.2f, W %.2f, x %.4f; printed 62.5, 12.5, 0.42", 75-end.pot, end.pot, end.x())
	assert.InDelta(t, 62.5, 75-end.pot, 0.3)
	assert.InDelta(t, 12.5, end.pot, 0.3)
	assert.InDelta(t, 0.42, end.x(), 0.01)
	assert.InDelta(t, 0.90, (0.82*75-end.pot*end.x())/(75-end.pot), 1e-12, "the event is met exactly")
}

// The series follow fluid's equilibrium over the whole range and every
// pressure, to the accuracy that chebyshev.go claims.
func TestSeriesAgainstFluid(t *testing.T) {
	for _, pa := range []float64{50e3, 70e3, 90e3, fluid.StandardPressurePa, 110e3} {
		b := newBoil(ethanolWater{pa}, 0)
		for u := math.Log(1e-7); u < 0; u += 0.01 {
			x := math.Exp(u)
			tempC, y := fluid.BubblePointC(x, pa)
			st := b.at(x)
			require.InDelta(t, tempC, st.potC, 1e-7, "x %g", x)
			require.InDelta(t, y, st.y, 1e-8*y, "x %g", x)
			require.InDelta(t, y-x, st.equilibriumGap, 1e-8*y, "x %g", x)
			require.InDelta(t, liquidEnthalpy(x, tempC), st.potH, 0.01, "x %g", x)
			require.InDelta(t, vapourEnthalpy(y, tempC), st.overH, 0.01, "x %g", x)
		}
	}
}

// Twice the steps through the head, twice the steps through the run: the
// answer stays, to far more than the 4 digits that are asked of it.
func TestStepHalving(t *testing.T) {
	end := func(reflux, step, tol float64) node {
		p, from := bare(ethanolWater{fluid.StandardPressurePa}, reflux, 1000, 0.093)
		p.maxStep, p.tolerance = step, tol
		n, _ := p.walk(from, math.Log(1e-3), nil, nil)
		return n
	}
	for _, reflux := range []float64{0, 0.1, 0.5} {
		fine := end(reflux, 0.02, 1e-13)
		for _, c := range []struct{ step, tol, want float64 }{
			{maxStep, tolerance, 1e-9}, // what a run uses
			{0.5, 1, 1e-4},             // fixed steps, and half of them
			{0.25, 1, 1e-5},
			{0.125, 1, 1e-6},
		} {
			n := end(reflux, c.step, c.tol)
			assert.InEpsilon(t, fine.pot, n.pot, c.want, "reflux %g step %g", reflux, c.step)
			assert.InEpsilon(t, fine.timeS, n.timeS, c.want, "reflux %g step %g", reflux, c.step)
		}
	}
}
