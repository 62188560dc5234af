package blank

import (
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/plan"
	"newmake/lang/check"
	"newmake/lang/record"
	_ "newmake/lang/testflag"
)

const lantern = "../../examples/lantern-hollow"

// ferry is the plan of Ferry Landing, and the run of a text beside it.
func ferry(t testing.TB, text string) (*Planned, *record.Run) {
	t.Helper()
	h, err := check.Load(lantern, check.Options{Overlay: map[string][]byte{lantern + "/a-run.batch": []byte(text)}})
	require.NoError(t, err)
	b, list := h.Batch("Ferry Landing")
	require.NotNil(t, b, list)
	p, _ := compile.Compile(b)
	require.NotNil(t, p)
	r, list := h.Run("t-1")
	require.NotNil(t, r)
	require.False(t, list.HasErrors(), "%v", list)
	return Of(p), r
}

func answered(f *Filled) map[string]string {
	out := map[string]string{}
	for _, a := range f.Answers {
		v, _ := a.Reading.Holds()
		out[a.Blank.ID] = v.String()
		for _, u := range a.More {
			out[a.Blank.ID] += " + " + u.Amount.Value.String()
		}
	}
	return out
}

// TestWholeRun: a messy run, from the first sack to the last cask.
func TestWholeRun(t *testing.T) {
	text, err := os.ReadFile("testdata/26-03.batch")
	require.NoError(t, err)
	p, r := ferry(t, `run "t-1"`+string(text[len(`run "26-03"`):]))
	f := Match(p, r)
	got := answered(f)
	for id, want := range map[string]string{
		"used.corn": "541 lb", "used.rye": "40 lb + 23 lb", "used.mash.2.backset": "48 gal", "used.ferment.pitch.distillers-yeast": "1.9 lb",
		"mash.4.temperature": "60 F", "mash.5.temperature": "191 F", "mash.6.temperature": "189 F", "mash.7.temperature": "158 F",
		"mash.10.temperature": "148 F", "mash.12.temperature": "147 F", "mash.12.pH": "5.3 pH", "mash.13.temperature": "78 F",
		"ferment.fill.volume": "384 gal", "ferment.pitch.gravity": "1.066 SG", "ferment.pitch.pH": "5.3 pH",
		"ferment.round.1.gravity": "1.034 SG", "ferment.round.1.temperature": "87 F", "ferment.round.3.gravity": "1.000 SG",
		"strip.charge.volume": "380 gal", "strip.charge.strength": "9.1 % abv", "strip.charge.gravity": "0.998 SG",
		"strip.heat.spout": "55 % abv", "strip.heat.vapour": "196 F", "strip.collect.spout.1": "24 % abv", "strip.collect.receiver.1": "60 gal",
		"strip.collect.spout": "2 % abv", "strip.stop.volume": "124 gal", "strip.stop.strength": "52.6 proof",
		"spirit.heat.spout": "78 % abv", "spirit.foreshots.receiver": "0.5 gal", "spirit.heads.receiver": "3.6 gal", "spirit.heads.spout": "77.5 % abv",
		"spirit.hearts.spout": "60.5 % abv", "spirit.hearts.receiver": "45.9 gal", "spirit.tails.spout": "4 % abv",
		"spirit.stop.volume": "46.2 gal", "fill.gauge.volume": "45.9 gal", "fill.gauge.strength": "143.3 proof",
		"used.fill.reduce.water to reduce": "8.5 gal", "fill.reduce.volume": "54.1 gal", "fill.reduce.strength": "121.9 proof", "fill.cask.volume": "53 gal", "fill.cask.gross": "501 lb",
	} {
		assert.Equal(t, want, got[id], id)
	}
	unasked := map[string]bool{}
	for _, a := range f.Unasked {
		unasked[a.Reading.Value.String()] = true
	}
	for _, want := range []string{"1.068 SG", "3 gal", "124 gal", "44 gal", "98 lb", "1.1 gal"} {
		assert.True(t, unasked[want], "%s is read, and not asked for", want)
	}
	open := map[string]bool{}
	for _, b := range f.Open {
		open[b.ID] = true
	}
	for _, id := range []string{"mash.9.temperature", "ferment.round.2.gravity", "ferment.round.3.pH", "spirit.charge.volume", "strip.collect.spout.2"} {
		assert.True(t, open[id], "%s is open", id)
	}
	assert.Len(t, f.Answers, len(p.Blanks)-len(f.Open), "each blank is answered or open")
}

// TestHoursByTheirTime: an hourly reading answers the blank that is nearest counted
// from the first drop, whenever the still was lit; one too far from any answers none.
func TestHoursByTheirTime(t *testing.T) {
	p, r := ferry(t, `run "t-1" of "Ferry Landing" on 2026-03-03 {
  strip {
    2026-03-08 15:00 first-drop 55 % abv
    16:29 24 % abv
    16:50 20 % abv
    17:29 3 % abv
    17:40 off 2 % abv
  }
}
`)
	f := Match(p, r)
	got := answered(f)
	assert.Equal(t, "24 % abv", got["strip.collect.spout.1"], "29 minutes late")
	assert.Equal(t, "20 % abv", got["strip.collect.spout.2"], "10 minutes early: the first is taken")
	assert.Equal(t, "2 % abv", got["strip.collect.spout"])
	require.Len(t, f.Unasked, 1)
	assert.Equal(t, "3 % abv", f.Unasked[0].Reading.Value.String())

	_, r = ferry(t, `run "t-1" of "Ferry Landing" on 2026-03-03 {
  strip {
    2026-03-08 15:00 first-drop 55 % abv
    15:29 40 % abv
  }
}
`)
	assert.Len(t, Match(p, r).Unasked, 1, "31 minutes early")
}

// TestNothingYet: a run that was only opened answers nothing.
func TestNothingYet(t *testing.T) {
	p, r := ferry(t, "run \"t-1\" of \"Ferry Landing\" on 2026-03-03 {\n  mash {\n    heat  temperature\n    cool 2 none\n  }\n}\n")
	f := Match(p, r)
	assert.Empty(t, f.Answers)
	assert.Len(t, f.Open, len(p.Blanks))
	assert.Equal(t, 1, r.Blank)
}

// TestChargesByTheirNumber: a reading answers the blank of its own charge, of two digits too.
func TestChargesByTheirNumber(t *testing.T) {
	h, err := check.Load(lantern, check.Options{})
	require.NoError(t, err)
	b, list := h.Batch("Ferry Landing")
	require.NotNil(t, b, list)
	b.Strip.Charges = 12
	p, list := compile.Compile(b)
	require.NotNil(t, p, list)
	planned := Of(p)
	m := &matcher{planned: planned}
	seen := map[string]bool{}
	for n := 1; n <= 12; n++ {
		step := m.charge(record.Strip, n) + ".charge"
		assert.True(t, slices.ContainsFunc(planned.Blanks, func(b plan.Blank) bool { return b.Step == step }), step)
		assert.False(t, seen[step], "%s is that of another charge", step)
		seen[step] = true
	}
	assert.Equal(t, "spirit", m.charge(record.Spirit, 1), "one charge has no number")
}
