package compile_test

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/matter/fluid"
	"newmake/compile/plan"
	"newmake/compile/stage/gauge"
	"newmake/lang/check"
	"newmake/lang/recipe"
)

func demo(t *testing.T, name string, units recipe.System) *plan.Plan {
	t.Helper()
	h, err := check.Load(filepath.Join("..", "examples", "lantern-hollow"), check.Options{})
	require.NoError(t, err)
	b, list := h.Batch(name)
	require.NotNil(t, b, list.Error())
	own := *b
	own.Units = units
	p, computed := compile.Compile(&own)
	require.NotNil(t, p, computed.Error())
	return p
}

// The card is the reduction, step by step: its water is all of it, its alcohol
// stays, and what the hydrometer shows leads back to the true strength by the
// gauging tables' own direction (fluid.TrueProof follows 27 CFR part 30, Table
// 1; gauge.TrueABV the OIML alcoholometric tables).
func TestProofingCard(t *testing.T) {
	for _, units := range []recipe.System{recipe.US, recipe.SI} {
		p := demo(t, "Ferry Landing", units)
		c := p.Card
		require.NotNil(t, c)
		first, last := c.Steps[0], c.Steps[len(c.Steps)-1]
		assert.Zero(t, first.WaterScaleKg)
		assert.Equal(t, p.Reduction.From, first.Gives)
		assert.Equal(t, p.Reduction.To, last.Gives)
		assert.InDelta(t, p.Reduction.WaterL, last.WaterL, 0.011)
		assert.InDelta(t, p.Reduction.WaterScaleKg, last.WaterScaleKg, 0.011)
		assert.InDelta(t, c.RoomC+p.Reduction.TempRiseC, last.MixedC, 0.11)
		added := 0.0
		for i, s := range c.Steps {
			added += s.AddScaleKg
			assert.InDelta(t, s.WaterScaleKg, added, 0.05)
			// A gallon of water at 60 F weighs 8.32823 lb in air (27 CFR 30.41).
			assert.InDelta(t, s.WaterGallons*8.32823*poundKg, s.WaterScaleKg, 0.01)
			assert.InDelta(t, first.Gives.PureL, s.Gives.PureL, 0.011)
			massKg := s.WaterScaleKg * 1.00105 // buoyancy in air of 1.2 kg/m3 (OIML R 111)
			assert.InDelta(t, first.Gives.MassKg+massKg, s.Gives.MassKg, 0.02)
			assert.InDelta(t, s.Gives.MassKg*(1-0.00115), s.GivesScaleKg, 0.03)
			if i > 0 {
				assert.Less(t, s.Gives.Proof, c.Steps[i-1].Gives.Proof)
			}
			leadsBack(t, s)
		}
	}
}

const poundKg = 0.45359237

func leadsBack(t *testing.T, s plan.CardStep) {
	t.Helper()
	require.Len(t, s.Shows, 7)
	for _, r := range s.Shows {
		proof, err := fluid.TrueProof(r.Proof, r.TempC*1.8+32) // 27 CFR 30, Table 1
		require.NoError(t, err)
		assert.InDelta(t, s.Gives.Proof, proof, 0.11, "at %g C", r.TempC) // what is given is to a tenth
		abv, err := gauge.TrueABV(r.AbvPct/100, r.TempC)
		require.NoError(t, err)
		assert.InDelta(t, s.Gives.AbvPct, 100*abv, 0.06, "at %g C", r.TempC)
	}
}

// A hydrometer says the true strength at the temperature that it is marked for.
func TestCardAtReference(t *testing.T) {
	us, si := demo(t, "Ferry Landing", recipe.US).Card, demo(t, "Ferry Landing", recipe.SI).Card
	for i := range us.Steps {
		assert.InDelta(t, us.Steps[i].Gives.Proof, us.Steps[i].Shows[2].Proof, 0.051, "60 F")
		assert.InDelta(t, si.Steps[i].Gives.AbvPct, si.Steps[i].Shows[4].AbvPct, 0.051, "20 C")
	}
}

// The last water is that which the gauge takes for the same spirit.
func TestTrims(t *testing.T) {
	p := demo(t, "Ferry Landing", recipe.US)
	last := p.Card.Steps[len(p.Card.Steps)-1].Gives
	for _, trim := range p.Card.Trims {
		// Water into spirit: the proof falls about as the volume grows.
		rough := last.VolumeL * trim.Over.Proof / last.Proof
		assert.InEpsilon(t, rough, trim.WaterL, 0.10, "%g proof over", trim.Over.Proof)
	}
}

func TestWindowsAndMarks(t *testing.T) {
	p := demo(t, "Ferry Landing", recipe.US)
	var names []string
	for _, w := range p.Mash.Windows {
		names = append(names, w.Name)
		assert.Less(t, w.LowC, w.HighC)
		assert.Less(t, w.HighC, w.GoneC)
	}
	assert.Equal(t, []string{"alpha-amylase", "beta-amylase", "alpha-amylase"}, names)
	for i, s := range p.Mash.Steps[1:] {
		before := p.Mash.Steps[i]
		assert.InDelta(t, before.StartMin+before.Minutes, s.StartMin, 0.11)
	}
	f := p.Spirit.Fractions
	for i := range f[1:] {
		assert.Equal(t, f[i].EndOverL, f[i+1].StartOverL)
	}
	end := p.Spirit.Curve[len(p.Spirit.Curve)-1]
	assert.InDelta(t, end.OverL, f[len(f)-1].EndOverL, 0.05)
}
