package today_test

import (
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/ask/today"
	"newmake/compile/front"
	"newmake/lang/record"
	_ "newmake/lang/testflag"
)

// house is Lantern Hollow with a text more.
func house(t *testing.T, text string) *front.Source {
	t.Helper()
	dir := filepath.FromSlash("../../../examples/lantern-hollow")
	src, err := front.Load(front.Place{Path: dir, Overlay: map[string][]byte{filepath.Join(dir, "more.batch"): []byte(text)}})
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
    2025-09-10 07:30 into "LH-0001" 53 gal
  }
}
`)
	a := on(t, src, 2026, 6, 2)
	require.Len(t, a.Work, 1, "the batch begins on that day too, and is the run")
	assert.Equal(t, "26-50", a.Work[0].Run)
	a = on(t, src, 2026, 6, 3)
	require.Len(t, a.Work, 2)
	assert.Equal(t, []string{"26-51", "26-50"}, []string{a.Work[0].Run, a.Work[1].Run}, "by the hour")

	assert.Equal(t, []today.Sample{{Run: "25-01", Batch: "Ferry Landing", Filled: "2025-09-10", Months: 6}}, on(t, src, 2026, 3, 10).Samples)
	assert.Empty(t, on(t, src, 2026, 3, 9).Samples)
	assert.Len(t, on(t, src, 2029, 9, 10).Samples, 1, "at the end of four years")
	assert.Empty(t, on(t, src, 2030, 3, 10).Samples)
}

// What cannot be read is named, and hides nothing else.
func TestUnread(t *testing.T) {
	a := on(t, house(t, "batch \"Torn\" from \"Ferry Landing\" {\n  bill {\n    conr 68 %\n  }\n}\n"), 2026, 3, 10)
	assert.Equal(t, []string{"Torn"}, a.Unread)
	assert.Len(t, a.Work, 1)
}
