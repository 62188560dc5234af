package show_test

import (
	"bytes"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/mattn/go-runewidth"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/ask/why"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/internal/plantest"
	"newmake/compile/show/working"
	"newmake/lang/check"
	"newmake/lang/recipe"
	"newmake/lang/testflag"
)

// asked is a question about Ferry Landing.
func asked(t testing.TB, u measure.Units, name string, depth int) why.Question {
	t.Helper()
	b, err := ferry()
	require.NoError(t, err)
	return why.Question{
		Batch: b, Units: u, Value: name, Depth: depth,
		Compile: func(b *recipe.Batch) *plan.Plan { p, _ := memo.Compile(b); return p },
	}
}

// ferry is read once, and its stages are remembered from test to test: none changes it.
var ferry = sync.OnceValues(func() (*recipe.Batch, error) {
	h, err := check.Load("../../examples/lantern-hollow", check.Options{})
	if err != nil {
		return nil, err
	}
	b, list := h.Batch("Ferry Landing")
	if b == nil {
		return nil, list
	}
	return b, nil
})

var memo = new(compile.Memo)

func whyText(t testing.TB, q why.Question) string {
	t.Helper()
	a, err := why.Explain(q)
	require.NoError(t, err)
	var b bytes.Buffer
	require.NoError(t, working.Write(&b, a, false, "newmake why ferry-landing.batch "+a.Value.Name+" --depth 2"))
	return b.String()
}

func TestWhyGolden(t *testing.T) {
	for _, g := range []struct {
		golden, value string
		units         measure.Units
		depth         int
	}{
		{"why-hearts.txt", "hearts", measure.US, 1}, {"why-hearts-si.txt", "hearts", measure.SI, 1},
		{"why-og.txt", "original-gravity", measure.US, 3}, {"why-fg.txt", "final-gravity", measure.US, 1}, {"why-dry.txt", "dry", measure.US, 1},
		{"why-ph.txt", "ph", measure.US, 1}, {"why-cost.txt", "cost", measure.US, 1}, {"why-year-4.txt", "year 4", measure.SI, 1},
		{"why-bottles.txt", "bottles", measure.US, 1},
	} {
		plantest.Golden(t, filepath.Base(g.golden), whyText(t, asked(t, g.units, g.value, g.depth)))
	}
}

// A difference that is divided has its brackets.
func TestWhyBrackets(t *testing.T) {
	assert.Regexp(t, `\n    \(15\.\d+ plato before \+ 1\.\d+ plato after\) / 15\.\d+ plato before = 106\.\d %\n`, whyText(t, asked(t, measure.US, "attenuation", 1)))
}

// Every value can be shown in 80 columns, in both systems, with nothing cut off
// but the names of what moves it.
func TestWhyFitsThePage(t *testing.T) {
	q := asked(t, measure.US, "", 1)
	parts, err := why.List(q.Batch, q.Compile, q.Units)
	require.NoError(t, err)
	backwards := slices.Clone(parts) // what comes of the most others first
	slices.Reverse(backwards)
	for _, u := range []measure.Units{measure.US, measure.SI} {
		shown := "" // a deep answer shows many values at once
		for _, p := range backwards {
			for i, v := range p.Values {
				if i%testflag.Every(7) != 0 {
					continue
				}
				if u == measure.SI && !slices.Contains([]string{"cost", "year-4", "bottles", "water-to-add"}, v.Name) || strings.Contains(shown, "\n"+strings.ToUpper(v.Name)+": ") {
					continue
				}
				q.Value, q.Units, q.Depth = v.Name, u, why.MostDepth
				text := whyText(t, q)
				shown += "\n" + text
				for _, l := range strings.Split(text, "\n") {
					assert.LessOrEqual(t, runewidth.StringWidth(l), 80, "%s: %s", v.Name, l)
					assert.NotContains(t, l, "NaN")
					assert.NotContains(t, l, "~", v.Name)
				}
				assert.Contains(t, text, "\nMODEL\n")
				assert.Contains(t, text, "  source   ")
			}
		}
	}
	var b bytes.Buffer
	require.NoError(t, working.List(&b, q.Batch.Name, parts, false, "newmake why x hearts"))
	for _, l := range strings.Split(b.String(), "\n") {
		assert.LessOrEqual(t, runewidth.StringWidth(l), 80, l)
	}
}
