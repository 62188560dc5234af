package learn

import (
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/constants"
	"newmake/compile/made"
	"newmake/compile/numbers"
	"newmake/compile/stage/still"
	"newmake/lang/check"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// spots are what a careful house reads of a run of Ferry Landing: 34 numbers that
// stand on its sheet. The standard deviations are those of common practice (package
// record).
func spots(b *recipe.Batch) []Reading {
	read := func(words string, sd float64, instrument string, s made.Spot) Reading {
		return Reading{Words: words, SD: sd, Instrument: instrument, Of: s.Says}
	}
	const minute, hour = 60.0, 3600.0
	var out []Reading
	for i, s := range b.Mash.Steps {
		if s.Verb == recipe.MashHeat || s.Verb == recipe.MashCool {
			out = append(out, read(fmt.Sprintf("minutes of step %d", i+1), 2.5*minute, "", made.Spot{Stage: record.Mash, Step: i, Kind: made.HowLong}))
		}
	}
	last := len(b.Mash.Steps) - 1
	out = append(out,
		read("gravity of the mash", .0006, "hydrometer", made.Spot{Stage: record.Mash, Step: last, What: record.Gravity}),
		read("volume to the fermenter", .008, "dip", made.Spot{Stage: record.Ferment, What: record.Volume}),
	)
	for _, h := range []float64{10, 24, 36, 48, 72} {
		out = append(out, read(fmt.Sprintf("gravity at %g h", h), .0006, "hydrometer", made.Spot{Stage: record.Ferment, What: record.Gravity, Kind: made.Within, AfterS: h * hour}))
	}
	for _, h := range []float64{12, 24, 36, 48} {
		out = append(out, read(fmt.Sprintf("temperature at %g h", h), .4, "thermometer", made.Spot{Stage: record.Ferment, What: record.Temperature, Kind: made.Within, AfterS: h * hour}))
	}
	out = append(out, read("final gravity", .0006, "hydrometer", made.Spot{Stage: record.Ferment, What: record.Gravity}))
	for _, st := range []struct {
		name      record.StageName
		fractions []string
	}{{record.Strip, []string{still.LowWines}}, {record.Spirit, []string{still.Heads, still.Hearts, still.Tails}}} {
		out = append(out,
			read(string(st.name)+": minutes to the first drop", 3*minute, "", made.Spot{Stage: st.name, Kind: made.FirstDrop}),
			read(string(st.name)+": minutes of the run", 3*minute, "", made.Spot{Stage: st.name, Kind: made.HowLong}))
		for _, f := range st.fractions {
			out = append(out,
				read("volume of "+f, .0008, "dip", made.Spot{Stage: st.name, Of: f, What: record.Volume}),
				read("strength of "+f, .0015, "alcoholmeter", made.Spot{Stage: st.name, Of: f, What: record.Strength}))
		}
		for _, over := range []float64{.02, .08, .15} {
			out = append(out, read(fmt.Sprintf("%s: spout at %g L", st.name, 1000*over), .005, "alcoholmeter", made.Spot{Stage: st.name, What: record.Spout, Kind: made.Within, OverM3: over}))
		}
	}
	for i := range out {
		out[i].Outcome = out[i].Words == "volume of hearts"
	}
	return out
}

// twin is a house whose constants are known, because they were drawn.
type twin struct {
	recipe      *recipe.Batch
	house       []constants.Constant
	is          []float64
	instruments []constants.Constant
	off         []float64
}

func ferryLanding(t testing.TB) *recipe.Batch {
	h, err := check.Load(filepath.FromSlash("../../../examples/lantern-hollow"), check.Options{})
	require.NoError(t, err)
	b, list := h.Batch("Ferry Landing")
	require.NotNil(t, b, list)
	b = b.Clone()
	b.Plant.Shift = recipe.Shift{ToMinute: 24 * 60, Days: [7]bool{true, true, true, true, true, true, true}}
	return b
}

// newTwin draws a house.
func newTwin(t testing.TB, r *rand.Rand) *twin {
	w := &twin{recipe: ferryLanding(t)}
	for _, c := range constants.Of(w.recipe) {
		x := figure(c, r.NormFloat64())
		switch {
		case c.Owner == constants.House && bears(c):
			w.house, w.is = append(w.house, c), append(w.is, x)
		case c.Owner == constants.Instrument:
			w.instruments, w.off = append(w.instruments, c), append(w.off, x)
		}
	}
	return w
}

// run makes a run and reads it.
func (w *twin) run(t testing.TB, r *rand.Rand, number int) Run {
	cs, x := append([]constants.Constant{}, w.house...), append([]float64{}, w.is...)
	for _, c := range constants.Of(w.recipe) {
		if c.Owner == constants.Run {
			cs, x = append(cs, c), append(x, figure(c, r.NormFloat64()))
		}
	}
	n, err := compile.Numbers(constants.Set(w.recipe, cs, x), &numbers.Memo{}, compile.Calculated)
	require.NoError(t, err)
	out := Run{Number: fmt.Sprintf("26-%02d", number), Day: time.Date(2026, 3, number, 0, 0, 0, 0, time.UTC), Recipe: w.recipe, Readings: spots(w.recipe)}
	kept := out.Readings[:0]
	for _, reading := range out.Readings {
		v, ok := reading.Of(n)
		if !ok {
			continue
		}
		for i, c := range w.instruments {
			if c.Key() == reading.Instrument {
				if c.Form == constants.Times {
					v *= w.off[i]
				} else {
					v += w.off[i]
				}
			}
		}
		reading.Said = v + reading.SD*r.NormFloat64()
		kept = append(kept, reading)
	}
	out.Readings = kept
	return out
}

func (w *twin) truth(f Found) (float64, bool) {
	for i, c := range w.house {
		if c.Key() == f.Key {
			return w.is[i], true
		}
	}
	for i, c := range w.instruments {
		if c.Key() == f.Key {
			return w.off[i], true
		}
	}
	return 0, false
}

func TestTwin(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 1))
	w := newTwin(t, r)
	var runs []Run
	for i := range 5 {
		runs = append(runs, w.run(t, r, i+1))
	}
	began := time.Now()
	l, err := From(runs, w.instruments)
	require.NoError(t, err)
	t.Log(time.Since(began), l.Evals, l.Converged, l.Readings, l.Sum, l.Told, l.Of)
	for _, f := range l.Found {
		truth, ok := w.truth(f)
		assert.True(t, ok, f.Key)
		t.Logf("%-32s true %8.4g found %8.4g (%.4g..%.4g) left %.2f z %.2f off %.2f bound %v untold %v", f.Key, truth, f.Value, f.Low, f.High, f.SD, f.Z, (f.Z-f.Prior.Z(truth))/f.SD, f.AtBound, f.Untold)
	}
	for _, p := range l.Together {
		t.Log(l.Found[p.A].Key, l.Found[p.B].Key, p.Correlation)
	}
	for _, g := range append(l.Gross, l.Unused...) {
		t.Log(runs[g.Run].Number, runs[g.Run].Readings[g.Reading].Words, g.Over, g.Times)
	}
	for _, p := range l.Predicted {
		t.Logf("%+v", p)
	}
	for _, p := range l.Scatter {
		t.Logf("%s %.2f %d", p.Key(), p.Times, p.Runs)
	}
	for _, p := range l.Drifts {
		t.Logf("%+v", p)
	}
}
