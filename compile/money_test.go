package compile

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// Yen have no decimals, dollars two; in either the lines come to the total.
func TestMoneyPlaces(t *testing.T) {
	for currency, unit := range map[string]float64{"JPY": 1, "USD": 0.01} {
		p, _ := planOf(t, func(b *recipe.Batch) { b.Costs.Currency = currency })
		sum, whole := 0.0, true
		for _, l := range p.Cost.Lines {
			sum += l.Cost
			whole = whole && math.Abs(l.Cost-math.Round(l.Cost)) < 1e-9
			assert.InDelta(t, math.Round(l.Cost/unit)*unit, l.Cost, 1e-9, "%s: %s", currency, l.What)
		}
		assert.InDelta(t, sum, p.Cost.Total, 1e-6, currency)
		assert.Equal(t, currency == "JPY", whole, currency)
	}
	assert.Equal(t, 0, plan.MoneyPlaces("JPY"))
	assert.Equal(t, 2, plan.MoneyPlaces("EUR"))
}
