package compile

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// A first batch has no feints: its charge is the low wines and no more, and its
// feints are those of the next.
func TestNoFeintsYet(t *testing.T) {
	b := edited(t, func(b *recipe.Batch) { b.Today.FeintsSaid = true })
	n, err := Numbers(b, &numbers.Memo{}, Checked)
	require.NoError(t, err)
	assert.Zero(t, n.Distilled.Returned.MassKg())
	assert.InDelta(t, n.Stripped.LowWines.MassKg(), n.Distilled.Charge.MassKg(), 1e-9)
	p, _ := Compile(b)
	assert.Equal(t, plan.FeintsNone, p.Spirit.FeintsFrom)
	assert.Nil(t, p.Spirit.FeintsReturned)
	assert.Contains(t, stepOf(t, p, "spirit.charge").Do.Text, "there are no feints yet")
	assert.Positive(t, p.Spirit.Feints.PureL)

	// The house goes on with what each batch leaves, and comes to the run that a
	// plan without the line shows.
	steady, _ := Compile(batch(t, lantern, ferry))
	for range 40 {
		left := p.Spirit.Feints
		p, _ = Compile(edited(t, func(b *recipe.Batch) {
			b.Today = recipe.Today{
				FeintsSaid: true, FeintsM3: lot.VolumeM3(recipe.US, *left),
				FeintsAt: recipe.Strength{Value: left.Proof / 200, Basis: recipe.Proof},
			}
		}))
	}
	assert.InEpsilon(t, steady.Summary.HeartsVolumeL, p.Summary.HeartsVolumeL, 2e-3)
	assert.InEpsilon(t, steady.Summary.FeintsVolumeL, p.Summary.FeintsVolumeL, 2e-3)
	assert.InEpsilon(t, steady.Summary.SpiritHours, p.Summary.SpiritHours, 2e-3)
}

// Feints of a stated amount are counted as the batch counts, and shared by the
// charges.
func TestFeintsOfToday(t *testing.T) {
	const gal = 3.785411784e-3
	for _, charges := range []int{1, 2} {
		p, _ := Compile(edited(t, func(b *recipe.Batch) {
			b.Spirit.Charges = charges
			b.Today = recipe.Today{FeintsSaid: true, FeintsM3: 20 * gal, FeintsAt: recipe.Strength{Value: 0.35}} // 35 % abv beside gallons: 70 proof
		}))
		f := p.Spirit.FeintsReturned
		require.NotNil(t, f)
		assert.Equal(t, plan.FeintsOnHand, p.Spirit.FeintsFrom)
		assert.InDelta(t, 20/float64(charges), f.WineGallons, 0.001)
		assert.InDelta(t, 70, f.Proof, 0.05)
	}
	p, _ := Compile(edited(t, func(b *recipe.Batch) {
		b.Spirit.Feints = false
		b.Today = recipe.Today{FeintsSaid: true, FeintsM3: 20 * gal, FeintsAt: recipe.Strength{Value: 0.35}}
	}))
	assert.Nil(t, p.Spirit.FeintsReturned, "a charge that takes none takes none")
	assert.Empty(t, p.Spirit.FeintsFrom)
}

// Without backset as much water goes in, and the mash is less sour.
func TestNoBacksetYet(t *testing.T) {
	with, _ := Compile(batch(t, lantern, ferry))
	b := edited(t, func(b *recipe.Batch) { b.Today.NoBackset = true })
	p, _ := Compile(b)
	assert.InDelta(t, with.Mash.LiquorL, p.Mash.LiquorL, 1e-6)
	assert.Positive(t, with.Mash.BacksetL)
	assert.Zero(t, p.Mash.BacksetL)
	assert.Zero(t, p.Stream(plan.StreamBackset).MassKg)
	assert.Greater(t, p.Mash.PH, with.Mash.PH+0.05)
	said := func(s plan.Step) bool { return strings.Contains(s.Do.Text, "in place of backset") }
	assert.True(t, slices.ContainsFunc(p.Schedule.Steps, said))
	assert.False(t, slices.ContainsFunc(with.Schedule.Steps, said))
	assert.Equal(t, recipe.MashBackset, verb(b, recipe.MashBackset).Verb, "the batch itself stays as it is written")
}

// byStrength is a run whose feints never settle: both its cuts are strengths.
func byStrength(b *recipe.Batch) {
	b.Spirit.HeartsFrom = recipe.Cut{Strength: recipe.Strength{Value: 0.75}, At: b.Spirit.HeartsFrom.At}
	b.Spirit.Still.HoldsM3 *= 2 // room for what is tried
}

// Each way out that NM0855 names is one.
func TestNeverSteadyHasCures(t *testing.T) {
	run := func(change ...func(*recipe.Batch)) (*plan.Plan, diag.List) {
		return Compile(edited(t, func(b *recipe.Batch) {
			byStrength(b)
			for _, c := range change {
				c(b)
			}
		}))
	}
	p, list := run()
	at := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeNotSteady })
	require.GreaterOrEqual(t, at, 0)
	d := list[at]
	assert.Equal(t, diag.Error, d.Severity)
	for _, says := range []string{"`hearts from 6.2 gal to ...`", "`charge low-wines, feints, water to 28 % abv`", "`feints none yet`"} {
		assert.Contains(t, d.Help, says)
	}
	_, list = run(func(b *recipe.Batch) { b.Gauge = recipe.SI })
	at = slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeNotSteady })
	require.GreaterOrEqual(t, at, 0)
	assert.Contains(t, list[at].Help, "`feints 80 L at 35 % abv`", "in the units of the house")
	heads := p.Spirit.Fraction("heads").EndOverL
	for name, cure := range map[string]func(*recipe.Batch){
		"by volume": func(b *recipe.Batch) {
			b.Spirit.HeartsFrom = recipe.Cut{By: recipe.ByVolume, VolumeM3: heads / 1000}
		},
		"by share": func(b *recipe.Batch) {
			b.Spirit.HeartsFrom = recipe.Cut{By: recipe.ByShare, Share: 0.10}
		},
		"water": func(b *recipe.Batch) { b.Spirit.WaterTo = recipe.Strength{Value: 0.28} },
		"none":  func(b *recipe.Batch) { b.Today.FeintsSaid = true },
		"feints": func(b *recipe.Batch) {
			b.Today = recipe.Today{FeintsSaid: true, FeintsM3: 0.1, FeintsAt: recipe.Strength{Value: 0.3}}
		},
		"no more": func(b *recipe.Batch) { b.Spirit.Feints = false },
	} {
		p, list := run(cure)
		assert.NotContains(t, codes(list), diag.CodeNotSteady, name)
		assert.Positive(t, p.Summary.HeartsVolumeL, name)
	}
}

// Water brings the charge to the strength that is asked for, and none goes into
// one that is no stronger.
func TestChargeWithWater(t *testing.T) {
	for _, c := range []struct {
		abv   float64
		water bool
	}{{0.24, true}, {0.285, true}, {0.295, false}, {0.40, false}} {
		b := edited(t, func(b *recipe.Batch) {
			b.Spirit.Still.HoldsM3 *= 2
			b.Spirit.WaterTo = recipe.Strength{Value: c.abv}
		})
		p, list := Compile(b)
		assert.Equal(t, c.water, p.Spirit.ChargeWaterL > 0, c.abv)
		assert.Equal(t, !c.water, slices.Contains(codes(list), diag.CodeNoWaterWanted), c.abv)
		if c.water {
			assert.InDelta(t, 200*c.abv, p.Spirit.Charge.Proof, 0.05, "%% abv beside gallons is half the proof")
			assert.Contains(t, stepOf(t, p, "spirit.charge").Do.Text, "of water")
		}
	}
}

// A strong charge is warned of and planned, however strong.
func TestStrongChargeIsPlanned(t *testing.T) {
	for _, c := range []struct {
		abv    float64
		warned bool
		says   string
	}{{0.319, false, ""}, {0.321, true, "30.0 % abv or less"}, {0.399, true, "30.0 % abv or less"}, {0.401, true, "doubler"}, {0.55, true, "doubler"}} {
		// Feints are all that there is of strength to set here: enough of them.
		_, list := Compile(edited(t, func(b *recipe.Batch) {
			b.Spirit.Still.HoldsM3 *= 20
			b.Spirit.WaterTo = recipe.Strength{Value: c.abv}
			b.Today = recipe.Today{FeintsSaid: true, FeintsM3: 1, FeintsAt: recipe.Strength{Value: 0.80}}
			b.Units, b.Gauge = recipe.SI, recipe.SI
		}))
		at := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeChargeStrong })
		if !assert.Equal(t, c.warned, at >= 0, c.abv) || !c.warned {
			continue
		}
		assert.Equal(t, diag.Warning, list[at].Severity)
		assert.Contains(t, strings.ReplaceAll(list[at].Reason, "% vol", "% abv"), c.says)
		assert.Contains(t, list[at].Help, "water to 28 % abv")
	}
}
