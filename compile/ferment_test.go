package compile

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/matter/fluid"
	"newmake/lang/recipe"
)

func TestAFermentIsAsLongAsItStands(t *testing.T) {
	written := planned(t, batch(t, lantern, ferry))
	assert.Equal(t, 91.0, written.Ferment.Hours)
	late := planned(t, edited(t, func(b *recipe.Batch) { b.Start.Day = 4 })) // ends on a Sunday
	f := late.Ferment
	assert.Equal(t, 91.0, f.AskedHours)
	run := stepOf(t, late, "ferment.run")
	assert.InDelta(t, run.DurationMin/60, f.Hours, 0.0501, "shown to a tenth")
	assert.Greater(t, f.Hours, 130.0)
	assert.InDelta(t, f.Hours, late.Summary.FermentHours, 0.0501)
	assert.InDelta(t, f.Hours, f.Curve[len(f.Curve)-1].Hour, 0.0501)
	assert.Less(t, f.Curve[len(f.Curve)-1].TempC, written.Ferment.Curve[len(written.Ferment.Curve)-1].TempC, "it has cooled to the room meanwhile")
	read := stepOf(t, late, "strip.charge").Read
	assert.Equal(t, f.FinalGravitySG, read[2].Should.Value)
}

func TestGravityFromTheGrainAlone(t *testing.T) {
	p := planned(t, batch(t, lantern, ferry))
	f, m := p.Ferment, p.Mash
	assert.Less(t, f.FinalGrainSG, f.FinalGravitySG-0.002)
	assert.InDelta(t, m.HydrometerSG-m.OriginalGravitySG, f.FinalGravitySG-f.FinalGrainSG, 0.001)
	// Apparent attenuation by degrees of gravity comes near that by plato.
	byPoints := (m.OriginalGravitySG - f.FinalGrainSG) / (m.OriginalGravitySG - 1)
	assert.InDelta(t, f.AttenuationPct, 100*byPoints, 1)
	dry := planned(t, batch(t, lantern, "Stone Ferry"))
	assert.Equal(t, dry.Ferment.FinalGravitySG, dry.Ferment.FinalGrainSG)
}

// Common practice: a malt rest a little hot costs little. Two degrees Fahrenheit
// more, 148 to 150, cost at most 2 % of the alcohol in Ferry Landing's hearts.
func TestHotterMaltRestCostsLittle(t *testing.T) {
	cool := fluid.FahrenheitToC(148)
	hearts := func(riseF float64) float64 {
		found := false
		p := planned(t, edited(t, func(b *recipe.Batch) {
			b.Promises = nil
			for i := range b.Mash.Steps {
				if s := &b.Mash.Steps[i]; s.Verb == recipe.MashCool && math.Abs(s.TempC-cool) < 0.01 {
					s.TempC, found = s.TempC+riseF/1.8, true
				}
			}
		}))
		assert.True(t, found)
		return p.Summary.PureAlcoholL
	}
	written := hearts(0)
	assert.Greater(t, hearts(2), 0.98*written)
	assert.Less(t, hearts(12), 0.98*written, "12 F are another matter")
}
