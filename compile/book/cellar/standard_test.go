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
	kinds := On(func() House {
		h := house(life("C-1", 108))
		h.Batch = func(string) *recipe.Batch { return b }
		return h
	}(), filledOn.After(10)).Kinds
	require.Len(t, kinds, 1)
	assert.Equal(t, []any{"Whisky", 2024, 1}, []any{kinds[0].Kind, kinds[0].Year, kinds[0].Casks})
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

// A cask keeps its batch's promise where what it holds at the end of its rest is strong
// enough for the bottle; just weaker than it, it does not.
func TestStrongEnough(t *testing.T) {
	b := bourbon()
	h := house(life("C-1", 108))
	h.Batch = func(string) *recipe.Batch { return b }
	target := func() *Target { return On(h, filledOn.After(10)).Casks[0].Target }
	then := target().Then
	b.Cask.BottleAt = recipe.Strength{Value: (then.Proof - 0.05) / 200, Basis: recipe.Proof}
	assert.True(t, target().Kept)
	assert.InDelta(t, then.Proof-0.05, target().BottleProof, 0.01)
	b.Cask.BottleAt.Value = (then.Proof + 0.05) / 200
	assert.False(t, target().Kept)
}

// Totals are by batch and year, of all, and by kind and year; each sums to the same.
func TestTotals(t *testing.T) {
	h := house(life("C-1", 108), life("C-2", 108))
	c := On(h, filledOn.After(400))
	require.Len(t, c.Totals, 2)
	require.Len(t, c.Kinds, 1)
	assert.Equal(t, "", c.Kinds[0].Kind)
	assert.Equal(t, 2024, c.Kinds[0].Year)
	assert.Equal(t, c.Totals[1].ProofGallons, c.Kinds[0].ProofGallons)
	assert.InDelta(t, 2*c.Casks[0].Now.ProofGallons, c.Totals[1].ProofGallons, 0.002)
	assert.Greater(t, c.Totals[1].LostPct, 3.)
}

// A cask lies in the air of the rack house to which it was moved, from the day on which it
// was moved; one that was moved in the week of its fill, from its fill on.
func TestInItsRackHouse(t *testing.T) {
	air := func(humidity float64) recipe.YearOfAir {
		y := recipe.YearOfAir{Said: true}
		for i := range y.Months {
			y.Months[i] = recipe.Air{TempC: 13, Humidity: humidity}
		}
		return y
	}
	b := bourbon()
	b.Plant = &recipe.Plant{RackHouses: []*recipe.RackHouse{{Name: "Damp", Air: air(0.85)}, {Name: "Dry", Air: air(0.45)}}}
	b.Cask.Air = b.Plant.Air()
	proof := func(to string, days int) float64 {
		l := life("C-1", 108)
		if to != "" {
			l.Events = []record.Visit{{Word: "to", To: to, When: record.When{Date: filledOn.After(days)}}}
		}
		h := house(l)
		h.Batch = func(string) *recipe.Batch { return b }
		return On(h, filledOn.After(1461)).Casks[0].Now.Proof
	}
	damp := proof("", 0)
	assert.Equal(t, damp, proof("damp", 1))
	dry := proof("Dry", 1)
	assert.Greater(t, dry, damp+4)
	assert.Equal(t, dry, proof("Dry", 7))
	assert.Less(t, proof("Dry", 8), dry)
	assert.Greater(t, proof("Dry", 700), damp+1)
	assert.Equal(t, damp, proof("Elsewhere", 1))
}
