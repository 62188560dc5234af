package learn

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"newmake/compile"
	"newmake/compile/ask/learn/learntest"
	"newmake/compile/constants"
	"newmake/compile/numbers"
	"newmake/lang/check"
	"newmake/lang/testflag"
)

const lanternHollow = "../../../examples/lantern-hollow"

// figures are those of which a run was really made.
type figures struct {
	of []constants.Constant
	x  []float64
}

// written is an invented house whose runs were written down as people would, and read again.
func written(t *testing.T, seed uint64, n int) (*learntest.House, *Gathered, []figures) {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, os.DirFS(filepath.FromSlash(lanternHollow))))
	runs := filepath.Join(dir, "runs", "2026.batch")
	require.NoError(t, os.Remove(runs))
	h, err := check.Load(dir, check.Options{})
	require.NoError(t, err)
	b, list := h.Batch("Ferry Landing")
	require.NotNil(t, b, list)
	house := learntest.Invent(b, seed)
	text := ""
	var really []figures
	for i := range n {
		made, of, x, err := house.RunOf()
		require.NoError(t, err)
		really = append(really, figures{of, x})
		text += house.Text(fmt.Sprintf("26-%02d", i+1), time.Date(2026, 1, 6+7*i, 7, 0, 0, 0, time.UTC), made) + "\n"
	}
	require.NoError(t, os.WriteFile(runs, []byte(text), 0o600))
	h, err = check.Load(dir, check.Options{})
	require.NoError(t, err)
	g, err := Gather(h, nil, nil, nil)
	require.NoError(t, err)
	return house, g, really
}

// truth is what a constant that was found really is.
func truth(house *learntest.House, f Found) (float64, bool) {
	for i, c := range house.Of {
		if c.Key() == f.Key {
			return house.Is[i], true
		}
	}
	x, ok := house.Off[f.ID]
	return x, ok
}

// another is the seed of a house that has nothing in common with those of other seeds and of
// other numbers of runs.
func another(n, seed int) uint64 {
	src := rand.NewPCG(uint64(n), uint64(seed))
	src.Uint64() // the first one leans on the seed
	return src.Uint64()
}

// calibrateWritten learns from houses by the full model, from the text of their runs.
func calibrateWritten(t *testing.T, houses, n int) (c calibrated, readings, gross int) {
	c = calibrated{runs: n, houses: houses}
	all := held{name: "all of them"}
	for seed := range houses {
		house, g, _ := written(t, another(n, seed), n)
		l, err := From(g.Runs, g.Instruments, Options{})
		require.NoError(t, err)
		readings, gross = readings+l.Readings+len(l.Gross), gross+len(l.Gross)
		if len(l.Gross) > 0 {
			c.gross++
		}
		if len(l.Drifts) > 0 {
			c.drifts++
		}
		if !l.Converged {
			c.failed++
			continue
		}
		one := held{}
		for _, f := range l.Found {
			x, ok := truth(house, f)
			require.True(t, ok, f.Key)
			all.add(f.off(x))
			one.add(f.off(x))
			i := slices.IndexFunc(c.constants, func(h held) bool { return h.name == f.Key })
			if i < 0 {
				i, c.constants = len(c.constants), append(c.constants, held{name: f.Key})
			}
			c.constants[i].add(f.off(x))
		}
		c.shares = append(c.shares, float64(one.in90)/float64(one.n))
	}
	c.constants = append(c.constants, all)
	return c, readings, gross
}

// What is learned from the text of runs in which nothing went wrong calls hardly a reading wrong:
// one house in twenty has one that is (the page counts many houses).
func TestWrittenRuns(t *testing.T) {
	c, readings, gross := calibrateWritten(t, 2, 2/testflag.Every(2))
	assert.Zero(t, c.failed)
	assert.LessOrEqual(t, gross, 1, "of %d readings", readings)
}

// Readings lie about what the model says with the figures of which the runs were really made as
// far as is said of each kind of reading, clocks and all, and no farther: what is called a gross
// error is judged by that. A strength that falls while the clock is read is the hardest.
func TestReadingsScatterAsSaid(t *testing.T) {
	kind := func(rd Reading) string {
		words, at, _ := strings.Cut(rd.Words, ", ")
		if i := strings.LastIndex(words, " at "); i > 0 {
			words = words[:i]
		}
		return strings.TrimSpace(words + " " + strings.TrimLeft(at, "0123456789"))
	}
	squares, count := map[string]float64{}, map[string]int{}
	for seed := range 8 {
		house, g, really := written(t, uint64(seed+100), 2)
		for k, r := range g.Runs {
			n, err := compile.Numbers(constants.Set(r.Recipe, really[k].of, really[k].x), &numbers.Memo{}, compile.Calculated)
			require.NoError(t, err)
			for _, rd := range r.Readings {
				v, ok := rd.Of(n)
				if !ok {
					continue
				}
				switch off := house.Off[rd.Instrument]; rd.Instrument {
				case "":
				case "dip":
					v *= off
				default:
					v += off
				}
				sd := math.Hypot(rd.SD, math.Sqrt(float64(len(rd.Clocks)))*rd.ByClock(n))
				squares[kind(rd)] += math.Pow((rd.Said-v)/sd, 2)
				count[kind(rd)]++
			}
		}
	}
	assert.Greater(t, len(count), 10)
	for of, n := range count {
		chi := distuv.ChiSquared{K: float64(n)}
		assert.Greater(t, squares[of], chi.Quantile(.0005), "%d of %s scatter less", n, of)
		assert.Less(t, squares[of], chi.Quantile(.9995), "%d of %s scatter more", n, of)
	}
}

// What happened in the example's history is found in it: the rakes that stuck and nothing else is
// called wrong, and the alcoholometer drifts from the run on that it did.
func TestHistoryTells(t *testing.T) {
	h, err := check.Load(filepath.FromSlash(lanternHollow), check.Options{})
	require.NoError(t, err)
	b, list := h.Batch("Ferry Landing")
	require.NotNil(t, b, list)
	house, _, err := learntest.History(b)
	require.NoError(t, err)
	all := testflag.Every(2) == 1
	var only []string // of the six
	if !all {
		only = []string{"26-01", "26-03"}
	}
	g, err := Gather(h, only, nil, nil)
	require.NoError(t, err)
	l, err := From(g.Runs, g.Instruments, Options{})
	require.NoError(t, err)
	require.True(t, l.Converged)

	require.Len(t, l.Gross, 1)
	stuck := l.Gross[0]
	assert.Equal(t, "26-03", g.Runs[stuck.Run].Number)
	assert.Equal(t, "minutes of the heat", g.Runs[stuck.Run].Readings[stuck.Reading].Words)
	assert.InDelta(t, learntest.Stuck.Seconds(), stuck.Over, 600)

	if all {
		require.Len(t, l.Drifts, 1)
		drift := l.Drifts[0]
		found := l.Found[drift.Constant]
		assert.Equal(t, "alcoholometer", found.ID)
		assert.Equal(t, "26-04", g.Runs[drift.Since].Number)
		assert.InDelta(t, learntest.Drift, drift.By*found.Prior.SD, .0025)
	} else {
		assert.Empty(t, l.Drifts, "it drifts after these")
	}

	// What the drift does not touch is found to be what it is.
	for _, f := range l.Found {
		x, ok := truth(house, f)
		require.True(t, ok, f.Key)
		if !slices.Contains([]string{"alcoholometer", "alcohol-lost", "yield-efficiency"}, f.ID) {
			assert.Less(t, math.Abs(f.off(x)), 3.0, "%s is %g and was found %g (%g..%g)", f.Key, x, f.Value, f.Low, f.High)
		}
	}
}
