package show_test

import (
	"bytes"
	"fmt"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/internal/plantest"
	"newmake/compile/show/text"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func asText(t testing.TB, p *plan.Plan, u measure.Units) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, text.Write(&b, p, text.Options{Units: u}))
	return b.String()
}

func TestTextGolden(t *testing.T) {
	for _, e := range plantest.Examples {
		p := plantest.Plan(t, plantest.Lantern, e.Batch)
		plantest.Golden(t, e.Golden+".txt", asText(t, p, measure.US))
	}
	p := plantest.Plan(t, plantest.Lantern, "Stone Ferry")
	plantest.Golden(t, "stone-ferry-si.txt", asText(t, p, measure.SI))

}

// Gallons of proof and bushels of 56 lb are for those who count in them.
func TestMetricHouseReadsNoGallons(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Stone Ferry")
	us, si := asText(t, p, measure.US), asText(t, p, measure.SI)
	for _, word := range []string{"bushel", "proof gallon"} {
		assert.Contains(t, us, word)
		assert.NotContains(t, si, word)
	}
}

// Feints that the house had are alcohol of other grain, so the hearts by the tonne
// may pass what was in the wash; and it is said.
func TestYieldSaysOfFeintsOnHand(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Stone Ferry")
	const says = "count alcohol of other grain"
	assert.NotContains(t, asText(t, p, measure.US), says, "at a steady run as much goes as comes")
	p.Spirit.FeintsFrom = plan.FeintsOnHand
	out := strings.Join(strings.Fields(asText(t, p, measure.US)), " ")
	assert.Contains(t, out, says)
	assert.Contains(t, out, fmt.Sprintf("%.1f proof gallons into the charge", p.Spirit.FeintsReturned.ProofGallons))
}

func TestNoLineIsWiderThan80Columns(t *testing.T) {
	for _, e := range plantest.Examples {
		p := plantest.Plan(t, plantest.Lantern, e.Batch)
		plantest.Narrow(t, asText(t, p, measure.US))
		plantest.Narrow(t, asText(t, p, measure.SI))
	}
}

// What a recipe says is shown and never done.
func TestTextHostileNames(t *testing.T) {
	out := asText(t, plantest.Hostile(t), measure.US)
	plantest.Narrow(t, out)
	plantest.Harmless(t, out)
}

// A plan that has nothing in it is a page all the same.
func TestTextEmptyPlan(t *testing.T) {
	plantest.Narrow(t, asText(t, &plan.Plan{}, measure.US))
}

func TestBoldIsOnlyForATerminal(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	assert.NotContains(t, asText(t, p, measure.US), "\x1b")
	var b bytes.Buffer
	require.NoError(t, text.Write(&b, p, text.Options{Bold: true}))
	assert.Contains(t, b.String(), "\x1b[1mGRAIN BILL\x1b[0m")
}

func BenchmarkText(b *testing.B) {
	p := plantest.Plan(b, plantest.Lantern, "Ferry Landing")
	b.ReportAllocs()
	for b.Loop() {
		var out bytes.Buffer
		if err := text.Write(&out, p, text.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// What the page says of a batch that is not as most are.
func TestPageSaysHowItIs(t *testing.T) {
	said := func(t *testing.T, p *plan.Plan, u measure.Units) string { // on one line
		return strings.Join(strings.Fields(asText(t, p, u)), " ")
	}
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	page := said(t, p, measure.US)
	assert.Contains(t, page, "Wash and spirit are counted at 60 F.")
	assert.Contains(t, page, "22.5 gal/56 lb")
	assert.Contains(t, page, "PG/56 lb")
	assert.NotContains(t, page, "/bu ", "a bushel of 56 lb is not the trade's")
	assert.Contains(t, page, "With feints returned, 9")
	assert.Contains(t, said(t, p, measure.SI), "Wash and spirit are counted at 20 C.")

	p.Spirit.FeintsReturned, p.Spirit.FeintsFrom = nil, ""
	page = said(t, p, measure.US)
	assert.Contains(t, page, "are kept apart: none go into this charge")
	assert.NotContains(t, page, "go into the next charge")

	p.Ferment.Hours = 137
	assert.Contains(t, said(t, p, measure.US), "in the fermenter 137 h 91 h asked for; it stands, and goes on,")

	p.Promises[0].Kept = false
	p.Notices = append(p.Notices, plan.Notice{Code: "NM1250", Severity: "error", Summary: "casks"}, plan.Notice{Code: "NM1211", Severity: "warning", Summary: "hot"})
	page = said(t, p, measure.US)
	assert.Contains(t, page, "1 broken promise and 1 warning below: read before the grain is milled.")
	assert.Contains(t, page, "ERRORS, WARNINGS AND NOTES")

	p.Cask.BottleAssumed = true
	assert.Contains(t, said(t, p, measure.US), "the batch states no bottling strength")
	asked := plan.Strength{AbvPct: 75.04, Proof: 150}
	p.Cask.BottleAsked = &asked
	assert.Contains(t, said(t, p, measure.US), "it is weaker than the 150.0 proof (75.0 % abv) asked for")

	p.Cask = plan.Cask{Bottles: 240, BottleL: 0.75, BottleAt: plan.Strength{AbvPct: 45.05, Proof: 90}}
	page = said(t, p, measure.US)
	assert.Contains(t, page, "BOTTLED: unaged, in no wood")
	assert.Contains(t, page, "bottles 240 of 750 mL at 90.0 proof (45.0 % abv)")
	p.Cask = plan.Cask{BottleAt: plan.Strength{AbvPct: 72, Proof: 144}}
	assert.Contains(t, said(t, p, measure.US), "KEPT: unaged, in no wood")
}

// TestADaySaysWhatIsWrong: the page of a day says the warnings themselves, the first three.
func TestADaySaysWhatIsWrong(t *testing.T) {
	day := func(summaries ...string) string {
		p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
		for _, s := range summaries {
			p.Notices = append(p.Notices, plan.Notice{Code: "NM0702", Severity: "warning", Summary: s})
		}
		var b strings.Builder
		require.NoError(t, text.Write(&b, p, text.Options{Days: []string{"2026-03-03"}}))
		return b.String()
	}
	assert.NotContains(t, day(), "warning:")
	assert.Contains(t, day("little yeast"), "1 warning: little yeast.\n")
	assert.Contains(t, day("a", "b", "c"), "3 warnings: a; b; c.\n")
	assert.Contains(t, day("a", "b", "c", "d"), "4 warnings: a; b; c; and 1 more, which `newmake check` says.\n")
}
