package compare

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/measure"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/testflag"
)

// other is a datum that is not the one that is there.
func other(t *testing.T, b *recipe.Batch, x any) any {
	switch x := x.(type) {
	case float64:
		return 1.01*x + 0.001
	case int:
		return x + 1
	case bool:
		return !x
	case string:
		return x + "-else"
	case recipe.System:
		return recipe.SI - x
	case recipe.Heating:
		return recipe.Direct - x
	case recipe.EnzymeKind:
		return recipe.Viscosity
	case []float64:
		return append(slices.Clone(x), 1)
	case quantity.Kind:
		return x + 1
	case recipe.Strength:
		x.Value += 0.01
		return x
	case recipe.Cut:
		return recipe.Cut{By: recipe.ByShare, Share: 0.4321}
	case recipe.HeatUp:
		return recipe.HeatUp{OverS: 4321}
	case recipe.FractionPace:
		return recipe.FractionPace{OverS: 4321}
	case recipe.Start:
		x.Day++
		return x
	case recipe.Contents:
		return x ^ 1
	case recipe.Acid:
		return (x + 1) % 4
	case recipe.Month:
		return (x + 1) % 13
	case recipe.Surface:
		return 1 - x
	case recipe.Shift:
		x.ToMinute--
		return x
	case recipe.Climate:
		x.ProofPerYear++
		return x
	case *recipe.Vessel:
		return &recipe.Vessel{Name: "Another", Kind: x.Kind, HoldsM3: 1}
	case []*recipe.Vessel:
		return []*recipe.Vessel{{Name: "Another", Kind: recipe.Fermenter, HoldsM3: 1}}
	case *recipe.Yeast:
		y := *x
		y.Name = "another"
		return &y
	case *recipe.Enzyme:
		if x == nil {
			return b.Ferm.Doses[0].Enzyme
		}
		z := *x
		z.Name = "another"
		return &z
	case *recipe.CaskWood:
		k := *x
		k.Name = "another"
		return &k
	case *recipe.Standard:
		return (*recipe.Standard)(nil)
	}
	require.Failf(t, "a type of datum that this test does not know", "%T", x)
	return nil
}

// A plan that changes has a change of meaning: whatever value of a batch is
// changed, there is an edit that says so, and that makes the new batch of the old
// one.
func TestEveryValueIsCompared(t *testing.T) {
	old := edited(batch(t, "Ferry Landing"), func(b *recipe.Batch) {
		b.Ferm.Doses = append(b.Ferm.Doses, recipe.Dose{Enzyme: step(b, recipe.MashDose, 0).Enzyme, MassKg: 0.1})
		b.Cask.BottleM3, b.Cask.BottleAt = 7e-4, recipe.Strength{}
	})
	inUse := used(old)
	count := 0
	for i, v := range old.Values() {
		if v.Path == recipe.PathBill || v.Path.Within(recipe.PathMash.Child("step")) && !says(old, v) {
			continue
		}
		if v.Of != "" && v.Path.Within(recipe.PathPlant) && !slices.Contains(inUse, vessel(old.Plant, v.Of)) && !isTank(old, v.Of) {
			continue // a vessel that the batch does not use
		}
		for k := range v.Cells {
			if count++; count%testflag.Every(7) != 0 {
				continue
			}
			t.Run(fmt.Sprintf("%s %s %d", v.Path, v.Name, k), func(t *testing.T) {
				new := edited(old, func(b *recipe.Batch) {
					c := b.Values()[i].Cells[k]
					c.Set(other(t, b, c.Is()))
					b.Bill.TotalKg = 0
					for _, l := range b.Bill.Lines {
						b.Bill.TotalKg += l.MassKg
					}
					b.Resolve()
				})
				d := Find(old, new, measure.US)
				assert.False(t, d.Same(), "no change in meaning")
				assert.Equal(t, !v.Idle, slices.ContainsFunc(d.Edits, func(e Edit) bool { return e.Counts }), "%v", d.Edits)
				for _, e := range d.Edits {
					assert.NotEmpty(t, e.What)
				}
				requireValues(t, new, d.mix(all(d, true)))
				requireValues(t, old, d.mix(all(d, false)))
			})
		}
	}
	assert.Greater(t, count, 200)
}

func isTank(b *recipe.Batch, name string) bool {
	return slices.ContainsFunc(b.Plant.Tanks, func(t *recipe.Tank) bool { return t.Name == name })
}

// requireValues wants all values of two batches to be the same, names and promises
// apart.
func requireValues(t *testing.T, want, got *recipe.Batch) {
	t.Helper()
	is := valuesOf(got, nil)
	for _, w := range valuesOf(want, nil).all {
		g, ok := is.find(w.Key())
		if !ok || len(g.Cells) != len(w.Cells) {
			require.True(t, ok && len(g.Cells) == len(w.Cells), "%s is not there", w.Path)
		}
		for i, c := range w.Cells {
			x, number := c.Is().(float64)
			if !w.Idle && !(number && !differ(x, g.Cells[i].Is().(float64))) && !w.Same(g) {
				require.Failf(t, "it is not the same", "%s: %v and %v", w.Path, w.Is(), g.Is())
			}
		}
	}
}

// says tells the values that a step is written with from those that it has not.
func says(b *recipe.Batch, v recipe.Value) bool {
	for _, s := range b.Mash.Steps {
		if !v.Path.Within(s.Path) {
			continue
		}
		switch v.Path.Last() {
		case "volume":
			return s.Verb == recipe.MashWater || s.Verb == recipe.MashBackset && s.Share == 0
		case "share":
			return s.Share > 0
		case "enzyme":
			return s.Verb == recipe.MashDose
		case "mass":
			return s.Verb == recipe.MashDose && s.Share == 0
		case "to":
			return s.Verb == recipe.MashWater || s.Verb == recipe.MashBackset || s.Verb == recipe.MashHeat || s.Verb == recipe.MashCool
		case "kept":
			return s.Verb == recipe.MashWater
		case "cooled":
			return s.Verb == recipe.MashDrain || s.Verb == recipe.MashSparge
		case "next-mash":
			return s.Verb == recipe.MashDrain
		case "for":
			return s.Verb == recipe.MashRest || s.Verb == recipe.MashBoil || s.Verb == recipe.MashDrain || s.DurationS > 0
		}
	}
	return true
}
