package compile

import (
	"newmake/compile/plan"
	"newmake/lang/recipe"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestACutMovesNoLitresInTheSteadyState(t *testing.T) {
	at := func(to float64) *plan.Plan {
		return planned(t, edited(t, func(b *recipe.Batch) { b.Spirit.HeartsTo.Strength.Value, b.Promises = to, nil }))
	}
	wide, narrow := at(0.60), at(0.64)
	assert.InEpsilon(t, wide.Summary.PureAlcoholL, narrow.Summary.PureAlcoholL, 0.005)
	assert.Greater(t, narrow.Summary.HeartsAbvPct, wide.Summary.HeartsAbvPct)
	assert.Greater(t, narrow.Summary.SpiritHours, wide.Summary.SpiritHours)
}
