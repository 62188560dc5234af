package accuracy

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var twoRow = malts{{"two-row-malt", 1}}

// What the constants of `model mash` are fitted to, and what they are only held
// against. Where the model and a source part, the test says both.
func TestMashAgainstItsSources(t *testing.T) {
	m := new(measurer)
	defer func() { require.NoError(t, m.err) }()

	t.Run("beta-amylase has a tail", func(t *testing.T) {
		// Muller, Brewing Research Foundation 1991, 2.5 L/kg at 65 C, as quoted in
		// a public posting.
		s := m.held(twoRow, 2.5, 65, 10, 20, 30).Steps
		assert.InDelta(t, 0.50, s[2].BetaLeft, 0.02)
		assert.InDelta(t, 0.17, s[3].BetaLeft, 0.02)
		assert.InDelta(t, 0.08, s[4].BetaLeft, 0.01)
		assert.Greater(t, s[4].AlphaLeft, 0.5)
	})
	t.Run("an unboiled wash is even from 61 to 66 C", func(t *testing.T) {
		// Common practice: the first water of a malt house stands near 64.5 C and
		// harm begins above 65.5; the laboratory mashes at 65.
		least, most := 1e9, 0.0
		for tempC := 61.0; tempC <= 66; tempC++ {
			l := m.litresPerTonne(tempC)
			least, most = min(least, l), max(most, l)
		}
		assert.Greater(t, least, 0.97*most)
		assert.Less(t, m.litresPerTonne(70), 0.95*most, "but a hot mash costs")
	})
	t.Run("the laboratory's mash", func(t *testing.T) {
		// Common practice: 86-88 % fermentable and some 410 L a tonne in a typical
		// year, of an extract a little above the library's.
		lab := m.laboratory()
		assert.GreaterOrEqual(t, lab.fermentable, 86.0)
		assert.LessOrEqual(t, lab.fermentable, 88.0)
		assert.InEpsilon(t, 410, lab.litres, 0.03)
	})
	t.Run("the plant's real degree is above practice", func(t *testing.T) {
		// Common practice: 82-85 %. The model is above it by up to 2: it counts no
		// weak yeast, and the whole of a mash of one temperature.
		d := m.realDegree(65)
		assert.Greater(t, d, 85.0, "the model does not meet 82-85")
		assert.Less(t, d, 87.0)
	})
	t.Run("a boiled wort loses by a hotter rest", func(t *testing.T) {
		// Chandrasekhar, as quoted in a public weblog (2014), a tenth of the grist
		// dextrin malt. The tolerance is this test's own, for a source at second hand.
		for _, c := range [][2]float64{{65, 82}, {70, 70}, {75, 50}, {80, 30}} {
			assert.InDelta(t, c[1], m.attenuation(c[0]), 3, "%g C", c[0])
		}
	})
	t.Run("sugar comes fast", func(t *testing.T) {
		// Rittenauer et al., Foods 10 (2021) 1733: 97.5 % of the reference mash's
		// sugar within 10 min at 61.4-64.5 C. The model has 86: it is slower at
		// first. Near 58.6 C they have 61.7 %.
		full := m.held(twoRow, 4, 65, 60).Out.SugarKg()
		assert.InDelta(t, 0.86, m.held(twoRow, 4, 63, 10).Out.SugarKg()/full, 0.02)
		assert.InDelta(t, 0.617, m.held(twoRow, 4, 58.6, 10).Out.SugarKg()/full, 0.1)
	})
	t.Run("thick mashes dissolve up to a limit", func(t *testing.T) {
		// Harris and MacWilliam, Carbohydrates in malting and brewing X, J. Inst.
		// Brew. (1961), abstract: 1 h at 65.5 C dissolves more than 95 % in mashes
		// of 8-42 %, at 62.7 only up to 16-25 %; 3 h lift that to 50 and 33-42 %.
		dissolved := func(percent, tempC, minutes float64) float64 {
			return m.held(twoRow, (100-percent)/percent, tempC, minutes).Conversion
		}
		for _, percent := range []float64{8, 16, 25, 33, 42} {
			assert.Greater(t, dissolved(percent, 65.5, 60), 0.95, "%g %%", percent)
		}
		assert.Greater(t, dissolved(16, 62.7, 60), 0.95)
		assert.Less(t, dissolved(33, 62.7, 60), 0.95)
		assert.Less(t, dissolved(42, 62.7, 180), 0.95)
		// Not met: in the model three hours do no more than one.
		assert.Less(t, dissolved(33, 62.7, 180), 0.95, "33 % should dissolve")
		assert.Less(t, dissolved(50, 65.5, 180), 0.95, "50 % should dissolve")
	})
	t.Run("thickness works both ways", func(t *testing.T) {
		// De Schepper and Courtin, Food Hydrocolloids (2022) 107745: granules
		// gelatinize later in a thick mash, and of all possible sugar 79 % comes in
		// 6 L/kg, 66 % in 2.5. The first is met in its sign. The second is not: what
		// protects the enzymes outweighs it at 63 C. Their 0.4 K for 1 % of extract
		// contradicts Harris and MacWilliam (above), who allow 0.25 at most.
		thin, thick := m.held(twoRow, 6, 61, 60), m.held(twoRow, 1.5, 61, 60)
		assert.Greater(t, thin.Gelatinized, thick.Gelatinized)
		assert.Greater(t, thick.Steps[2].BetaLeft, thin.Steps[2].BetaLeft)
		assert.Greater(t, m.sugarShare(2.5), m.sugarShare(6), "the source has it the other way round")
		assert.InDelta(t, 79, m.sugarShare(6), 7)
	})
	t.Run("all rye is cooked and ferments badly", func(t *testing.T) {
		// Balcerek et al., abstract: half rye, half rye malt 75.4 % of theory, the
		// least of their mashes. The model has 82: starch is not what is left.
		assert.InDelta(t, 75.4, m.allRye(), 8)
		assert.Less(t, m.allRye(), 85.0)
		assert.Greater(t, m.held(malts{{"rye", 0.5}, {"rye-malt", 0.5}}, 3.5, 64, 70).Gelatinized, 0.96)
	})
	t.Run("alpha-amylase after mash-off", func(t *testing.T) {
		// 10-15 % near 78 C (Narziss, as quoted in a public forum). That it stood 40
		// min at 64 C and 20 at 78 is this test's own reading.
		assert.InDelta(t, 0.125, m.held(twoRow, 3.5, 64, 40).Steps[2].AlphaLeft*
			m.held(twoRow, 3.5, 78, 20).Steps[2].AlphaLeft, 0.06)
	})
}
