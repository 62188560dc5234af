package compile

import (
	"maps"
	"path/filepath"
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// TestChecksSayWhatCompileSays: a check of many batches at once says of each what
// its plan says.
func TestChecksSayWhatCompileSays(t *testing.T) {
	var all sync.WaitGroup
	k := NewChecks()
	count := 0
	for _, house := range []string{lantern, "testdata/houses/small", "testdata/houses/malt-425", "testdata/houses/grain-to-barrel"} {
		h, err := check.Load(filepath.Join("..", house), check.Options{})
		require.NoError(t, err)
		for _, name := range h.Batches() {
			b, list := h.Batch(name)
			require.NotNil(t, b, list.Error())
			if name == ferry { // and one that has much to be said of it
				odd := *b
				odd.Ferm.DurationS, odd.Bill.TotalKg = 20*3600.0, 1.5*b.Bill.TotalKg
				odd.Promises = []recipe.Promise{{What: "casks", Kind: quantity.Number, Value: 9}}
				b = &odd
			}
			count++
			_, want := Compile(b)
			for range 2 {
				all.Go(func() { assert.Equal(t, want, k.Check(b), name) })
			}
		}
	}
	all.Wait()
	require.GreaterOrEqual(t, count, 8)

	odd := own(batch(t, lantern, ferry)) // what is known of the congeners is read, though none is followed
	m := *odd.Models["congener"]
	m.Values = maps.Clone(m.Values)
	m.Values["methanol-x050"] = 1e9
	odd.Models = maps.Clone(odd.Models)
	odd.Models["congener"] = &m
	_, want := Compile(odd)
	require.True(t, want.HasErrors())
	assert.Equal(t, want, k.Check(odd))

	// A house may have constants that can be read and make the numbers run away.
	m.Values = maps.Clone(batch(t, lantern, ferry).Models["congener"].Values)
	m.Values["furfural-x800"], m.House = 1.711e-7, true
	_, want = Compile(odd)
	require.Contains(t, want.Error(), string(diag.CodeRunsAway))
	assert.Equal(t, want, k.Check(odd))
}

// BenchmarkChecks is what a check of a batch costs in a house of many.
func BenchmarkChecks(b *testing.B) {
	for _, other := range []bool{true, false} {
		name := "the same recipe"
		if other {
			name = "another recipe"
		}
		b.Run(name, func(b *testing.B) {
			r := *batch(b, lantern, ferry)
			k := NewChecks()
			b.ReportAllocs()
			for b.Loop() {
				if other {
					r.Ferm.PitchKgM3 *= 1 + 1e-9
					r.Bill.Lines = slices.Clone(r.Bill.Lines)
					r.Bill.Lines[0].MassKg *= 1 + 1e-9
				}
				k.Check(&r)
			}
		})
	}
}
