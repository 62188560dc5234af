package compare

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/measure"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/testflag"
)

// meaning compares two batches without what does not count: places in the text,
// names of the batch and the step's own number.
var meaning = cmp.Options{
	cmpopts.IgnoreTypes(diag.Span{}),
	cmpopts.IgnoreFields(recipe.Batch{}, "Name", "Parent", "Chain", "Changes", "Where", "Promises", "Units"),
	cmpopts.IgnoreFields(recipe.MashStep{}, "Path"),
	cmpopts.IgnoreFields(recipe.Entry{}, "Source", "Doc"),
	cmpopts.IgnoreFields(recipe.Plant{}, "Costs"), // the batch's own hold
	cmpopts.EquateApprox(1e-9, 1e-12),
	cmpopts.EquateEmpty(),
}

func all(d *Difference, on bool) []bool {
	out := make([]bool, len(d.Edits))
	for i := range out {
		out[i] = on
	}
	return out
}

// The edits are the whole difference: none of them made is the old batch, all of
// them the new one.
func requireWhole(t *testing.T, d *Difference) {
	t.Helper()
	require.Empty(t, cmp.Diff(sorted(d.Old), sorted(d.mix(all(d, false))), meaning), "no edit made")
	require.Empty(t, cmp.Diff(sorted(d.New), sorted(d.mix(all(d, true))), meaning), "every edit made")
}

// sorted brings the lines of the bill into the order of their names, for that
// has no meaning; the grains of each step follow.
func sorted(b *recipe.Batch) *recipe.Batch {
	out := *b
	out.Bill.Lines = slices.Clone(b.Bill.Lines)
	slices.SortFunc(out.Bill.Lines, func(x, y recipe.BillLine) int { return strings.Compare(x.Grain.Name, y.Grain.Name) })
	out.Mash.Steps = slices.Clone(b.Mash.Steps)
	for i, s := range out.Mash.Steps {
		var to []int
		for _, g := range s.Grains {
			to = append(to, slices.IndexFunc(out.Bill.Lines, func(l recipe.BillLine) bool { return l.Grain.Name == b.Bill.Lines[g].Grain.Name }))
		}
		slices.Sort(to)
		out.Mash.Steps[i].Grains = to
	}
	return &out
}

// Any two batches of the house, as different as they are.
func TestTheEditsAreTheWholeDifference(t *testing.T) {
	h, err := check.Load(lantern, check.Options{})
	require.NoError(t, err)
	for i, a := range h.Batches() {
		for j, b := range h.Batches() {
			if (i+j)%testflag.Every(3) != 0 && i != j {
				continue
			}
			old, _ := h.Batch(a)
			new, _ := h.Batch(b)
			d := Find(old, new, measure.US)
			t.Run(a+" to "+b, func(t *testing.T) { requireWhole(t, d) })
			if a == b {
				assert.Empty(t, d.Edits)
				assert.True(t, d.Same())
			}
		}
	}
}

func step(b *recipe.Batch, verb recipe.MashVerb, nth int) *recipe.MashStep {
	for i := range b.Mash.Steps {
		if b.Mash.Steps[i].Verb == verb {
			if nth--; nth < 0 {
				return &b.Mash.Steps[i]
			}
		}
	}
	panic("no such step")
}

// single is one change of Ferry Landing, and the edits that it is.
type single struct {
	name   string
	change func(b *recipe.Batch)
	want   []string // part kind: what
}

func singles(t testing.TB) []single {
	return []single{
		{"nothing", func(b *recipe.Batch) {}, nil},
		{"rye for oats", func(b *recipe.Batch) {
			b.Bill.Lines[1].MassKg -= 0.02 * b.Bill.TotalKg
			b.Bill.Lines[2].MassKg += 0.02 * b.Bill.TotalKg
		}, []string{"bill changed: rye for oats, 2 points"}},
		{"one grain more", func(b *recipe.Batch) {
			b.Bill.Lines[0].MassKg += 10 * kgPerPound
			b.Bill.TotalKg += 10 * kgPerPound
		}, []string{"bill changed: corn 10 lb more"}},
		{"all of it more", func(b *recipe.Batch) {
			for i := range b.Bill.Lines {
				b.Bill.Lines[i].MassKg *= 1.1
			}
			b.Bill.TotalKg *= 1.1
		}, []string{"bill changed: bill 79 lb more"}},
		{"lines in another order", func(b *recipe.Batch) {
			b.Bill.Lines[0], b.Bill.Lines[1] = b.Bill.Lines[1], b.Bill.Lines[0]
			for i := range b.Mash.Steps {
				for j, g := range b.Mash.Steps[i].Grains {
					b.Mash.Steps[i].Grains = slices.Clone(b.Mash.Steps[i].Grains)
					if g < 2 {
						b.Mash.Steps[i].Grains[j] = 1 - g
					}
				}
			}
		}, nil},
		{"a rest", func(b *recipe.Batch) { step(b, recipe.MashRest, 0).DurationS -= 600 }, []string{"mash changed: rest 10 min shorter"}},
		{"two rests", func(b *recipe.Batch) {
			step(b, recipe.MashRest, 0).DurationS -= 600
			step(b, recipe.MashRest, 1).DurationS -= 600
		}, []string{"mash changed: rest 10 min shorter (mash.step.6.for)", "mash changed: rest 10 min shorter (mash.step.9.for)"}},
		{"a cook", func(b *recipe.Batch) { step(b, recipe.MashHeat, 0).TempC += 5 / 1.8 }, []string{"mash changed: heat 5 F hotter"}},
		{"water", func(b *recipe.Batch) {
			step(b, recipe.MashWater, 0).VolumeM3 += 10 * m3PerGallon
		}, []string{"mash changed: water 10 gal more"}},
		{"backset", func(b *recipe.Batch) { step(b, recipe.MashBackset, 0).Share = 0.10 }, []string{"mash changed: backset 5 points less"}},
		{"no backset", func(b *recipe.Batch) { s := step(b, recipe.MashBackset, 0); s.Share, s.VolumeM3 = 0, 0 }, []string{"mash changed: no backset"}},
		{"a dose", func(b *recipe.Batch) { step(b, recipe.MashDose, 0).Share *= 2 }, []string{"mash changed: more alpha-amylase"}},
		{"a step more", func(b *recipe.Batch) {
			b.Mash.Steps = slices.Insert(b.Mash.Steps, 6, recipe.MashStep{Verb: recipe.MashBoil, DurationS: 600, Path: recipe.Step(7)})
		}, []string{"mash added: boil 10 min added"}},
		{"a step less", func(b *recipe.Batch) { b.Mash.Steps = slices.Delete(b.Mash.Steps, 8, 9) }, []string{"mash removed: rest 20 min left out"}},
		{"a dose moved", func(b *recipe.Batch) {
			s := b.Mash.Steps
			s[2], s[3] = s[3], s[2]
			require.Equal(t, recipe.MashDose, s[3].Verb)
		}, []string{"mash moved: alpha-amylase moved"}},
		{"a grain moved", func(b *recipe.Batch) {
			step(b, recipe.MashAdd, 0).Grains = []int{0, 1}
			step(b, recipe.MashAdd, 1).Grains = []int{2}
		}, []string{"mash moved: oats in earlier"}},
		{"a grain for another", func(b *recipe.Batch) {
			wheat := *b.Bill.Lines[2].Grain
			wheat.Name = "wheat"
			b.Bill.Lines[2].Grain = &wheat
		}, []string{"bill changed: wheat for rye, 8 points"}},
		{"yeast and pitch", func(b *recipe.Batch) {
			y := *b.Ferm.Yeast
			y.Name = "wild-yeast"
			b.Ferm.Yeast, b.Ferm.PitchKgM3 = &y, 0.8
		}, []string{"ferment changed: wild-yeast for distillers-yeast", "ferment changed: pitch 0.8 g/L"}},
		{"cuts, cask", func(b *recipe.Batch) {
			b.Spirit.HeartsTo.Strength.Value = 0.60
			b.Strip.StopAt.Value = 0.01
			b.Cask.Entry.Value = 115.0 / 200
			b.Cask.RestS = 3 * yearS
		}, []string{"strip changed: stripping run's stop 1 % abv", "spirit changed: hearts to 60 % abv", "cask changed: entry 115 proof", "cask changed: rest in wood 1 year shorter"}},
		{"no cask", func(b *recipe.Batch) {
			b.Cask = recipe.Cask{BottleM3: b.Cask.BottleM3, BottleAt: b.Cask.BottleAt}
		}, []string{"cask changed: cask none"}},
		{"the plant", func(b *recipe.Batch) {
			b.Plant.WaterC = 10
			b.Spirit.Still.Reflux = 0.2
			b.Costs.PerCask = 400
		}, []string{"plant changed: plant's water 50 F", "plant changed: Spirit still reflux 20 %", "plant changed: prices"}},
		{"a vessel's name", func(b *recipe.Batch) { b.Mash.Cooker.Name = "Old copper" }, []string{"plant renamed: a vessel's name"}},
		{"the library", func(b *recipe.Batch) {
			g := *b.Bill.Lines[0].Grain
			g.Starch += 0.01
			b.Bill.Lines[0].Grain = &g
			m := *b.Models["mash"]
			m.Values = map[string]float64{"made-up": 1}
			b.Models["mash"] = &m
		}, []string{"library changed: grain corn in the library", "library changed: model mash in the library"}},
		{"a ferment dose", func(b *recipe.Batch) {
			b.Ferm.Doses = append(b.Ferm.Doses, recipe.Dose{Enzyme: step(b, recipe.MashDose, 0).Enzyme, MassKg: 0.1})
		}, []string{"ferment added: alpha-amylase added to the ferment"}},
		{"another gauge", func(b *recipe.Batch) { b.Gauge = recipe.SI }, []string{"batch changed: gauged in litres at 20 C"}},
		{"a start", func(b *recipe.Batch) { b.Start.Day++ }, []string{"batch changed: start 2026-03-04 07:00"}},
	}
}

func TestWhatAnEditIsCalled(t *testing.T) {
	for _, c := range singles(t) {
		t.Run(c.name, func(t *testing.T) {
			old := batch(t, "Ferry Landing")
			new := edited(old, func(b *recipe.Batch) { c.change(b); b.Resolve() })
			d := Find(old, new, measure.US)
			var got []string
			for _, e := range d.Edits {
				got = append(got, string(e.Part)+" "+string(e.Kind)+": "+e.What)
			}
			assert.Equal(t, c.want, got)
			if c.name != "a vessel's name" {
				requireWhole(t, d)
			}
		})
	}
}

func TestReorderingIsSaidToBeWithoutEffect(t *testing.T) {
	old := batch(t, "Ferry Landing")
	new := edited(old, func(b *recipe.Batch) { slices.Reverse(b.Bill.Lines) })
	for i := range new.Mash.Steps {
		s := &new.Mash.Steps[i]
		s.Grains = slices.Clone(s.Grains)
		for j, g := range s.Grains {
			s.Grains[j] = 3 - g
		}
	}
	d := Find(old, new, measure.US)
	assert.True(t, d.Same())
	assert.Equal(t, []string{"the lines of the bill stand in another order, which has no effect"}, d.Notes)
}

// Changes made together are still the whole difference, whatever they are.
func TestChangesTogetherAreTheWholeDifference(t *testing.T) {
	old := batch(t, "Ferry Landing")
	all := singles(t)
	random := rand.New(rand.NewPCG(1, 2))
	for range 200 / testflag.Every(8) {
		var names []string
		new := edited(old, func(b *recipe.Batch) {
			for range 2 + random.IntN(4) {
				c := all[random.IntN(len(all))]
				switch c.name {
				case "a vessel's name", "a grain for another", "lines in another order", "a step less", "a dose moved", "a step more":
					continue // they take the batch apart for those that come after
				}
				c.change(b)
				names = append(names, c.name)
			}
			b.Resolve()
		})
		t.Run(strings.Join(names, ", "), func(t *testing.T) { requireWhole(t, Find(old, new, measure.US)) })
	}
}

// What was measured is said to the places of its instrument, and what is written with all its
// figures.
func TestMeasured(t *testing.T) {
	old := batch(t, "Ferry Landing")
	new := edited(old, func(b *recipe.Batch) {
		step(b, recipe.MashWater, 0).VolumeM3 -= .7234567e-3 * 3.785411784
		for i := range b.Bill.Lines {
			b.Bill.Lines[i].MassKg *= 1.00123456
		}
		b.Bill.TotalKg *= 1.00123456
		b.Bill.Lines[0].Grain.Moisture += .01
		b.Resolve()
	})
	said := func(measured bool) (out []string) {
		for _, e := range find(old, new, say{measure.US, measured}).Edits {
			out = append(out, e.What)
		}
		return out
	}
	assert.Equal(t, []string{"bill 15.6048 oz more", "water 0.723457 gal less", "grain corn in the library"}, said(false))
	assert.Equal(t, []string{"bill 15.6 oz more", "water 0.72 gal less", "corn as it was bought"}, said(true))
}

// What is left out of a text is none, and a nought that is written is a number.
func TestNothingIsSaidToBeNone(t *testing.T) {
	old := batch(t, "Ferry Landing")
	new := edited(old, func(b *recipe.Batch) {
		b.Mash.Treatment.AcidToPH, b.Mash.Treatment.GypsumKg = 5.4, 0.1
		b.Ferm.AntifoamM3, b.Ferm.Nutrient.KgM3 = 1e-3, 0.15
		for _, v := range b.Plant.Vessels {
			v.Reflux = 0
		}
	})
	lines := func(old, new *recipe.Batch) []string {
		var out []string
		for _, e := range Find(old, new, measure.SI).Edits {
			for _, l := range e.Lines {
				if l.Old == "none" || l.New == "none" || l.Old == "0 %" || l.New == "0 %" {
					out = append(out, l.Name+": "+l.Old+" -> "+l.New)
				}
			}
		}
		return out
	}
	assert.Equal(t, []string{"pH by acid: none -> 5.4 pH", "gypsum: none -> 100 g", "nutrient: none -> 0.15 g/L", "antifoam: none -> 1 L", "Wash still reflux: 5 % -> 0 %", "Spirit still reflux: 10 % -> 0 %"}, lines(old, new))
	assert.Equal(t, []string{"pH by acid: 5.4 pH -> none", "gypsum: 100 g -> none", "nutrient: 0.15 g/L -> none", "antifoam: 1 L -> none", "Wash still reflux: 0 % -> 5 %", "Spirit still reflux: 0 % -> 10 %"}, lines(new, old))
}
