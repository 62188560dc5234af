package check

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
)

// pastRun is a run of a batch of the history.
const pastRun = `
run "%d-%d" of "Batch %d-%d" on 2026-03-03 {
  mash {
    08:52  add   corn 60 F
    10:04  heat  191 F
    11:05  cool  158 F "slow"
  }
  ferment {
    tue  13:55  pitch  1.066 SG at 78 F, 5.3 pH
    wed  09:00  1.034 SG at 68 F, 87 F, 3.9 pH
  }
}
`

// withHistory is the house of the tests with more than so many bytes of other
// declarations beside its batch, forty batches, grains and runs a file.
func withHistory(tb testing.TB, bytes int) fstest.MapFS {
	fsys := bench(tb, nil)
	base := string(fsys["base.batch"].Data)
	for n := 0; bytes > 0; n++ {
		var b strings.Builder
		for i := range 40 {
			b.WriteString(strings.Replace(base, `batch "Base"`, fmt.Sprintf(`batch "Batch %d-%d"`, n, i), 1))
			fmt.Fprintf(&b, "\n# From the farm of that year.\ngrain field-%d-%d from corn {\n  starch    70 %%     # the mill\n  moisture  13.%d %%  # the mill\n}\n", n, i, i)
			fmt.Fprintf(&b, pastRun, n, i, n, i)
		}
		fsys[fmt.Sprintf("history/%04d.batch", n)] = &fstest.MapFile{Data: []byte(b.String())}
		bytes -= b.Len()
	}
	return fsys
}

// BenchmarkPlanBesideHistory loads a house and reads one batch of it, as plan and
// check of a file and an editor do: alone, and beside 5 MB of other declarations, runs
// among them.
func BenchmarkPlanBesideHistory(b *testing.B) {
	for _, beside := range []int{0, 5e6} {
		fsys := withHistory(b, beside)
		b.Run(fmt.Sprintf("%dMB", beside/1e6), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				h, err := LoadFS(fsys, "", Options{})
				if err != nil {
					b.Fatal(err)
				}
				if got, list := h.Batch("Base"); got == nil {
					b.Fatal(list)
				}
				if list := h.CheckIn("base.batch"); list.HasErrors() {
					b.Fatal(list)
				}
			}
		})
	}
}

// TestHistoryIsNotRead: of a declaration that a batch does not use nothing is read,
// however wrong it is, and a check of the house says it.
func TestHistoryIsNotRead(t *testing.T) {
	fsys := withHistory(t, 1)
	fsys["wrong.batch"] = &fstest.MapFile{Data: []byte("batch \"Wrong\" from \"Base\" {\n  nonsense\n}\ngrain wrong {\n  nonsense\n}\n")}
	h, err := LoadFS(fsys, "", Options{})
	require.NoError(t, err)
	b, list := h.Batch("Base")
	require.NotNil(t, b)
	assert.Empty(t, list)
	assert.Equal(t, "corn", b.Bill.Lines[0].Grain.Name)
	assert.True(t, h.Check().HasErrors())
	_, list = h.Batch("Wrong")
	assert.Contains(t, codes(list), diag.CodeUnknownField)
}

// TestCheckInIsPartOfCheck: a check of one file says of it what a check of the house
// says of it, whether the house has been read or not.
func TestCheckInIsPartOfCheck(t *testing.T) {
	sets := map[string]fstest.MapFS{
		"history": withHistory(t, 1),
		"across": bench(t, map[string]string{
			"a.batch": "grain low {\n  cereal corn\n  starch 60 %\n  sugars 50 %\n  moisture 10 %\n}\nbatch \"A\" from \"Base\" {\n  cask {\n    entry 300 proof\n  }\n}\n",
			"b.batch": "grain high from low {\n  solubles 20 %\n}\nbatch \"B\" from \"A\" {\n  mash {\n    remove rest 9\n  }\n}\nbatch \"C\" from \"C\" {\n}\n",
			"c.batch": "grain low {\n}\ngrain x from y {\n}\ngrain y from x {\n}\nbatch \"A\" from \"Nobody\" {\n}\nnonsense\nbatch {\n}\n",
			"d.batch": "batch \"D\" from \"B\" {\n  style bourbon\n", // never closed
		}),
	}
	for name, fsys := range sets {
		whole, err := LoadFS(fsys, "", Options{})
		require.NoError(t, err)
		all := whole.Check()
		for _, f := range whole.Files {
			var want []string
			for _, d := range all {
				if d.At.Src == f.Source {
					want = append(want, d.Header()+d.Summary)
				}
			}
			fresh, err := LoadFS(fsys, "", Options{})
			require.NoError(t, err)
			for _, h := range []*House{whole, fresh} {
				var got []string
				for _, d := range h.CheckIn(f.Source.Name) {
					got = append(got, d.Header()+d.Summary)
				}
				assert.Equal(t, want, got, "%s: %s", name, f.Path)
			}
		}
	}
}
