package work

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// A vessel that nobody fits into is no confined space.
func TestWhoFitsIn(t *testing.T) {
	assert.Equal(t, "too-small", inside(&recipe.Vessel{HoldsM3: 0.39}))
	assert.Equal(t, "confined", inside(&recipe.Vessel{HoldsM3: 0.41}))
}

// Each vessel is cleaned by its own recipe, and what is due by the charges is said.
func TestCleaning(t *testing.T) {
	v := &recipe.Vessel{}
	assert.InDelta(t, 45*60, cleaningS(v), 0)
	assert.Equal(t, plan.Say("Clean."), cleaning("Clean", v))
	v.Clean = recipe.Cleaning{DurationS: 600, With: "hot {water}", Every: 8, DeepS: 3600, Deep: "citric acid."}
	assert.InDelta(t, 600, cleaningS(v), 0)
	assert.Equal(t, plan.Say("Clean: hot (water). Every 8 charges, {} besides: citric acid.", plan.Of(60, plan.Minute)), cleaning("Clean", v))
}

// Casks are soaked the day before they are filled: before the spirit settles.
func TestCasksAreSoaked(t *testing.T) {
	jobs := soaked([]Job{{}, reduce(&plan.Reduction{}, recipe.PathEntry)[0], reduce(&plan.Reduction{}, recipe.PathEntry)[1]}, "steam", plan.Cask{Casks: 2, SizeL: 200})
	require.Len(t, jobs, 4)
	assert.Equal(t, "fill.soak", jobs[2].Key)
	assert.Equal(t, "fill.settle", jobs[3].Key)
	assert.InDelta(t, 35*60, jobs[2].DurationS, 0)
	assert.InDelta(t, 20, jobs[2].Do.Values[0].Value, 1e-9)
	assert.InDelta(t, 40, jobs[2].Measured[0].Amount.Value, 1e-9)
	assert.Contains(t, jobs[2].Do.Text, "the 2 casks of tomorrow")
}
