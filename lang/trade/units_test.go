package trade

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// A rule speaks in the units in which the batch is written.
func TestRulesSpeakTheBatchsUnits(t *testing.T) {
	us, si := &rules{batch: &recipe.Batch{Units: recipe.US}}, &rules{batch: &recipe.Batch{Units: recipe.SI}}
	assert.Equal(t, "160 F", us.temp(71.2))
	assert.Equal(t, "32 F", us.temp(0))
	assert.Equal(t, "71.3 C", si.temp(71.26))
	assert.Equal(t, "71.2 C", si.temp(71.24))
	assert.Equal(t, "160 F", us.temp(71.38)) // 160.48
	assert.Equal(t, "161 F", us.temp(71.4))  // 160.52
	assert.Equal(t, "160.2 F", us.tenth(71.22))
	assert.Equal(t, "71.2 C", si.tenth(71.22))
	assert.Equal(t, "2.5 L/kg", si.ratio(2.5e-3))
	assert.Equal(t, "16.8 gal a distiller's bushel (2.5 L/kg)", us.ratio(2.5e-3)) // of 56 lb
	assert.Equal(t, "185 gal", us.volume(185*0.003785411784))
	assert.Equal(t, "700 L", si.volume(0.7))
	assert.Equal(t, "12.5 %", percent(0.125))
}

// An age in years, or in days below one.
func TestDurationText(t *testing.T) {
	const year, day = 365.25 * 86400, 86400.0
	for s, want := range map[float64]string{
		year: "1 year", 1.0009 * year: "1 year", 1.5 * year: "1.5 years", 2 * year: "2 years", 0.999 * year: "365 days", 90 * day: "90 days",
	} {
		assert.Equal(t, want, durationText(s))
	}
	assert.NotEqual(t, "1 year", durationText(1.0011*year))
}

// A strength in the basis in which it is written.
func TestStrengthText(t *testing.T) {
	assert.Equal(t, "125 proof", strengthText(recipe.Strength{Value: 0.625, Basis: recipe.Proof}))
	litres := &rules{batch: &recipe.Batch{Units: recipe.SI}}
	assert.Equal(t, "62.5 % vol (125 proof)", litres.lawful(recipe.Strength{Value: 0.625, Basis: recipe.Proof}))
	assert.Equal(t, "125 proof", (&rules{batch: &recipe.Batch{Units: recipe.US}}).lawful(recipe.Strength{Value: 0.625, Basis: recipe.Proof}))
	assert.Equal(t, "62.5 % abv", litres.lawful(recipe.Strength{Value: 0.625, Basis: recipe.ABV}))
	assert.Equal(t, "56.1 % abw", strengthText(recipe.Strength{Value: 0.561, Basis: recipe.ABW}))
	assert.Equal(t, "62.5 % abv", strengthText(recipe.Strength{Value: 0.625, Basis: recipe.ABV}))
}

// Any power of a malt counts, however little; none that was roasted away does.
func TestHasEnzymes(t *testing.T) {
	assert.True(t, hasEnzymes(&recipe.Grain{LintnerPower: 0.5}))
	assert.True(t, hasEnzymes(&recipe.Grain{AlphaDU: 0.5}))
	assert.False(t, hasEnzymes(&recipe.Grain{}))
	assert.False(t, hasEnzymes(&recipe.Grain{LintnerPower: 100, Roasted: true}))
}

// What is too much for a still is run in more charges; a cooker and a fermenter take but
// one.
func TestTooFullHelps(t *testing.T) {
	for code, charges := range map[diag.Code]bool{diag.CodeStillFull: true, diag.CodeFermenterFull: false, diag.CodeCookerFull: false} {
		var list diag.List
		tooFull(&rules{batch: &recipe.Batch{}, diags: &list}, code, diag.Span{}, "the wash", 2, &recipe.Vessel{HoldsM3: 1})
		require.Len(t, list, 1)
		assert.Equal(t, charges, strings.Contains(list[0].Help, "charges 2"), code)
	}
}
