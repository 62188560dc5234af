package racked

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/book/cellar"
)

// TestNoFormula: a serial that begins like a formula is a text to a spreadsheet.
func TestNoFormula(t *testing.T) {
	var b strings.Builder
	c := &cellar.Cellar{Casks: []cellar.Row{{Serial: "=1+1", Place: "+loft", Verdict: "@bottle"}}}
	require.NoError(t, CSV(&b, c))
	row := strings.Split(b.String(), "\n")[1]
	assert.True(t, strings.HasPrefix(row, "'=1+1,"), row)
	assert.Contains(t, row, "'+loft")
	assert.Contains(t, row, "'@bottle")
}

// A cask that will be too weak for its bottle is named; one that is strong enough is not.
func TestWeakIsNamed(t *testing.T) {
	c := &cellar.Cellar{Units: "us", On: "2026-06-30", Casks: []cellar.Row{
		{Serial: "C-1", Sample: "2027-01-01", Target: &cellar.Target{BottleProof: 94, Then: cellar.Holds{Proof: 93.5}}},
		{Serial: "C-2", Sample: "2027-01-01", Target: &cellar.Target{BottleProof: 94, Then: cellar.Holds{Proof: 120}, Kept: true}},
	}}
	assert.Equal(t, []wanted{{"! WEAK", "C-1 (93.5 proof when its rest is over, its bottle asks for 94.0 proof)"}}, (&page{us: true}).wanted(c))
}
