package numbers

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// Where a run never settles, these are tried, in this order: the hearts from the volume at
// which they begin now, and sooner; water to 28 % and every second percent below; a first
// batch without feints; and one with what that leaves.
func TestWaysThatAreTried(t *testing.T) {
	first := still.Run{Problems: []still.Problem{still.ProblemNotSteady}, Fractions: []still.Fraction{
		{Name: still.Foreshots, Stream: stream.Stream{EthanolKg: 1.578}}, // 2 L
		{Name: still.Heads, Stream: stream.Stream{EthanolKg: 6.314}},     // 8 L
		{Name: still.Tails, Stream: stream.Stream{EthanolKg: 10, WaterKg: 20}},
	}}
	tried := func(gauge recipe.System, charges int, run still.Run) []Way {
		v := &recipe.Vessel{Name: "S", HoldsM3: 1, HeatsW: 20e3, MetalKg: 200}
		b := &recipe.Batch{Units: gauge, Gauge: gauge, Plant: &recipe.Plant{AmbientC: 20, WaterC: 10}, Today: recipe.Today{NoBackset: true, NoKept: true, NoPotAle: true}}
		b.Spirit = recipe.Spirit{Still: v, Feints: true, Charges: charges, ForeshotsM3: 0.002,
			HeartsFrom: recipe.Cut{By: recipe.ByStrength, Strength: recipe.Strength{Value: 0.75}}, HeartsTo: recipe.Cut{By: recipe.ByStrength, Strength: recipe.Strength{Value: 0.6}},
			Stop: recipe.Strength{Value: 0.05}}
		return Ways(nil, b, stream.Stream{EthanolKg: 100, WaterKg: 250, TempC: 20}, run)
	}
	of := func(ways []Way, by WayBy) (out []*recipe.Batch) {
		for _, w := range ways {
			if w.By == by {
				out = append(out, w.Batch)
			}
		}
		return out
	}
	begins := func(ways []Way) (litres []float64) {
		for _, b := range of(ways, HeartsByVolume) {
			litres = append(litres, 1000*b.Spirit.HeartsFrom.VolumeM3)
		}
		return litres
	}
	assert.Empty(t, tried(recipe.SI, 1, still.Run{}), "a run that settles needs none")

	ways := tried(recipe.SI, 1, first)
	for i := 1; i < len(ways); i++ {
		assert.GreaterOrEqual(t, ways[i].By, ways[i-1].By, "in order")
	}
	assert.InDeltaSlice(t, []float64{10, 6, 4, 3}, begins(ways), 1e-9)
	var water []float64
	for _, b := range of(ways, WaterInCharge) {
		water = append(water, b.Spirit.WaterTo.Value)
		assert.Equal(t, recipe.ABV, b.Spirit.WaterTo.Basis)
	}
	assert.Equal(t, []float64{0.28, 0.26, 0.24, 0.22, 0.20, 0.18}, water)

	none := of(ways, FirstBatch)
	require.Len(t, none, 1)
	assert.Equal(t, recipe.Today{FeintsSaid: true, NoBackset: true, NoKept: true, NoPotAle: true}, none[0].Today)

	left := lot.Of(first.Feints())
	second := of(ways, SecondBatch)
	require.Len(t, second, 1)
	assert.InDelta(t, left.VolumeL, 1000*second[0].Today.FeintsM3, 0.05, "to a tenth of a litre")
	assert.InDelta(t, left.AbvPct, 100*second[0].Today.FeintsAt.Value, 0.5)
	assert.InDelta(t, 100*second[0].Today.FeintsAt.Value, float64(int(100*second[0].Today.FeintsAt.Value+0.5)), 1e-9, "in whole percents")

	us := tried(recipe.US, 2, first)
	second = of(us, SecondBatch)
	require.Len(t, second, 1)
	assert.InDelta(t, 2*left.WineGallons, second[0].Today.FeintsM3/fluid.USGallonM3, 0.05, "of both charges")
	assert.InDelta(t, left.Proof, 200*second[0].Today.FeintsAt.Value, 0.5)
	assert.Equal(t, recipe.Proof, second[0].Today.FeintsAt.Basis)
	assert.Equal(t, recipe.Proof, of(us, WaterInCharge)[0].Spirit.WaterTo.Basis)
	assert.InDelta(t, 2.6, begins(us)[0]/3.785411784, 1e-9, "10 L to a tenth of a gallon")

	first.Fractions = first.Fractions[:2]
	first.Fractions[1].Stream = stream.Stream{}
	alone := tried(recipe.SI, 1, first)
	assert.InDeltaSlice(t, []float64{2}, begins(alone), 1e-9, "no heads: where the foreshots end, once")
	assert.Empty(t, of(alone, SecondBatch), "nothing is left for one")
}

// A volume is written to a tenth, and never below the least.
func TestWrittenVolume(t *testing.T) {
	for _, c := range []struct {
		gauge               recipe.System
		litres, least, want float64
	}{
		{recipe.SI, 3.14, 0, 3.1}, {recipe.SI, 3.16, 0, 3.2}, {recipe.SI, 3.14, 3.12, 3.2}, {recipe.SI, 3.14, 3.1005, 3.1},
		{recipe.US, 10, 0, 2.6 * 3.785411784}, {recipe.US, 9.6, 9.5, 2.6 * 3.785411784},
	} {
		assert.InDelta(t, c.want, 1000*written(c.gauge, c.litres/1000, c.least/1000), 1e-9, "%v", c)
	}
}

// The feints that a house has on hand are shared by the charges, and gauged as the house
// gauges.
func TestFeintsOfToday(t *testing.T) {
	b := &recipe.Batch{Gauge: recipe.SI, Spirit: recipe.Spirit{Feints: true, Charges: 2}, Today: recipe.Today{FeintsM3: 0.1, FeintsAt: recipe.Strength{Value: 0.5, Basis: recipe.ABV}}}
	s, err := feintsToday(b, 15)
	require.NoError(t, err)
	assert.InDelta(t, 25, 1000*s.EthanolKg/fluid.Density(1, 20), 0.01, "of 50 L at half strength each")
	assert.InDelta(t, 15, s.TempC, 0)
	b.Spirit.Charges = 0
	s, err = feintsToday(b, 15)
	require.NoError(t, err)
	assert.InDelta(t, 50, 1000*s.EthanolKg/fluid.Density(1, 20), 0.02)
	b.Spirit.Feints = false
	s, _ = feintsToday(b, 15)
	assert.Zero(t, s.MassKg(), "the charge takes none")
	b.Spirit.Feints, b.Today.FeintsM3 = true, 0
	s, _ = feintsToday(b, 15)
	assert.Zero(t, s.MassKg(), "there are none")
}

// What a batch is bottled at: as written, or as its standard has it, or 40 %.
func TestBottledAt(t *testing.T) {
	b := &recipe.Batch{Gauge: recipe.SI}
	assert.InDelta(t, 0.40, BottleABV(b), 1e-6)
	b.Gauge = recipe.US
	assert.InDelta(t, 0.40, BottleABV(b), 0.001, "80 proof")
	b.Cask.BottleAt = recipe.Strength{Value: 0.46, Basis: recipe.ABV}
	assert.InDelta(t, 0.46, BottleABV(b), 1e-6)
}

// Without wood and without a strength of bottling spirit is kept as it comes.
func TestWhatIsReduced(t *testing.T) {
	hearts := stream.Stream{EthanolKg: 60, WaterKg: 20, TempC: 20}
	for _, c := range []struct {
		what   string
		cask   recipe.Cask
		hearts stream.Stream
		done   bool
	}{
		{"into wood", recipe.Cask{SizeM3: 0.2, Kind: &recipe.CaskWood{}, Entry: recipe.Strength{Value: 0.6}}, hearts, true},
		{"into bottles", recipe.Cask{BottleAt: recipe.Strength{Value: 0.46}}, hearts, true},
		{"kept", recipe.Cask{}, hearts, false},
		{"nothing into bottles", recipe.Cask{BottleAt: recipe.Strength{Value: 0.46}}, stream.Stream{}, false},
	} {
		r := Reduced(&recipe.Batch{Plant: &recipe.Plant{AmbientC: 20}, Cask: c.cask}, c.hearts)
		assert.NoError(t, r.Err, c.what)
		assert.Equal(t, c.done, r.Done, c.what)
	}
}

// The first charge goes in cold where the others are warmed.
func TestWhichChargeIsCold(t *testing.T) {
	s := Strip{Run: still.Run{HeatJ: 2}}
	assert.Equal(t, 2.0, s.ChargeRun(0).HeatJ)
	s.First = &still.Run{HeatJ: 3}
	assert.Equal(t, 3.0, s.ChargeRun(0).HeatJ)
	assert.Equal(t, 2.0, s.ChargeRun(1).HeatJ)
	assert.Equal(t, 2.0, s.ChargeRun(2).HeatJ)
}

// A batch goes into wood ten days after its mash, if it is known when that is.
func TestWhenItIsFilled(t *testing.T) {
	at := func(change func(*recipe.Batch)) float64 {
		b := &recipe.Batch{}
		b.Start.Year, b.Start.Month, b.Start.Day = 2026, 3, 3
		change(b)
		return filledAt(b)
	}
	assert.InDelta(t, (31+28+12)/365.0, at(func(*recipe.Batch) {}), 1.5/365)
	assert.Equal(t, -1.0, at(func(b *recipe.Batch) { b.Start.Assumed = true }))
	assert.Equal(t, -1.0, at(func(b *recipe.Batch) { b.Start.Month = 0 }))
	assert.InDelta(t, 10.5/365, at(func(b *recipe.Batch) { b.Start.Month, b.Start.Day = 1, 1 }), 1.5/365)
}
