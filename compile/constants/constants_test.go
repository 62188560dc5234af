package constants

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/stage/still"
	"newmake/lang/check"
	"newmake/lang/recipe"
)

const lantern = "../../examples/lantern-hollow"

// examples are the batches of the invented house.
func examples(t testing.TB) []*recipe.Batch {
	h, err := check.Load(filepath.FromSlash(lantern), check.Options{})
	require.NoError(t, err)
	var out []*recipe.Batch
	for _, name := range h.Batches() {
		b, list := h.Batch(name)
		require.NotNil(t, b, list)
		out = append(out, b)
	}
	require.NotEmpty(t, out)
	return out
}

// moved are the paths of the values in which two batches differ.
func moved(a, b *recipe.Batch) map[recipe.Path]bool {
	out := map[recipe.Path]bool{}
	w := b.Values()
	for i, v := range a.Values() {
		if !v.Same(w[i]) {
			out[v.Path] = true
		}
	}
	return out
}

// TestConstantsMoveTheirPaths: as written a constant moves nothing; else it moves the
// values at its paths, and no others but what is worked out of them.
func TestConstantsMoveTheirPaths(t *testing.T) {
	for _, b := range examples(t) {
		keys := map[string]bool{}
		cs := Of(b)
		assert.Empty(t, moved(b, Set(b, cs, middle(cs))), b.Name)
		for _, c := range cs {
			assert.False(t, keys[c.Key()], c.Key())
			keys[c.Key()] = true
			assert.NotEmpty(t, c.Words)
			assert.NotEmpty(t, c.Why)
			assert.True(t, c.Low < c.High && c.Prior.Holds(c.AsWritten), "%s: %+v", c.Key(), c.Prior)
			if c.Owner == Instrument {
				assert.Empty(t, c.Paths, c.Key())
				continue
			}
			x := max(c.Low, c.Prior.At(-1))
			got := moved(b, Set(b, []Constant{c}, []float64{x}))
			for _, p := range c.Paths {
				assert.True(t, got[p], "%s moves %s", c.Key(), p)
				delete(got, p)
			}
			for p := range got {
				worked := p.Within(recipe.PathMash) && (p.Last() == "volume" || p.Last() == "mass") || p.Within(recipe.PathDose)
				assert.True(t, worked, "%s moves %s, which is not among its paths", c.Key(), p)
			}
		}
	}
}

// TestSetLeavesTheBatch: what is set is set in a copy.
func TestSetLeavesTheBatch(t *testing.T) {
	b := examples(t)[0]
	before := b.Clone()
	cs := Moving(Of(b))
	Set(b, cs, Drawn(cs, 1, nil).X[0])
	assert.Empty(t, moved(before, b))
}

// TestYieldEfficiency: the product of starch reached and ethanol of sugar goes with
// the factor, and neither goes above what can be.
func TestYieldEfficiency(t *testing.T) {
	for _, b := range examples(t) {
		i := slices.IndexFunc(Of(b), func(c Constant) bool { return c.ID == "yield-efficiency" })
		c := Of(b)[i]
		product := func(b *recipe.Batch) float64 {
			name := "access-malt"
			if slices.ContainsFunc(b.Bill.Lines, func(l recipe.BillLine) bool { return !l.Grain.Malted }) {
				name = "access-raw"
			}
			assert.LessOrEqual(t, b.Models["mash"].Values[name], 1+1e-12, b.Name)
			assert.LessOrEqual(t, b.Ferm.Yeast.EthanolYield, 1+1e-12, b.Name)
			return b.Models["mash"].Values[name] * b.Ferm.Yeast.EthanolYield
		}
		for _, x := range []float64{0.9, 0.97, 1.01, c.High} {
			assert.InDelta(t, x, product(Set(b, []Constant{c}, []float64{x}))/product(b), 1e-9, b.Name)
		}
	}
}

// TestEveryRowIsUsed: each row of the table has a constant in some example.
func TestEveryRowIsUsed(t *testing.T) {
	used := map[string]bool{}
	for _, b := range examples(t) {
		for _, c := range Of(b) {
			used[c.ID] = true
			assert.False(t, strings.ContainsAny(c.ID, " _"), c.ID)
		}
	}
	for _, r := range table {
		assert.True(t, used[r.id], r.id)
	}
}

func BenchmarkSet(b *testing.B) {
	r := examples(b)[0]
	cs := Moving(Of(r))
	d := Drawn(cs, 1, nil)
	b.ReportAllocs()
	for b.Loop() {
		Set(r, cs, d.X[0])
	}
}

func BenchmarkDrawn(b *testing.B) {
	cs := Of(examples(b)[0])
	for b.Loop() {
		Drawn(cs, 400, nil)
	}
}

// TestStatedUncertainty: the range on a figure's line is that of its constant, 9 times
// in 10; a line without one has the table's.
func TestStatedUncertainty(t *testing.T) {
	b := examples(t)[0].Clone()
	of := func(id string) Constant {
		all := Of(b)
		i := slices.IndexFunc(all, func(c Constant) bool { return c.ID == id })
		require.GreaterOrEqual(t, i, 0, id)
		return all[i]
	}
	b.Strip.Still.Within = map[string]recipe.Within{"reflux": {Low: 0.03, High: 0.07}, "heats": {Low: 0.9 * b.Strip.Still.HeatsW, High: 1.1 * b.Strip.Still.HeatsW}}
	assert.InDelta(t, 0.02/NineInTen, of("reflux").SD, 1e-12)
	assert.InDelta(t, 0.1/NineInTen, of("still-heat").SD, 1e-12)
	assert.Contains(t, of("still-heat").Why, "the house")
	b.Strip.Still.Within = nil
	assert.InDelta(t, 0.15, of("still-heat").SD, 1e-12)
	assert.InDelta(t, 0.01+0.4*b.Strip.Still.Reflux, of("reflux").SD, 1e-12)

	y := b.Ferm.Yeast
	w := y.Within["growth"]
	require.NotZero(t, w, "the library states it")
	assert.InDelta(t, (w.High-w.Low)/(2*NineInTen)/y.GrowthPerS, of("yeast-rate").SD, 1e-12)
	assert.Contains(t, of("yeast-rate").Why, y.Source["growth"])
	assert.InDelta(t, 0.10, of("vigor").SD, 1e-12, "what scatters from run to run is no figure of the library")
	y.Within = nil
	assert.InDelta(t, 0.25, of("yeast-rate").SD, 1e-12)
}

// TestLibraryStatesItsUncertainty: what the table draws of the built-in library is
// stated there, beside the figure.
func TestLibraryStatesItsUncertainty(t *testing.T) {
	lib := check.Builtin().Library
	stated := func(e recipe.Entry, lines ...string) {
		for _, line := range lines {
			assert.NotZero(t, e.Within[line], "%s in stdlib: how sure is its %s? After the figure write the range that holds it 9 times in 10: `%s 10 %%, 9..11 %%`", e.Name, line, line)
		}
	}
	for _, g := range lib.Grains {
		stated(g.Entry, "starch", "moisture")
		if g.LintnerPower > 0 {
			stated(g.Entry, "power")
		}
	}
	for _, y := range lib.Yeasts {
		stated(y.Entry, "growth", "lag", "ethanol-yield")
	}
	for _, k := range lib.Woods {
		stated(k.Entry, "soak")
	}
	for _, b := range examples(t) {
		for _, c := range Of(b) {
			for _, p := range c.Paths {
				if parts := p.Parts(); parts[0] == "library" && parts[1] == "model" && parts[3] != "backset-pH" {
					assert.NotEmpty(t, lib.Models[parts[2]].Within[parts[3]], p)
				}
			}
		}
	}
}

// middle are the figures that leave the recipe as it is.
func middle(of []Constant) []float64 {
	x := make([]float64, len(of))
	for i, c := range of {
		x[i] = c.AsWritten
	}
	return x
}

// TestEveryRangeIsDrawn: a figure of the library with a range, that holds it 9 times in
// 10, is moved by a constant wherever a batch of the examples uses it.
func TestEveryRangeIsDrawn(t *testing.T) {
	h, err := check.Load(filepath.FromSlash("../../examples/lantern-hollow"), check.Options{})
	require.NoError(t, err)
	found := 0
	for _, name := range h.Batches() {
		b, list := h.Batch(name)
		require.NotNil(t, b, list)
		moved := map[string]bool{}
		for _, c := range Of(b) {
			for _, p := range c.Paths {
				moved[p.String()] = true
			}
		}
		want := func(kind string, e *recipe.Entry, lines func(line string) bool) {
			for line := range e.Within {
				if lines == nil || lines(line) {
					found++
					assert.True(t, moved[recipe.PathLibrary.Child(kind, e.Name, line).String()], "%s: %s %s %s", name, kind, e.Name, line)
				}
			}
		}
		for _, g := range grains(b) {
			want("grain", &g.Entry, nil)
		}
		want("yeast", &b.Ferm.Yeast.Entry, nil)
		want("model", &b.Models["mash"].Entry, nil)
		if b.Cask.Kind != nil {
			want("wood", &b.Cask.Kind.Entry, nil)
			want("model", &b.Models["cask"].Entry, func(line string) bool { return strings.HasPrefix(line, b.Cask.Climate.Named) })
		}
	}
	assert.Greater(t, found, 30)
}

// TestUnsaid: a loss that the house states nothing of is taken as none by a plan, and so
// by who draws; one that it states, of however little, is drawn about that.
func TestUnsaid(t *testing.T) {
	for lost, drawn := range map[float64]bool{0: false, 0.001: true, 0.02: true} {
		h, err := check.Load(filepath.FromSlash("../../examples/lantern-hollow"), check.Options{})
		require.NoError(t, err)
		b, _ := h.Batch("Ferry Landing")
		b = b.Clone()
		b.Strip.Still.LostFrac, b.Spirit.Still.LostFrac = lost, lost
		is := func(c Constant) bool { return c.ID == "alcohol-lost" }
		assert.True(t, slices.ContainsFunc(Moving(Of(b)), is), "who learns looks for it")
		assert.Equal(t, drawn, slices.ContainsFunc(Drawable(Of(b)), is), "%g", lost)
	}
}

// A head is drawn within what a still is computed for, whatever the house writes: a draw
// beyond it would count as a batch that fails.
func TestRefluxIsDrawnWithinTheModel(t *testing.T) {
	b := examples(t)[0].Clone()
	b.Strip.Still.Reflux = still.MostReflux
	all := slices.DeleteFunc(Of(b), func(c Constant) bool { return c.ID != "reflux" && c.ID != "reflux-of-day" })
	for i, c := range all {
		for _, x := range []float64{c.Prior.Low, c.Prior.High} {
			changed := b.Clone()
			all[i].set(changed, x)
			for _, v := range []*recipe.Vessel{changed.Strip.Still, changed.Spirit.Still} {
				assert.True(t, v.Reflux >= 0 && v.Reflux <= still.MostReflux, "%s %g: %g", c.ID, x, v.Reflux)
			}
		}
	}
	assert.NotEmpty(t, all)
}
