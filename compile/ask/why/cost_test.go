package why

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/measure"
	"newmake/lang/testflag"
)

// The cost that why adds up is the one that the plan prints, to the cent, and
// each line of it has its price among what is written.
func TestCostIsThePlans(t *testing.T) {
	priced := 0
	for i, b := range batches(t) {
		if i%testflag.Every(12) != 0 {
			continue
		}
		p, _ := compile.Compile(b)
		if p == nil || p.Cost == nil {
			continue
		}
		priced++
		e := explain(t, b, measure.US, "cost", 1).Value
		assert.InDelta(t, p.Cost.Total, e.Amount.Value, 1e-6, b.Name)
		assert.Len(t, e.Inputs, len(p.Cost.Lines), "%s: %v", b.Name, e.Inputs)
	}
	require.Positive(t, priced)
}

// A sum in a currency without a smaller unit has no decimals, in its heading too.
func TestUsualPlacesOfMoney(t *testing.T) {
	assert.Equal(t, 0, usual("JPY", 1590))
	assert.Equal(t, 2, usual("GBP", 1590))
}
