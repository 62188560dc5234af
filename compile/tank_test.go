package compile

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// TestChargerHoldsWhatIsThereAtATime: of low wines and feints in one tank the most is what
// is there together: the feints of the batch before beside the low wines, or this batch's
// feints once all is charged.
func TestChargerHoldsWhatIsThereAtATime(t *testing.T) {
	use := func(today recipe.Today) (plan.TankUse, *plan.Plan) {
		p := planned(t, edited(t, func(b *recipe.Batch) {
			b.Today = today
			plant := *b.Plant
			plant.Tanks = []*recipe.Tank{{Name: "charger", For: recipe.OfLowWines | recipe.OfFeints, HoldsM3: 4}}
			b.Plant = &plant
		}))
		require.Len(t, p.Plant.Tanks, 1)
		return p.Plant.Tanks[0], p
	}
	lowWines := func(p *plan.Plan) float64 { return p.Strip.Fraction("low wines").VolumeL }

	steady, p := use(recipe.Today{})
	assert.InDelta(t, lowWines(p)+p.Spirit.FeintsReturned.VolumeL*float64(p.Spirit.Charges), steady.MostL, 0.2)
	assert.InDelta(t, 100*steady.MostL/steady.HoldsL, steady.FillPct, 0.1)

	none, p := use(recipe.Today{FeintsSaid: true})
	require.Greater(t, lowWines(p), p.Spirit.Feints.VolumeL)
	assert.InDelta(t, lowWines(p), none.MostL, 0.2, "this batch's feints come as the low wines go")
	assert.InDelta(t, 100*none.MostL/none.HoldsL, none.FillPct, 0.1)
	assert.InDelta(t, p.Spirit.Feints.VolumeL, none.LeftL, 0.2)
}
