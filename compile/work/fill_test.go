package work

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// Casks are soaked the day before they are filled: before the spirit settles.
func TestCasksAreSoaked(t *testing.T) {
	jobs := soaked([]Job{{}, reduce(&plan.Reduction{}, recipe.PathEntry)[0], reduce(&plan.Reduction{}, recipe.PathEntry)[1]}, plan.Cask{Casks: 2, SizeL: 200})
	require.Len(t, jobs, 4)
	assert.Equal(t, "fill.soak", jobs[2].Key)
	assert.Equal(t, "fill.settle", jobs[3].Key)
	assert.InDelta(t, 35*60, jobs[2].DurationS, 0)
	assert.InDelta(t, 20, jobs[2].Do.Values[0].Value, 1e-9)
	assert.InDelta(t, 40, jobs[2].Measured[0].Amount.Value, 1e-9)
	assert.Contains(t, jobs[2].Do.Text, "the 2 casks that are to be filled")
	assert.Equal(t, []string{"soak", "roll"}, jobs[2].Cautions, "an empty cask crushes nobody, and hot water is no steam")
}
