package numbers

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/stream"
	"newmake/compile/stage/mash"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// waits is a batch whose water is at 10 C, with the steps of a mash and how much of the
// worts has run off after each, in litres.
func waits(steps []recipe.MashStep, ranL ...float64) *Batch {
	n := &Batch{Batch: &recipe.Batch{Plant: &recipe.Plant{WaterC: 10}, Mash: recipe.Mash{Steps: steps}}}
	for _, l := range ranL {
		n.Mashed.Steps = append(n.Mashed.Steps, mash.Step{VolumeM3: l / 1000})
	}
	return n
}

func litres(l, tempC float64) recipe.MashStep {
	return recipe.MashStep{Verb: recipe.MashWater, VolumeM3: l / 1000, TempC: tempC}
}

// What waits in a tank is the most at a time, and is told of the step that takes it first.
func TestWhatWaits(t *testing.T) {
	drain, cooled := recipe.MashStep{Verb: recipe.MashDrain}, recipe.MashStep{Verb: recipe.MashDrain, CooledC: 20}
	sparge := recipe.MashStep{Verb: recipe.MashSparge, VolumeM3: 0.04, TempC: 78}
	next, cool, add := recipe.MashStep{Verb: recipe.MashDrain, NextMash: true}, recipe.MashStep{Verb: recipe.MashCool}, recipe.MashStep{Verb: recipe.MashAdd, VolumeM3: 9, TempC: 80}
	backset := recipe.MashStep{Verb: recipe.MashBackset, VolumeM3: 0.02, TempC: 80}
	inFermenter := func(n *Batch) *Batch { n.Mashed.InFermenter = true; return n }
	for _, c := range []struct {
		what  string
		n     *Batch
		of    recipe.Contents
		wantL float64
		step  int
	}{
		{"the greater of two hot waters", waits([]recipe.MashStep{litres(30, 60), add, litres(50, 70), litres(50, 80)}), recipe.OfHotLiquor, 50, 2},
		{"water from 5 K above the supply on is hot", waits([]recipe.MashStep{litres(50, 14.9), litres(30, 15)}), recipe.OfHotLiquor, 30, 1},
		{"and below it cold", waits([]recipe.MashStep{litres(50, 15), litres(30, 14.9)}), recipe.OfColdLiquor, 30, 1},
		{"a sparge takes hot water too", waits([]recipe.MashStep{litres(30, 60), sparge}), recipe.OfHotLiquor, 40, 1},
		{"no hot water", waits([]recipe.MashStep{litres(30, 10)}), recipe.OfHotLiquor, 0, -1},
		{"all the backset, from the first of it", waits([]recipe.MashStep{litres(30, 60), backset, backset}), recipe.OfBackset, 40, 1},
		{"hot worts of two drains", waits([]recipe.MashStep{litres(30, 60), drain, litres(9, 70), drain}, 0, 20, 20, 45), recipe.OfWorts, 45, 3},
		{"hot worts that were never more than after the first drain", waits([]recipe.MashStep{drain, drain}, 20, 20), recipe.OfWorts, 20, 0},
		{"a sparge runs off as well", waits([]recipe.MashStep{sparge}, 25), recipe.OfWorts, 25, 0},
		{"worts that run cold do not wait", waits([]recipe.MashStep{cooled}, 20), recipe.OfWorts, 0, -1},
		{"hot worts after cold ones, which have gone on", waits([]recipe.MashStep{cooled, drain}, 20, 35), recipe.OfWorts, 15, 1},
		{"a cool sends them on, by the cooler", inFermenter(waits([]recipe.MashStep{drain, cool, drain}, 20, 20, 30)), recipe.OfWorts, 20, 0},
		{"a cool by the jacket does not", waits([]recipe.MashStep{drain, cool, drain}, 20, 20, 30), recipe.OfWorts, 30, 2},
		{"the water for the next mash is no wort", waits([]recipe.MashStep{next}, 20), recipe.OfWorts, 0, -1},
		{"a mash of which less was computed", waits([]recipe.MashStep{drain, drain}, 20), recipe.OfWorts, 20, 0},
	} {
		assert.InDelta(t, c.wantL, c.n.Waiting(c.of).Value, 1e-9, c.what)
		assert.InDelta(t, c.wantL/3.785411784, c.n.Waiting(c.of).Gallons, 1e-9, c.what)
		assert.Equal(t, c.step, c.n.FullestStep(c.of), c.what)
	}

	kept := waits([]recipe.MashStep{next, drain, next}, 1, 2, 3)
	kept.Mashed.Kept.VolumeM3 = 0.007
	assert.Equal(t, 2, kept.FullestStep(recipe.OfWeakWorts))
	assert.InDelta(t, 7, kept.Waiting(recipe.OfWeakWorts).Value, 1e-9)
	assert.Equal(t, -1, waits([]recipe.MashStep{drain, cool}, 1, 2).FullestStep(recipe.OfWeakWorts))

	ale := waits(nil)
	ale.Stripped.LeftHotM3 = 0.3
	assert.Zero(t, ale.Waiting(recipe.OfPotAle).Value, "it waits where it preheats the next charge")
	ale.Stripped.Preheat = &still.Preheat{}
	assert.InDelta(t, 300, ale.Waiting(recipe.OfPotAle).Value, 1e-9)
}

// Spirit waits as it came or as it was reduced, whichever is more.
func TestWhichSpiritWaits(t *testing.T) {
	n := waits(nil)
	n.Distilled.Hearts = stream.Stream{EthanolKg: 50, WaterKg: 20}
	n.Reduced.Spirit = stream.Stream{EthanolKg: 50, WaterKg: 40}
	assert.False(t, n.ReducedIsMore(), "it was not reduced")
	whole := n.Waiting(recipe.OfSpirit).Value
	n.Reduced.Done = true
	assert.True(t, n.ReducedIsMore())
	assert.Greater(t, n.Waiting(recipe.OfSpirit).Value, whole+15)
	n.Reduced.Spirit = stream.Stream{EthanolKg: 40, WaterKg: 16}
	assert.False(t, n.ReducedIsMore())
	assert.InDelta(t, whole, n.Waiting(recipe.OfSpirit).Value, 1e-9)
}

// Tanks that share a content are one place; low wines and feints take each other's room.
func TestTanksTogether(t *testing.T) {
	n := waits([]recipe.MashStep{litres(30, 60), litres(20, 10)})
	n.Plant.Tanks = []*recipe.Tank{
		{Name: "A", HoldsM3: 1, For: recipe.OfHotLiquor}, {Name: "B", HoldsM3: 2, For: recipe.OfHotLiquor | recipe.OfColdLiquor},
		{Name: "C", HoldsM3: 4, For: recipe.OfColdLiquor}, {Name: "D", HoldsM3: 8, For: recipe.OfLowWines | recipe.OfFeints},
	}
	n.Distilled.Charges = 2
	n.Stripped.LowWines = stream.Stream{EthanolKg: 30, WaterKg: 70}
	n.Distilled.Returned = stream.Stream{EthanolKg: 5, WaterKg: 5}
	heads := func(kg float64) []still.Fraction {
		return []still.Fraction{{Name: still.Heads, Stream: stream.Stream{EthanolKg: kg}}}
	}
	n.Distilled.Fractions = heads(10)
	uses := n.TankUses()
	require.Len(t, uses, 2)
	assert.Equal(t, []float64{7, 8}, []float64{uses[0].HoldsM3, uses[1].HoldsM3})
	assert.InDelta(t, 50, uses[0].Most.Value, 1e-9, "hot and cold in one place")
	assert.False(t, uses[1].FeintsLast)
	low, back := n.Waiting(recipe.OfLowWines).Value, n.charges(n.Distilled.Returned).Value
	assert.InDelta(t, low+back, uses[1].Most.Value, 1e-9, "low wines with the feints of the batch before, of both charges")
	assert.Greater(t, back, 20.0)

	n.Distilled.Fractions = heads(60) // 152 L of both charges
	uses = n.TankUses()
	assert.True(t, uses[1].FeintsLast)
	assert.InDelta(t, 2*60/0.78924, uses[1].Most.Value, 0.1)

	n.Plant.Tanks = n.Plant.Tanks[:1]
	assert.Len(t, n.TankUses(), 1)
	n.Plant.Tanks[0].For = recipe.OfLowWines
	assert.InDelta(t, low, n.TankUses()[0].Most.Value, 1e-9, "feints wait elsewhere")
}

// How full a vessel may be: the house's own figure, else common practice.
func TestFillMost(t *testing.T) {
	for kind, want := range map[recipe.VesselKind]float64{recipe.Cooker: 0.95, recipe.Fermenter: 0.90, recipe.Still: 0.75} {
		assert.Equal(t, want, FillMost(&recipe.Vessel{Kind: kind}))
		assert.Equal(t, 0.6, FillMost(&recipe.Vessel{Kind: kind, FillMost: 0.6}))
	}
}
