package why

import (
	"encoding/json"
	"math"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/check"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/testflag"
)

// houses are those whose every batch is explained.
var houses = []string{"examples/lantern-hollow", "testdata/houses/grain-to-barrel", "testdata/houses/malt-425", "testdata/houses/small"}

func batches(t testing.TB) []*recipe.Batch {
	t.Helper()
	out, err := loaded()
	require.NoError(t, err)
	return out
}

// loaded reads the houses once: no test changes a batch.
var loaded = sync.OnceValues(func() ([]*recipe.Batch, error) {
	var out []*recipe.Batch
	for _, dir := range houses {
		h, err := check.Load(filepath.Join("..", "..", "..", dir), check.Options{})
		if err != nil {
			return nil, err
		}
		for _, name := range h.Batches() {
			b, list := h.Batch(name)
			if b == nil {
				return nil, list
			}
			out = append(out, b)
		}
	}
	return append(out, odd(out[0])...), nil
})

// odd are batches that end otherwise: in no wood, bottled or not, in a last cask
// that is a little short, in none for want of spirit, and without feints.
func odd(b *recipe.Batch) []*recipe.Batch {
	var out []*recipe.Batch
	for _, o := range []struct {
		name   string
		change func(*recipe.Batch)
	}{
		{"no wood", func(b *recipe.Batch) { b.Cask.Kind, b.Cask.SizeM3 = nil, 0 }},
		{"kept", func(b *recipe.Batch) { b.Cask = recipe.Cask{} }},
		{"last one short", func(b *recipe.Batch) { b.Cask.SizeM3 = 0.2061 / 3 * 1.005 }},
		{"one, short", func(b *recipe.Batch) { b.Cask.SizeM3 = 0.2061 * 1.01 }},
		{"no cask filled", func(b *recipe.Batch) { b.Cask.SizeM3 *= 3 }},
		{"no feints", func(b *recipe.Batch) { b.Spirit.Feints = false }},
		{"charges", func(b *recipe.Batch) { b.Strip.Charges, b.Spirit.Charges = 2, 3 }},
		{"steam", func(b *recipe.Batch) { b.Mash.Cooker.HeatedBy, b.Strip.Still.HeatedBy = recipe.Direct, recipe.Direct }},
		{"no backset, no prices", func(b *recipe.Batch) {
			b.Mash.Steps = slices.Delete(b.Mash.Steps, 1, 2)
			b.Costs = recipe.Costs{}
		}},
	} {
		c := b.Clone()
		c.Name = o.name
		o.change(c)
		out = append(out, c)
	}
	return out
}

func ferry(t testing.TB) *recipe.Batch { return batches(t)[0] }

// compiler remembers the stages from test to test.
func compiler() Compile {
	return func(b *recipe.Batch) *plan.Plan { p, _ := memo.Compile(b); return p }
}

var memo = new(compile.Memo)

// each calls f for every value of every batch in both systems of units.
func each(t *testing.T, f func(a *asked, v value)) {
	t.Helper()
	for i, b := range batches(t) {
		if i%testflag.Every(3) != 0 {
			continue
		}
		p := compiler()(b)
		require.NotNil(t, p, b.Name)
		for _, u := range []measure.Units{measure.US, measure.SI} {
			a := &asked{b: b, p: p, inUnits: inUnits{u}}
			for _, v := range a.table() {
				t.Run(b.Name+"/"+v.name, func(t *testing.T) { f(a, v) })
			}
		}
	}
}

// Every number of the summary can be asked by its own name, and is the plan's.
func TestSummaryCanBeAsked(t *testing.T) {
	for _, b := range batches(t) {
		p, _ := compile.Compile(b)
		s := reflect.ValueOf(p.Summary)
		a := &asked{b: b, p: compiler()(b), inUnits: inUnits{measure.SI}}
		for i := range s.NumField() {
			name := s.Type().Field(i).Tag.Get("json")
			v, ok := a.find(name)
			if !ok && name == "caskEntryAbvPct" {
				require.Zero(t, p.Cask.SizeL, "no entry without wood")
				continue
			}
			require.True(t, ok, name)
			want := s.Field(i).Convert(reflect.TypeFor[float64]()).Float()
			got := a.amountOf(v)
			places, err := strconv.Atoi(s.Type().Field(i).Tag.Get("places"))
			if name == "casksFilled" {
				places, err = 0, nil
			}
			require.NoError(t, err)
			assert.InDelta(t, want, got.Value, 0.51*math.Pow10(-got.Places)+0.51*math.Pow10(-places), "%s of %s in %s", name, b.Name, got.Unit)
		}
	}
}

// A sum that is then divided stands in brackets, and no other chain: signs bind
// as they do for everybody.
func TestBracketed(t *testing.T) {
	for ops, want := range map[string]int{"": 0, "+": 0, "+-": 0, "x/": 0, "x+": 0, "-/": 2, "+/": 2, "+-/x": 3, "x+/": 3, "/+": 0} {
		l := Line{Terms: []Term{{}}}
		for _, op := range ops {
			l.Terms = append(l.Terms, Term{Op: string(op)})
		}
		assert.Equal(t, want, l.Bracketed(), ops)
	}
}

// A line of working comes out as shown, and what is worked out is the number
// asked for.
func TestWorkingComesOut(t *testing.T) {
	each(t, func(a *asked, v value) {
		if v.work == nil {
			return
		}
		amount, reached := a.amountOf(v), false
		lines := v.work(a)
		for _, l := range lines {
			if len(l.Terms) == 0 {
				assert.NotEmpty(t, l.Reads, l.Says)
				continue
			}
			assert.True(t, l.comesOut(), "%s: %s: %v gives %v, not %v", v.name, l.Says, l.Terms, l.worked(), l.Result)
			assert.NotEmpty(t, l.Says)
			if l.Result.Unit == amount.Unit && l.Result.Unit != "%" || strings.HasPrefix(l.Result.Unit, amount.Unit) {
				reached = reached || math.Abs(l.Result.Value-amount.Value) <= 0.51*math.Pow10(-min(l.Result.Places, amount.Places))
			}
			if l.Result.Unit == "" && amount.Unit == "" || l.Result.Unit == "pH" || strings.HasPrefix(amount.Unit, "%") {
				reached = reached || math.Abs(l.Result.Value-amount.Value) <= 0.51*math.Pow10(-min(l.Result.Places, amount.Places))
			}
			assert.GreaterOrEqual(t, l.Result.Places, 0)
		}
		if len(lines) > 0 && !v.given {
			assert.True(t, reached, "%s: no line comes to %s", v.name, amount.Text())
		}
	})
}

func TestTable(t *testing.T) {
	names := map[string]string{}
	each(t, func(a *asked, v value) {
		for _, n := range append([]string{v.name}, v.also...) {
			if was, ok := names[fold(n)]; ok {
				assert.Equal(t, was, v.name, "%s is the name of two values", n)
			}
			names[fold(n)] = v.name
		}
		assert.NotEmpty(t, v.title)
		assert.NotEmpty(t, v.model.Says, v.name)
		assert.NotEmpty(t, v.model.Source, v.name)
		assert.NotEmpty(t, v.model.Valid, v.name)
		for _, from := range v.from {
			assert.True(t, Known(from), "%s comes from %s, which there is not", v.name, from)
		}
		for _, in := range a.inputs(v.inputs) {
			assert.NotEmpty(t, in.Text)
			if in.File == "" {
				assert.NotEmpty(t, in.Source, "%s: %s stands nowhere", v.name, in.Text)
				continue
			}
			assert.Positive(t, in.Line)
			if strings.HasPrefix(in.File, "stdlib") {
				assert.NotEmpty(t, in.Source, "%s of %s has no source", in.Text, in.Of)
			}
		}
		n := a.amountOf(v)
		assert.False(t, math.IsNaN(n.Value) || math.IsInf(n.Value, 0), v.name)
	})
}

// Nothing comes from itself, by whatever way round, but what the feints bring
// back into the charge.
func TestNoCircle(t *testing.T) {
	a := &asked{b: ferry(t), p: compiler()(ferry(t))}
	rows := map[string]value{}
	for _, v := range a.table() {
		rows[v.name] = v
	}
	done := map[string]bool{}
	var walk func(name string, above []string)
	walk = func(name string, above []string) {
		if i := slices.Index(above, name); i >= 0 {
			require.Contains(t, above[i:], "feints")
			return
		}
		if done[name] {
			return
		}
		done[name] = true
		for _, from := range rows[name].from {
			walk(from, append(slices.Clone(above), name))
		}
	}
	for name := range rows {
		walk(name, nil)
	}
}

func explain(t testing.TB, b *recipe.Batch, u measure.Units, name string, depth int) *Answer {
	t.Helper()
	out, err := Explain(Question{Batch: b, Compile: compiler(), Units: u, Value: name, Depth: depth})
	require.NoError(t, err)
	return out
}

// The grain is at the bottom of the hearts.
func TestDepth(t *testing.T) {
	told := func(n Node) []string {
		var names []string
		var walk func(Node)
		walk = func(n Node) {
			names = append(names, n.Name)
			for _, c := range n.Nodes {
				walk(c)
			}
		}
		walk(n)
		return names
	}
	assert.Equal(t, []string{"hearts"}, told(explain(t, ferry(t), measure.US, "hearts", 1).Value))
	two := told(explain(t, ferry(t), measure.US, "hearts", 2).Value)
	assert.ElementsMatch(t, []string{"hearts", "charge", "hearts-share", "proof"}, two)
	all := told(explain(t, ferry(t), measure.US, "hearts", MostDepth).Value)
	for _, name := range []string{"low-wines", "feints", "alcohol", "sugar-fermented", "wort-sugar", "conversion", "starch", "grain"} {
		assert.Contains(t, all, name)
	}
	assert.Len(t, all, len(slices.Compact(slices.Sorted(slices.Values(all)))), "each is told once")
}

// Nudges leave the batch alone, and the same question has the same answer.
func TestSameQuestionSameAnswer(t *testing.T) {
	b := ferry(t)
	before := compiler()(b)
	a, err := json.Marshal(explain(t, b, measure.US, "cost", 3))
	require.NoError(t, err)
	again, err := json.Marshal(explain(t, b, measure.US, "cost", 3))
	require.NoError(t, err)
	require.Equal(t, string(a), string(again))
	require.Empty(t, cmp.Diff(before, compiler()(b)))
}

func TestUnknown(t *testing.T) {
	for word, near := range map[string]string{
		"heart": "hearts", "hart": "hearts", "lowwine": "low-wines", "gravty": "", "leftovr": "leftover", "original": "original-gravity", "conversoin": "conversion", "year-3.5": "year-3",
	} {
		_, err := Explain(Question{Batch: ferry(t), Compile: compiler(), Value: word})
		var unknown *Unknown
		require.ErrorAs(t, err, &unknown, word)
		if near != "" {
			assert.Contains(t, unknown.Near, near, word)
		}
		assert.LessOrEqual(t, len(unknown.Near), 3)
	}
	a := &asked{b: ferry(t), p: compiler()(ferry(t)), inUnits: inUnits{measure.US}}
	for _, same := range []string{"low-wines", "Low wines", "lowWinesVolumeL", "LOW_WINES"} {
		v, ok := a.find(same)
		require.True(t, ok, same)
		assert.Equal(t, "low-wines", v.name)
	}
}

func BenchmarkExplain(b *testing.B) {
	batch := ferry(b)
	b.ReportAllocs()
	for b.Loop() {
		explain(b, batch, measure.US, "hearts", 1)
	}
}

// What may be promised is asked for by the same word.
func TestPromisesAreAskedByTheirNames(t *testing.T) {
	a := &asked{b: ferry(t), p: compiler()(ferry(t)), inUnits: inUnits{measure.US}}
	for _, p := range schema.Promises {
		v, ok := a.find(p.What)
		require.True(t, ok, p.What)
		assert.Equal(t, p.What, v.name)
	}
}
