package check

import (
	"fmt"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/record"
)

// firstIn is what FirstIn says of a text, in pounds: "C-1 500, C-2 41".
func firstIn(t *testing.T, text string, lb float64, day string) (out string) {
	t.Helper()
	h, err := LoadFS(fstest.MapFS{"house.batch": &fstest.MapFile{Data: []byte(text)}}, "", Options{})
	require.NoError(t, err)
	for i, o := range h.Stores.FirstIn("corn", lb*0.45359237, record.ReadDate(day)) {
		if i > 0 {
			out += ", "
		}
		out += fmt.Sprintf("%s %.0f", o.Lot, o.Kg/0.45359237)
		if o.Moisture != nil {
			out += fmt.Sprintf(" at %.0f %%", 100**o.Moisture)
		}
	}
	return out
}

// TestFirstIn: the oldest lot that has come is taken first, and what runs of the days before took
// of it is gone: by its name, or where they named none, as the oldest there was.
func TestFirstIn(t *testing.T) {
	store := "store \"Loft\" {\n  2026-02-10 corn 1,000 lb lot \"C-1\", moisture 16 %\n  2026-02-20 corn 1,000 lb lot \"C-2\"\n  2026-02-21 rye 500 lb lot \"R-1\"\n"
	run := func(day, used string) string {
		return "run \"26-" + day[5:7] + day[8:] + "\" of \"A\" on " + day + " {\n  used {\n    " + used + "\n  }\n}\n"
	}
	for _, c := range []struct {
		name, more, day, want string
		lb                    float64
	}{
		{"the oldest", "}\n", "2026-03-03", "C-1 500 at 16 %", 500},
		{"all of it", "}\n", "2026-03-03", "C-1 1000 at 16 %", 1000},
		{"exhausted within the batch", "}\n", "2026-03-03", "C-1 1000 at 16 %, C-2 1", 1001},
		{"more than there is", "}\n", "2026-03-03", "C-1 1000 at 16 %, C-2 1000", 2500},
		{"the later has not come", "}\n", "2026-02-19", "C-1 1000 at 16 %", 1500},
		{"it comes that day", "}\n", "2026-02-20", "C-1 1000 at 16 %, C-2 500", 1500},
		{"none has come", "}\n", "2026-02-09", "", 500},
		{"used by name", "}\n" + run("2026-03-02", `corn 1,000 lb lot "C-1"`), "2026-03-03", "C-2 500", 500},
		{"that day is the batch's own", "}\n" + run("2026-03-03", `corn 1,000 lb lot "C-1"`), "2026-03-03", "C-1 500 at 16 %", 500},
		{"used without a name", "}\n" + run("2026-03-02", "corn 1,200 lb"), "2026-03-03", "C-2 500", 500},
		{"used of the newer", "}\n" + run("2026-03-02", `corn 900 lb lot "C-2"`), "2026-03-03", "C-1 1000 at 16 %, C-2 100", 1200},
		{"of two lots in one run", "}\n" + run("2026-03-02", "corn 900 lb lot \"C-1\"\n    corn 950 lb lot \"C-2\""), "2026-03-03", "C-1 100 at 16 %, C-2 50", 400},
		{"put right", "}\n" + run("2026-03-02", "corn 1,000 lb lot \"C-1\"\n    corrected corn 1,000 lb to 100 lb on 2026-03-02"), "2026-03-03", "C-1 900 at 16 %, C-2 100", 1000},
		{"counted", "  2026-03-01 count corn 40 lb lot \"C-1\"\n}\n", "2026-03-03", "C-1 40 at 16 %, C-2 60", 100},
		{"counted together", "  2026-03-01 count corn 1,040 lb\n}\n", "2026-03-03", "C-1 1000 at 16 %, C-2 40", 2000},
		{"thrown away", "  2026-03-01 discarded corn 1,000 lb lot \"C-1\"\n}\n", "2026-03-03", "C-2 100", 100},
		{"by the bushel", "}\nstore \"New\" {\n  2026-02-01 corn 10 bu lot \"B\"\n}\n", "2026-03-03", "B 560, C-1 440 at 16 %", 1000},
		{"of no code", "}\nstore \"New\" {\n  2026-02-01 corn 10 lb\n}\n", "2026-03-03", " 10, C-1 490 at 16 %", 500},
	} {
		assert.Equal(t, c.want, firstIn(t, store+c.more, c.lb, c.day), c.name)
	}
	assert.Empty(t, firstIn(t, "store \"Loft\" {\n  2026-02-10 rye 500 lb lot \"R\"\n}\n", 100, "2026-03-03"))
	assert.Empty(t, firstIn(t, run("2026-03-02", "corn 500 lb"), 100, "2026-03-03"), "no store, no lots")
}
