package today_test

import (
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/ask/today"
	"newmake/compile/front"
	"newmake/lang/record"
	_ "newmake/lang/testflag"
)

// house is Lantern Hollow with a text more, and without its season.
func house(t *testing.T, text string) *front.Source {
	t.Helper()
	dir := filepath.FromSlash("../../../examples/lantern-hollow")
	src, err := front.Load(front.Place{Path: dir, Overlay: map[string][]byte{
		filepath.Join(dir, "more.batch"):              []byte(text),
		filepath.Join(dir, "seasons", "spring.batch"): []byte("# none\n"), // to plan it takes a while, and a test of its own
	}})
	require.NoError(t, err)
	return src
}

func on(t *testing.T, src *front.Source, y, m, d int) *today.Answer {
	t.Helper()
	a, err := today.Of(src, record.Date{Year: y, Month: time.Month(m), Day: d})
	require.NoError(t, err)
	return a
}

// A batch is worked on the days that its plan has, and a variant of the same day is
// left out.
func TestWorkOfADay(t *testing.T) {
	src := house(t, "")
	a := on(t, src, 2026, 3, 10)
	require.Len(t, a.Work, 1)
	w := a.Work[0]
	assert.Equal(t, "Ferry Landing", w.Batch)
	assert.Empty(t, w.Run)
	assert.Equal(t, "spirit.charge", w.Steps[0].ID)
	for _, s := range w.Steps {
		assert.Equal(t, "2026-03-10", s.Start[:10])
	}
	assert.NotEmpty(t, w.Cautions)
	assert.Nil(t, a.Next)

	idle := on(t, src, 2026, 3, 8) // between the strip and the spirit run
	assert.Empty(t, idle.Work)
	require.NotNil(t, idle.Next)
	assert.Equal(t, today.Next{Date: "2026-03-10", Batch: "Ferry Landing"}, *idle.Next)
	assert.Nil(t, on(t, src, 2031, 3, 10).Next)
}

// A run that is opened is planned for its own day, and takes the place of its batch; one
// that is in wood is sampled every half year.
func TestRuns(t *testing.T) {
	src := house(t, `run "26-50" of "Low Bridge" on 2026-06-02 {
  mash in "Copper kettle" {
    2026-06-02 07:41 water
  }
}

run "26-51" of "Ferry Landing" on 2026-06-03 {
}

run "25-01" of "Ferry Landing" on 2025-09-02 {
  fill {
    2025-09-10 07:30 into "ZZ-1" 53 gal
  }
}
`)
	a := on(t, src, 2026, 6, 2)
	require.Len(t, a.Work, 1, "the batch begins on that day too, and is the run")
	assert.Equal(t, "26-50", a.Work[0].Run)
	a = on(t, src, 2026, 6, 3)
	require.Len(t, a.Work, 2)
	assert.Equal(t, []string{"26-51", "26-50"}, []string{a.Work[0].Run, a.Work[1].Run}, "by the hour")

	// From its half year on a cask is to be sampled, until somebody has drawn one.
	of := func(a *today.Answer) (out []today.Cask) {
		for _, c := range a.Casks.Sample {
			if c.Serial == "ZZ-1" {
				out = append(out, c)
			}
		}
		return out
	}
	due := []today.Cask{{Serial: "ZZ-1", Run: "25-01", Batch: "Ferry Landing", Filled: "2025-09-10", Since: "2026-03-10"}}
	assert.Empty(t, of(on(t, src, 2026, 3, 9)))
	assert.Equal(t, due, of(on(t, src, 2026, 3, 10)))
	assert.Equal(t, due, of(on(t, src, 2026, 4, 10)))
	over := func(a *today.Answer) bool {
		return slices.ContainsFunc(a.Casks.Over, func(c today.Cask) bool { return c.Serial == "ZZ-1" && c.Since == "2029-09-10" })
	}
	assert.False(t, over(on(t, src, 2029, 9, 9)))
	assert.True(t, over(on(t, src, 2029, 9, 10)), "at the end of four years")
}

// What the cellar says of leaks is said on the day too.
func TestLeaks(t *testing.T) {
	a := on(t, house(t, ""), 2026, 6, 30)
	require.Len(t, a.Casks.Leaks, 1)
	assert.Equal(t, "LH-0003", a.Casks.Leaks[0].Serial)
	assert.Positive(t, a.Casks.Leaks[0].Kg)
	assert.Equal(t, "Rack house, row 1, tier 3", a.Casks.Leaks[0].Place)
}

// What cannot be read is named, and hides nothing else.
func TestUnread(t *testing.T) {
	a := on(t, house(t, "batch \"Torn\" from \"Ferry Landing\" {\n  bill {\n    conr 68 %\n  }\n}\n"), 2026, 3, 10)
	assert.Equal(t, []string{"Torn"}, a.Unread)
	assert.Len(t, a.Work, 1)
}

// A batch that a season plans is told by the season alone, also where its own start falls
// into it; one that starts before it, or that it does not plan, is told by itself.
func TestToldOnce(t *testing.T) {
	for _, c := range []struct {
		season string
		alone  bool
	}{
		{"from 2026-03-03 to 2026-03-14 {\n  make 1 of \"Ferry Landing\"\n}\n", false},
		{"from 2026-03-04 to 2026-03-14 {\n  make 1 of \"Ferry Landing\"\n}\n", true},
		{"from 2026-03-03 to 2026-03-14 {\n  make 1 of \"Low Bridge\"\n}\n", true},
	} {
		a := on(t, house(t, "season \"One\" "+c.season), 2026, 3, 3)
		alone := 0
		for _, w := range a.Work {
			if w.Batch == "Ferry Landing" {
				alone++
			}
		}
		assert.Equal(t, map[bool]int{true: 1}[c.alone], alone, c.season)
	}
}

// The days on which a ferment is read are days of work of a season.
func TestFermentIsRead(t *testing.T) {
	src := house(t, "season \"One\" from 2027-03-02 to 2027-03-02 {\n  make  1 of \"Low Bridge\"\n}\n")
	a := on(t, src, 2027, 3, 3)
	require.Len(t, a.Seasons, 1)
	require.Len(t, a.Seasons[0].Jobs, 1)
	j := a.Seasons[0].Jobs[0]
	assert.Equal(t, []string{"read the ferment"}, j.Work)
	assert.Equal(t, "2027-03-03T09:00", j.From[:len("2027-03-03T09:00")])
	assert.Equal(t, 1, j.People)
}

// A season has its jobs on the days of its plan, also those after its last day on which
// its last runs are filled; outside it nothing is planned.
func TestSeasons(t *testing.T) {
	src := house(t, "season \"One\" from 2027-03-02 to 2027-03-02 {\n  make  1 of \"Low Bridge\"\n}\n")
	jobs := func(y, m, d int) (out []string) {
		for _, s := range on(t, src, y, m, d).Seasons {
			for _, j := range s.Jobs {
				out = append(out, s.Name+" "+j.Stage)
			}
		}
		return out
	}
	assert.Contains(t, jobs(2027, 3, 2), "One mash")
	assert.Empty(t, jobs(2027, 3, 1))
	next := on(t, src, 2027, 3, 1).Next
	require.NotNil(t, next)
	assert.Equal(t, today.Next{Date: "2027-03-02", Batch: "Low Bridge"}, *next)
	filled := false
	for d := 3; d < 31; d++ {
		for _, j := range jobs(2027, 3, d) {
			filled = filled || j == "One fill"
		}
	}
	assert.True(t, filled, "it is distilled and filled after the last day of the season")
	assert.Empty(t, on(t, src, 2027, 6, 1).Seasons)
}

// A run that its record has put off is worked when it is, and not when its plan was; and of
// a stage that should have come, the record of a run that is kept is missed.
func TestWorkOfARunUnderWay(t *testing.T) {
	run := func(spirit string) string {
		return `run "26-90" of "Ferry Landing" on 2026-03-03 {
  mash in "Copper kettle" {
    2026-03-03 07:10 water 58 F
  }
  strip in "Wash still" {
    2026-03-11 07:30 charge 380 gal
    12:00 off
  }
  spirit in "Spirit still" {
    2026-03-13 ` + spirit + `
  }
}
`
	}
	days := func(src *front.Source, from, to int) (out []string) {
		for d := from; d <= to; d++ {
			for _, w := range on(t, src, 2026, 3, d).Work {
				for _, s := range w.Steps {
					if s.ID == "strip.charge" || s.ID == "spirit.charge" {
						assert.Equal(t, "26-90", w.Run)
						out = append(out, s.Start[5:16]+" "+s.ID)
					}
				}
			}
		}
		return out
	}
	blank := house(t, run("charge volume, strength")) // as the skeleton has it: nothing was read
	assert.Equal(t, []string{"03-11T07:30 strip.charge", "03-12T07:00 spirit.charge"}, days(blank, 7, 17))
	assert.Empty(t, on(t, blank, 2026, 3, 12).Late)
	assert.Equal(t, []today.Late{{Run: "26-90", Batch: "Ferry Landing", Stage: "spirit", Planned: "2026-03-12"}}, on(t, blank, 2026, 3, 13).Late)

	for spirit, at := range map[string]string{"09:40 charge": "09:40", "charge 130 gal": "07:00"} {
		under := house(t, run(spirit))
		assert.Equal(t, []string{"03-11T07:30 strip.charge", "03-13T" + at + " spirit.charge"}, days(under, 7, 17), spirit)
		assert.Empty(t, on(t, under, 2026, 3, 17).Late)
	}

	// What nobody has written down at all may be on paper yet.
	assert.Empty(t, on(t, house(t, "run \"26-90\" of \"Ferry Landing\" on 2026-03-03 {\n}\n"), 2026, 3, 13).Late)
}
