package recipe

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestWeakerIsAsTheLawSays: 27 CFR 5.143(a) names each strength twice, by volume
// and in proof: 40 % and 80, 80 % and 160, 95 % and 190; 62.5 % is 125 proof in
// table 1.
func TestWeakerIsAsTheLawSays(t *testing.T) {
	abv := func(percent float64) Strength { return Strength{Value: percent / 100} }
	proof := func(p float64) Strength { return Strength{Value: p / 200, Basis: Proof} }
	for percent, p := range map[float64]float64{40: 80, 50: 100, 62.5: 125, 80: 160, 95: 190} {
		assert.False(t, abv(percent).Weaker(proof(p)), "%v %% and %v proof", percent, p)
		assert.False(t, proof(p).Weaker(abv(percent)), "%v proof and %v %%", p, percent)
		assert.True(t, abv(percent-0.01).Weaker(proof(p)))
		assert.True(t, proof(p-0.01).Weaker(abv(percent)))
	}
	byMass := Strength{Value: 0.3, Basis: ABW}
	assert.False(t, byMass.Weaker(abv(90)), "not without tables")
	assert.False(t, abv(10).Weaker(byMass), "not without tables")
	assert.True(t, byMass.Weaker(Strength{Value: 0.31, Basis: ABW}))
}
