package still

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/fluid"
)

// What is in the pot, the time and the heats of a run by leaving and by the
// integrator at a hundredth of its tolerance, for weak and strong charges, at
// the ends of pressure and reflux: 1e-9.
func TestLeavingAgainstTheIntegrator(t *testing.T) {
	for _, pa := range []float64{50e3, 80e3, fluid.StandardPressurePa, 110e3} {
		for _, reflux := range []float64{0, 0.1, 0.3, MostReflux} {
			for _, x0 := range []float64{0.01, 0.09, 0.25, closedX} {
				for _, share := range []float64{0.99, 0.3, 1e-2, 1e-5} {
					p, from := bare(ethanolWater{pa}, reflux, 100, x0)
					require.True(t, p.closes(x0))
					p.lnPot0 = p.b.left.lnPot(from.u, x0)
					p.inertJK, p.lossW, p.tolerance, p.maxStep = 3e5, 1e3, tolerance/100, 0.1
					from = p.node(from.u, from.level)
					end := from.u + math.Log(share)
					want, _ := p.walk(from, end, nil, nil)
					to, reached := p.goTo(from, end, func(node) float64 { return -1 })
					require.False(t, reached)
					got := p.sum(from, to, nil)
					name := fmt.Sprintf("%g Pa, reflux %g, x %g to %g of it", pa, reflux, x0, share)
					assert.InEpsilon(t, want.pot, got.pot, 1e-9, name)
					assert.InEpsilon(t, want.timeS, got.timeS, 1e-9, name)
					assert.InDelta(t, want.headJ, got.headJ, 1e-9*(1+want.vapourJ), name)
					assert.InEpsilon(t, want.vapourJ, got.vapourJ, 1e-9, name)
				}
			}
		}
	}
}

// On either side of the strongest charge that leaving covers the runs are alike.
func TestStrongChargeJoins(t *testing.T) {
	in := secondRun(t)
	abvOf := func(x float64) float64 { return fluid.ABVFromMassFrac(fluid.MassFrac(x)) }
	run := func(x float64) Run {
		in.LowWines = spirits(t, 0.6, abvOf(x))
		in.HeartsFrom.VolumeM3, in.HeartsTo = 0.05, byABV(0.5)
		return spirit1(t, in)
	}
	below, above := run(closedX*(1-1e-7)), run(closedX*(1+1e-7))
	for i, f := range below.Fractions {
		assert.InDelta(t, f.EthanolKg, above.Fractions[i].EthanolKg, 2e-4, f.Name)
		assert.InEpsilon(t, f.EndS, above.Fractions[i].EndS, 1e-6, f.Name)
	}
}

// Feints found without the run are the run's.
func TestFeintsAreTheRuns(t *testing.T) {
	in := secondRun(t)
	for _, x := range []float64{0.02, 0.1, 0.2, 0.4} {
		in.LowWines = spirits(t, 0.6, x)
		b := in.boil()
		got, err := feints(in, b)
		require.NoError(t, err)
		want := spirit1(t, in).Feints()
		assert.InDelta(t, want.EthanolKg, got[0], 1e-12*in.LowWines.MassKg())
		assert.InDelta(t, want.WaterKg, got[1], 1e-12*in.LowWines.MassKg())
	}
}
