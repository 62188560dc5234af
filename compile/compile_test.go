package compile

import (
	"fmt"
	"maps"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/work"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// batch reads one batch of a house below the repository's top.
func batch(t testing.TB, house, name string) *recipe.Batch {
	t.Helper()
	h, err := check.Load(filepath.Join("..", house), check.Options{})
	require.NoError(t, err)
	if name == "" {
		name = h.BatchesIn(filepath.Join("..", house))[0]
	}
	b, list := h.Batch(name)
	require.NotNil(t, b, list.Error())
	return b
}

const (
	lantern = "examples/lantern-hollow"
	ferry   = "Ferry Landing"
)

// edited is Ferry Landing with a change; the vessels and the plant are copies,
// so that a test can change them.
func edited(t testing.TB, change func(*recipe.Batch)) *recipe.Batch {
	b := *batch(t, lantern, ferry)
	pl := *b.Plant
	b.Plant = &pl
	for _, v := range []**recipe.Vessel{&b.Mash.Cooker, &b.Strip.Still, &b.Spirit.Still} {
		c := **v
		*v = &c
	}
	f := *b.Ferm.Vessels[0]
	b.Ferm.Vessels = []*recipe.Vessel{&f}
	b.Mash.Steps = slices.Clone(b.Mash.Steps)
	b.Where = maps.Clone(b.Where)
	change(&b)
	return &b
}

func codes(list diag.List) []diag.Code {
	var out []diag.Code
	for _, d := range list {
		out = append(out, d.Code)
	}
	return out
}

func TestExamplesAreClean(t *testing.T) {
	h, err := check.Load(filepath.Join("..", lantern), check.Options{})
	require.NoError(t, err)
	require.Empty(t, h.Check(), "the checker has something to say")
	require.Len(t, h.Batches(), 6)
	for _, name := range h.Batches() {
		b, _ := h.Batch(name)
		p, list := Compile(b)
		require.NotNil(t, p, name)
		assert.Empty(t, list.Error(), name)
		assert.GreaterOrEqual(t, p.Cask.Casks, 1, name)
		assert.Zero(t, p.Schedule.OutOfShiftH, name)
		assert.NotEmpty(t, p.Cautions)
	}
}

func TestSameInputSamePlan(t *testing.T) {
	a, _ := Compile(batch(t, lantern, ferry))
	for range 3 {
		b, _ := Compile(batch(t, lantern, ferry))
		require.Empty(t, cmp.Diff(a, b))
	}
}

// Water and alcohol that go in come out: what the stages hand on adds up.
func TestMatterAddsUp(t *testing.T) {
	n, p := staged(t, batch(t, lantern, ferry))
	wash := n.Fermented.Wash
	charges := float64(n.Stripped.Charges)
	assert.InEpsilon(t, wash.EthanolKg, n.Stripped.LowWines.EthanolKg+charges*n.Stripped.Residue.EthanolKg, 1e-9, "ethanol over the wash still")
	assert.InEpsilon(t, wash.WaterKg, n.Stripped.LowWines.WaterKg+charges*(n.Stripped.Residue.WaterKg-n.Stripped.SteamKg), 1e-9, "water over the wash still")

	// In the steady state what goes in with the low wines leaves with the
	// hearts, the foreshots and the lees.
	charges = float64(n.Distilled.Charges)
	out := n.Distilled.Hearts.EthanolKg + charges*(n.Distilled.Fraction("foreshots").EthanolKg+n.Distilled.Residue.EthanolKg)
	assert.InEpsilon(t, n.Stripped.LowWines.EthanolKg, out, 1e-6, "ethanol over the spirit still")

	r := p.Reduction
	assert.InEpsilon(t, r.From.PureL, r.To.PureL, 1e-4, "water brings no alcohol")
	assert.InDelta(t, r.From.MassKg+r.WaterKg, r.To.MassKg, 0.02)
	k := p.Cask
	assert.InDelta(t, r.To.VolumeL, float64(k.Casks)*k.Fill.VolumeL+k.Leftover.VolumeL, 0.02)
	assert.InDelta(t, r.To.WineGallons, float64(k.Casks)*53+k.Leftover.WineGallons, 0.002, "53 gal are 53 gal of spirit as it is gauged, at 60 F")
	assert.InDelta(t, r.From.VolumeL+r.WaterL-r.ContractionL, r.To.VolumeL, 0.02)
	assert.InDelta(t, r.From.WineGallons+r.WaterGallons-r.ContractionGallons, r.To.WineGallons, 0.002)
}

// staged runs the stages, and keeps what stands between them, and the plan.
func staged(t testing.TB, b *recipe.Batch) (*numbers.Batch, *plan.Plan) {
	t.Helper()
	memo := &numbers.Memo{}
	n, err := Numbers(b, memo, Printed)
	require.NoError(t, err)
	p, list := compiled(b, memo, Printed, work.Hours{})
	require.NotNil(t, p, list.Error())
	return n, p
}

func TestSummaryAgreesWithThePlan(t *testing.T) {
	p, _ := Compile(batch(t, lantern, ferry))
	s := p.Summary
	hearts := fractionOf(p.Spirit, "hearts")
	assert.InDelta(t, hearts.VolumeL, s.HeartsVolumeL, 0.1)
	assert.InDelta(t, hearts.ProofGallons, s.HeartsProofGal, 0.01)
	assert.InDelta(t, s.HeartsVolumeL*s.HeartsAbvPct/100, s.PureAlcoholL, 0.05)
	assert.InDelta(t, s.PureAlcoholL/p.Bill.TotalKg*1000, s.YieldLPAPerTonne, 0.1)
	// A proof gallon is 1.892706 L of pure alcohol at 60 F, which is 0.47 % more
	// at 20 C (the expansion of ethanol, OIML R 22: 793.4/789.2 kg/m3).
	assert.InDelta(t, s.PureAlcoholL/1.0052, s.HeartsProofGal*1.8927, 0.2)
}

func fractionOf(r plan.Run, name string) plan.Fraction {
	for _, f := range r.Fractions {
		if f.Name == name {
			return f
		}
	}
	return plan.Fraction{}
}

// One person does all of it: what two would do at a time comes after one another, and
// a cask is filled where it is to lie, also where the house never shuts.
func TestACrewOfOne(t *testing.T) {
	for _, shift := range []recipe.Shift{{FromMinute: 7 * 60, ToMinute: 17 * 60, Days: [7]bool{2: true, 3: true, 4: true, 5: true, 6: true}}, {}} {
		for charges := 1; charges <= 2; charges++ {
			_, list := Compile(edited(t, func(b *recipe.Batch) {
				b.Plant.Crew, b.Plant.Shift, b.Strip.Charges, b.Spirit.Charges = 1, shift, charges, charges
			}))
			assert.False(t, slices.ContainsFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeCrewShort }), "%d charges, %+v", charges, shift)
		}
	}
}

// What a distiller gets wrong, and the code that says so at the line where it
// stands.
func TestComputedDiagnostics(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*recipe.Batch)
		want   diag.Code
		sev    diag.Severity
		says   string
	}{
		{"cooker too small", func(b *recipe.Batch) { b.Mash.Cooker.HoldsM3 *= 0.7 }, diag.CodeCookerFull, diag.Error, "the mash at its fullest is"},
		{"tank too small", func(b *recipe.Batch) { b.Plant.TanksFor(recipe.OfLowWines)[0].HoldsM3 = 0.4 }, diag.CodeTankFull, diag.Error, "to wait in \"Low wines receiver\""},
		{"tank too small for feints beside low wines", func(b *recipe.Batch) {
			b.Plant.TanksFor(recipe.OfFeints)[0].HoldsM3 = 0.004
			b.Plant.TanksFor(recipe.OfLowWines)[0].For |= recipe.OfFeints
		}, diag.CodeTankFull, diag.Warning, "for low wines, feints, which hold together"},
		{"tanks too small for what is reduced", func(b *recipe.Batch) {
			for _, x := range b.Plant.TanksFor(recipe.OfSpirit) {
				x.HoldsM3 = 0.09
			}
		}, diag.CodeTankFull, diag.Error, "for spirit, which hold"},
		{"fermenter too small", func(b *recipe.Batch) { b.Ferm.Vessels[0].HoldsM3 *= 0.7 }, diag.CodeFermenterFull, diag.Error, "90 % of the"},
		{"wash still too small", func(b *recipe.Batch) { b.Strip.Still.HoldsM3 *= 0.6 }, diag.CodeStillFull, diag.Error, "the wash, hot, is"},
		{"spirit still too small", func(b *recipe.Batch) { b.Spirit.Still.HoldsM3 *= 0.6 }, diag.CodeStillFull, diag.Error, "with its feints"},
		{"boiler small", func(b *recipe.Batch) { b.Plant.BoilerW = 50e3 }, diag.CodeBoilerSmall, diag.Warning, "the boiler sets the pace"},
		{"above the boil", func(b *recipe.Batch) { verb(b, recipe.MashHeat).TempC = 99.9 }, diag.CodeAboveBoil, diag.Error, "water boils at"},
		{"no cooling", func(b *recipe.Batch) { b.Mash.Cooker.Cooler = recipe.Cooler{} }, diag.CodeCannotCool, diag.Error, "has no cooling"},
		{"no heat", func(b *recipe.Batch) { b.Mash.Cooker.HeatsW = 0 }, diag.CodeNoHeat, diag.Error, "has no heat"},
		{"warm water", func(b *recipe.Batch) { b.Plant.WaterC = 28 }, diag.CodeCannotCool, diag.Error, "cannot be cooled to"},
		{"warm water through a coil", func(b *recipe.Batch) {
			b.Mash.Cooker.CoolsW, b.Mash.Cooker.Cooler = 0, recipe.Cooler{AreaM2: 8, WaterM3S: 1e-3}
			b.Plant.WaterC = 28
		}, diag.CodeCannotCool, diag.Error, "cannot be cooled to"},
		{"hold below the water", func(b *recipe.Batch) { b.Plant.WaterC = b.Ferm.HoldHighC - 1.9 }, diag.CodeHoldCold, diag.Warning, "cannot hold the wash at"},
		{"warmer than the yeast makes it", func(b *recipe.Batch) { b.Ferm.HoldLowC, b.Ferm.HoldHighC = b.Ferm.HoldHighC+3, b.Ferm.HoldHighC+4 }, diag.CodeHoldLeft, diag.Note, "the ferment is not held at"},
		{"warm distillate", func(b *recipe.Batch) { b.Spirit.Still.Condenser.DistillateC = b.Plant.WaterC + 4.9 }, diag.CodeDistillateWarm, diag.Warning, "the distillate of"},
		{"worts cooled on the draff", func(b *recipe.Batch) {
			b.Plant.WortCooler = recipe.Cooler{}
			b.Mash.Steps = slices.Insert(b.Mash.Steps, len(b.Mash.Steps)-1, recipe.MashStep{Verb: recipe.MashDrain, DurationS: 3600, Path: last(b).Path, At: last(b).At})
		}, diag.CodeCooledOnBed, diag.Warning, "in which the spent grain lies"},
		{"kept water short", func(b *recipe.Batch) { verb(b, recipe.MashWater).KeptM3 = 0.1 }, diag.CodeKeptShort, diag.Warning, "leaves 0 gal for the next"},
		{"set hot", func(b *recipe.Batch) { last(b).TempC = 36 }, diag.CodePitchHot, diag.Warning, "goes into wort at"},
		{"too short", func(b *recipe.Batch) { b.Ferm.DurationS = 20 * 3600 }, diag.CodeNotDry, diag.Warning, "of sugar is left"},
		{"no cooling of the ferment", func(b *recipe.Batch) {
			b.Ferm.Vessels[0].Cooler = recipe.Cooler{}
			b.Plant.AmbientC = 35
			last(b).TempC = 33
		}, diag.CodeFermentHot, diag.Warning, "works up to"},
		{"hearts too strong to come", func(b *recipe.Batch) {
			b.Spirit.HeartsFrom = recipe.Cut{Strength: recipe.Strength{Value: 0.90}, At: b.Spirit.HeartsFrom.At}
		}, diag.CodeCutUnreached, diag.Error, "never reached"},
		{"stop never reached", func(b *recipe.Batch) { b.Strip.StopAt.Value = 1e-9 }, diag.CodeStopUnreached, diag.Error, "never reached"},
		{"early stop", func(b *recipe.Batch) { b.Strip.StopAt.Value = 0.10 }, diag.CodeEarlyStop, diag.Note, "stays in the stillage"},
		{"very early stop", func(b *recipe.Batch) { b.Strip.StopAt.Value = 0.20 }, diag.CodeEarlyStop, diag.Warning, "of pure alcohol go down the drain"},
		{"strong charge", func(b *recipe.Batch) { b.Strip.StopAt.Value = 0.10 }, diag.CodeChargeStrong, diag.Warning, "the spirit charge is"},
		{"weak hearts", func(b *recipe.Batch) { b.Cask.Entry = recipe.Strength{Value: 0.78} }, diag.CodeBelowEntry, diag.Error, "to go into wood at"},
		{"a great cask", func(b *recipe.Batch) { b.Cask.SizeM3 = 0.5 }, diag.CodeCaskNotFilled, diag.Warning, "does not fill a cask"},
		{"law", func(b *recipe.Batch) { b.Standard = offStill(b.Standard, 0.60) }, diag.CodeOffStill, diag.Error, "off the still at most"},
		{"over a weekend", func(b *recipe.Batch) { b.Start.Day = 4 }, diag.CodeOtherStart, diag.Note, "Sunday and Monday off"},
		{"a day off", func(b *recipe.Batch) { b.Start.Day = 1 }, diag.CodeStartWaits, diag.Warning, "Sunday and Monday off"},
		{"in the spring gap", func(b *recipe.Batch) { b.Start = recipe.Start{Year: 2026, Month: 3, Day: 8, Hour: 2, Minute: 30} }, diag.CodeNoSuchStart, diag.Error, "put forward"},
		{"twice in autumn", func(b *recipe.Batch) { b.Start = recipe.Start{Year: 2026, Month: 11, Day: 1, Hour: 1, Minute: 30} }, diag.CodeNoSuchStart, diag.Error, "comes twice"},
		{"a zone of one's own", func(b *recipe.Batch) { b.Plant.Zone = "Kentucky/Moonville" }, diag.CodeUnknownZone, diag.Error, "is not known"},
		{"short shift", func(b *recipe.Batch) { b.Plant.Shift.ToMinute = 10 * 60 }, diag.CodeOutOfShift, diag.Warning, "outside the shift"},
		{"promise of so many runs", func(b *recipe.Batch) { b.Promises = []recipe.Promise{{What: "casks", Value: 7, OfRuns: 9, InRuns: 10}} }, diag.CodePromiseUntried, diag.Note, "7 in 9 of 10 runs is promised, and was not tried"},
		{"broken promise", func(b *recipe.Batch) { b.Promises = []recipe.Promise{{What: "casks", Value: 7}} }, diag.CodePromiseBroken, diag.Error, "7 is promised, the plan gives 1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, list := Compile(edited(t, c.change))
			at := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == c.want })
			require.GreaterOrEqual(t, at, 0, "said: %s", list.Error())
			d := list[at]
			assert.Equal(t, c.sev, d.Severity)
			assert.Contains(t, d.Summary, c.says)
			assert.NotEmpty(t, d.Help, "it says what to do")
			if c.want != diag.CodePromiseBroken && c.want != diag.CodeOffStill {
				assert.False(t, d.At.IsZero(), "it has a place")
			}
		})
	}
}

func verb(b *recipe.Batch, v recipe.MashVerb) *recipe.MashStep {
	for i := range b.Mash.Steps {
		if b.Mash.Steps[i].Verb == v {
			return &b.Mash.Steps[i]
		}
	}
	return nil
}

func last(b *recipe.Batch) *recipe.MashStep { return &b.Mash.Steps[len(b.Mash.Steps)-1] }

func offStill(s *recipe.Standard, most float64) *recipe.Standard {
	c := *s
	c.Conditions = slices.Clone(s.Conditions)
	for i := range c.Conditions {
		if c.Conditions[i].Test == recipe.OffStillMost {
			c.Conditions[i].Strength = recipe.Strength{Value: most}
		}
	}
	return &c
}

// Leave out the cook and the corn's starch stays in its granules; put the malt
// in too hot and its enzymes die.
func TestTheCookAndTheMaltMatter(t *testing.T) {
	good, _ := Compile(batch(t, lantern, ferry))
	raw, list := Compile(edited(t, func(b *recipe.Batch) {
		b.Mash.Steps = slices.DeleteFunc(b.Mash.Steps, func(s recipe.MashStep) bool { return s.Verb == recipe.MashDose })
		verb(b, recipe.MashHeat).TempC = 60
		for i := range b.Mash.Steps {
			if s := &b.Mash.Steps[i]; s.Verb == recipe.MashCool {
				s.TempC = min(s.TempC, 60)
			}
		}
	}))
	require.NotNil(t, raw)
	assert.Contains(t, codes(list), diag.CodeNotCooked)
	assert.Less(t, raw.Mash.ConversionPct, 60.0)
	assert.Less(t, raw.Summary.PureAlcoholL, 0.7*good.Summary.PureAlcoholL)

	dead, list := Compile(edited(t, func(b *recipe.Batch) {
		b.Mash.Steps = slices.DeleteFunc(b.Mash.Steps, func(s recipe.MashStep) bool {
			return s.Verb == recipe.MashDose || s.Verb == recipe.MashCool && s.TempC > 50
		})
	}))
	require.NotNil(t, dead)
	assert.Contains(t, codes(list), diag.CodeEnzymesDead)
	assert.Less(t, dead.Summary.PureAlcoholL, 0.7*good.Summary.PureAlcoholL)
}

// Every step of the sheet has what a run sheet needs, and the steps of a plan
// are in the order of the clock.
func TestSheetIsComplete(t *testing.T) {
	p, _ := Compile(batch(t, lantern, ferry))
	ids := map[string]bool{}
	known := map[string]bool{}
	for _, c := range p.Cautions {
		known[c.Key] = true
	}
	before := time.Time{}
	for _, s := range p.Schedule.Steps {
		start, err := time.Parse(time.RFC3339, s.Start)
		require.NoError(t, err)
		end, err := time.Parse(time.RFC3339, s.End)
		require.NoError(t, err)
		assert.False(t, start.Before(before), "%s is out of order", s.ID)
		assert.False(t, end.Before(start), s.ID)
		assert.False(t, ids[s.ID], "%s stands twice", s.ID)
		assert.NotEmpty(t, s.Do.Text, s.ID)
		assert.Equal(t, strings.Count(s.Do.Text, "{}"), len(s.Do.Values), s.ID)
		assert.Equal(t, s.Attend != plan.Alone, s.People > 0, s.ID)
		for _, r := range s.Read {
			assert.NotZero(t, r.Should.Unit, s.ID)
			assert.Positive(t, r.Besides, "%s, %s", s.ID, r.What)
			if r.At != "" {
				at := plan.Moment(r.At)
				assert.False(t, at.Before(start) || at.After(end), "%s reads outside itself", s.ID)
			}
		}
		for _, key := range s.Cautions {
			assert.True(t, known[key], "%s: no caution %q", s.ID, key)
		}
		ids[s.ID], before = true, start
	}
	for _, id := range []string{"mash.mill", "mash.1", "ferment.fill", "ferment.pitch", "ferment.run", "ferment.round.1", "strip.charge", "strip.heat",
		"strip.collect", "strip.stop", "spirit.charge", "spirit.foreshots", "spirit.hearts", "spirit.tails", "fill.gauge", "fill.reduce", "fill.cask", "cask.rest"} {
		assert.True(t, ids[id], "there is no step %s", id)
	}
}

// The wash in two charges makes what one charge makes.
func TestTwoChargesMakeTheSame(t *testing.T) {
	one, _ := Compile(batch(t, lantern, ferry))
	two, list := Compile(edited(t, func(b *recipe.Batch) { b.Strip.Charges = 2 }))
	require.NotNil(t, two, list.Error())
	assert.InEpsilon(t, one.Summary.LowWinesVolumeL, two.Summary.LowWinesVolumeL, 1e-3)
	assert.InEpsilon(t, one.Summary.HeartsProofGal, two.Summary.HeartsProofGal, 1e-3)
	assert.NotZero(t, slices.IndexFunc(two.Schedule.Steps, func(s plan.Step) bool { return s.ID == "strip.2.stop" }))
}

func TestPromises(t *testing.T) {
	p, _ := Compile(batch(t, lantern, ferry))
	litres := p.Summary.HeartsVolumeL
	promise := func(e ...recipe.Promise) (*plan.Plan, diag.List) {
		return Compile(edited(t, func(b *recipe.Batch) { b.Promises = e }))
	}
	kept, list := promise(
		recipe.Promise{What: "hearts", Kind: quantity.Volume, Value: litres/1000 + 0.004, Tolerance: 0.005},
		recipe.Promise{What: "hearts", Kind: quantity.ProofGallons, Value: p.Summary.HeartsProofGal, Tolerance: 0.1},
		recipe.Promise{What: "hearts", Kind: quantity.Strength, Value: p.Reduction.From.Proof / 200, Tolerance: 0.001,
			Strength: recipe.Strength{Value: p.Reduction.From.Proof / 200, Basis: recipe.Proof}},
		recipe.Promise{What: "original-gravity", Kind: quantity.Gravity, Value: p.Summary.OriginalGravitySG, Tolerance: 0.001},
		recipe.Promise{What: "strip", Kind: quantity.Duration, Value: p.Summary.StripHours * 3600, Tolerance: 60},
		recipe.Promise{What: "casks", Kind: quantity.Number, Value: 1},
	)
	require.Empty(t, list.Error())
	require.Len(t, kept.Promises, 6)
	for _, k := range kept.Promises {
		assert.True(t, k.Kept, k.What)
	}
	broken, list := promise(recipe.Promise{What: "hearts", Kind: quantity.Volume, Value: litres/1000 + 0.006, Tolerance: 0.005})
	assert.False(t, broken.Promises[0].Kept)
	assert.Equal(t, []diag.Code{diag.CodePromiseBroken}, codes(list))
}

func TestHigherIsCooler(t *testing.T) {
	low, _ := Compile(edited(t, func(b *recipe.Batch) { b.Plant.ElevationM = 0 }))
	high, list := Compile(edited(t, func(b *recipe.Batch) { b.Plant.ElevationM = 1800 }))
	require.NotNil(t, high, list.Error())
	assert.Greater(t, low.Plant.WaterBoilsC, high.Plant.WaterBoilsC+5)
	assert.Greater(t, low.Strip.Curve[0].PotC, high.Strip.Curve[0].PotC+4)
	assert.InEpsilon(t, low.Summary.PureAlcoholL, high.Summary.PureAlcoholL, 0.05)
}

func TestCostAddsUp(t *testing.T) {
	p, _ := Compile(batch(t, lantern, ferry))
	sum := 0.0
	for _, l := range p.Cost.Lines {
		sum += l.Cost
	}
	assert.InDelta(t, p.Cost.Total, sum, 0.1)
	assert.Empty(t, p.Cost.Unpriced)
}

func TestPlanHoldsNumbersThatAreNumbers(t *testing.T) {
	p, _ := Compile(batch(t, lantern, ferry))
	for _, c := range p.Ferment.Curve {
		require.False(t, math.IsNaN(c.SG+c.TempC+c.AbvPct+c.PH))
	}
	require.Greater(t, len(p.Mash.Curve), 100)
	require.Greater(t, len(p.Strip.Curve), 50)
	require.Greater(t, len(p.Spirit.Curve), 50)
}

// BenchmarkCompile is a plan from a recipe: a bourbon in gallons, a single malt in
// litres, and a wash that takes four charges of the still.
func BenchmarkCompile(b *testing.B) {
	for _, c := range []struct {
		name string
		r    *recipe.Batch
	}{
		{"bourbon", batch(b, lantern, ferry)},
		{"malt in litres", batch(b, "testdata/houses/malt-425", "")},
		{"four charges", edited(b, func(b *recipe.Batch) { b.Strip.Charges = 4 })},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if p, list := Compile(c.r); p == nil {
					b.Fatal(list)
				}
			}
		})
	}
}

// BenchmarkVariedConstants is 400 compiles of one batch, each with one constant of
// one model moved by a hundredth, as the spread of a plan is found.
func BenchmarkVariedConstants(b *testing.B) {
	r := batch(b, lantern, ferry)
	type constant struct{ model, name string }
	var all []constant
	for _, model := range []string{"mash", "ferment", "cask"} {
		for _, name := range slices.Sorted(maps.Keys(r.Models[model].Values)) {
			all = append(all, constant{model, name})
		}
	}
	const compiles = 400
	b.ReportAllocs()
	for b.Loop() {
		memo := new(Memo)
		for i := range compiles {
			k := all[i%len(all)]
			varied := *r
			m := *r.Models[k.model]
			m.Values = maps.Clone(m.Values)
			m.Values[k.name] *= 1 + 0.01*float64(1+i/len(all))
			varied.Models = maps.Clone(r.Models)
			varied.Models[k.model] = &m
			if p, list := memo.Compile(&varied); p == nil {
				b.Fatal(list)
			}
		}
	}
}

func BenchmarkCheck(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		h, err := check.Load(filepath.Join("..", lantern), check.Options{})
		if err != nil {
			b.Fatal(err)
		}
		if one, list := h.Batch(ferry); one == nil {
			b.Fatal(list)
		}
	}
}

func ExampleCompile() {
	h, _ := check.Load(filepath.Join("..", lantern, "ferry-landing.batch"), check.Options{})
	b, _ := h.Batch("Ferry Landing")
	p, list := Compile(b)
	fmt.Println(p.Batch.Name, p.Cask.Casks, len(list))
	// Output: Ferry Landing 1 0
}

func planned(t *testing.T, b *recipe.Batch) *plan.Plan {
	t.Helper()
	p, list := Compile(b)
	require.NotNil(t, p, list.Error())
	return p
}

// BenchmarkNumbers is the stages alone: what is computed thousands of times with
// other constants.
func BenchmarkNumbers(b *testing.B) {
	r := batch(b, lantern, ferry)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Numbers(r, &numbers.Memo{}, Calculated); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkRound is what it costs to round a plan.
func BenchmarkRound(b *testing.B) {
	p, _ := Compile(batch(b, lantern, ferry))
	b.ReportAllocs()
	for b.Loop() {
		p.Round()
	}
}
