package law

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"newmake/compile/matter/fluid"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// A standard is named by itself, one that is put together by its parts.
func TestStandardsAreNamed(t *testing.T) {
	held := func(s *recipe.Standard) *plan.Law {
		return Held(&recipe.Batch{Standard: s}, plan.Lot{}, Days{}, plan.Cask{})
	}
	assert.Nil(t, held(nil))
	assert.Equal(t, []string{"a"}, held(&recipe.Standard{Entry: recipe.Entry{Name: "a"}}).Standards)
	assert.Equal(t, []string{"a"}, held(&recipe.Standard{Entry: recipe.Entry{Name: "x"}, Parts: []string{"a"}}).Standards)
	assert.Equal(t, []string{"a", "b"}, held(&recipe.Standard{Entry: recipe.Entry{Name: "x"}, Parts: []string{"a", "b"}}).Standards)
	assert.Equal(t, []plan.Condition{{Asks: "the label says so", Met: Stated}}, held(&recipe.Standard{Notes: []string{"the label says so"}}).Conditions)
}

// One day is said once.
func TestDaysInWords(t *testing.T) {
	day := time.Date(2026, 3, 3, 7, 0, 0, 0, time.UTC)
	assert.Equal(t, "3 March 2026", Days{day, day.Add(8 * time.Hour)}.Words())
	assert.Equal(t, "3 March 2026 to 4 March 2026", Days{day, day.Add(20 * time.Hour)}.Words())
}

// A strength by mass is held against a limit in the limit's own measure; one by volume as
// it is written, and one by mass against a limit by mass likewise.
func TestStrengthsAlike(t *testing.T) {
	half := recipe.Strength{Value: 0.5, Basis: recipe.ABW}
	assert.Equal(t, half, alike(half, recipe.Strength{Basis: recipe.ABW}))
	byVolume := recipe.Strength{Value: 0.5, Basis: recipe.ABV}
	for _, limit := range []recipe.StrengthBasis{recipe.ABV, recipe.ABW, recipe.Proof} {
		assert.Equal(t, byVolume, alike(byVolume, recipe.Strength{Basis: limit}))
	}
	assert.Equal(t, recipe.Strength{Value: fluid.ABVFromMassFrac(0.5)}, alike(half, byVolume))
	assert.Equal(t, recipe.Strength{Value: fluid.ABV60FFromMassFrac(0.5), Basis: recipe.Proof}, alike(half, recipe.Strength{Basis: recipe.Proof}))
}

// A limit has as many decimals as the law gives it, four at most.
func TestLimitsInWords(t *testing.T) {
	for want, v := range map[string]float64{"40": 40, "94.8": 94.8, "62.5": 62.5, "0.3333": 1. / 3, "94.8001": 94.80006} {
		assert.Equal(t, want, shortest(v))
	}
	us, si := batch{Batch: &recipe.Batch{}}, batch{Batch: &recipe.Batch{Units: recipe.SI}}
	assert.Equal(t, "80 proof (40 % abv)", us.limit(recipe.Strength{Value: 0.4, Basis: recipe.Proof}))
	assert.Equal(t, "80 proof (40 % vol)", si.limit(recipe.Strength{Value: 0.4, Basis: recipe.Proof}))
	assert.Equal(t, "94.8 % vol", si.limit(recipe.Strength{Value: 0.948}))
	assert.Equal(t, "50 % by weight", us.limit(recipe.Strength{Value: 0.5, Basis: recipe.ABW}))
}

// A share of a mixture may be short of what is asked by a millionth, which rounding makes.
func TestPartsOfAMixture(t *testing.T) {
	k := &recipe.Condition{Share: 0.2, Law: "test"}
	for share, met := range map[float64]string{0.2: Met, 0.2 - 0.9e-6: Met, 0.2 - 1.1e-6: NotMet, 0.199: NotMet, 1: Met} {
		assert.Equal(t, met, Parts(k, share).Met, "%g", share)
	}
	assert.Equal(t, "19.9 %", Parts(k, 0.199).Found)
}

// Equal is what differs by rounding alone.
func TestBelow(t *testing.T) {
	for _, c := range []struct {
		by            float64 // of the lot, in % or in proof
		under, atMost bool
	}{{-1e-8, true, true}, {-1e-10, false, true}, {0, false, true}, {1e-10, false, true}, {1e-8, false, false}} {
		for _, s := range []recipe.Strength{{Value: 0.4, Basis: recipe.Proof}, {Value: 0.4}} {
			l := plan.Lot{AbvPct: 40 + c.by, Proof: 80 + c.by}
			if s.Basis == recipe.Proof {
				l.AbvPct = 10 // it is the proof that is held
			}
			assert.Equal(t, c.under, below(l, s, false), "%v %v", s, c)
			assert.Equal(t, c.atMost, below(l, s, true), "%v %v", s, c)
		}
	}
}
