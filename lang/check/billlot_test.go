package check

import (
	"fmt"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// corned reads a batch of corn and malt whose corn is as the line has it, beside a store
// and runs.
func corned(t *testing.T, corn, more string) (*recipe.Batch, diag.List) {
	t.Helper()
	text := fmt.Sprintf(`store "Loft" {
  2026-02-10 corn 1,000 lb lot "C-1", moisture 16 %%, starch 70 %%
  2026-02-11 corn 1,000 lb lot "C-2"
  2026-02-12 rye 500 lb lot "R-1", moisture 12 %%
%s
batch "A" {
  start 2026-03-03 07:00
  bill {
    corn %s
    distillers-malt 100 lb
  }
}
`, more, corn)
	h, err := LoadFS(fstest.MapFS{"house.batch": &fstest.MapFile{Data: []byte(text)}}, "", Options{})
	require.NoError(t, err)
	e := h.batch(h.Find("A"))
	var said diag.List
	for _, d := range e.Diags {
		if d.Code == diag.CodeBillLot || d.Code == diag.CodeUnknownName && d.Summary != "" && d.At.Text() != "A" {
			said = append(said, d)
		}
	}
	return e.Batch, said
}

// The lot's own moisture and starch go into the plan; the library's grain stays as it is.
func TestLotOfTheBill(t *testing.T) {
	library := Builtin().Library.Grains["corn"]
	for line, want := range map[string]struct{ moisture, starch float64 }{
		`500 lb`:           {library.Moisture, library.Starch},
		`500 lb lot "C-1"`: {0.16, 0.70},
		`500 lb lot "C-2"`: {library.Moisture, library.Starch},
	} {
		b, said := corned(t, line, "}")
		assert.Empty(t, said, line)
		require.NotEmpty(t, b.Bill.Lines, line)
		assert.InDelta(t, want.moisture, b.Bill.Lines[0].Grain.Moisture, 1e-12, line)
		assert.InDelta(t, want.starch, b.Bill.Lines[0].Grain.Starch, 1e-12, line)
	}
	assert.NotEqual(t, 0.16, library.Moisture)
}

// A lot that there is not, of another grain, or with too little left is said; just enough is
// enough.
func TestLotsThatCannotBe(t *testing.T) {
	const used = "}\nrun \"26-01\" of \"A\" on %s {\n used {\n corn 500 lb lot \"C-1\"\n }\n}\n"
	before, same := fmt.Sprintf(used, "2026-03-02"), fmt.Sprintf(used, "2026-03-03")
	for _, c := range []struct{ line, more, want, fix string }{
		{`1,000 lb lot "C-1"`, "}", "", ""},
		{`1,001 lb lot "C-1"`, "}", `1,000 lb are left of lot "C-1" by the store and the runs, and the bill takes 1,001 lb`, `"C-2"`},
		{`500 lb lot "C-1"`, before, "", ""},
		{`501 lb lot "C-1"`, before, `500 lb are left of lot "C-1" by the store and the runs, and the bill takes 501 lb`, `"C-2"`},
		{`1,000 lb lot "C-1"`, same, "", ""}, // the run of this day is this batch's own
		{`500 lb lot "C-1"`, "2026-03-01 count corn 0 lb lot \"C-1\"\n}", `nothing is left of lot "C-1" by the store and the runs`, `"C-2"`},
		{`500 lb lot "C-1"`, "2026-03-01 discarded corn 600 lb lot \"C-1\"\n}", `400 lb are left of lot "C-1" by the store and the runs, and the bill takes 500 lb`, `"C-2"`},
		{`500 lb lot "C-3"`, "2026-03-03 corn 500 lb lot \"C-3\"\n}", "", ""},
		{`500 lb lot "C-3"`, "2026-03-04 corn 500 lb lot \"C-3\"\n}", `lot "C-3" comes on 2026-03-04, and the batch is of 2026-03-03`, ""},
		{`500 lb lot "R-1"`, "}", "lot \"R-1\" is `rye`, and the line is of `corn`", ""},
		{`500 lb lot "C-3"`, "}", "there is no lot of corn called `C-3`", ""},
	} {
		_, said := corned(t, c.line, c.more)
		if c.want == "" {
			assert.Empty(t, said, c.line+c.more)
			continue
		}
		require.Len(t, said, 1, c.line+c.more)
		assert.Equal(t, c.want, said[0].Summary)
		if c.fix != "" {
			require.NotNil(t, said[0].Fix)
			assert.Equal(t, c.fix, said[0].Fix.Text)
		}
	}
}
