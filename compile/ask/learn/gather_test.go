package learn

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/made"
	"newmake/lang/record"
)

// Nothing is learned from a volume of nothing; from the least of something it is.
func TestVolumesOfNothingAreLeftOut(t *testing.T) {
	var g gathering
	all := []made.Reading{
		{Words: "volume of the hearts", What: record.Volume, Said: 0},
		{Words: "volume of the feints", What: record.Volume, Said: 1e-6},
		{Words: "temperature at 24 h", What: record.Temperature, Said: 0},
	}
	assert.Equal(t, all[1:], g.something("26-01", append([]made.Reading(nil), all...)))
	assert.Equal(t, []string{`run "26-01": nothing is learned from the volume of the hearts: it says 0`}, g.Notes)
	g = gathering{}
	g.something("26-01", append([]made.Reading(nil), all[1:]...))
	assert.Empty(t, g.Notes)
}

// Runs whose readings are the same to the last digit are named; a digit makes the difference.
func TestCopiesOfARunAreSaid(t *testing.T) {
	run := func(number string, said float64) Run {
		return Run{Number: number, Readings: []Reading{{Words: "gravity at 24 h", Said: 1.021}, {Words: "volume of the hearts", Said: said}}}
	}
	var g gathering
	g.Runs = []Run{run("1", 0.17), run("2", 0.1700001), run("3", 0.17), run("4", 0.17)}
	g.copies()
	assert.Equal(t, []string{"runs 1, 3 and 4 have the same readings to the last digit: if one is a copy of another, leave it out with --without; what is learned looks surer than it is"}, g.Notes)
	g = gathering{}
	g.Runs = []Run{run("1", 0.17), run("2", 0.1700001)}
	g.copies()
	assert.Empty(t, g.Notes)
}
