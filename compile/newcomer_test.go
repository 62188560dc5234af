package compile

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// What a newcomer to the tool stumbled over, each once.

func planned(t *testing.T, b *recipe.Batch) *plan.Plan {
	t.Helper()
	p, list := Compile(b)
	require.NotNil(t, p, list.Error())
	return p
}

func condition(t *testing.T, p *plan.Plan, asks string) plan.Condition {
	t.Helper()
	for _, c := range p.Law.Conditions {
		if strings.HasPrefix(c.Asks, asks) {
			return c
		}
	}
	require.Fail(t, "no such condition", asks)
	return plan.Condition{}
}

func stepOf(t *testing.T, p *plan.Plan, id string) plan.Step {
	t.Helper()
	for _, s := range p.Schedule.Steps {
		if s.ID == id {
			return s
		}
	}
	require.Fail(t, "no such step", id)
	return plan.Step{}
}

func hasStep(p *plan.Plan, id string) bool {
	return slices.ContainsFunc(p.Schedule.Steps, func(s plan.Step) bool { return s.ID == id })
}

// "40 % abv" meets "80 proof": 27 CFR 5.143(a) prints both for one strength. A
// limit is said as the law says it, in either system.
func TestTheLawIsHeldInItsOwnWords(t *testing.T) {
	for _, c := range []struct {
		at   recipe.Strength
		met  string
		said string
	}{
		{recipe.Strength{Value: 0.40}, "met", "80.0 proof (40.0 % abv)"},
		{recipe.Strength{Value: 0.40, Basis: recipe.Proof}, "met", "80.0 proof (40.0 % abv)"},
		{recipe.Strength{Value: 0.46}, "met", "92.0 proof (46.0 % abv)"},
		{recipe.Strength{Value: 0.399}, "NOT met", "79.8 proof (39.9 % abv)"},
		{recipe.Strength{Value: 0.34, Basis: recipe.ABW}, "met", "81.4 proof (40.7 % abv)"},
		{recipe.Strength{}, "not tested", "not stated"},
	} {
		p := planned(t, edited(t, func(b *recipe.Batch) { b.Cask.BottleAt = c.at }))
		k := condition(t, p, "bottled")
		assert.Equal(t, "bottled at least 80 proof (40 % abv)", k.Asks)
		assert.Equal(t, c.met, k.Met, "%+v", c.at)
		assert.Equal(t, c.said, k.Found)
	}
	p := planned(t, edited(t, func(b *recipe.Batch) { b.Units = recipe.SI }))
	assert.Equal(t, "bottled at least 80 proof (40 % vol)", condition(t, p, "bottled").Asks)
	assert.Equal(t, "off the still at most 160 proof (80 % vol)", condition(t, p, "off the still").Asks)

	// In a file written in litres 40 % vol is at 20 C, as it is for the European
	// law that asks for it, and meets 80 proof as the two are written.
	malt := *batch(t, "testdata/houses/malt-425", "")
	malt.Cask.BottleAt = recipe.Strength{Value: 0.40}
	p = planned(t, &malt)
	k := condition(t, p, "bottled")
	assert.Equal(t, plan.Condition{Asks: "bottled at least 40 % vol", Found: "40.0 % vol", Met: "met", Section: k.Section}, k)
}

// A strength that no cask of the batch comes to is not what is bottled.
func TestNothingIsBottledStrongerThanItsCask(t *testing.T) {
	p := planned(t, edited(t, func(b *recipe.Batch) { b.Cask.BottleAt = recipe.Strength{Value: 0.75, Basis: recipe.Proof} }))
	last := p.Cask.Forecast[len(p.Cask.Forecast)-1]
	assert.Equal(t, last.Proof, p.Cask.BottleAt.Proof)
	require.NotNil(t, p.Cask.BottleAsked)
	assert.Equal(t, 150.0, p.Cask.BottleAsked.Proof)
	assert.Contains(t, condition(t, p, "bottled").Found, measure.Number(last.Proof, 1)+" proof")
}

// Volume times strength is the alcohol, for every lot and in the summary; the
// strength of the strained wash stands beside it.
func TestVolumeTimesStrengthIsTheAlcohol(t *testing.T) {
	p := planned(t, batch(t, lantern, ferry))
	s, f := p.Summary, p.Ferment
	assert.InDelta(t, f.PureL, s.WashVolumeL*s.WashAbvPct/100, 0.1)
	assert.InDelta(t, f.PureL, p.Strip.Charge.PureL, 0.01)
	assert.Equal(t, s.WashAbvPct, p.Strip.Charge.AbvPct)
	assert.Greater(t, f.Liquid.AbvPct, s.WashAbvPct+0.2, "grain takes room and holds no alcohol")
	for _, l := range []plan.Lot{f.Wash, p.Strip.Charge, p.Spirit.Charge, p.Reduction.From, p.Reduction.To, *p.Cask.Fill, p.Cask.Leftover} {
		assert.InDelta(t, l.PureL, l.VolumeL*l.AbvPct/100, 0.01+5e-5*l.VolumeL)
		assert.InDelta(t, l.ProofGallons, l.WineGallons*l.Proof/100, 0.01+5e-4*l.WineGallons)
	}
	read := stepOf(t, p, "strip.charge").Read[1]
	assert.Equal(t, "strength, strained", read.What)
	assert.Equal(t, f.Liquid.AbvPct, read.Expect.Value)
}

// Written gallons come back as they were written, and add up.
func TestWrittenVolumesComeBack(t *testing.T) {
	p := planned(t, edited(t, func(b *recipe.Batch) {
		gal := 3.785411784e-3
		b.Expect = []recipe.Expect{{What: "hearts", Kind: quantity.Volume, Unit: "gal", Value: 45 * gal, Tolerance: 2 * gal}}
	}))
	fore, heads := fractionOf(p.Spirit, "foreshots"), fractionOf(p.Spirit, "heads")
	assert.InDelta(t, 0.5, fore.WineGallons, 0.001)
	assert.InDelta(t, 4, fore.WineGallons+heads.WineGallons, 0.001, "hearts from 4 gal")
	assert.Equal(t, 62.0, fractionOf(p.Spirit, "hearts").Ends.Proof/2, "to 62 % abv")
	k := p.Promises[0]
	assert.InDelta(t, 45, k.Promised.Gallons, 0.001)
	assert.Equal(t, p.Reduction.From.WineGallons, k.Found.Gallons)
	assert.InDelta(t, 2, k.Tolerance.Gallons, 0.001)
	assert.InDelta(t, p.Reduction.To.WineGallons, 53+p.Cask.Leftover.WineGallons, 0.002)
	assert.InDelta(t, 53, p.Cask.Forecast[0].WineGallons, 0.01)

	// Spoken of in litres the batch is the same batch.
	si := planned(t, edited(t, func(b *recipe.Batch) { b.Units = recipe.SI }))
	us := planned(t, batch(t, lantern, ferry))
	assert.Equal(t, us.Summary, si.Summary)

	// Written in litres, the litres are those at 20 C.
	malt := planned(t, batch(t, "testdata/houses/malt-425", ""))
	assert.Equal(t, 2.0, fractionOf(malt.Spirit, "foreshots").VolumeL)
	assert.Equal(t, 200.0, malt.Cask.Fill.VolumeL)
	assert.Equal(t, 33.0, fractionOf(malt.Spirit, "hearts").Ends.AbvPct)
}

// What the receiver shows grows to what the fraction is in all.
func TestTheReceiverGrowsToTheWhole(t *testing.T) {
	p := planned(t, batch(t, lantern, ferry))
	for _, name := range []string{"hearts", "tails"} {
		var shown []float64
		for _, r := range stepOf(t, p, "spirit."+name).Read {
			assert.NotEqual(t, "over so far", r.What)
			if r.What == "receiver" {
				shown = append(shown, r.Expect.Gallons)
			}
		}
		require.Greater(t, len(shown), 2)
		assert.True(t, slices.IsSorted(shown))
		assert.Less(t, shown[0], shown[len(shown)-1]/2, "it starts empty")
		assert.Equal(t, fractionOf(p.Spirit, name).WineGallons, shown[len(shown)-1])
	}
}

// A wash that stands goes on fermenting, and its numbers are those of the hour
// at which the still is charged.
func TestAFermentIsAsLongAsItStands(t *testing.T) {
	written := planned(t, batch(t, lantern, ferry))
	assert.Equal(t, 91.0, written.Ferment.Hours)
	late := planned(t, edited(t, func(b *recipe.Batch) { b.Start.Day = 4 })) // ends on a Sunday
	f := late.Ferment
	assert.Equal(t, 91.0, f.AskedHours)
	run := stepOf(t, late, "ferment.run")
	assert.InDelta(t, run.DurationMin/60, f.Hours, 0.05)
	assert.Greater(t, f.Hours, 130.0)
	assert.InDelta(t, f.Hours, late.Summary.FermentHours, 0.05)
	assert.InDelta(t, f.Hours, f.Curve[len(f.Curve)-1].Hour, 0.05)
	assert.Less(t, f.Curve[len(f.Curve)-1].TempC, written.Ferment.Curve[len(written.Ferment.Curve)-1].TempC, "it has cooled to the room meanwhile")
	read := stepOf(t, late, "strip.charge").Read
	assert.Equal(t, f.FinalGravitySG, read[2].Expect.Value)
}

// A cask that all but fills is filled, with a warning; what does not fill one is
// kept, and so is what is left over: nothing is forgotten.
func TestEveryGallonHasItsPlace(t *testing.T) {
	short, list := Compile(edited(t, func(b *recipe.Batch) { b.Cask.SizeM3 *= 1.04; b.Expect = nil }))
	require.NotNil(t, short)
	assert.Equal(t, 1, short.Cask.Casks)
	require.NotNil(t, short.Cask.LastFill)
	assert.Equal(t, short.Reduction.To.WineGallons, short.Cask.LastFill.WineGallons)
	assert.True(t, hasStep(short, "fill.cask"))
	i := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeCaskNotFilled })
	require.GreaterOrEqual(t, i, 0, list.Error())
	assert.Contains(t, list[i].Summary, "it is filled 0.69 gal short")

	none := planned(t, edited(t, func(b *recipe.Batch) { b.Cask.SizeM3 *= 1.3; b.Expect = nil }))
	assert.Zero(t, none.Cask.Casks)
	assert.False(t, hasStep(none, "fill.cask"))
	keep := stepOf(t, none, "fill.keep")
	assert.Equal(t, none.Cask.Leftover.Volume(), keep.Do.Values[1])

	left := stepOf(t, planned(t, batch(t, lantern, ferry)), "fill.cask")
	assert.Contains(t, left.Do.Text, "{} is left: into a closed tank, labelled, for the next cask.")
}

// A batch may go into no wood: bottled if it says at what strength, else kept.
func TestNoWood(t *testing.T) {
	young := func(at float64) *plan.Plan {
		return planned(t, edited(t, func(b *recipe.Batch) {
			b.Cask, b.Expect = recipe.Cask{BottleAt: recipe.Strength{Value: at, Basis: recipe.Proof}}, nil
		}))
	}
	p := young(0.45)
	assert.Zero(t, p.Cask.SizeL)
	assert.Zero(t, p.Summary.CasksFilled)
	assert.Equal(t, 90.0, p.Reduction.To.Proof)
	assert.Equal(t, int(p.Reduction.To.VolumeL/0.75), p.Cask.Bottles)
	assert.True(t, hasStep(p, "fill.bottle"))
	assert.Equal(t, "NOT met", condition(t, p, "in wood at least").Met)
	assert.Equal(t, "NOT met", condition(t, p, "wood").Met)
	assert.Equal(t, "met", condition(t, p, "into wood").Met)

	p = young(0)
	assert.Nil(t, p.Reduction)
	assert.True(t, p.Cask.BottleAssumed)
	assert.Equal(t, fractionOf(p.Spirit, "hearts").Volume(), stepOf(t, p, "fill.keep").Read[0].Expect)

	_, list := Compile(edited(t, func(b *recipe.Batch) {
		b.Cask = recipe.Cask{BottleAt: recipe.Strength{Value: 0.9, Basis: recipe.Proof}}
	}))
	assert.Contains(t, list.Error(), "are to be bottled at 180.0 proof")

	corn := *batch(t, lantern, "Low Bridge") // corn whisky may see no wood
	corn.Cask = recipe.Cask{}
	assert.Equal(t, "met", condition(t, planned(t, &corn), "wood").Met)
}

// The work that is easily forgotten, with its dangers.
func TestNoWorkIsForgotten(t *testing.T) {
	p := planned(t, batch(t, lantern, "Stone Ferry"))
	liquor := stepOf(t, p, "mash.liquor")
	require.Len(t, liquor.Do.Values, 6)
	assert.InDelta(t, 285*3.785, liquor.Do.Values[0].Value, 1)
	assert.InDelta(t, p.Mash.Steps[0].HeatKWh+p.Mash.Steps[4].HeatKWh, liquor.Do.Values[4].Value, 0.1)
	draff := stepOf(t, p, "mash.draff")
	assert.InDelta(t, p.Mash.DraffKg, draff.Do.Values[0].Value, 0.1)
	assert.LessOrEqual(t, draff.End, stepOf(t, p, "mash.clean").Start)

	clean := stepOf(t, p, "ferment.clean")
	assert.GreaterOrEqual(t, clean.Start, stepOf(t, p, "strip.charge").End)
	assert.Subset(t, clean.Cautions, []string{"co2", "confined", "caustic"})
	assert.Subset(t, stepOf(t, p, "strip.charge").Cautions, []string{"co2", "confined"}, "drained is its most dangerous hour")
	for _, s := range p.Schedule.Steps {
		if strings.HasSuffix(s.ID, ".clean") {
			assert.Contains(t, s.Cautions, "caustic", s.ID)
		}
		if strings.HasSuffix(s.ID, ".stop") {
			assert.Contains(t, s.Cautions, "air-in", s.ID)
			assert.NotContains(t, s.Cautions, "vent", "that is for before the heat goes on")
		}
	}
	assert.False(t, hasStep(planned(t, batch(t, lantern, ferry)), "mash.liquor"), "cold water needs none")

	// Where the liquor takes longer than the mill it starts so much sooner.
	weak := *batch(t, lantern, "Stone Ferry")
	plant := *weak.Plant
	plant.BoilerW, plant.Shift = 50e3, recipe.Shift{}
	weak.Plant = &plant
	p = planned(t, &weak)
	lead := stepOf(t, p, "mash.liquor").DurationMin
	kWh := p.Mash.Steps[0].HeatKWh
	assert.InDelta(t, kWh/50*60, lead+stepOf(t, p, "mash.mill").DurationMin, 0.2)
	assert.Positive(t, lead)

	// Alone, nobody cleans a fermenter beside a running still.
	_, list := Compile(edited(t, func(b *recipe.Batch) { b.Plant.Crew = 1; b.Cask.SizeM3 = 0.05; b.Expect = nil }))
	assert.NotContains(t, codes(list), diag.CodeCrewShort)
}

// Nobody is shown a step's own name.
func TestWorkIsNamedInWords(t *testing.T) {
	for _, s := range planned(t, batch(t, lantern, "Stone Ferry")).Schedule.Steps {
		assert.NotContains(t, workName(s.ID), ".", s.ID)
	}
	assert.Equal(t, "cleaning the fermenter and the wash run", workNames([]string{"ferment.clean", "strip.heat", "strip.collect"}))
}

// A broken promise stands in the plan's own notices.
func TestABrokenPromiseIsANotice(t *testing.T) {
	p := planned(t, edited(t, func(b *recipe.Batch) { b.Expect = []recipe.Expect{{What: "casks", Value: 7}} }))
	require.NotEmpty(t, p.Notices)
	i := slices.IndexFunc(p.Notices, func(n plan.Notice) bool { return n.Code == string(diag.CodePromiseBroken) })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, "error", p.Notices[i].Severity)
}

// Hearts that begin by the vapour are spoken of by the vapour.
func TestACutIsSpokenOfAsWritten(t *testing.T) {
	_, list := Compile(edited(t, func(b *recipe.Batch) {
		b.Spirit.HeartsFrom = recipe.Cut{By: recipe.ByVapourTemp, TempC: 60}
	}))
	i := slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeCutUnreached })
	require.GreaterOrEqual(t, i, 0, list.Error())
	assert.Contains(t, list[i].Summary, "the vapour at 140 F, and it is never so cool: it starts at 183 F")
	assert.NotContains(t, list[i].Summary, "strength")

	_, list = Compile(edited(t, func(b *recipe.Batch) { // a third of a degree below where it starts: 182.6 F and 183 F are no two figures
		b.Spirit.HeartsFrom = recipe.Cut{By: recipe.ByVapourTemp, TempC: 83.7}
	}))
	i = slices.IndexFunc(list, func(d diag.Diagnostic) bool { return d.Code == diag.CodeCutUnreached })
	require.GreaterOrEqual(t, i, 0, list.Error())
	assert.Regexp(t, `the vapour at 183 F, and it is never so cool: it starts at 18[23]\.\d F`, list[i].Summary)
}

// The backset's solids are in the hydrometer's reading at both ends or at none.
func TestGravityFromTheGrainAlone(t *testing.T) {
	p := planned(t, batch(t, lantern, ferry))
	f, m := p.Ferment, p.Mash
	assert.Less(t, f.FinalGrainSG, f.FinalGravitySG-0.002)
	assert.InDelta(t, m.HydrometerSG-m.OriginalGravitySG, f.FinalGravitySG-f.FinalGrainSG, 0.001)
	// Apparent attenuation by degrees of gravity comes near that by plato.
	byPoints := (m.OriginalGravitySG - f.FinalGrainSG) / (m.OriginalGravitySG - 1)
	assert.InDelta(t, f.AttenuationPct, 100*byPoints, 1)
	dry := planned(t, batch(t, lantern, "Stone Ferry"))
	assert.Equal(t, dry.Ferment.FinalGravitySG, dry.Ferment.FinalGrainSG)
}

// United States law is cited to a house there, and to a batch made to a standard
// of it; to others it says nothing.
func TestWhoseLawIsCited(t *testing.T) {
	text := func(p *plan.Plan) string {
		var all strings.Builder
		for _, c := range p.Cautions {
			fmt.Fprintln(&all, c.Text)
		}
		for _, s := range p.Schedule.Steps {
			fmt.Fprintln(&all, s.Do.Text)
		}
		return all.String()
	}
	home := text(planned(t, batch(t, lantern, ferry)))
	for _, cite := range []string{"27 CFR 19.283, .301", "27 CFR 19.301", "29 CFR 1910.146", "NFPA 660", "OSHA"} {
		assert.Contains(t, home, cite)
	}
	away := text(planned(t, batch(t, "testdata/houses/malt-425", "")))
	for _, cite := range []string{"CFR", "NFPA", "OSHA", "mask{}", "()"} {
		assert.NotContains(t, away, cite)
	}
	for zone, want := range map[string]bool{
		"America/New_York": true, "America/Kentucky/Louisville": true, "Pacific/Honolulu": true,
		"America/Toronto": false, "America/Mexico_City": false, "Europe/London": false, "Asia/Tokyo": false,
	} {
		c := newCompiler(edited(t, func(b *recipe.Batch) { b.Plant.Zone, b.Style = zone, nil }))
		assert.Equal(t, want, c.underUS(), zone)
	}
}

// A bill adds up to the cent, and a used cask does not cost what a new one does.
func TestTheBillAddsUpToTheCent(t *testing.T) {
	for _, name := range []string{ferry, "Stone Ferry", "Toll Road", "Low Bridge"} {
		p := planned(t, batch(t, lantern, name))
		cents := 0.0
		for _, l := range p.Cost.Lines {
			cents += math.Round(100 * l.Cost)
		}
		assert.Equal(t, cents, math.Round(100*p.Cost.Total), name)
	}
	line := func(name string) plan.CostLine {
		for _, l := range planned(t, batch(t, lantern, name)).Cost.Lines {
			if strings.HasSuffix(l.What, "casks") {
				return l
			}
		}
		return plan.CostLine{}
	}
	assert.Equal(t, plan.CostLine{What: "casks", Amount: plan.Of(1, plan.Each), Cost: 330}, line(ferry))
	assert.Equal(t, plan.CostLine{What: "used casks", Amount: plan.Of(1, plan.Each), Cost: 85}, line("Stone Ferry"))
	p := planned(t, edited(t, func(b *recipe.Batch) { b.Cask.New, b.Costs.PerUsedCask = false, 0 }))
	assert.Contains(t, p.Cost.Unpriced, "used casks")
}

// With all feints returned a narrow cut and a wide one come to the same alcohol
// in the end: what enters with the low wines leaves with the hearts.
func TestACutMovesNoLitresInTheSteadyState(t *testing.T) {
	at := func(to float64) *plan.Plan {
		return planned(t, edited(t, func(b *recipe.Batch) { b.Spirit.HeartsTo.Strength.Value, b.Expect = to, nil }))
	}
	wide, narrow := at(0.60), at(0.64)
	assert.InEpsilon(t, wide.Summary.PureAlcoholL, narrow.Summary.PureAlcoholL, 0.005)
	assert.Greater(t, narrow.Summary.HeartsAbvPct, wide.Summary.HeartsAbvPct)
	assert.Greater(t, narrow.Summary.SpiritHours, wide.Summary.SpiritHours)
}
