package check

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// mashOf reads a variant of Base whose mash holds some lines, and gives the steps
// that come of it, as written.
func mashOf(t *testing.T, lines string) ([]string, diag.List) {
	t.Helper()
	h, err := LoadFS(bench(t, map[string]string{"v.batch": "batch \"V\" from \"Base\" {\n  mash {\n" + lines + "\n  }\n}\n"}), "", Options{})
	require.NoError(t, err)
	b, list := h.Batch("V")
	if b == nil {
		return nil, list
	}
	var steps []string
	for _, s := range b.Mash.Steps {
		steps = append(steps, strings.Join(strings.Fields(s.At.Text()), " "))
	}
	return steps, list
}

var baseSteps = strings.Split(`water 315 gal at 58 F
backset 15 %
dose alpha-amylase
add corn
heat to 190 F
rest 45 min
cool to 158 F
add rye
rest 20 min
cool to 148 F
add distillers-malt
rest 60 min
cool to 78 F`, "\n")

// with gives the steps of Base with those from i to j in exchange for others.
func with(i, j int, steps ...string) []string {
	return append(append(append([]string{}, baseSteps[:i]...), steps...), baseSteps[j:]...)
}

func TestEditSteps(t *testing.T) {
	for _, c := range []struct {
		name, lines string
		want        []string
	}{
		{"nothing", "backset-pH 4 pH", baseSteps},
		{"the only one of its kind", "replace heat { heat to 195 F }", with(4, 5, "heat to 195 F")},
		{"by number", "replace rest 2 { rest 30 min }", with(8, 9, "rest 30 min")},
		{"by time", "replace rest 20 min { rest 30 min }", with(8, 9, "rest 30 min")},
		{"by time in another unit", "remove rest 0.75 h", with(5, 6)},
		{"by temperature", "before cool to 158 F { rest 10 min }", with(6, 6, "rest 10 min")},
		{"by grain", "after add corn { rest 10 min }", with(4, 4, "rest 10 min")},
		{"by enzyme", "replace dose alpha-amylase { dose alpha-amylase 0.05 % of grain }", with(2, 3, "dose alpha-amylase 0.05 % of grain")},
		{"add by number", "before add 2 { rest 5 min }", with(7, 7, "rest 5 min")},
		{"several steps", "replace heat {\n heat to 180 F\n rest 10 min\n heat to 195 F\n}", with(4, 5, "heat to 180 F", "rest 10 min", "heat to 195 F")},
		{"removed", "remove rest 2", with(8, 9)},
		{"before and after, in the order written", "after add rye { rest 1 min }\nbefore add rye { rest 2 min }\nafter add rye { rest 3 min }", with(7, 8, "rest 2 min", "add rye", "rest 1 min", "rest 3 min")},
		{"counted as they stand in the parent", "remove rest 1\nreplace rest 2 { rest 30 min }", append(with(5, 6)[:7], append([]string{"rest 30 min"}, baseSteps[9:]...)...)},
		{"after what is replaced", "replace rest 1 { rest 50 min }\nafter rest 1 { cool to 180 F }", with(5, 6, "rest 50 min", "cool to 180 F")},
		{"with a line that is no step", "remove rest 2\nbackset-pH 4 pH", with(8, 9)},
	} {
		t.Run(c.name, func(t *testing.T) {
			steps, list := mashOf(t, c.lines)
			require.False(t, list.HasErrors(), list.Error())
			assert.Equal(t, c.want, steps)
		})
	}
}

// TestEditOfAVariant: the steps that are counted are those of the parent, its own
// edits applied.
func TestEditOfAVariant(t *testing.T) {
	h, err := LoadFS(bench(t, map[string]string{"v.batch": `
batch "Second" from "Base" {
  mash {
    after add corn { rest 5 min }
  }
}
batch "Third" from "Second" {
  mash {
    replace rest 1 { rest 15 min }
    remove backset
  }
}
`}), "", Options{})
	require.NoError(t, err)
	b, list := h.Batch("Third")
	require.NotNil(t, b, list.Error())
	assert.Equal(t, "rest 15 min", b.Mash.Steps[3].At.Text())
	assert.Equal(t, []string{"mash: no backset 15 % after water 315 gal at 58 F", "mash: rest 15 min (was 5 min)"}, b.Changes)
	second, _ := h.Batch("Second")
	assert.Equal(t, []string{"mash: rest 5 min after add corn (new)"}, second.Changes)
	base, _ := h.Batch("Base")
	assert.Empty(t, base.Changes)
}

func TestChanges(t *testing.T) {
	b, list := read(t, `batch "V" from "Base" {
  remove standard
  start  2026-03-10 07:00
  units  us
  bill 850 lb {
    remove rye
    corn   76 %
    oats   10 %
  }
  mash {
    remove cool 1
    after add corn {
      rest 2 min
    }
    replace add rye { add oats }
    backset-pH 4 pH
  }
  ferment in "North" {
    dose   glucoamylase
    for    90   h
  }
  cask {
    entry  110 proof
    remove bottle
  }
  promise casks 1
}
`)
	require.NotNil(t, b, list.Error())
	assert.Equal(t, []string{
		"start 2026-03-10 07:00 (was 2026-03-03 07:00)",
		"bill 850 lb (was 900 lb)",
		"corn 76 % (was 70 %)",
		"oats 10 % (new)",
		"no rye (was 16 %)",
		"mash: backset-pH 4 pH (new)",
		"mash: rest 2 min after add corn (new)",
		"mash: add oats (was cool to 158 F, add rye)",
		`ferment in "North" (was in any fermenter)`,
		"ferment: dose glucoamylase (new)",
		"cask: entry 110 proof (was 114 proof)",
		"cask: no bottle (was 750 mL at 94 proof)",
		"units us (new)",
		"promise casks 1 (new)",
		"no standard (was bourbon)",
	}, b.Changes)
}

// TestRemoveASetting: what is no step of the mash is removed by its word.
func TestRemoveASetting(t *testing.T) {
	h, err := LoadFS(bench(t, map[string]string{"v.batch": `
batch "Second" from "Base" {
  mash {
    backset-pH 4.2 pH
    backset-solids 5 %
  }
}
batch "Third" from "Second" {
  mash {
    remove backset-pH
    remove rest 2
  }
}
batch "Fourth" from "Base" {
  mash {
    remove backset-pH
  }
}
`}), "", Options{})
	require.NoError(t, err)
	b, list := h.Batch("Third")
	require.NotNil(t, b, list.Error())
	assert.Equal(t, 3.9, b.Mash.BacksetPH)
	assert.InDelta(t, 0.05, b.Mash.BacksetSolidsFrac, 1e-12)
	assert.Len(t, b.Mash.Steps, 12)
	assert.Equal(t, []string{"mash: no backset-pH (was 4.2 pH)", "mash: no rest 20 min after add rye"}, b.Changes)
	_, list = h.Batch("Fourth")
	assert.Contains(t, list.Error(), "NM0411: there is no `backset-pH` here to remove")
}

// TestPromiseOfAVariant: a promise takes the place of its parent's of the same
// measure, and leaves the others.
func TestPromiseOfAVariant(t *testing.T) {
	h, err := LoadFS(bench(t, map[string]string{"v.batch": `
batch "Second" from "Base" {
  promise casks 1
  promise hearts 38 gal within 2 gal
  promise hearts 140 proof within 8 proof
}
batch "Third" from "Second" {
  promise hearts 40 gal within 2 gal
  remove promise casks
}
batch "Fourth" from "Second" {
  remove promise hearts
}
`}), "", Options{})
	require.NoError(t, err)
	b, list := h.Batch("Third")
	require.NotNil(t, b, list.Error())
	require.Len(t, b.Promises, 2)
	assert.InDelta(t, 40*quantity.USGallonM3, b.Promises[0].Value, 1e-12)
	assert.Equal(t, quantity.Strength, b.Promises[1].Kind)
	assert.Equal(t, []string{"promise hearts 40 gal within 2 gal (was 38 gal within 2 gal)", "no promise casks (was 1)"}, b.Changes)
	b, list = h.Batch("Fourth")
	require.NotNil(t, b, list.Error())
	require.Len(t, b.Promises, 1)
	assert.Equal(t, "casks", b.Promises[0].What)
}

// TestEditOfNoVariant: a batch that varies none has nothing to edit, at any depth.
func TestEditOfNoVariant(t *testing.T) {
	text := string(bench(t, nil)["base.batch"].Data)
	text = strings.Replace(text, "rest     20 min\n", "rest     20 min\n    remove rest 1\n    before heat { rest 1 min }\n", 1)
	text = strings.Replace(text, "rye              16 %\n", "rye              16 %\n    remove oats\n", 1)
	require.Equal(t, 3, strings.Count(text, "rest 1")+strings.Count(text, "remove oats"))
	h, err := LoadFS(bench(t, map[string]string{"base.batch": text}), "", Options{})
	require.NoError(t, err)
	_, list := h.Batch("Base")
	var said []string
	for _, d := range list {
		said = append(said, string(d.Code)+" "+d.Summary)
	}
	assert.Equal(t, []string{"NM0411 `remove` changes the batch that this one varies, and it varies none", "NM0411 `remove` changes the batch that this one varies, and it varies none", "NM0411 `before` changes the batch that this one varies, and it varies none"}, said)
}
