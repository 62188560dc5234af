package compile

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// TestNoNumberIsShown: where the numbers of a stage come to none, that is said in
// its place, and neither a plan nor a word with such a number is given.
func TestNoNumberIsShown(t *testing.T) {
	for _, c := range []struct {
		says   string
		change func(*recipe.Batch)
	}{
		{"run away at the mash", func(b *recipe.Batch) { b.Plant.WaterC = math.NaN(); b.Mash.Steps[0].TempC = math.NaN() }},
		{"run away at the ferment", func(b *recipe.Batch) { b.Ferm.HoldHighC = math.NaN() }},
		{"run away at the plan", func(b *recipe.Batch) { b.Costs.PerKWh = math.Inf(1) }},
	} {
		b := edited(t, c.change)
		p, list := Compile(b)
		assert.Nil(t, p, c.says)
		require.Contains(t, codes(list), diag.CodeRunsAway, "%s: %s", c.says, list.Error())
		last := list[len(list)-1]
		assert.Contains(t, last.Summary, c.says)
		assert.Equal(t, diag.Error, last.Severity)
		assert.False(t, last.At.IsZero(), "it has a place")
		for _, d := range list {
			assert.NotRegexp(t, `NaN|Inf\b`, d.Summary+d.Help)
		}
		assert.Equal(t, list, NewChecks().Check(b), "check says so too")
	}
}
