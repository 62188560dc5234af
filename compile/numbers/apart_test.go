package numbers

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/stream"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// Of charges that were made apart only the first is charged cold, and where pot ale of a
// batch before was kept hot none is.
func TestWhichChargeApartIsCold(t *testing.T) {
	b := &recipe.Batch{Strip: recipe.Strip{Apart: make([]recipe.Charge, 3)}}
	for i := range b.Strip.Apart {
		b.Strip.Apart[i] = recipe.Charge{Share: 1.0 / 3, Stop: recipe.Strength{Value: 0.05}}
	}
	in := still.StripInput{Setting: still.Setting{Still: recipe.Vessel{HoldsM3: 1, HeatsW: 20e3, MetalKg: 200}, PressurePa: 101325, AmbientC: 20, WaterC: 10},
		Wash: stream.Stream{EthanolKg: 10, WaterKg: 90, TempC: 20}}
	warm := in
	warm.Wash.TempC = 60
	colds := func(coldFirst bool) (cold []bool) {
		runs, err := strippedApart(nil, b, in, warm, coldFirst)
		require.NoError(t, err)
		for _, r := range runs {
			cold = append(cold, r.Charge.TempC < 40)
		}
		return cold
	}
	assert.Equal(t, []bool{true, false, false}, colds(true))
	assert.Equal(t, []bool{false, false, false}, colds(false))
}
