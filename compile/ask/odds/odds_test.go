package odds

import (
	"bytes"
	"encoding/json"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/check"
	"newmake/lang/recipe"
)

const lantern = "../../../examples/lantern-hollow"

func batch(t testing.TB, name string) *recipe.Batch {
	t.Helper()
	h, err := check.Load(filepath.FromSlash(lantern), check.Options{})
	require.NoError(t, err)
	b, list := h.Batch(name)
	require.NotNil(t, b, list)
	return b
}

func tried(t testing.TB, b *recipe.Batch, n int) *Trial {
	t.Helper()
	out, err := Try(b, n, measure.US)
	require.NoError(t, err)
	return out
}

// TestWilson: intervals by hand, from Wilson's formula with 1.96: of none of ten 0 to
// 0.2775, of half of 400 0.4512 to 0.5488 (both as in Newcombe, Stat. Med. 17 (1998)
// 857, method 3, whose example of 81 in 263 is 0.2553 to 0.3662).
func TestWilson(t *testing.T) {
	for _, c := range []struct {
		k, n      int
		low, high float64
	}{{0, 10, 0, 0.2775}, {200, 400, 0.4512, 0.5488}, {81, 263, 0.2553, 0.3662}, {10, 10, 0.7225, 1}} {
		o := oddsOf(c.k, c.n)
		assert.InDelta(t, c.low, o.Low, 5e-5)
		assert.InDelta(t, c.high, o.High, 5e-5)
	}
	assert.Equal(t, 5, oddsOf(200, 400).margin())
}

// TestVerdict: 9 in 10 of 400 draws is kept from where all of the interval is above it,
// and broken where all of it is below.
func TestVerdict(t *testing.T) {
	verdicts := func(k int) string { return oddsOf(k, 400).against(0.9) }
	kept, broken := 0, 0
	for k := 0; k <= 400; k++ {
		switch verdicts(k) {
		case plan.PromiseKept:
			if kept == 0 {
				kept = k
			}
		case plan.PromiseBroken:
			broken = k
		}
	}
	assert.Equal(t, plan.PromiseTooClose, verdicts(360), "nine tenths to the draw is too close to say")
	assert.Equal(t, plan.PromiseTooClose, verdicts(kept-1))
	assert.Equal(t, plan.PromiseKept, verdicts(kept))
	assert.Equal(t, plan.PromiseBroken, verdicts(broken))
	assert.Equal(t, plan.PromiseTooClose, verdicts(broken+1))
	// By Wilson's interval 0.9 is its lower end where p - 0.9 = 1.96 sqrt(0.9 x 0.1/n).
	assert.InDelta(t, 360+1.96*6, kept, 1)
	assert.InDelta(t, 360-1.96*6, broken, 1)
}

func TestQuantile(t *testing.T) {
	x := []float64{1, 2, 3, 4, 5}
	assert.Equal(t, 1.0, quantile(x, 0))
	assert.Equal(t, 3.0, quantile(x, 0.5))
	assert.InDelta(t, 1.2, quantile(x, 0.05), 1e-12)
	assert.Equal(t, 5.0, quantile(x, 1))
	assert.Equal(t, 7.0, quantile([]float64{7}, 0.5))
}

func TestFigures(t *testing.T) {
	for x, want := range map[float64]float64{0: 0, 1.23456: 1.235, -0.00123456: -0.001235, 123456: 123500} {
		assert.InDelta(t, want, figures(x), 1e-12)
	}
}

// TestSameBytes: whatever the number of processors, the answer is the same to the byte.
func TestSameBytes(t *testing.T) {
	b := batch(t, "Ferry Landing")
	answer := func(processors int) []byte {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(processors))
		var out bytes.Buffer
		require.NoError(t, json.NewEncoder(&out).Encode(tried(t, b, 60).Answer(measure.US)))
		return out.Bytes()
	}
	one := answer(1)
	assert.Equal(t, string(one), string(answer(7)))
}

// TestMoreDrawsGoOn: the first draws of many are those of few.
func TestMoreDrawsGoOn(t *testing.T) {
	b := batch(t, "Ferry Landing")
	few, many := tried(t, b, 50), tried(t, b, 60)
	assert.Equal(t, few.Runs, many.Runs[:50])
}

// TestBesideItself: a batch beside itself differs in no draw; beside one that gives more
// of everything, every draw gives more, though the spread is far wider than the
// difference: that is what the same luck is for.
func TestBesideItself(t *testing.T) {
	b := batch(t, "Ferry Landing")
	here := tried(t, b, 60)
	same := here.Beside(tried(t, b, 60))
	assert.Zero(t, same.Alone)
	assert.Equal(t, len(here.Draws.Of), same.Shared)
	for _, n := range same.Numbers {
		assert.Zero(t, n.Low, n.Key)
		assert.Zero(t, n.High, n.Key)
		assert.Zero(t, n.More.Share, n.Key)
	}
	more := here.Beside(tried(t, b.Scale(1.02), 60))
	for _, n := range more.Numbers {
		if n.Key != "pureAlcoholL" {
			continue
		}
		assert.Positive(t, n.Low)
		assert.Equal(t, 1.0, n.More.Share)
		for _, w := range here.Answer(measure.US).Numbers {
			if w.Key == n.Key {
				assert.Less(t, n.High-n.Low, (w.High-w.Low)/5, "the difference is far surer than either")
			}
		}
	}
}

// TestOddsOfFerryLanding holds the answer together: the spread contains the plan, the
// odds of more casks are no better, shares and R2 are shares, and the size that fills
// 9 times in 10 does, by the draws, and no much larger one is asked for.
func TestOddsOfFerryLanding(t *testing.T) {
	trial := tried(t, batch(t, "Ferry Landing"), 200)
	a := trial.Answer(measure.US)
	assert.Zero(t, a.Failed)
	assert.NotZero(t, a.Rejected, "yields above what can be are drawn again")
	assert.Equal(t, 1, a.Planned)
	require.Len(t, a.Promises, 2)
	assert.Equal(t, a.Casks[0].Odds, a.Promises[0].Odds, "promise casks 1")
	for i := 1; i < len(a.Casks); i++ {
		assert.LessOrEqual(t, a.Casks[i].Odds.Share, a.Casks[i-1].Odds.Share)
	}
	for _, n := range a.Numbers {
		assert.True(t, n.Low <= n.Middle && n.Middle <= n.High, "%+v", n)
		if n.Key != "leftoverL" {
			assert.True(t, n.Low <= n.Planned && n.Planned <= n.High, "%+v", n)
		}
	}
	require.NotEmpty(t, a.Shares)
	for _, s := range a.Shares {
		assert.True(t, s.R2 >= 0 && s.R2 <= 1, s.Key)
		for i, x := range s.Of {
			assert.True(t, x.Share > 0 && x.Share < 1.2, "%s %s %g", s.Key, x.Constant, x.Share)
			assert.True(t, i == 0 || x.Share <= s.Of[i-1].Share)
		}
	}
	c := trial.Change(measure.US)
	require.NotNil(t, c)
	require.NotNil(t, c.Odds, c.Why)
	assert.Greater(t, c.Factor, 1.0)
	assert.GreaterOrEqual(t, c.Odds.Share, enough)
	assert.Less(t, c.Odds.Share, enough+0.03)
	smaller := tried(t, batch(t, "Ferry Landing").Scale(c.Factor-0.01), 200)
	assert.Less(t, smaller.fills().Share, enough)
}

// TestNoChangeWanted: a batch that fills its cask often enough is left as it is, and one
// that no vessel holds is not made larger.
func TestNoChangeWanted(t *testing.T) {
	b := batch(t, "Ferry Landing").Scale(1.12)
	trial := tried(t, b, 60)
	require.GreaterOrEqual(t, trial.fills().Share, enough)
	assert.Nil(t, trial.Change(measure.US))

	tight := batch(t, "Ferry Landing").Clone()
	tight.Mash.Cooker.HoldsM3 = 1.001 * trial.Plan.Plant.Vessels[0].MostL / 1000 / 1.12
	c := tried(t, tight, 60).Change(measure.US)
	require.NotNil(t, c)
	assert.Nil(t, c.Odds)
	assert.Contains(t, c.Why, "Copper kettle")
}

// BenchmarkOdds is 400 draws of one batch, and the answer.
func BenchmarkOdds(b *testing.B) {
	r := batch(b, "Ferry Landing")
	for b.Loop() {
		tried(b, r, UsualDraws).Answer(measure.US)
	}
}
