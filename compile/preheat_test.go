package compile

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// The pot ale of a charge heats the next one; that of a batch before only where it is
// kept hot, and is there. What is saved is what the same batch takes without.
func TestPreheatedCharges(t *testing.T) {
	with := func(charges int, p recipe.Preheater, none bool) (*plan.Plan, diag.List) {
		return planOf(t, func(b *recipe.Batch) {
			b.Strip.Charges, b.Strip.Still.Preheater, b.Today.NoPotAle = charges, p, none
		})
	}
	own, kept := recipe.Preheater{AreaM2: 6}, recipe.Preheater{AreaM2: 6, PotAleC: 85}
	for _, c := range []struct {
		name          string
		charges, warm int
		p             recipe.Preheater
		none          bool
	}{
		{"one charge, nothing kept", 1, 0, own, false},
		{"one charge, kept hot", 1, 1, kept, false},
		{"one charge, none yet", 1, 0, kept, true},
		{"three charges", 3, 2, own, false},
		{"three charges, kept hot", 3, 3, kept, false},
		{"three charges, none yet", 3, 2, kept, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			cold, _ := with(c.charges, recipe.Preheater{}, false)
			p, list := with(c.charges, c.p, c.none)
			idle := slices.ContainsFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeNoPotAle })
			assert.Equal(t, c.warm == 0, idle)
			if idle {
				i := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeNoPotAle })
				assert.Equal(t, c.none, strings.Contains(list[i].Summary, "pot-ale none yet"), "the reason is the house's own where it says so")
			}
			if c.warm == 0 {
				assert.Nil(t, p.Strip.Preheat)
				assert.Equal(t, cold.Strip.HeatKWh, p.Strip.HeatKWh)
				return
			}
			h := p.Strip.Preheat
			require.NotNil(t, h)
			assert.Equal(t, c.warm, h.Charges)
			assert.InDelta(t, cold.Strip.HeatKWh-p.Strip.HeatKWh, h.SavedKWh, 0.11)
			assert.InDelta(t, 60*(cold.Strip.TotalHours-p.Strip.TotalHours), float64(c.warm)*h.SavedMin, 0.7)
			assert.Greater(t, h.SavedKWh, 0.08*float64(c.warm)*cold.Strip.HeatKWh/float64(c.charges))
			assert.InDelta(t, p.Strip.HeatUpMin, cold.Strip.HeatUpMin-h.SavedMin, 0.11)
			assert.InDelta(t, cold.Summary.LowWinesVolumeL, p.Summary.LowWinesVolumeL, 0.02)
			for i, id := range []string{"strip.1.charge", "strip.2.charge", "strip.3.charge"} {
				if c.charges == 1 {
					id = "strip.charge"
				}
				if i < c.charges {
					warm := slices.Contains(stepOf(t, p, id).Cautions, "hot-wash")
					assert.Equal(t, i > 0 || c.warm == c.charges, warm, id)
				}
			}
		})
	}
}

// With live steam a warm charge condenses less steam: stronger low wines, and the sum
// of the charges is what the plan goes on with.
func TestPreheatedWithLiveSteam(t *testing.T) {
	p, _ := planOf(t, func(b *recipe.Batch) {
		b.Strip.Charges, b.Strip.Still.Preheater, b.Strip.Still.HeatedBy = 2, recipe.Preheater{AreaM2: 6}, recipe.Direct
	})
	require.NotNil(t, p.Strip.Preheat)
	assert.InDelta(t, p.Summary.LowWinesVolumeL, p.Strip.Fraction("low wines").VolumeL, 0.06)
	assert.InDelta(t, p.Ferment.PureL, p.Strip.Fraction("low wines").PureL+p.Strip.Residue.PureL, 0.02)
}

// Grain in the wash wants an agitator or live steam; bare elements it never gets.
func TestGrainInStripping(t *testing.T) {
	for _, c := range []struct {
		by       recipe.Heating
		agitator bool
		want     bool
	}{
		{recipe.Jacket, true, false}, {recipe.Jacket, false, true}, {recipe.Direct, false, false},
		{recipe.Elements, false, true}, {recipe.Elements, true, true},
	} {
		p, list := planOf(t, func(b *recipe.Batch) { b.Strip.Still.HeatedBy, b.Strip.Still.Agitator = c.by, c.agitator })
		said := slices.ContainsFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeScorches })
		assert.Equal(t, c.want, said, "%s, %v", c.by, c.agitator)
		assert.Equal(t, c.agitator, slices.Contains(stepOf(t, p, "strip.clean").Cautions, "lockout"))
		assert.Equal(t, c.agitator, stepOf(t, p, "strip.heat").Do.Text[:5] == "Start")
	}
	clear, list := planOf(t, func(b *recipe.Batch) {
		b.Strip.Still.HeatedBy = recipe.Elements
		b.Mash.Steps = append(b.Mash.Steps[:len(b.Mash.Steps)-1:len(b.Mash.Steps)-1],
			recipe.MashStep{Verb: recipe.MashDrain, DurationS: 3600}, b.Mash.Steps[len(b.Mash.Steps)-1])
	})
	assert.False(t, slices.ContainsFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeScorches }), "a clear wash")
	assert.NotContains(t, stepOf(t, clear, "strip.heat").Do.Text, "agitator", "which has nothing to keep off the wall")
}
