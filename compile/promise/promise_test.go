package promise

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/plan"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	_ "newmake/lang/testflag" // nothing is written anew here, and the switches are known
)

// A plan has each value that the language lets one promise, in each of its kinds: so it is
// never asked for one that it has not.
func TestEveryPromiseIsAnswered(t *testing.T) {
	a := answers{plan: &plan.Plan{Spirit: plan.Run{Feints: &plan.Lot{}}}} // as every run has
	for _, p := range schema.Promises {
		for _, kind := range p.Kinds {
			_, ok := a.promised(recipe.Promise{What: p.What, Kind: kind})
			assert.True(t, ok, "%s as %s", p.What, kind)
		}
	}
	_, ok := a.promised(recipe.Promise{What: "hearts", Kind: quantity.Duration})
	assert.False(t, ok)
	_, ok = a.promised(recipe.Promise{What: "joy"})
	assert.False(t, ok)
}
