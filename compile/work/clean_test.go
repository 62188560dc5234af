package work

import (
	"testing"

	"github.com/stretchr/testify/assert"

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
