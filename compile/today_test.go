package compile

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/lot"
	"newmake/compile/measure"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// A first batch has no feints: its charge is the low wines and no more, and its
// feints are those of the next.
func TestNoFeintsYet(t *testing.T) {
	b := edited(t, func(b *recipe.Batch) { b.Today.FeintsSaid = true })
	n, err := Numbers(b, &numbers.Memo{}, Checked)
	require.NoError(t, err)
	assert.Zero(t, n.Distilled.Returned.MassKg())
	assert.InDelta(t, n.Stripped.LowWines.MassKg(), n.Distilled.Charge.MassKg(), 1e-9)
	p, _ := Compile(b)
	assert.Equal(t, plan.FeintsNone, p.Spirit.FeintsFrom)
	assert.Nil(t, p.Spirit.FeintsReturned)
	assert.Contains(t, stepOf(t, p, "spirit.charge").Do.Text, "there are no feints yet")
	assert.Positive(t, p.Spirit.Feints.PureL)

	// The house goes on with what each batch leaves, and comes to the run that a
	// plan without the line shows.
	steady, _ := Compile(batch(t, lantern, ferry))
	for range 40 {
		left := p.Spirit.Feints
		p, _ = Compile(edited(t, func(b *recipe.Batch) {
			b.Today = recipe.Today{
				FeintsSaid: true, FeintsM3: lot.VolumeM3(recipe.US, *left),
				FeintsAt: recipe.Strength{Value: left.Proof / 200, Basis: recipe.Proof},
			}
		}))
	}
	assert.InEpsilon(t, steady.Summary.HeartsVolumeL, p.Summary.HeartsVolumeL, 2e-3)
	assert.InEpsilon(t, steady.Summary.FeintsVolumeL, p.Summary.FeintsVolumeL, 2e-3)
	assert.InEpsilon(t, steady.Summary.SpiritHours, p.Summary.SpiritHours, 2e-3)
}

// Feints of a stated amount are counted as the batch counts, and shared by the
// charges.
func TestFeintsOfToday(t *testing.T) {
	const gal = 3.785411784e-3
	for _, charges := range []int{1, 2} {
		p, _ := Compile(edited(t, func(b *recipe.Batch) {
			b.Spirit.Charges = charges
			b.Today = recipe.Today{FeintsSaid: true, FeintsM3: 20 * gal, FeintsAt: recipe.Strength{Value: 0.35}} // 35 % abv beside gallons: 70 proof
		}))
		f := p.Spirit.FeintsReturned
		require.NotNil(t, f)
		assert.Equal(t, plan.FeintsOnHand, p.Spirit.FeintsFrom)
		assert.InDelta(t, 20/float64(charges), f.WineGallons, 0.001)
		assert.InDelta(t, 70, f.Proof, 0.05)
	}
	p, _ := Compile(edited(t, func(b *recipe.Batch) {
		b.Spirit.Feints = false
		b.Today = recipe.Today{FeintsSaid: true, FeintsM3: 20 * gal, FeintsAt: recipe.Strength{Value: 0.35}}
	}))
	assert.Nil(t, p.Spirit.FeintsReturned, "a charge that takes none takes none")
	assert.Empty(t, p.Spirit.FeintsFrom)
}

// Without backset as much water goes in, and the mash is less sour.
func TestNoBacksetYet(t *testing.T) {
	with, _ := Compile(batch(t, lantern, ferry))
	b := edited(t, func(b *recipe.Batch) { b.Today.NoBackset = true })
	p, _ := Compile(b)
	assert.InDelta(t, with.Mash.LiquorL, p.Mash.LiquorL, 1e-6)
	assert.Positive(t, with.Mash.BacksetL)
	assert.Zero(t, p.Mash.BacksetL)
	assert.Zero(t, p.Stream(plan.StreamBackset).MassKg)
	assert.Greater(t, p.Mash.PH, with.Mash.PH+0.05)
	said := func(s plan.Step) bool { return strings.Contains(s.Do.Text, "in place of backset") }
	assert.True(t, slices.ContainsFunc(p.Schedule.Steps, said))
	assert.False(t, slices.ContainsFunc(with.Schedule.Steps, said))
	assert.Equal(t, recipe.MashBackset, verb(b, recipe.MashBackset).Verb, "the batch itself stays as it is written")
}

// Where feints never settle, what is offered was tried: written into the text it
// gives a plan without an error, and the hearts that were said. Weak and strong
// low wines, wide and narrow cuts, gallons and litres.
func TestNeverSteadyOffersWhatWorks(t *testing.T) {
	said := regexp.MustCompile("`([^`]*)`, which gives ([^ ]+ [^ ]+) of hearts at")
	// planned plans the first batch of a text in place of a house's own.
	planned := func(house, text string) (*recipe.Batch, *plan.Plan, diag.List) {
		plant, err := os.ReadFile(filepath.Join("..", house, "house.batch"))
		require.NoError(t, err)
		h, err := check.LoadFS(fstest.MapFS{"house.batch": {Data: bytes.ReplaceAll(plant, []byte("holds   1,000 L"), []byte("holds 1,400 L"))}, "a.batch": {Data: []byte(text)}}, ".", check.Options{})
		require.NoError(t, err)
		b, list := h.Batch(h.Batches()[0])
		require.NotNil(t, b, list.Error())
		p, list := Compile(b)
		require.NotNil(t, p, list.Error())
		return b, p, list
	}
	offered := map[string]int{}
	for _, c := range []struct{ house, batch, stop, from, to string }{
		{lantern, "ferry-landing", "3", "75", "62"},
		{lantern, "ferry-landing", "3", "72", "60"},
		{lantern, "ferry-landing", "8", "76", "66"},
		{lantern, "stone-ferry", "1", "75", "60"},
		{lantern, "toll-road", "0.5", "71", "61"}, // weak charges
		{lantern, "toll-road", "1", "74", "60"},
		{lantern, "low-bridge", "1", "76", "60"},
		{lantern, "toll-road", "3", "75", "61"},
		{"testdata/houses/malt-425", "malt", "2", "72", "62"},
	} {
		data, err := os.ReadFile(filepath.Join("..", c.house, c.batch+".batch"))
		require.NoError(t, err)
		b := change(t, string(data), `stop {1,5}at .*`, "stop at "+c.stop+" % abv")
		if !strings.Contains(b, "low-wines, feints") {
			b = change(t, b, `charge +low-wines`, "charge low-wines, feints")
		}
		b = change(t, b, `hearts +from.*`, "hearts from "+c.from+" % abv to "+c.to+" % abv")
		_, _, list := planned(c.house, b)
		at := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeNotSteady })
		require.GreaterOrEqual(t, at, 0, "%v", c)
		require.Equal(t, diag.Error, list[at].Severity)
		t.Logf("%v: %s", c, list[at].Help)
		all := said.FindAllStringSubmatch(list[at].Help, -1)
		require.NotEmpty(t, all, "%v: %s", c, list[at].Help)
		for _, m := range all {
			word, _, _ := strings.Cut(m[1], " ")
			offered[word]++
			tried := ""
			switch word {
			case "hearts":
				tried = change(t, b, `hearts +from.*`, strings.Replace(m[1], "...", c.to+" % abv", 1))
			case "charge":
				tried = change(t, b, `charge +low-wines.*`, m[1])
			case "feints":
				tried = change(t, b, `  start `, "  "+m[1]+"\n  start ")
			}
			r, p, list := planned(c.house, tried)
			for _, d := range list {
				assert.True(t, d.Severity != diag.Error || d.Code == diag.CodePromiseBroken, "%v: %s: %s", c, m[1], d.Summary)
			}
			assert.Equal(t, m[2], measure.UnitsOf(r.Units).Volume(p.Spirit.Fraction("hearts").Lot), "%v: %s", c, m[1])
		}
	}
	// Where only the still is too small for what would settle, that is what is said.
	b := edited(t, func(b *recipe.Batch) {
		b.Spirit.HeartsFrom = recipe.Cut{Strength: recipe.Strength{Value: 0.75}, At: b.Spirit.HeartsFrom.At}
		b.Spirit.Still.HoldsM3 *= 0.7
	})
	_, list := Compile(b)
	at := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeNotSteady })
	require.GreaterOrEqual(t, at, 0)
	assert.Contains(t, list[at].Help, "`hearts from 6.2 gal to ...` would settle, and then the spirit charge with its feints")
	assert.Contains(t, list[at].Help, "`charges 2`")

	assert.Positive(t, offered["hearts"])
	assert.Positive(t, offered["charge"])
	assert.Positive(t, offered["feints"])
}

// change puts new text in the place of old, which must be there.
func change(t *testing.T, text, old, new string) string {
	t.Helper()
	changed := regexp.MustCompile(old).ReplaceAllLiteralString(text, new)
	require.NotEqual(t, text, changed, old)
	return changed
}

// Water brings the charge to the strength that is asked for, and none goes into
// one that is no stronger.
func TestChargeWithWater(t *testing.T) {
	for _, c := range []struct {
		abv   float64
		water bool
	}{{0.24, true}, {0.285, true}, {0.295, false}, {0.40, false}} {
		b := edited(t, func(b *recipe.Batch) {
			b.Spirit.Still.HoldsM3 *= 2
			b.Spirit.WaterTo = recipe.Strength{Value: c.abv}
		})
		p, list := Compile(b)
		assert.Equal(t, c.water, p.Spirit.ChargeWater != nil, c.abv)
		assert.Equal(t, !c.water, slices.Contains(codes(list), diag.CodeNoWaterWanted), c.abv)
		if c.water {
			assert.InDelta(t, 200*c.abv, p.Spirit.Charge.Proof, 0.05, "%% abv beside gallons is half the proof")
			water := p.Spirit.ChargeWater.Volume()
			assert.Equal(t, []plan.Addition{{Name: "water for the charge", Amount: water, Step: "spirit.charge"}}, slices.DeleteFunc(slices.Clone(p.Bill.Additions), func(a plan.Addition) bool { return a.Step != "spirit.charge" }))
			assert.Contains(t, stepOf(t, p, "spirit.charge").Do.Values, water, "the sheet and the plan name one figure")
		}
	}
}

// A strong charge is warned of and planned, however strong.
func TestStrongChargeIsPlanned(t *testing.T) {
	for _, c := range []struct {
		abv    float64
		warned bool
		says   string
	}{{0.319, false, ""}, {0.321, true, "30.0 % abv or less"}, {0.399, true, "30.0 % abv or less"}, {0.401, true, "doubler"}, {0.55, true, "doubler"}} {
		// Feints are all that there is of strength to set here: enough of them.
		_, list := Compile(edited(t, func(b *recipe.Batch) {
			b.Spirit.Still.HoldsM3 *= 20
			b.Spirit.WaterTo = recipe.Strength{Value: c.abv}
			b.Today = recipe.Today{FeintsSaid: true, FeintsM3: 1, FeintsAt: recipe.Strength{Value: 0.80}}
			b.Units, b.Gauge = recipe.SI, recipe.SI
		}))
		at := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeChargeStrong })
		if !assert.Equal(t, c.warned, at >= 0, c.abv) || !c.warned {
			continue
		}
		assert.Equal(t, diag.Warning, list[at].Severity)
		assert.Contains(t, strings.ReplaceAll(list[at].Reason, "% vol", "% abv"), c.says)
		assert.Contains(t, list[at].Help, "water to 28 % vol")
	}
}
