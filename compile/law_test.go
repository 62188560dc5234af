package compile

import (
	"newmake/compile/plan"
	"newmake/lang/recipe"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

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
