package review_test

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"newmake/compile"
	"newmake/compile/ask/learn/learntest"
	"newmake/compile/ask/review"
	"newmake/compile/matter/fluid"
	"newmake/compile/measure"
	"newmake/lang/check"
	"newmake/lang/record"
	"newmake/lang/testflag"
)

const lantern = "../../../examples/lantern-hollow"

// house is the invented house with a text more.
func house(t testing.TB, text string) *check.House {
	dir := filepath.FromSlash(lantern)
	h, err := check.Load(dir, check.Options{Overlay: map[string][]byte{filepath.Join(dir, "invented.batch"): []byte(text)}})
	require.NoError(t, err)
	return h
}

// invented is a run of an invented house, as people would write it down.
func invented(t testing.TB, seed uint64) string {
	if known, ok := inventions.Load(seed); ok {
		return known.(string)
	}
	b, list := house(t, "").Batch("Ferry Landing")
	require.NotNil(t, b, list)
	h := learntest.Invent(b, seed)
	n, err := h.Run()
	require.NoError(t, err)
	text := h.Text("99-01", time.Date(2026, 3, 3, 7, 0, 0, 0, time.UTC), n)
	inventions.Store(seed, text)
	return text
}

// inventions are the runs that were invented, by their seeds, and answers what was said of
// each text: no test changes an answer.
var inventions, answers sync.Map

func question(t testing.TB, text string) review.Question {
	h := house(t, text)
	run, list := h.Run("99-01")
	require.NotNil(t, run, list)
	require.False(t, list.HasErrors(), list.Error())
	b, list := h.Batch(run.Batch)
	require.NotNil(t, b, list)
	return review.Question{Batch: b, Run: run, Instrument: h.Instrument, Units: measure.US}
}

func of(t testing.TB, text string) *review.Answer {
	if known, ok := answers.Load(text); ok {
		return known.(*review.Answer)
	}
	a, err := review.Of(question(t, text))
	require.NoError(t, err)
	answers.Store(text, a)
	return a
}

// What all readings of a run together say of its hearts lies about what they really were, as far
// as is said and no farther: instruments that nobody has checked are off in all their readings
// alike, and numbers do not go in straight lines from the middle of the constants.
func TestAllReadingsTogether(t *testing.T) {
	b, list := house(t, "").Batch("Ferry Landing")
	require.NotNil(t, b, list)
	runs := 8 / testflag.Every(4)
	sum := 0.0
	for seed := range uint64(runs) {
		h := learntest.Invent(b, 7919*seed+77)
		n, err := h.Run()
		require.NoError(t, err)
		a := of(t, h.Text("99-01", time.Date(2026, 3, 3, 7, 0, 0, 0, time.UTC), n))
		z := (a.Ahead.HeartsLPA - 1000*n.Distilled.Hearts.PureAlcoholM3()) / a.Ahead.SD
		assert.Less(t, math.Abs(z), 3.5)
		sum += z * z
	}
	chi := distuv.ChiSquared{K: float64(runs)}
	assert.Less(t, sum, chi.Quantile(.999))
	assert.Greater(t, sum, chi.Quantile(.001))
}

// TestReadingsAreAsTheyShouldBe: of runs of houses drawn from what is known of houses,
// 19 readings in 20 are as they should be, and the alcohol balances in as many. Readings
// of one run go together, so the limits are wide.
func TestReadingsAreAsTheyShouldBe(t *testing.T) {
	runs := 12 / testflag.Every(6)
	off, all, broken := 0, 0, 0
	for seed := range uint64(runs) {
		a := of(t, invented(t, seed))
		for _, l := range a.Lines {
			all++
			if !l.Within() {
				off++
			}
		}
		require.NotNil(t, a.Balance)
		if !a.Balance.Balanced() {
			broken++
		}
	}
	assert.Greater(t, all, 30*runs)
	assert.LessOrEqual(t, float64(off)/float64(all), 0.10)
	assert.LessOrEqual(t, broken, runs/4)
}

// edited is a text with one line changed.
func edited(t testing.TB, text, old, new string) string {
	require.Equal(t, 1, strings.Count(text, old), "%s\n%s", old, text)
	return strings.Replace(text, old, new, 1)
}

// TestSlip: a slip of the pen is said, and the rest is not told from it.
func TestSlip(t *testing.T) {
	var text string
	for seed := uint64(0); text == "" || !of(t, text).AsItShould(); seed++ { // one that is not odd in itself
		require.Less(t, seed, uint64(30))
		text = invented(t, seed)
	}
	var line string
	for l := range strings.Lines(text) {
		if strings.Contains(l, "hearts") && strings.Contains(l, "gal at 68 F") {
			line = l
		}
	}
	require.NotEmpty(t, line)
	clean := of(t, text)
	fields := strings.Fields(line)
	slip := of(t, edited(t, text, line, strings.Replace(line, fields[1], "6"+fields[1][1:], 1))) // 4x gal written as 6x
	var found bool
	for _, l := range slip.Lines {
		found = found || l.Words == "volume of the hearts" && !l.Within()
	}
	assert.True(t, found)
	assert.False(t, slip.Balance.Balanced())
	require.NotEmpty(t, slip.Balance.Gross)
	var named bool
	for _, c := range slip.Balance.Gross[0].Causes {
		named = named || c.Flow == "hearts.volume"
	}
	assert.True(t, named, "%+v", slip.Balance.Gross)
	require.NotNil(t, clean.Ahead)
	assert.InDelta(t, clean.Ahead.HeartsLPA, slip.Ahead.HeartsLPA, 3*clean.Ahead.SD)
}

// TestFromHereOn: of a run that is not done the rest is foretold, the surer the more of
// it was read, and what was read later is left out.
func TestFromHereOn(t *testing.T) {
	q := question(t, invented(t, 5))
	at := func(stage record.StageName, word string) time.Time {
		for _, v := range q.Run.Visits {
			if q.Run.Stages[v.Stage].Name == stage && v.Word == word {
				return v.When.Time
			}
		}
		return time.Time{}
	}
	ask := func(until time.Time) *review.Answer {
		require.False(t, until.IsZero())
		q := q
		q.Until = until
		a, err := review.Of(q)
		require.NoError(t, err)
		return a
	}
	early, late := ask(at(record.Ferment, "pitch")), ask(at(record.Spirit, "first-drop"))
	require.NotNil(t, early.Ahead)
	require.NotNil(t, late.Ahead)
	assert.Less(t, late.Ahead.SD, early.Ahead.SD)
	assert.Less(t, len(early.Lines), len(late.Lines))
	require.NotEmpty(t, late.Ahead.Coming)
	for _, c := range late.Ahead.Coming {
		assert.True(t, c.At.After(at(record.Spirit, "first-drop")), c.Words)
		if c.Words == "hearts end: tails" {
			var turned time.Time
			for _, v := range q.Run.Visits {
				if v.Word == "to" && v.Of == "tails" {
					turned = v.When.Time
				}
			}
			assert.WithinDuration(t, turned, c.At, 25*time.Minute)
		}
	}
}

// TestUntold: what was not written down tells, all together, no more than there is; what
// is still to be read is told from what was left out.
func TestUntold(t *testing.T) {
	q := question(t, invented(t, 5))
	var charged, pitched time.Time
	for _, v := range q.Run.Visits {
		switch stage := q.Run.Stages[v.Stage].Name; {
		case stage == record.Strip && v.Word == "charge":
			charged = v.When.Time
		case stage == record.Ferment && v.Word == "pitch":
			pitched = v.When.Time
		}
	}
	bare := strings.Join(slices.DeleteFunc(strings.SplitAfter(invented(t, 5), "\n"), func(l string) bool {
		return strings.Contains(l, "low-wines 1") || strings.Contains(l, "SG at")
	}), "")
	for _, c := range []struct {
		name, text     string
		until          time.Time
		past, toCome   string
		neverToCome    string
		atLeastLacking int
	}{
		{"gravities and low wines left out", bare, time.Time{}, "the volume of the low wines", "", "the volume of the hearts", 2},
		{"as the wash is charged", invented(t, 5), charged, "", "the volume of the hearts", "the gravity at 24 h", 2},
		{"as it is pitched", invented(t, 5), pitched, "", "the volume of the hearts", "the volume to the fermenter", 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			q := question(t, c.text)
			q.Until = c.until
			a, err := review.Of(q)
			require.NoError(t, err)
			require.GreaterOrEqual(t, len(a.Untold), c.atLeastLacking)
			sum, is := 0.0, map[string]bool{}
			for _, u := range a.Untold {
				sum += u.Part
				is[u.Words] = u.ToCome
			}
			assert.LessOrEqual(t, sum, 1.0)
			if c.past != "" {
				assert.Contains(t, is, c.past)
				assert.False(t, is[c.past])
			}
			if c.toCome != "" {
				assert.True(t, is[c.toCome], "%v", is)
			}
			assert.False(t, is[c.neverToCome])
		})
	}
}

// TestAllAsPlanned: of a run of which everything was read as planned the readings together say
// the plan's hearts, and no less for what nobody wrote of the stills.
func TestAllAsPlanned(t *testing.T) {
	h := house(t, "")
	b, _ := h.Batch("Ferry Landing")
	require.NotNil(t, b)
	n, err := compile.Numbers(b, nil, compile.Calculated)
	require.NoError(t, err)
	gallons := func(m3 float64) float64 { return m3 / fluid.USGallonM3 }
	hearts, low := n.Distilled.Hearts, n.Stripped.LowWines
	a := of(t, fmt.Sprintf("run \"99-01\" of \"Ferry Landing\" on 2026-03-03 {\n  strip {\n    low-wines %.2f gal at 68 F, %.2f %% abv at 20 C\n  }\n"+
		"  spirit {\n    2026-03-11 13:00 hearts %.2f gal at 68 F, %.2f %% abv at 20 C\n  }\n}\n",
		gallons(low.VolumeAtM3(20)), 100*low.ABV(), gallons(hearts.VolumeAtM3(20)), 100*hearts.ABV()))
	require.True(t, a.AsItShould(), "%+v %+v", a.Lines, a.Balance)
	require.NotNil(t, a.Ahead)
	assert.InDelta(t, 1000*hearts.PureAlcoholM3(), a.Ahead.HeartsLPA, 0.1*a.Ahead.SD)
}

// TestDoneOtherwise: what was done otherwise is worth something, and named.
func TestDoneOtherwise(t *testing.T) {
	text := invented(t, 3)
	a := of(t, strings.Replace(text, "ferment in", "used {\n    corn 500 lb\n    rye 60 lb\n    distillers-malt 110 lb\n    oats 79 lb\n  }\n  ferment in", 1))
	require.NotNil(t, a.Done)
	assert.False(t, a.Done.Same)
	var said []string
	for _, e := range a.Done.Edits {
		said = append(said, e.What)
	}
	assert.Contains(t, strings.Join(said, "; "), "corn")
}

// TestNothingYet: a run that was only opened has nothing to say, and says so.
func TestNothingYet(t *testing.T) {
	for _, text := range []string{
		"run \"99-01\" of \"Ferry Landing\" on 2026-03-03 {\n}\n",
		"run \"99-01\" of \"Ferry Landing\" on 2026-03-03 {\n  mash {\n    heat temperature  # planned 09:06: 190 F\n  }\n  spirit {\n    first-drop spout\n  }\n}\n",
	} {
		a := of(t, text)
		assert.Empty(t, a.Lines)
		assert.Nil(t, a.Balance)
		assert.Nil(t, a.Ahead)
		assert.True(t, a.AsItShould())
	}
}

func BenchmarkReview(b *testing.B) {
	q := question(b, invented(b, 1))
	for b.Loop() {
		if _, err := review.Of(q); err != nil {
			b.Fatal(err)
		}
	}
}

// What was weighed as the sheet has it, to its three figures, is not done otherwise.
func TestDoneAsTheSheetSays(t *testing.T) {
	for text, want := range map[string][]string{
		"corn 537.2 lb": nil, "corn 538 lb": nil, "corn 538.5 lb": {"corn 1.3 lb more"},
		"water 269.5 gal": nil, "water 269.4 gal": {"water 0.60 gal less"},
	} {
		h := house(t, "run \"99-01\" of \"Ferry Landing\" on 2026-02-03 {\n  used {\n"+text+"\n}\n}\n")
		run, list := h.Run("99-01")
		require.False(t, list.HasErrors(), list.Error())
		b, _ := h.Batch(run.Batch)
		a, err := review.Of(review.Question{Batch: b, Run: run, Instrument: h.Instrument, Units: measure.US})
		require.NoError(t, err)
		done := a.Small
		for _, e := range a.Done.Edits {
			done = append(done, e.What)
		}
		assert.Equal(t, want, done, text)
	}
}
