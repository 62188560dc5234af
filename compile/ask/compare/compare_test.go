package compare

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/check"
	"newmake/lang/recipe"
	"newmake/lang/testflag"
)

// memo remembers the stages from test to test.
var memo = new(compile.Memo)

func side(label string, b *recipe.Batch) Side { return SideOf(label, b, nil) }

func TestABatchAgainstItself(t *testing.T) {
	b := batch(t, "Ferry Landing")
	h, err := check.Load(lantern, check.Options{}) // read anew, and the same
	require.NoError(t, err)
	again, _ := h.Batch("Ferry Landing")
	c := Batches(side("old", b), side("new", again), Options{Memo: memo})
	assert.True(t, c.Same)
	assert.Empty(t, c.Edits)
	assert.Empty(t, c.Outcomes)
	assert.Nil(t, c.Why)
	assert.Empty(t, c.Bill)
}

// several is a set of edits across the whole batch.
func several(b *recipe.Batch) {
	b.Bill.Lines[1].MassKg -= 20
	b.Bill.Lines[2].MassKg += 20
	step(b, recipe.MashRest, 2).DurationS -= 1200
	b.Ferm.DurationS -= 24 * hourS
	b.Spirit.HeartsTo.Strength.Value = 0.58
	b.Cask.Entry.Value = 110.0 / 200
	b.Resolve()
}

func requireAddsUp(t *testing.T, c *Comparison) {
	t.Helper()
	require.NotNil(t, c.Why)
	require.Equal(t, len(c.Changed()), len(c.Why.Each), "every change is taken apart")
	for i, o := range c.Why.Each {
		whole := c.Changed()[i]
		require.Equal(t, whole.Key, o.Key)
		parts, alone := 0.0, 0.0
		for _, p := range o.Parts {
			require.NotEqual(t, rest, p.Edit, "%s has a change that no edit accounts for", o.Key)
			parts += p.Part
			alone += p.Alone
		}
		require.InDelta(t, whole.Change, parts, 1e-9, "the parts of %s", o.Key)
		// Each of these is rounded by itself, and old and new before their change is taken.
		require.InDelta(t, whole.Change, alone+o.Interaction, (1.5+0.05*float64(len(o.Parts)))*math.Pow10(-whole.Places), "%s: alone and interaction", o.Key)
	}
}

func TestThePartsAddUpToTheWhole(t *testing.T) {
	for _, u := range []measure.Units{measure.US, measure.SI} {
		old := batch(t, "Ferry Landing")
		c := Batches(side("old", old), side("new", edited(old, several)), Options{Units: u, Memo: memo})
		require.Len(t, c.Edits, 5)
		require.True(t, c.Why.Exact)
		require.Equal(t, 32, c.Why.Plans)
		requireAddsUp(t, c)
	}
}

// What an edit does alone is what a plan with that edit alone shows.
func TestAloneIsAPlanOfItsOwn(t *testing.T) {
	old := batch(t, "Ferry Landing")
	c := Batches(side("old", old), side("new", edited(old, several)), Options{Memo: memo})
	a, _ := compile.Compile(old)
	b, _ := compile.Compile(edited(old, func(b *recipe.Batch) { b.Cask.Entry.Value = 110.0 / 200 }))
	for _, o := range c.Why.Each {
		if o.Key == "leftoverL" {
			at := len(o.Parts) - 1
			assert.Equal(t, "entry 110 proof", o.Parts[at].Edit)
			assert.InDelta(t, b.Cask.Leftover.WineGallons-a.Cask.Leftover.WineGallons, o.Parts[at].Alone, 0.011)
		}
		if o.Key == "originalGravitySG" {
			for _, p := range o.Parts[2:] {
				assert.Zero(t, p.Part, "no edit after the mash changes its gravity: %s", p.Edit)
			}
		}
	}
}

// The outcomes that a comparison shows are those of the plans themselves.
func TestOutcomesAreThePlans(t *testing.T) {
	old := batch(t, "Ferry Landing")
	new := edited(old, several)
	c := Batches(side("old", old), side("new", new), Options{Units: measure.SI, NoWhy: true, Memo: memo})
	a, _ := compile.Compile(old)
	b, _ := compile.Compile(new)
	for _, x := range []struct {
		key      string
		old, new float64
	}{
		{"originalGravitySG", a.Summary.OriginalGravitySG, b.Summary.OriginalGravitySG},
		{"heartsVolumeL", a.Summary.HeartsVolumeL, b.Summary.HeartsVolumeL},
		{"heartsAbvPct", a.Summary.HeartsAbvPct, b.Summary.HeartsAbvPct},
		{"casksFilled", float64(a.Summary.CasksFilled), float64(b.Summary.CasksFilled)},
		{"spiritHours", a.Summary.SpiritHours, b.Summary.SpiritHours},
		{"yieldLPAPerTonne", a.Summary.YieldLPAPerTonne, b.Summary.YieldLPAPerTonne},
	} {
		o, ok := c.Find(x.key)
		require.True(t, ok, x.key)
		assert.Equal(t, x.old, o.Old, x.key)
		assert.Equal(t, x.new, o.New, x.key)
	}
}

// Every number of the summary is compared.
func TestTheSummaryIsCompared(t *testing.T) {
	old := batch(t, "Ferry Landing")
	c := Batches(side("old", old), side("new", edited(old, several)), Options{Units: measure.SI, NoWhy: true, Memo: memo})
	for _, key := range []string{
		"originalGravitySG", "finalGravitySG", "washVolumeL", "washAbvPct", "lowWinesVolumeL", "lowWinesAbvPct", "heartsVolumeL", "heartsAbvPct",
		"heartsProofGallons", "pureAlcoholL", "feintsVolumeL", "feintsAbvPct", "caskEntryAbvPct", "casksFilled", "leftoverL", "mashHours",
		"fermentHours", "stripHours", "spiritHours", "yieldLPAPerTonne",
	} {
		_, ok := c.Find(key)
		assert.True(t, ok, key)
	}
}

// More edits than are taken exactly, and more than are taken one by one.
func TestManyEdits(t *testing.T) {
	old := batch(t, "Ferry Landing")
	new := edited(old, func(b *recipe.Batch) {
		several(b)
		b.Ferm.PitchKgM3 *= 1.2
		b.Strip.StopAt.Value = 0.015
		b.Spirit.Stop.Value = 0.05
		b.Spirit.ForeshotsM3 *= 2
	})
	c := Batches(side("old", old), side("new", new), Options{Memo: memo})
	require.Len(t, c.Edits, 9)
	require.False(t, c.Why.Exact)
	require.Equal(t, 2*drawnPairs, c.Why.Orders)
	requireAddsUp(t, c)
	if testflag.Every(2) == 1 { // a script asks the program twice as well
		again := Batches(side("old", old), side("new", new), Options{})
		require.Empty(t, cmp.Diff(c.Why, again.Why), "the same comparison gives the same figures")
	}

	two := Batches(side("old", old), side("new", batch(t, "Stone Ferry")), Options{Memo: memo})
	require.True(t, two.Why.Exact)
	assert.Contains(t, two.Why.Joined, "too many to take one by one")
	requireAddsUp(t, two)
}

// Edits that do not work without one another are taken together, and said to be.
func TestEditsThatOnlyWorkTogether(t *testing.T) {
	old := batch(t, "Ferry Landing")
	new := edited(old, func(b *recipe.Batch) {
		b.Plant.Zone = "Europe/London" // a zone in which, on that day, 01:30 comes and not 02:30
		b.Start = recipe.Start{Year: 2026, Month: 3, Day: 8, Hour: 2, Minute: 30}
	})
	c := Batches(side("old", old), side("new", new), Options{Memo: memo})
	require.NotNil(t, c.Why)
	assert.NotEmpty(t, c.Why.Joined)
	requireAddsUp(t, c)
}

// A memo gives what a compilation of its own gives, to the last bit, but for
// what it leaves out and the rounding.
func TestAMemoChangesNothing(t *testing.T) {
	memo := &compile.Memo{}
	old := batch(t, "Ferry Landing")
	memo.Compile(old)
	new := edited(old, several)
	got, _ := memo.Compile(new)
	got.Round()
	want, _ := compile.Compile(new)
	want.Congeners = nil
	require.Empty(t, cmp.Diff(want, got, cmpopts.EquateEmpty()))
}

func TestWhatCannotBeComputed(t *testing.T) {
	old := batch(t, "Ferry Landing")
	c := Batches(side("old", old), side("new", edited(old, func(b *recipe.Batch) { b.Plant.Zone = "Nowhere/At_all" })), Options{Memo: memo})
	assert.Contains(t, c.Missing, "the new batch cannot be computed")
	assert.Len(t, c.Edits, 1)
}

func TestWarningsGainedAndLost(t *testing.T) {
	old := batch(t, "Ferry Landing")
	new := edited(old, func(b *recipe.Batch) {
		b.Ferm.DurationS = 30 * hourS
		b.Cask.Entry.Value = 130.0 / 200 // the law says 125 at most
	})
	c := Batches(side("old", old), side("new", new), Options{NoWhy: true, Memo: memo})
	var texts []string
	for _, w := range c.Gained {
		texts = append(texts, w.Severity+" "+w.Text)
	}
	assert.True(t, slices.ContainsFunc(texts, func(s string) bool { return strings.HasPrefix(s, "law into wood at most 125") }), "%v", texts)
	back := Batches(side("old", new), side("new", old), Options{NoWhy: true, Memo: memo})
	assert.Empty(t, cmp.Diff(c.Gained, back.Lost))
}

func TestMoments(t *testing.T) {
	old := batch(t, "Ferry Landing")
	c := Batches(side("old", old), side("new", edited(old, func(b *recipe.Batch) { b.Start.Day++ })), Options{NoWhy: true, Memo: memo})
	require.NotEmpty(t, c.Moments)
	last := c.Moments[len(c.Moments)-1]
	assert.Equal(t, "the last cask is filled", last.Name)
	a, _ := compile.Compile(old)
	assert.Equal(t, a.Schedule.End, last.Old)
	for _, m := range c.Moments {
		if m.Key == "pitch" {
			assert.Equal(t, 24.0, m.Hours)
		}
	}
	assert.False(t, math.IsNaN(plan.RoundTo(last.Hours, 2)))
}

// A batch may go into no wood: that is a difference like another.
func TestIntoNoWood(t *testing.T) {
	aged := batch(t, "Ferry Landing")
	young := edited(aged, func(b *recipe.Batch) { b.Cask = recipe.Cask{} })
	for _, c := range []*Comparison{
		Batches(side("aged", aged), side("young", young), Options{Memo: memo}), Batches(side("young", young), side("aged", aged), Options{Memo: memo}),
	} {
		require.Empty(t, c.Missing)
		var paths []string
		for _, e := range c.Edits {
			paths = append(paths, e.Path.String())
		}
		assert.Contains(t, paths, "cask.fill")
	}
}

// TestOneCost: a comparison says the cost that a plan prints, to the last digit.
func TestOneCost(t *testing.T) {
	for _, name := range []string{"Ferry Landing", "Low Bridge", "Stone Ferry"} {
		b := batch(t, name)
		p, _ := compile.Compile(b)
		c := Batches(side("old", b), side("new", batch(t, "Toll Road")), Options{NoWhy: true, Memo: memo})
		i := slices.IndexFunc(c.Outcomes, func(o Outcome) bool { return o.Key == "costTotal" })
		require.GreaterOrEqual(t, i, 0, name)
		assert.Equal(t, measure.Number(p.Cost.Total, 2), measure.Number(c.Outcomes[i].Old, c.Outcomes[i].Places), name)
		sum := 0.0
		for _, l := range p.Cost.Lines {
			assert.Equal(t, plan.RoundTo(l.Cost, 2), l.Cost, l.What)
			sum += l.Cost
		}
		assert.InDelta(t, p.Cost.Total, sum, 1e-9, name)
	}
}
