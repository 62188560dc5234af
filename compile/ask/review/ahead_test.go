package review_test

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/ask/recording/recordingtest"
	"newmake/compile/ask/review"
	"newmake/compile/measure"
	"newmake/lang/check"
	"newmake/lang/record"
)

// TestToComeOfEachCharge: of a run under way what comes next is that of the charge that runs, by
// its own clock, and of no other. The run goes as planned, so it comes when it was written down.
func TestToComeOfEachCharge(t *testing.T) {
	dir := filepath.FromSlash("../../../examples/herring-stair")
	for _, charges := range []int{1, 3} {
		h, err := check.Load(dir, check.Options{})
		require.NoError(t, err)
		b, list := h.Ready("Grey Creel")
		require.NotNil(t, b, list)
		b = b.Clone()
		b.Strip.Charges, b.Spirit.Charges = charges, charges
		p, said := compile.Compile(b)
		require.NotNil(t, p, said)
		text := recordingtest.AsPlanned(t, "99-01", p, measure.SI)
		h, err = check.Load(dir, check.Options{Overlay: map[string][]byte{filepath.Join(dir, "runs", "99-01.batch"): []byte(text)}})
		require.NoError(t, err)
		run, list := h.Run("99-01")
		require.NotNil(t, run, list)
		for _, stage := range []record.StageName{record.Strip, record.Spirit} {
			for charge := 1; charge <= charges; charge++ {
				at := func(word, of string) time.Time {
					for _, v := range run.Visits {
						if run.Stages[v.Stage].Name == stage && v.Charge == charge && v.Word == word && v.Of == of {
							return v.When.Time
						}
					}
					t.Fatalf("no %s %s of charge %d", word, of, charge)
					return time.Time{}
				}
				coming := func(until time.Time) map[string]time.Time {
					a, err := review.Of(review.Question{Batch: b, Run: run, Instrument: h.Instrument, Units: measure.SI, Until: until})
					require.NoError(t, err, "%s %d of %d, at %s", stage, charge, charges, until)
					require.NotNil(t, a.Ahead)
					out := map[string]time.Time{}
					for _, c := range a.Ahead.Coming {
						out[c.Words] = c.At
					}
					for _, u := range a.Untold {
						if last := charge == charges; strings.Contains(u.Words, "low wines") && stage == record.Strip {
							assert.Equal(t, !last || until.Before(at("off", "")), u.ToCome, "%s at %s", u.Words, until)
						}
					}
					return out
				}
				want := map[string]time.Time{"end of the wash run": at("off", "")}
				if stage == record.Spirit {
					want = map[string]time.Time{"hearts begin": at("to", "hearts"), "hearts end: tails": at("to", "tails"), "end of the spirit run": at("off", "")}
				}
				got := coming(at("first-drop", ""))
				require.Len(t, got, len(want), "%v", got)
				for words, when := range want {
					if charges > 1 {
						words = fmt.Sprintf("%s, charge %d", words, charge)
					}
					require.Contains(t, got, words)
					assert.WithinDuration(t, when, got[words], 3*time.Minute, words)
				}
				assert.Empty(t, coming(at("off", "")), "nothing runs")
			}
		}
	}
}
