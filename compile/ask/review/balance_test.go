package review

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/quantity"
	"newmake/lang/record"
)

// truth is an invented run in which everything balances, in litres and per cent by
// volume at 20 C; its readings are made by adding to that.
type truth struct {
	wort, og, fg                  float64
	wash, washAbv                 float64
	low, lowAbv, feints, feintAbv float64
	hearts, heartsAbv             float64
	heads, headsAbv               float64
	tails, tailsAbv               float64
	pot, lees                     float64
}

// a run of the size of the examples. The tails are what is left.
func balanced() truth {
	t := truth{wort: 1500, og: 1.066, fg: 0.998, wash: 1440, washAbv: 8.9, low: 450, feints: 170, feintAbv: 36, hearts: 172, heartsAbv: 71, heads: 15, headsAbv: 74, tails: 190, pot: 2, lees: 3}
	t.lowAbv = (t.wash*t.washAbv - 100*t.pot) / t.low
	t.tailsAbv = (t.low*t.lowAbv + t.feints*t.feintAbv - t.hearts*t.heartsAbv - t.heads*t.headsAbv - 100*t.lees) / t.tails
	return t
}

func (t truth) expected() Expected {
	return Expected{PotAleLPA: t.pot, LeesLPA: t.lees, WashShare: t.wash / t.wort, AbvPerSG: t.washAbv / (t.og - t.fg)}
}

// said is a reading of a value with an error, as an instrument of the usual accuracy has
// it, without the rounding: so that the scatter is what is said of it.
func said(what record.What, k quantity.Kind, unit string, value float64, off float64) record.Reading {
	r := record.Reading{What: what, Value: record.Value{Kind: k, Unit: unit, Num: "1.0000", SI: value}}
	if k == quantity.Strength {
		r.At = &record.Value{Kind: quantity.Temperature, SI: 20}
	}
	r.SI = value + off*record.AccuracyOf(&r, nil).Of(value)
	r.Number, r.Num = r.SI, strconv.FormatFloat(r.SI, 'f', 6, 64)
	return r
}

func litres(v, off float64) record.Reading {
	return said(record.Volume, quantity.Volume, "L", v/1000, off)
}
func strength(pct, off float64) record.Reading {
	return said(record.Strength, quantity.Strength, "% abv", pct/100, off)
}
func gravity(sg, off float64) record.Reading {
	r := said(record.Gravity, quantity.Gravity, "SG", sg, off)
	return r
}

// run writes the truth down, each reading off by so many standard deviations.
func (t truth) run(off func() float64) *record.Run {
	r := &record.Run{Number: "26-01", Stages: []record.Stage{{Name: record.Ferment}, {Name: record.Strip}, {Name: record.Spirit}}}
	visit := func(stage int, word, of string, read ...record.Reading) {
		r.Visits = append(r.Visits, record.Visit{Stage: stage, Word: word, Of: of, Read: read})
	}
	visit(0, "pump", "", litres(t.wort, off()))
	visit(0, "pitch", "", gravity(t.og, off()))
	visit(0, "", "", gravity(t.fg, off()))
	visit(1, "charge", "", litres(t.wash, off()), strength(t.washAbv, off()))
	visit(1, "low-wines", "", litres(t.low, off()), strength(t.lowAbv, off()))
	visit(2, "charge", "low-wines", litres(t.low, off()), strength(t.lowAbv, off()))
	visit(2, "charge", "feints", litres(t.feints, off()), strength(t.feintAbv, off()))
	visit(2, "heads", "", litres(t.heads, off()), strength(t.headsAbv, off()))
	visit(2, "hearts", "", litres(t.hearts, off()), strength(t.heartsAbv, off()))
	visit(2, "tails", "", litres(t.tails, off()), strength(t.tailsAbv, off()))
	return r
}

func plainBench() *bench {
	return &bench{func(string) *record.Instrument { return nil }, func(string, float64) float64 { return 0 }}
}

func exact() float64 { return 0 }

func TestBalanced(t *testing.T) {
	is := balanced()
	b, err := balances(is.run(exact), plainBench(), is.expected())
	require.NoError(t, err)
	require.NotNil(t, b)
	assert.Equal(t, 5, b.Checks, "ferment, to the still, wash run, waiting, spirit run")
	assert.InDelta(t, 0, b.Scatter, 1e-9)
	assert.Empty(t, b.Gross)
	for _, f := range b.Flows {
		assert.InDelta(t, f.Said, f.Best, 1e-9*math.Abs(f.Said), f.ID)
		assert.LessOrEqual(t, f.BestSD, f.SD*(1+1e-12), "%s: what agrees with others is surer", f.ID)
	}
}

// TestGrossError: a slip of the pen is found by what it is, or by what could not be told
// from it.
func TestGrossError(t *testing.T) {
	is := balanced()
	for name, slip := range map[string]struct {
		off  func(r *record.Run)
		flow string
		by   float64
	}{
		"the hearts' strength": {func(r *record.Run) { r.Visits[8].Read[1].SI += 0.06 }, "hearts.strength", 6},
		"the volume of wash":   {func(r *record.Run) { r.Visits[3].Read[0].SI += 0.2 }, "wash.volume", 200},
		"the wash's strength":  {func(r *record.Run) { r.Visits[3].Read[1].SI += 0.02 }, "wash.strength", 2},
	} {
		r := is.run(exact)
		slip.off(r)
		b, err := balances(r, plainBench(), is.expected())
		require.NoError(t, err)
		assert.False(t, b.Balanced(), name)
		require.NotEmpty(t, b.Gross, name)
		var near bool
		for _, c := range b.Gross[0].Causes {
			near = near || c.Flow == slip.flow && math.Abs(c.By-slip.by) < 3*c.SD
		}
		assert.True(t, near, "%s: %+v", name, b.Gross)
	}
}

// TestNotWrittenDown: what is missing is named by its place and as a volume.
func TestNotWrittenDown(t *testing.T) {
	is := balanced()
	r := is.run(exact)
	for _, v := range []int{4, 5} { // 60 L of low wines lost before anybody gauged them
		r.Visits[v].Read[0].SI -= 0.060
	}
	// What came of the spirit run is less by that too.
	short := 60 * is.lowAbv / 100
	r.Visits[9].Read[0].SI -= short / (is.tailsAbv / 100) / 1000
	b, err := balances(r, plainBench(), is.expected())
	require.NoError(t, err)
	require.NotEmpty(t, b.Gross)
	var found *Cause
	for i, c := range b.Gross[0].Causes {
		if c.Place == "in the wash run" {
			found = &b.Gross[0].Causes[i]
		}
	}
	require.NotNil(t, found, "%+v", b.Gross)
	assert.Equal(t, "low wines", found.Of)
	assert.InDelta(t, 60, found.Litres, 15)
}

// TestFalseAlarms: of runs in which nothing is wrong the balance is called broken in one
// of twenty, and no more.
func TestFalseAlarms(t *testing.T) {
	is := balanced()
	random := rand.New(rand.NewPCG(1, 2))
	const runs = 1500
	broken, gross := 0, 0
	for range runs {
		b, err := balances(is.run(random.NormFloat64), plainBench(), is.expected())
		require.NoError(t, err)
		if !b.Balanced() {
			broken++
		}
		if len(b.Gross) > 0 {
			gross++
		}
	}
	// What the model says was not drawn, so the scatter is less than chi-square.
	sd := math.Sqrt(level * (1 - level) * runs)
	assert.LessOrEqual(t, float64(broken), level*runs+3*sd)
	assert.LessOrEqual(t, float64(gross), level*runs+3*sd)
	assert.NotZero(t, gross, "the test is tried at all")
}

// TestNothingToCheck: a run that says little has no balance, and a partial one has a
// part of it.
func TestNothingToCheck(t *testing.T) {
	is := balanced()
	b, err := balances(&record.Run{}, plainBench(), is.expected())
	require.NoError(t, err)
	assert.Nil(t, b)
	r := is.run(exact)
	r.Visits = r.Visits[:5]
	b, err = balances(r, plainBench(), is.expected())
	require.NoError(t, err)
	require.NotNil(t, b)
	assert.Equal(t, 3, b.Checks)
}

// What is in the still may be gauged as one lot, feints and low wines together, as the sheet
// asks for it: that is no slip.
func TestChargedAsOne(t *testing.T) {
	truth := balanced()
	b := &bench{func(string) *record.Instrument { return nil }, func(string, float64) float64 { return 0 }}
	none := func() float64 { return 0 }
	as := func(off float64, withFeints bool) *record.Run {
		r := truth.run(none)
		all := truth.low + truth.feints
		abv := (truth.low*truth.lowAbv + truth.feints*truth.feintAbv) / all
		for i := range r.Visits {
			switch v := &r.Visits[i]; {
			case v.Word == "charge" && v.Of == "low-wines" && withFeints:
				v.Of = ""
			case v.Word == "charge" && v.Of == "low-wines":
				v.Of, v.Read = "", []record.Reading{litres(all, off), strength(abv, off)}
			case v.Of == "feints" && !withFeints:
				v.Word = "note"
			}
		}
		return r
	}
	e := truth.expected()
	e.FeintsLPA = truth.feints * truth.feintAbv / 100
	for _, withFeints := range []bool{true, false} {
		got, err := balances(as(0, withFeints), b, e)
		require.NoError(t, err)
		assert.True(t, got.Balanced(), "chi-square %.1f", got.Scatter)
		assert.Less(t, got.Scatter, 0.5)
		assert.Empty(t, got.Gross)
	}
	got, err := balances(as(20, false), b, e)
	require.NoError(t, err)
	assert.False(t, got.Balanced())
}
