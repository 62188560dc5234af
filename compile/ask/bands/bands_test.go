package bands

import (
	"encoding/json"
	"math"
	"path/filepath"
	"reflect"
	"runtime"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/plan"
	"newmake/compile/stage/still"
	"newmake/compile/work"
	"newmake/lang/check"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/testflag"
)

const lantern = "../../../examples/lantern-hollow"

func house(t testing.TB) *check.House {
	t.Helper()
	h, err := check.Load(filepath.FromSlash(lantern), check.Options{})
	require.NoError(t, err)
	return h
}

func batch(t testing.TB, name string) *recipe.Batch {
	t.Helper()
	b, list := house(t).Batch(name)
	require.NotNil(t, b, list)
	return b
}

func planned(t testing.TB, b *recipe.Batch) *plan.Plan {
	t.Helper()
	p, list := compile.Compile(b)
	require.NotNil(t, p, list)
	Put(p, b)
	require.NotNil(t, p.Bands)
	return p
}

// known is a batch's plan with its bands, made once for those who only read it.
func known(t testing.TB, b *recipe.Batch) *plan.Plan {
	t.Helper()
	if made, ok := plans.Load(b.Name); ok {
		return made.(*plan.Plan)
	}
	made, _ := plans.LoadOrStore(b.Name, planned(t, b))
	return made.(*plan.Plan)
}

var plans sync.Map // by the batch's name

// No tolerance of a sheet is without its reasons: what no constant moves of it is one of
// the listed (work.ReadingErrors), or two that come together, and the band is no narrower.
func TestEveryToleranceHasItsReasons(t *testing.T) {
	seen := map[string]bool{}
	for _, dir := range []string{lantern, "../../../examples/herring-stair"} {
		h, err := check.Load(filepath.FromSlash(dir), check.Options{})
		require.NoError(t, err)
		for i, name := range h.Batches() {
			if i%testflag.Every(3) != 0 {
				continue
			}
			b, list := h.Batch(name)
			require.NotNil(t, b, list)
			p := known(t, b)
			for _, s := range p.Schedule.Steps {
				for _, r := range s.Read {
					id := name + ", " + r.ID
					if r.Tolerance.Unit == "" {
						assert.Equal(t, plan.Used, s.Stage, id)
						continue
					}
					of := reasons(p, s, r)
					assert.NotEmpty(t, of, "%s: %s +/- %g, and no reason for %g", id, r.What, r.Tolerance.Value, r.Besides)
					for _, o := range of {
						seen[o] = true
					}
					assert.GreaterOrEqual(t, r.Tolerance.Value, r.Besides*(1-0.02), "%s: rounding aside", id)
				}
			}
		}
	}
	for _, b := range work.ReadingErrors() {
		assert.True(t, seen[b.Of] || testflag.Every(3) != 1, "no sheet has %s", b.Of)
	}
}

// reasons are of which the part of a tolerance is that no constant moves.
func reasons(p *plan.Plan, s plan.Step, r plan.Reading) []string {
	is := func(x float64) bool { return math.Abs(x-r.Besides) <= 1e-3*r.Besides+1e-4 }
	for _, b := range work.ReadingErrors() {
		kind := r.Kind
		switch kind {
		case record.Receiver:
			kind = record.Volume
		case record.Net: // by the scale
			kind = record.Gross
		}
		if (b.Kind == kind || kind == "") && is(b.At(r.Should.Value)) {
			return []string{b.Of}
		}
	}
	switch {
	case strings.HasPrefix(s.ID, "spirit.charge") && p.Spirit.FeintsReturned != nil:
		low := p.Strip.Fraction(still.LowWines).VolumeL / float64(p.Spirit.Charges)
		if is(math.Hypot(work.LowWinesVolume.At(low), work.FeintsVolume.At(p.Spirit.FeintsReturned.VolumeL))) {
			return []string{work.LowWinesVolume.Of, work.FeintsVolume.Of}
		}
	case r.What == "gross" && is(math.Hypot(work.Net.At(p.Cask.NetKg), work.Tare.At(p.Cask.TareKg))):
		return []string{work.Net.Of, work.Tare.Of}
	}
	return nil
}

// TestSameBytes: whatever the number of processors, the bands are the same to the byte.
func TestSameBytes(t *testing.T) {
	b := batch(t, "Ferry Landing")
	made := func(processors int) string {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(processors))
		out, err := json.Marshal(planned(t, b))
		require.NoError(t, err)
		return string(out)
	}
	one := made(1)
	assert.Equal(t, one, made(7))
}

// TestAllIsWithin: every reading that foretells something has a band with its value in
// it, every curve one that it runs in, each of the summary's numbers its own.
func TestAllIsWithin(t *testing.T) {
	h := house(t)
	for i, name := range h.Batches() {
		if i%testflag.Every(3) != 0 {
			continue
		}
		b, list := h.Batch(name)
		require.NotNil(t, b, list)
		p := known(t, b)
		for _, l := range p.Blanks() {
			if l.Stage == plan.Used {
				assert.Nil(t, l.Low, l.ID)
				continue
			}
			require.NotNil(t, l.Low, l.ID)
			assert.True(t, l.Low.Value <= l.Should.Value && l.Should.Value <= l.High.Value, "%s: %v", l.ID, l)
			assert.Less(t, l.Low.Value, l.High.Value, l.ID)
			assert.True(t, l.Low.Proof <= l.Should.Proof && l.Low.Gallons <= l.Should.Gallons && l.Should.Abv60F <= l.High.Abv60F, l.ID)
		}
		const near = 0.011 // of rounding
		require.Len(t, p.Bands.Mash, len(p.Mash.Curve))
		for i, x := range p.Bands.Mash {
			assert.True(t, x.LowC <= p.Mash.Curve[i].TempC+near && p.Mash.Curve[i].TempC <= x.HighC+near, "%s %v", name, x)
		}
		require.Len(t, p.Bands.Ferment, len(p.Ferment.Curve))
		for i, x := range p.Bands.Ferment {
			c := p.Ferment.Curve[i]
			assert.True(t, x.LowSG <= c.SG && c.SG <= x.HighSG && x.LowC <= c.TempC && c.TempC <= x.HighC && x.LowAbvPct <= c.AbvPct && c.AbvPct <= x.HighAbvPct, "%s %v", name, x)
		}
		for _, r := range []struct {
			plan.Run
			plan.RunBands
		}{{p.Strip, p.Bands.Strip}, {p.Spirit, p.Bands.Spirit}} {
			require.Len(t, r.ByVolume, len(r.Curve))
			for i, c := range r.Curve {
				for _, x := range []plan.RunBand{r.ByVolume[i], r.ByClock[i]} {
					assert.True(t, x.LowAbvPct <= c.AbvPct && c.AbvPct <= x.HighAbvPct && x.LowVapourC <= c.VapourC && c.VapourC <= x.HighVapourC &&
						x.LowRateLPerH <= c.RateLPerH+0.1 && c.RateLPerH <= x.HighRateLPerH+0.1 && x.LowOverL <= c.OverL && c.OverL <= x.HighOverL, "%s %v %v", name, c, x)
				}
				assert.LessOrEqual(t, r.ByClock[i].LowAbvPct, r.ByVolume[i].LowAbvPct, "the clock tells less")
			}
		}
		for _, n := range p.Bands.Numbers {
			assert.True(t, n.Low.Value <= n.Planned.Value && n.Planned.Value <= n.High.Value || n.Key == "leftoverL", "%s %v", name, n)
			sum := 0.0
			for i, s := range n.Of {
				sum += s.SharePct
				assert.True(t, s.SharePct >= 2-0.5 && (i == 0 || s.SharePct <= n.Of[i-1].SharePct), "%s %v", name, n)
			}
			assert.LessOrEqual(t, sum, 102.0, n.Key)
		}
	}
}

// TestEveryNumberIsAsked: each of the summary's has its row.
func TestEveryNumberIsAsked(t *testing.T) {
	has := map[string]bool{"casksFilled": true, "leftoverL": true}
	for _, n := range numbers {
		has[n.key] = true
	}
	s := reflect.TypeFor[plan.Summary]()
	for i := range s.NumField() {
		key, _, _ := strings.Cut(s.Field(i).Tag.Get("json"), ",")
		assert.True(t, has[key], key)
	}
}

// TestSpread adds up by hand: lines as squares, what bends on its side alone.
func TestSpread(t *testing.T) {
	k := &bench{}
	assert.Equal(t, spread{5, 5}, k.spread(moves{low: []float64{-3, 4}, high: []float64{3, -4}}))
	assert.Equal(t, spread{3, 0}, k.spread(moves{low: []float64{-3}, high: []float64{-1}}), "whichever way, it is less")
	assert.Equal(t, spread{0, 0}, k.spread(moves{low: []float64{0}, high: []float64{0}}))
	assert.Equal(t, spread{5, 5}, spread{3, 3}.and(4))
}

// TestCovered: a point that may come 2 sooner reaches the one before it.
func TestCovered(t *testing.T) {
	got := covered([]box{{0, 0, 0, 9, 11}, {1, 1, 1, 4, 6}, {3, 1, 3, 0, 1}, {5, 4, 9, -1, 2}})
	assert.Equal(t, []ends{{9, 11}, {0, 6}, {0, 1}, {-1, 2}}, got)
}

// TestLine: between points, before, after, and on both sides of a jump.
func TestLine(t *testing.T) {
	xs, ys := []float64{0, 1, 1, 2}, []float64{10, 20, 5, 7}
	l := line{len(xs), func(i int) float64 { return xs[i] }}
	y := func(i int) float64 { return ys[i] }
	for x, want := range map[float64]float64{-1: 10, 0: 10, 0.5: 15, 1: 20, 1.5: 6, 2: 7, 3: 7} {
		assert.InDelta(t, want, l.at(x, false, y), 1e-9, "%g", x)
	}
	assert.InDelta(t, 5, l.at(1, true, y), 1e-5)
	assert.InDelta(t, 20, l.at(1-1e-9, false, y), 1e-5)
	assert.InDelta(t, 5, l.at(1-1e-9, true, y), 1e-5)
}

// TestCasks: on both sides of a cask that is filled a little short.
func TestCasks(t *testing.T) {
	for worth, want := range map[float64]float64{0: 0, 0.969: 0, 0.971: 1, 1: 1, 1.5: 1, 1.969: 1, 1.971: 2} {
		assert.Equal(t, want, casks(worth), "%g", worth)
	}
}

// TestNoBands: a plan that has them stays as it is.
func TestNoBands(t *testing.T) {
	b := batch(t, "Toll Road")
	p := planned(t, b)
	had := p.Bands
	Put(p, b)
	assert.Same(t, had, p.Bands)
	Put(nil, b)
}

// BenchmarkPut is the bands of one batch.
func BenchmarkPut(b *testing.B) {
	r := batch(b, "Ferry Landing")
	for b.Loop() {
		p, _ := compile.Compile(r)
		Put(p, r)
	}
}
