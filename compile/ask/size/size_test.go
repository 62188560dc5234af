package size

import (
	"errors"
	"math"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/plan"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/edit"
	"newmake/lang/recipe"
)

const lantern = "../../../examples/lantern-hollow"

func house(t testing.TB) *check.House {
	t.Helper()
	h, err := check.Load(lantern, check.Options{})
	require.NoError(t, err)
	return h
}

// roomy is a batch in a plant whose vessels are large enough for any size.
func roomy(t testing.TB, name string) *recipe.Batch {
	t.Helper()
	b, list := house(t).Batch(name)
	require.NotNil(t, b, list.Error())
	pl := *b.Plant
	pl.Vessels = nil
	own := map[*recipe.Vessel]*recipe.Vessel{}
	for _, v := range b.Plant.Vessels {
		w := *v
		w.HoldsM3 *= 12
		own[v] = &w
		pl.Vessels = append(pl.Vessels, &w)
	}
	pl.Tanks = nil
	for _, v := range b.Plant.Tanks {
		w := *v
		w.HoldsM3 *= 12
		pl.Tanks = append(pl.Tanks, &w)
	}
	out := *b
	out.Plant = &pl
	out.Mash.Cooker, out.Strip.Still, out.Spirit.Still = own[b.Mash.Cooker], own[b.Strip.Still], own[b.Spirit.Still]
	out.Ferm.Vessels = []*recipe.Vessel{own[b.Ferm.Vessels[0]]}
	return &out
}

// A. Quarteroni's and the books' usual: roots known in closed form.
func TestRoot(t *testing.T) {
	for _, c := range []struct {
		f    func(float64) float64
		a, b float64
		want float64
	}{
		{func(x float64) float64 { return x*x - 2 }, 0, 2, math.Sqrt2},
		{func(x float64) float64 { return math.Cos(x) - x }, 0, 1, 0.7390851332151607},
		{func(x float64) float64 { return math.Exp(-x) - 0.25 }, 0, 30, math.Log(4)},
		{func(x float64) float64 { return math.Pow(x-1, 9) }, -3, 4.7, 1}, // flat at its root
		{func(x float64) float64 {
			if x < 0.3 {
				return -1
			}
			return 1
		}, 0, 1, 0.3}, // a step
	} {
		got := root(c.f, c.a, c.f(c.a), c.b, c.f(c.b), 1e-10, 0)
		assert.InDelta(t, c.want, got, 1e-2*math.Pow(math.Abs(c.f(got)), 1.0/9)+1e-9)
	}
}

func TestScaleOfOneIsTheBatch(t *testing.T) {
	b := roomy(t, "Ferry Landing")
	want, list := compile.Compile(b)
	require.NotNil(t, want, list.Error())
	got, _ := compile.Compile(b.Scale(1))
	assert.Equal(t, want.Summary, got.Summary)
}

// Size to a target, plan the result, meet the target to 0.1 %.
func TestRoundTrip(t *testing.T) {
	for _, name := range []string{"Ferry Landing", "Stone Ferry", "Low Bridge", "Toll Road"} {
		b := roomy(t, name)
		memo := &compile.Memo{}
		grain := b.Bill.Lines[0].Grain.Name
		for _, target := range []Target{
			Casks(1, recipe.US), Casks(3, recipe.US), proofGallons(45), wash(2000, false, "2000 L"), wash(300, true, "300 gal"), massOf(grain, 400, "400 kg"),
		} {
			a, err := Solve(b, target, memo)
			require.NoError(t, err, "%s: %s", name, target.What)
			p, list := compile.Compile(a.Batch) // a plan as it is printed
			require.NotNil(t, p, list.Error())
			assert.InEpsilon(t, target.Value, target.Of(p), 1e-3, "%s: %s", name, target.What)
			if target.Over > 0 {
				assert.Equal(t, int(target.Value), p.Cask.Casks, "%s: %s", name, target.What)
				assert.Nil(t, p.Cask.LastFill, "%s: %s, and none short", name, target.What)
			}
		}
	}
}

// It is no rule of three: a mash three times as large heats more slowly, and the
// answer is not three times the batch.
func TestItIsNoRuleOfThree(t *testing.T) {
	b := roomy(t, "Ferry Landing")
	memo := &compile.Memo{}
	target := proofGallons(1)
	p, _ := memo.Compile(b)
	a, err := Solve(b, proofGallons(3*target.Of(p)), memo)
	require.NoError(t, err)
	assert.Greater(t, math.Abs(a.Factor-3), 1e-4)
	assert.InDelta(t, 3, a.Factor, 0.1)
}

// What stands in the way is named, with the largest size that goes.
func TestWhatStandsInTheWay(t *testing.T) {
	b, _ := house(t).Batch("Ferry Landing")
	_, err := Solve(b, Casks(2, recipe.US), &compile.Memo{})
	var none *none
	require.True(t, errors.As(err, &none))
	require.NotNil(t, none.Limit)
	assert.Contains(t, []diag.Code{diag.CodeCookerFull, diag.CodeFermenterFull, diag.CodeStillFull}, none.Limit.Code)
	require.NotNil(t, none.Largest)
	assert.Greater(t, none.Largest.Factor, 1.0)
	assert.Less(t, none.Largest.Factor, 2.0)
	assert.Nil(t, InTheWay(none.Largest.Diags), "the largest can be made")
	worse := solver{b, &compile.Memo{}}.at(none.Largest.Factor * 1.001)
	assert.NotNil(t, InTheWay(worse.Diags), "and nothing larger can")
}

func TestCut(t *testing.T) {
	b := roomy(t, "Ferry Landing")
	memo := &compile.Memo{}
	p, _ := memo.Compile(b)
	h := hearts(p)
	// The same place by each measure of it, found from the proof alone.
	for _, c := range []struct {
		name string
		cut  recipe.Cut
	}{
		{"strength", recipe.Cut{By: recipe.ByStrength, Strength: recipe.Strength{Value: 0.70}}},
		{"proof", recipe.Cut{By: recipe.ByStrength, Strength: recipe.Strength{Value: 0.70, Basis: recipe.Proof}}},
		{"volume", recipe.Cut{By: recipe.ByVolume, VolumeM3: 0.1}},
		{"vapour", recipe.Cut{By: recipe.ByVapourTemp, TempC: 85}},
		{"share", recipe.Cut{By: recipe.ByShare, Share: 0.5}},
	} {
		t.Run(c.name, func(t *testing.T) {
			x := *b
			x.Spirit.HeartsTo = c.cut
			a, err := cut(&x, strength{h.Proof, true}, memo)
			require.NoError(t, err)
			byVolume, err := cut(&x, strength{h.AbvPct, false}, memo)
			require.NoError(t, err)
			assert.InDelta(t, hearts(a.Plan).AbvPct, hearts(byVolume.Plan).AbvPct, 0.02, "the same cut, asked for by volume")
			got, _ := compile.Compile(a.Batch)
			assert.InDelta(t, h.Proof, hearts(got).Proof, 0.1)
			assert.InEpsilon(t, h.VolumeL, hearts(got).VolumeL, 2e-3, "there is one such cut")
		})
	}
}

func TestACutThatCannotBe(t *testing.T) {
	b := roomy(t, "Ferry Landing")
	for _, proof := range []float64{20, 175} {
		_, err := cut(b, strength{proof, true}, &compile.Memo{})
		var none *none
		require.True(t, errors.As(err, &none))
		assert.Contains(t, none.Why, "the hearts average between")
		assert.Less(t, none.Least, none.Most)
	}
}

// What is written is what was found: the variant's text, read again and planned,
// meets the target to 0.1 %.
func TestTheVariantThatIsWritten(t *testing.T) {
	for _, name := range []string{"Ferry Landing", "Ferry Landing, more rye", "Stone Ferry", "Low Bridge", "Toll Road"} {
		h := house(t)
		b, _ := h.Batch(name)
		memo := &compile.Memo{}
		now, _ := memo.Compile(b)
		for _, target := range []Target{proofGallons(0.9 * proofGallons(1).Of(now)), wash(0.8*wash(1, true, "").Of(now), true, "less")} {
			a, err := Solve(b, target, memo)
			require.NoError(t, err, name)
			v, err := edit.Scaled(h, b, a.Factor, "Sized", "sized", false, len(b.Promises) > 0)
			require.NoError(t, err, name)
			p := planned(t, v, "Sized")
			assert.InEpsilon(t, target.Value, target.Of(p), 1e-3, "%s: %s", name, target.What)
		}
		a, err := cut(b, strength{140, true}, memo)
		require.NoError(t, err, name)
		v, err := edit.Cut(h, b, a.Batch.Spirit.HeartsTo, "Sized", "", false)
		require.NoError(t, err)
		assert.InDelta(t, 140, hearts(planned(t, v, "Sized")).Proof, 0.14, name)
	}
}

func planned(t *testing.T, v *edit.Variant, name string) *plan.Plan {
	t.Helper()
	h, err := check.Load(lantern, check.Options{Overlay: map[string][]byte{filepath.Join(lantern, "sized.batch"): v.Text}})
	require.NoError(t, err)
	b, list := h.Batch(name)
	require.NotNil(t, b, "%s\n%s", list.Error(), v.Text)
	p, list := compile.Compile(b)
	require.NotNil(t, p, list.Error())
	return p
}

func TestScaleHoldsWhatIsNoAmount(t *testing.T) {
	b := roomy(t, "Ferry Landing")
	two := b.Scale(2)
	assert.InDelta(t, 2*b.Bill.TotalKg, two.Bill.TotalKg, 1e-9)
	for i, l := range two.Bill.Lines {
		assert.InDelta(t, b.Bill.Lines[i].Share, l.Share, 1e-12)
	}
	for i, s := range two.Mash.Steps {
		assert.InDelta(t, 2*b.Mash.Steps[i].VolumeM3, s.VolumeM3, 1e-9)
		assert.InDelta(t, 2*b.Mash.Steps[i].MassKg, s.MassKg, 1e-9)
		assert.Equal(t, b.Mash.Steps[i].TempC, s.TempC)
		assert.Equal(t, b.Mash.Steps[i].DurationS, s.DurationS)
	}
	assert.InDelta(t, 2*b.Spirit.HeartsFrom.VolumeM3, two.Spirit.HeartsFrom.VolumeM3, 1e-12)
	assert.Equal(t, b.Spirit.HeartsTo, two.Spirit.HeartsTo)
	assert.Equal(t, b.Cask, two.Cask)
}

func BenchmarkSize(b *testing.B) {
	batch := roomy(b, "Ferry Landing")
	for b.Loop() {
		_, err := Solve(batch, Casks(2, recipe.US), &compile.Memo{})
		require.NoError(b, err)
	}
}

// The largest size that fits is one that goes, and a pound more is not; it is
// found from below and from above alike.
func TestLargest(t *testing.T) {
	b, list := house(t).Batch("Ferry Landing")
	require.NotNil(t, b, list.Error())
	s := solver{b, &compile.Memo{}}
	l := s.largestAbove(1)
	require.NotNil(t, l)
	assert.True(t, goes(s.at(l.Factor)))
	pound := 0.45359237 / b.Bill.TotalKg
	assert.False(t, goes(s.at(l.Factor+pound)))
	pounds := l.Factor / pound
	assert.InDelta(t, math.Round(pounds), pounds, 1e-6, "whole pounds")
	require.NotNil(t, l.Limit)
	below := s.largestBelow(2)
	require.NotNil(t, below)
	assert.InDelta(t, l.Factor, below.Factor, 1e-9)
	large := roomy(t, "Ferry Landing")
	more := solver{large, &compile.Memo{}}.largestAbove(1)
	require.NotNil(t, more)
	assert.Greater(t, more.Factor, 3*l.Factor)
}
