package still

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

func steady1(t testing.TB, in SpiritInput) (Run, int) {
	t.Helper()
	r, n, err := Steady(in)
	require.NoError(t, err)
	return r, n
}

// The steady run returns what it was given, to 1e-9 of the charge, and gives
// out what the low wines bring.
func TestSteady(t *testing.T) {
	for name, change := range map[string]func(*SpiritInput){
		"as written":  func(in *SpiritInput) {},
		"by strength": func(in *SpiritInput) { in.HeartsFrom, in.HeartsTo = byABV(0.795), byABV(0.60) },
		"by share": func(in *SpiritInput) {
			in.HeartsFrom, in.HeartsTo = recipe.Cut{By: recipe.ByShare, Share: 0.03}, recipe.Cut{By: recipe.ByShare, Share: 0.7}
		},
		"no foreshots": func(in *SpiritInput) { in.ForeshotsM3 = 0 },
		"steam":        func(in *SpiritInput) { in.Still.HeatedBy = recipe.Direct },
		"far tails":    func(in *SpiritInput) { in.HeartsTo, in.Stop = byABV(0.72), abv(0.005) },
	} {
		in := secondRun(t)
		change(&in)
		r, n := steady1(t, in)
		require.NotContains(t, r.Problems, ProblemNotSteady, name)
		holds(t, in.Setting, r)
		in1 := r.Charge.Minus(in.LowWines)
		out := r.Feints()
		scale := r.Charge.MassKg()
		assert.InDelta(t, in1.EthanolKg, out.EthanolKg, 2e-9*scale, name)
		assert.InDelta(t, in1.WaterKg, out.WaterKg, 2e-9*scale, name)
		left := r.Fraction(Hearts).EthanolKg + r.Fraction(Foreshots).EthanolKg + r.Residue.EthanolKg
		assert.InDelta(t, in.LowWines.EthanolKg, left, 3e-9*scale, name)
		t.Logf("%s: %d runs, feints %.0f L of %.1f %%, hearts %.1f L of %.2f %%", name, n, 1000*out.VolumeAtM3(20), 100*out.ABV(),
			1000*r.Fraction(Hearts).VolumeM3, 100*r.Fraction(Hearts).ABV)
		assert.LessOrEqual(t, n, 15, name)
	}
}

// A house that simply goes on, batch after batch, ends where Steady says; and
// it does not matter where the search begins.
func TestSteadyIsWhereTheHouseEnds(t *testing.T) {
	in := secondRun(t)
	want, _ := steady1(t, in)
	house := in
	batches := 0
	for ; batches < 100; batches++ {
		r := spirit1(t, house)
		f := r.Feints()
		f.TempC = in.LowWines.TempC
		gap := f.EthanolKg - house.Feints.EthanolKg
		house.Feints = f
		if gap < 1e-9 {
			break
		}
	}
	t.Logf("%d batches", batches)
	got := spirit1(t, house)
	assert.InEpsilon(t, want.Fraction(Hearts).VolumeM3, got.Fraction(Hearts).VolumeM3, 1e-7)
	assert.InEpsilon(t, want.Feints().EthanolKg, got.Feints().EthanolKg, 1e-7)

	in.Feints = stream.Stream{EthanolKg: 200, WaterKg: 30, TempC: 20}
	other, _ := steady1(t, in)
	assert.InEpsilon(t, want.Fraction(Hearts).VolumeM3, other.Fraction(Hearts).VolumeM3, 1e-8)
}

// Hearts cut too narrow by strength have no steady run: heads of 76 % go back,
// the next charge is stronger, its heads more.
func TestNotSteady(t *testing.T) {
	in := secondRun(t)
	in.HeartsFrom = byABV(0.70)
	r, n := steady1(t, in)
	assert.LessOrEqual(t, n, mostIterations)
	assert.Contains(t, r.Problems, ProblemNotSteady)
	assert.Equal(t, in.LowWines.EthanolKg, r.Charge.EthanolKg, "the first batch is shown")
	holds(t, in.Setting, r)
}
