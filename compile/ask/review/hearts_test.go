package review_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/ask/review"
	"newmake/compile/book/ledger"
	"newmake/compile/measure"
	"newmake/lang/check"
	"newmake/lang/quantity"
	"newmake/lang/testflag"
)

// TestHeartsAsTheBooks: a review says of the hearts what the books enter as produced, to
// the hundredth, whether they were gauged in the spirit run or again at the fill, warm, cold
// or at no temperature that anybody wrote down.
func TestHeartsAsTheBooks(t *testing.T) {
	const again = `run "99-01" of "Ferry Landing" on 2026-02-03 {
  spirit {
    2026-02-11 12:00 fire
    hearts 44.0 gal at 80 F, 71.0 % abv at 80 F
  }
  fill {
    2026-02-12 14:00 hearts 43.6 gal, 143.1 proof at 61 F
    14:20 reduce 9 gal
    15:00 gauge 52.4 gal, 119.1 proof at 60 F
    into "LH-9901" 53 gal, tare 98 lb, gross 490 lb
  }
}
`
	const bare = `run "99-01" of "Ferry Landing" on 2026-02-03 {
  spirit {
    2026-02-11 12:00 hearts 44.0 gal, 71.0 % abv
  }
}
`
	for _, c := range []struct{ name, text, run string }{
		{"the third of the example", again, "26-03"}, {"the fourth of the example", again, "26-04"}, {"the sixth of the example", again, "26-06"},
		{"gauged again at the fill", again, "99-01"}, {"at no temperature", bare, "99-01"},
	} {
		if (c.run == "26-04" || c.run == "26-06") && testflag.Every(2) != 1 {
			continue // as the third
		}
		t.Run(c.name, func(t *testing.T) {
			h := house(t, c.text)
			assert.Equal(t, produced(t, h, c.run), heartsOf(t, h, c.run))
		})
	}
}

// heartsOf is the alcohol of the hearts of a run as a review shows it.
func heartsOf(t *testing.T, h *check.House, number string) string {
	run, list := h.Run(number)
	require.NotNil(t, run)
	require.False(t, list.HasErrors(), list.Error())
	b, _ := h.Batch(run.Batch)
	require.NotNil(t, b)
	a, err := review.Of(review.Question{Batch: b, Run: run, Instrument: h.Instrument, Units: measure.US})
	require.NoError(t, err)
	require.NotNil(t, a.Hearts)
	return measure.US.Alcohol(1000 * a.Hearts.Said)
}

// produced is what the books enter as produced by it.
func produced(t *testing.T, h *check.House, number string) string {
	texts, _ := h.Inventory()
	for _, month := range []time.Month{time.January, time.February} {
		for _, g := range ledger.Of(ledger.HouseOf(h, texts, "", false), 2026, month).Gauges {
			if g.What == "production" && g.Of == "run "+number {
				return measure.Number(g.Amount.ProofGallons, 2) + " PG"
			}
		}
	}
	return ""
}

// What was spilt of the hearts is of what was done, of every line that gauges them after that;
// what was gauged before it is whole.
func TestSpiltHearts(t *testing.T) {
	answers := map[string]*review.Answer{}
	of := func(text string) *review.Answer {
		if a := answers[text]; a != nil {
			return a
		}
		h := house(t, `run "99-01" of "Ferry Landing" on 2026-02-03 {
  spirit {
    2026-02-11 12:00 fire
`+text+`
  }
  fill {
    2026-02-12 14:00 hearts 41.6 gal at 60 F, 143.1 proof at 60 F
  }
}
`)
		run, list := h.Run("99-01")
		require.False(t, list.HasErrors(), list.Error())
		b, _ := h.Batch(run.Batch)
		a, err := review.Of(review.Question{Batch: b, Run: run, Instrument: h.Instrument, Units: measure.US})
		require.NoError(t, err)
		answers[text] = a
		return a
	}
	volumes := func(a *review.Answer) (said, should []float64) {
		for _, g := range a.Gaps {
			if g.Kind == review.Volume {
				said, should = append(said, g.Said), append(should, g.Made)
			}
		}
		return said, should
	}
	const gauge, spill = "    hearts 41.7 gal at 60 F, 143.1 proof at 60 F\n", "    lost 3 gal of hearts\n"
	gal := quantity.USGallonM3
	was, whole := volumes(of(gauge))
	require.Len(t, was, 2)
	for name, c := range map[string]struct {
		text string
		less [2]float64
	}{
		"before both": {spill + gauge, [2]float64{3, 3}}, "between": {gauge + spill, [2]float64{0, 3}},
	} {
		said, should := volumes(of(c.text))
		assert.InDeltaSlice(t, was, said, 1e-9, "%s: as written", name)
		for i := range should {
			assert.InDelta(t, whole[i]-c.less[i]*gal, should[i], 1e-9, name)
		}
		h := of(c.text).Hearts
		assert.InDelta(t, of(gauge).Hearts.Made-3*gal*0.7155, h.Made, 1e-4, "%s: in alcohol", name)
		assert.InDelta(t, of(gauge).Hearts.Said, h.Said, 1e-12, name)
	}
}
