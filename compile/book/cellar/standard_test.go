package cellar

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// A cask is old enough for its batch's standard on the day that its least rest is over, by what
// was filled in last; a standard that asks for no years says nothing.
func TestOldEnough(t *testing.T) {
	const year = 365.25 * 86400
	b := bourbon()
	of := func(l *record.Life, on record.Date) *Aged {
		h := house(l)
		h.Batch = func(string) *recipe.Batch { return b }
		casks := On(h, on).Casks
		require.Len(t, casks, 1)
		return casks[0].Standard
	}
	assert.Nil(t, of(life("C-1", 108), filledOn.After(10)))
	b.Standard = &recipe.Standard{Title: "Whisky"}
	assert.Nil(t, of(life("C-1", 108), filledOn.After(10)))
	b.Standard.Conditions = []recipe.Condition{{Test: recipe.AgeLeast, AgeS: 2 * year}}
	is := of(life("C-1", 108), record.Date{Year: 2026, Month: 2, Day: 27})
	assert.Equal(t, &Aged{Of: "Whisky", From: "2026-02-28", Met: false}, is)
	assert.True(t, of(life("C-1", 108), record.Date{Year: 2026, Month: 2, Day: 28}).Met)

	again := life("C-1", 108)
	run := &record.Run{Number: "25-01", Batch: "Base", Stages: []record.Stage{{Name: record.Fill}}}
	run.Visits = []record.Visit{
		{Word: "gauge", When: record.When{Date: record.Date{Year: 2025, Month: 1, Day: 10}}, Read: []record.Reading{value(record.Strength, 120, "proof", quantity.Strength)}},
		{Word: "into", To: "C-1", When: record.When{Date: record.Date{Year: 2025, Month: 1, Day: 10}}, Read: []record.Reading{value(record.Volume, 1, "gal", quantity.Volume)}},
	}
	again.Fills = append(again.Fills, record.Filling{Run: run, Visit: &run.Visits[1]})
	assert.Equal(t, "2026-02-28", of(again, record.Date{Year: 2025, Month: 1, Day: 9}).From, "it is not in yet")
	assert.Equal(t, "2027-01-10", of(again, record.Date{Year: 2025, Month: 1, Day: 10}).From)
}
