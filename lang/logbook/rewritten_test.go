package logbook

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

const committed = `run "26-03" of "Ferry Landing" on 2026-03-03 {
  used {
    corn  541 lb lot "C-118"
    rye
  }
  mash {
    08:52  add   corn 60 F
    10:04  heat  119 F
    10:49  rest  temperature
  }
  ferment {
    tue 13:55 pitch 1.066 SG at 78 F, 5.3 pH
    wed 09:00 1.034 SG at 68 F, pH none
  }
}
`

func runOf(t *testing.T, text string) *record.Run {
	t.Helper()
	file, list := lang.Parse(diag.NewSource("runs.batch", []byte(text)))
	nodes, _ := tree.Declarations(file.Stmts, nil, &list)
	require.False(t, list.HasErrors(), list.Error())
	require.Len(t, nodes, 1)
	require.Equal(t, schema.Run, nodes[0].Field)
	run, _ := Run(nodes[0], Around{Zone: time.UTC, Instrument: func(string) *record.Instrument { return nil }})
	return run
}

// What was committed and stands no more is said; what was added, filled in or corrected
// beside it is right.
func TestRewritten(t *testing.T) {
	was := runOf(t, committed)
	for name, c := range map[string]struct {
		from, to string
		want     []string
	}{
		"nothing":          {"", "", nil},
		"laid out":         {"  mash {\n", "  mash {  # the rake stuck\n\n", nil},
		"a blank":          {"rest  temperature", "rest  189 F", nil},
		"a weight":         {"    rye\n", "    rye 40 lb\n", nil},
		"a line added":     {"    10:49", "    10:20 stopped 15 min\n    10:49", nil},
		"corrected":        {"    10:49", "    corrected 10:04 heat 119 F to 191 F on 2026-03-05\n    10:49", nil},
		"a value":          {"heat  119 F", "heat  191 F", []string{"`heat temperature 119 F` was committed, and `heat temperature 191 F` stands in its place"}},
		"a unit":           {"541 lb", "541 kg", []string{"`corn 541 lb lot C-118` was committed, and `corn 541 kg lot C-118` stands in its place"}},
		"a sample":         {"at 78 F", "at 68 F", []string{"`pitch gravity 1.066 SG at 78 F` was committed, and `pitch gravity 1.066 SG at 68 F` stands in its place"}},
		"a clock":          {"10:04", "10:14", []string{"`mash heat at 2026-03-03 10:04` was committed, and `mash heat at 2026-03-03 10:14` stands in its place"}},
		"none, and now":    {"pH none", "3.9 pH", []string{"`pH none` was committed, and `pH 3.9 pH` stands in its place"}},
		"a reading gone":   {", 5.3 pH", "", []string{"run \"26-03\": `pitch pH 5.3 pH` was committed, and is gone"}},
		"back to a blank":  {"heat  119 F", "heat  temperature", []string{"run \"26-03\": `heat temperature 119 F` was committed, and is gone"}},
		"a whole line":     {"    10:04  heat  119 F\n", "", []string{"`mash heat at 2026-03-03 10:04` was committed", "`heat temperature 119 F` was committed"}},
		"one more of them": {"    10:04  heat  119 F\n", "    10:04  heat  119 F\n    10:24  heat  119 F\n", nil},
	} {
		text := strings.Replace(committed, c.from, c.to, 1)
		list := Rewritten(was, runOf(t, text))
		require.Len(t, list, len(c.want), "%s: %s", name, list.Error())
		for i, d := range list {
			assert.Contains(t, d.Summary, c.want[i], name)
			assert.Equal(t, diag.Warning, d.Severity)
		}
	}
	list := Rewritten(was, nil)
	require.Len(t, list, 1)
	assert.Contains(t, list[0].Summary, `run "26-03" was committed, and is gone`)

	corrected := strings.Replace(committed, "    10:49", "    corrected 10:04 heat 119 F to 191 F on 2026-03-05\n    10:49", 1)
	list = Rewritten(runOf(t, corrected), was)
	require.Len(t, list, 1)
	assert.Contains(t, list[0].Summary, "`corrected 119 F to 191 F on 2026-03-05` was committed, and is gone")
}

// Dates before the day of the run are spoken of once: the table was that of another day.
func TestDatesBeforeTheRun(t *testing.T) {
	early := func(day string) (n int) {
		text := strings.Replace(committed, "    08:52", "    "+day+" 08:52", 1)
		text = strings.Replace(text, "    tue 13:55", "    "+day+" 13:55", 1)
		file, list := lang.Parse(diag.NewSource("runs.batch", []byte(text)))
		nodes, _ := tree.Declarations(file.Stmts, nil, &list)
		_, said := Run(nodes[0], Around{Zone: time.UTC, Instrument: func(string) *record.Instrument { return nil }})
		for _, d := range said {
			if strings.Contains(d.Summary, "is before the day of this run, 2026-03-03") {
				n++
			}
		}
		return n
	}
	assert.Equal(t, 1, early("2026-03-02"))
	assert.Zero(t, early("2026-03-03"))
}

// A mash that begins two days or more after the day of its run is spoken of, and one of the next
// day is not; nor is a wort that gets its yeast in two days.
func TestBegunAfterTheRun(t *testing.T) {
	said := func(text string) (out []string) {
		file, list := lang.Parse(diag.NewSource("runs.batch", []byte(text)))
		nodes, _ := tree.Declarations(file.Stmts, nil, &list)
		_, doubts := Run(nodes[0], Around{Zone: time.UTC, Instrument: func(string) *record.Instrument { return nil }})
		for _, d := range doubts {
			if strings.Contains(d.Summary, "after the day of this run") {
				out = append(out, d.Summary)
			}
		}
		return out
	}
	before, rest, _ := strings.Cut(committed, "  ferment {")
	late := func(day string) []string {
		return said(strings.Replace(before, "    08:52", "    "+day+" 08:52", 1) + "}\n")
	}
	assert.Empty(t, late("2026-03-03"))
	assert.Empty(t, late("2026-03-04"))
	assert.Equal(t, []string{"the mash begins on 2026-03-05, 2 days after the day of this run, 2026-03-03"}, late("2026-03-05"))
	assert.Len(t, late("tue"), 0)
	assert.Len(t, late("mon"), 1)

	none, _, _ := strings.Cut(before, "  mash {")
	for _, c := range []struct{ word, begun string }{{"pitch", "the yeast is pitched"}, {"pump", "the mash is pumped over"}} {
		for day, want := range map[string][]string{
			"2026-03-03": nil, "2026-03-05": nil, "2026-03-06": {c.begun + " on 2026-03-06, 3 days after the day of this run, 2026-03-03"},
		} {
			ferment := strings.Replace(rest, "    tue 13:55 pitch 1.066 SG at 78 F, 5.3 pH", "    "+day+" 13:55 "+c.word, 1)
			assert.Equal(t, want, said(none+"  ferment {"+ferment), "%s %s", c.word, day)
			assert.Equal(t, want, said(before+"  ferment {"+ferment), "a mash with clocks and no dates")
		}
	}
}
