package compile

import (
	"fmt"
	"newmake/compile/plan"
	"newmake/compile/work"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

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

func TestTheReceiverGrowsToTheWhole(t *testing.T) {
	p := planned(t, batch(t, lantern, ferry))
	for name, into := range map[string]string{"hearts": "receiver", "tails": "feints tank"} {
		var shown []float64
		for _, r := range stepOf(t, p, "spirit."+name).Read {
			assert.NotEqual(t, "over so far", r.What)
			if r.What == into {
				shown = append(shown, r.Should.Gallons)
			}
		}
		require.Greater(t, len(shown), 2)
		assert.True(t, slices.IsSorted(shown))
		// The first of the hourly readings may fall well into a fraction.
		assert.Less(t, shown[0], shown[len(shown)-1]*2/3, "it starts empty")
		whole := fractionOf(p.Spirit, name).WineGallons
		if name == "tails" { // onto the heads
			whole = p.Spirit.Feints.WineGallons
		}
		assert.InDelta(t, whole, shown[len(shown)-1], 1e-9)
	}
}

func TestNoWorkIsForgotten(t *testing.T) {
	p := planned(t, batch(t, lantern, "Stone Ferry"))
	liquor := stepOf(t, p, "mash.liquor")
	require.Len(t, liquor.Do.Values, 8, "three waters, heat and minutes")
	assert.InDelta(t, 285*3.785, liquor.Do.Values[0].Value, 1)
	heat := 0.0
	for _, s := range p.Mash.Steps {
		if s.Verb == "water" {
			heat += s.HeatKWh
		}
	}
	assert.InDelta(t, heat, liquor.Do.Values[6].Value, 0.1)
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
	_, list := Compile(edited(t, func(b *recipe.Batch) { b.Plant.Crew = 1; b.Cask.SizeM3 = 0.05; b.Promises = nil }))
	assert.NotContains(t, codes(list), diag.CodeCrewShort)
}

func TestWorkIsNamedInWords(t *testing.T) {
	for _, s := range planned(t, batch(t, lantern, "Stone Ferry")).Schedule.Steps {
		assert.NotContains(t, work.Names([]string{s.ID}), ".", s.ID)
	}
	assert.Equal(t, "cleaning the fermenter and the stripping run", work.Names([]string{"ferment.clean", "strip.heat", "strip.collect"}))
}

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
	for _, cite := range []string{"27 CFR 19.283, 19.485, 19.618", "27 CFR 19.289", "27 CFR 19.584(g)", "27 CFR 19.301", "29 CFR 1910.146", "NFPA 660", "OSHA"} {
		assert.Contains(t, home, cite)
	}
	away := text(planned(t, batch(t, "testdata/houses/malt-425", "")))
	for _, cite := range []string{"CFR", "NFPA", "OSHA", "mask{}", "()"} {
		assert.NotContains(t, away, cite)
	}
}
