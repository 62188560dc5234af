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
	full := cellar.Holds{VolumeL: 190}
	c := &cellar.Cellar{Units: "us", On: "2026-06-30", Casks: []cellar.Row{
		{Serial: "C-1", Sample: "2027-01-01", Now: full, Target: &cellar.Target{BottleProof: 94, Then: cellar.Holds{Proof: 93.5}}},
		{Serial: "C-2", Sample: "2027-01-01", Now: full, Target: &cellar.Target{BottleProof: 94, Then: cellar.Holds{Proof: 120}, Kept: true}},
	}}
	assert.Equal(t, []wanted{{"! WEAK", "C-1 (93.5 proof when its rest is over, its bottle asks for 94.0 proof)"}}, (&page{us: true}).wanted(c))
}

// TestEmptyIsNamed: of a cask that should be empty nothing else is asked.
func TestEmptyIsNamed(t *testing.T) {
	c := &cellar.Cellar{Units: "us", On: "2026-06-30", Casks: []cellar.Row{{Serial: "C-1", Sample: "2026-01-01", Target: &cellar.Target{On: "2026-01-01", Over: true}}}}
	assert.Equal(t, []wanted{{"! EMPTY?", "C-1"}}, (&page{us: true}).wanted(c))
	c.Casks[0].Now.VolumeL = 0.1
	assert.Equal(t, []wanted{{"! WEAK", "C-1 (0.0 proof when its rest is over, its bottle asks for 0.0 proof)"}, {"sample", "C-1"}, {"rest over", "C-1"}}, (&page{us: true}).wanted(c))
}

// TestTold: each cask tells when it was topped and when it leaked.
func TestTold(t *testing.T) {
	told := func(us bool, all ...cellar.Told) string { return (&page{us: us}).told(cellar.Row{Told: all}) }
	assert.Empty(t, told(true))
	assert.Equal(t, "It was topped with 1.0 gal on 2026-01-02 and leaked, how much is not written, on 2026-03-04.", told(true, cellar.Told{On: "2026-01-02", What: "topped", VolumeL: 3.802, WineGallons: 1}, cellar.Told{On: "2026-03-04", What: "leaked"}))
	assert.Equal(t, "It leaked 2.0 L on 2026-03-04.", told(false, cellar.Told{On: "2026-03-04", What: "leaked", VolumeL: 2}))
}
