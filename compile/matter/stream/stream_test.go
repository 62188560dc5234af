package stream

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"newmake/compile/matter/fluid"
)

var wash = Stream{
	WaterKg: 1400, EthanolKg: 110, DextrinKg: 15, SolublesKg: 20, BacksetKg: 6,
	YeastKg: 3, InsolublesKg: 80, TempC: 30,
}

func TestMassIsTheSumOfItsParts(t *testing.T) {
	assert.InDelta(t, 1400+110+15+20+6+3+80, wash.MassKg(), 1e-9)
	assert.InDelta(t, 15+20, wash.ExtractKg(), 1e-12)
	assert.InDelta(t, 83, wash.SuspendedKg(), 1e-12)
}

func TestPlusMinusScaleRoundTrip(t *testing.T) {
	back := wash.Scale(0.25).Plus(wash.Scale(0.75))
	assert.InDelta(t, wash.MassKg(), back.MassKg(), 1e-9)
	assert.InDelta(t, 0, back.Minus(wash).MassKg(), 1e-9)
	assert.Equal(t, wash.TempC, wash.Scale(0.5).TempC)
}

// A spirit without solids must stand where the alcohol tables put it.
func TestSpiritAgreesWithTheAlcoholTables(t *testing.T) {
	spirit := Stream{WaterKg: 45, EthanolKg: 55, TempC: 20}
	w := 0.55
	assert.InDelta(t, fluid.ABVFromMassFrac(w), spirit.ABV(), 1e-12)
	assert.InDelta(t, 100/fluid.Density(w, 20), spirit.VolumeM3(), 1e-9)
	// Strength by volume is the same by either road to it.
	assert.InDelta(t, spirit.PureAlcoholM3()/spirit.VolumeM3(), spirit.ABV(), 1e-9)
}

func TestSuspendedMatterTakesRoomButDoesNotFloatAHydrometer(t *testing.T) {
	clear := wash
	clear.YeastKg, clear.InsolublesKg = 0, 0
	assert.Equal(t, clear.SG(), wash.SG())
	assert.Greater(t, wash.VolumeM3(), clear.VolumeM3())
	assert.InDelta(t, clear.VolumeM3(), wash.LiquidVolumeM3(30), 1e-9)
}

func TestNothingHasNoStrength(t *testing.T) {
	var none Stream
	assert.Zero(t, none.ABV())
	assert.Equal(t, 1.0, none.SG())
	assert.Zero(t, none.LiquidVolumeM3(20))
}
