package front

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/constants"
	"newmake/lang/diag"
)

const taughtText = `learned "Lantern Hollow" on 2026-06-30 {
  model             1
  from              "26-01", "26-02"
  yield-efficiency  96 %, 94.5..97.5 %, from 100 %
  cooker-heat of "Copper kettle" 80 %, 76..84 %, from 100 %
  yeast-lag of distillers-yeast 3.5 h, 3..4 h, from 2.5 h
}
`

// lanternWith is the invented house with a text more.
func lanternWith(t *testing.T, learned string, none bool) *Source {
	s, err := Load(Place{
		Path:      "../../examples/lantern-hollow",
		Overlay:   map[string][]byte{"../../examples/lantern-hollow/learned.batch": []byte(learned)},
		NoLearned: none,
	})
	require.NoError(t, err)
	return s
}

func plannedOf(t *testing.T, s *Source) *Plan {
	p, err := s.Plan("Ferry Landing", nil)
	require.NoError(t, err)
	require.NotNil(t, p.Plan, p.Diags)
	return p
}

func codes(list diag.List) (out []diag.Code) {
	for _, d := range list {
		out = append(out, d.Code)
	}
	return out
}

// A plan uses what was learned, and says so; without it, it is as before.
func TestPlanUsesWhatWasLearned(t *testing.T) {
	book := plannedOf(t, lanternWith(t, "", false))
	with := plannedOf(t, lanternWith(t, taughtText, false))
	without := plannedOf(t, lanternWith(t, taughtText, true))
	assert.Equal(t, book.Plan.Summary, without.Plan.Summary)
	assert.NotContains(t, codes(without.Diags), diag.CodeLearned)
	assert.Contains(t, codes(with.Diags), diag.CodeLearned)
	assert.False(t, with.Diags.HasErrors() && Broken(with.Diags), with.Diags.Error())
	assert.Less(t, with.Plan.Summary.PureAlcoholL, .98*book.Plan.Summary.PureAlcoholL)
	assert.Greater(t, with.Plan.Summary.MashHours, book.Plan.Summary.MashHours)
	found := false
	for _, n := range with.Plan.Notices {
		if n.Code == string(diag.CodeLearned) {
			found = true
			assert.Contains(t, n.Summary, "3 constants from 2 runs, learned on 2026-06-30")
			assert.Contains(t, n.Summary, "heating of the cooker 80 %")
		}
	}
	assert.True(t, found, "the plan itself says so")
}

// What stands on another base, or on other models, is not used, and that is said.
func TestLearnedThatIsStale(t *testing.T) {
	other := `learned "Lantern Hollow" on 2026-06-30 {
  model             1
  from              "26-01"
  yeast-lag of distillers-yeast 3.5 h, 3..4 h, from 3 h
}
`
	book := plannedOf(t, lanternWith(t, "", false))
	p := plannedOf(t, lanternWith(t, other, false))
	assert.Contains(t, codes(p.Diags), diag.CodeLearnedStale)
	assert.NotContains(t, codes(p.Diags), diag.CodeLearned)
	assert.Equal(t, book.Plan.Summary, p.Plan.Summary)

	p = plannedOf(t, lanternWith(t, `learned "Lantern Hollow" on 2026-06-30 {
  model             2
  from              "26-01"
  yeast-lag of distillers-yeast 3.5 h, 3..4 h, from 2.5 h
}
`, false))
	assert.Contains(t, codes(p.Diags), diag.CodeLearnedStale)
	assert.Equal(t, book.Plan.Summary, p.Plan.Summary)
}

// What is left uncertain of a constant that was learned is its uncertainty from then on.
func TestLearnedIsLessUncertain(t *testing.T) {
	of := func(s *Source) constants.Constant {
		b, err := s.Batch("Ferry Landing", nil)
		require.NoError(t, err)
		all := constants.Of(b.Recipe)
		return all[slices.IndexFunc(all, func(c constants.Constant) bool { return c.ID == "yeast-lag" })]
	}
	book, learned := of(lanternWith(t, "", false)), of(lanternWith(t, taughtText, false))
	assert.InDelta(t, 2.5*3600, book.AsWritten, 1e-9)
	assert.InDelta(t, 3.5*3600, learned.AsWritten, 1e-9)
	assert.InDelta(t, 3600/(2*constants.NineInTen), learned.SD, 1e-6)
	assert.Less(t, learned.SD, book.SD)
}
