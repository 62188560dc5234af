package why

import (
	"maps"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/measure"
	"newmake/lang/recipe"
)

// slopes are the way that a number must go when an input is nudged. Physics or
// arithmetic says so, whatever the constants.
var slopes = []struct {
	input, value string
	sign         float64
}{
	{"all the grain", "grain", 1}, {"all the grain", "original-gravity", 1}, {"all the grain", "alcohol", 1}, {"all the grain", "liquor-grist", -1},
	{"starch of corn", "starch", 1}, {"starch of corn", "theory", 1}, {"starch of corn", "original-gravity", 1}, {"starch of corn", "alcohol", 1}, {"starch of corn", "hearts", 1},
	{"moisture of corn", "starch", -1}, {"moisture of corn", "hearts", -1},
	{"water 270 gal", "original-gravity", -1}, {"water 270 gal", "wash", 1}, {"water 270 gal", "wash-abv", -1},
	{"gelatinization of corn", "gelatinized", 0}, // it is cooked far above its range
	{"access raw", "gelatinized", -1}, {"access raw", "hearts", -1},
	{"beta half life", "wort-sugar", 1}, {"enzymes of distillers-malt", "wort-sugar", 1}, {"branched", "wort-sugar", -1},
	{"rest 60 min", "mash", 1}, {"heating of the cooker", "mash", -1}, {"cooling area of the cooker", "mash", -1}, {"cooling water of the cooker", "mash", -1}, {"supply of water", "mash", 1},
	{"backset 15 %", "ph", -1}, {"hardness", "ph", 1}, {"raw pH", "ph", 1},
	{"yeast pitched", "dry", -1}, {"growth of the yeast", "dry", -1}, {"time of the ferment", "ferment", 1}, {"ethanol yield", "alcohol", 1},
	{"hold", "peak", 1}, {"ethanol yield", "co2", 1}, {"lactic growth", "ferment-ph", -1},
	{"stripping run to", "low-wines", -1}, {"stripping run to", "low-wines-abv", 1}, {"stripping run to", "pot-ale", 1}, {"stripping run to", "strip", -1},
	{"reflux of the wash still", "low-wines-abv", 1}, {"heating of the wash still", "strip", -1},
	{"hearts to", "hearts", -1}, {"hearts to", "proof", 1}, {"hearts from", "hearts", -1}, {"hearts from", "heads", 1}, {"foreshots", "foreshots", 1},
	{"reflux of the spirit still", "proof", 1}, {"spirit run to", "tails", -1}, {"spirit run to", "lees", 1}, {"heating of the spirit still", "spirit", -1},
	{"elevation", "boil", -1},
	{"entry", "water-to-add", -1}, {"entry", "at-entry", -1}, {"size of the cask", "casks", -1}, {"bottled at", "bottles", -1}, {"rest in wood", "cask-loss", 1},
	{"loss of a later year", "year-4", -1}, {"loss of a later year", "cask-loss", 1}, {"soak of the wood", "year-1", -1},
	{"price of corn", "cost", 1}, {"price of work", "cost-per-proof-gallon", 1},
	{"starch of corn", "yield", 1}, {"ethanol yield", "of-theory", 1}, {"starch of corn", "cost-per-proof-gallon", -1},
}

func TestSlopes(t *testing.T) {
	b := ferry(t)
	compile := compiler()
	a := &asked{b: b, p: compile(b), inUnits: inUnits{measure.US}}
	all := a.nudge(compile, value{stage: inCask, money: true})
	for _, s := range slopes {
		v, ok := a.find(s.value)
		require.True(t, ok, s.value)
		found := false
		for _, n := range all {
			if !strings.HasPrefix(n.knob.name, s.input) {
				continue
			}
			found = true
			then := &n.asked
			change := a.number(v.amount(then)).Value - a.number(v.amount(a)).Value
			switch {
			case s.sign == 0:
				assert.InDelta(t, 0, change, 0.05, "%s %s on %s", n.knob.name, n.knob.by, s.value)
			default:
				assert.Positive(t, s.sign*change, "%s %s on %s: %g", n.knob.name, n.knob.by, s.value, change)
			}
		}
		assert.True(t, found, "nothing nudges %s", s.input)
	}
}

// TestTheGreatestMoveIsWritten: the input that moves a number most stands among what is
// written of it, or of a number that it comes from.
func TestTheGreatestMoveIsWritten(t *testing.T) {
	b := ferry(t)
	compile := compiler()
	a := &asked{b: b, p: compile(b), inUnits: inUnits{measure.US}}
	all := a.nudge(compile, value{stage: inCask, money: true})
	type line struct {
		file string
		n    int
	}
	var written func(v value, seen map[string]bool) map[line]bool
	written = func(v value, seen map[string]bool) map[line]bool {
		out := map[line]bool{}
		seen[v.name] = true
		for _, in := range a.inputs(v.inputs) {
			out[line{in.File, in.Line}] = true
		}
		for _, name := range v.from {
			if from, ok := a.find(name); ok && !seen[from.name] {
				maps.Copy(out, written(from, seen))
			}
		}
		return out
	}
	tried := 0
	for _, v := range a.table() {
		moves := a.moves(v, all)
		if len(moves) == 0 {
			continue
		}
		most := moves[0]
		lines := written(v, map[string]bool{})
		assert.True(t, lines[line{most.File, most.Line}], "%s moves %s most, and nothing that is written of it says so: name it among the inputs of its row in values_*.go, or of one that it comes from", most.Input, v.name)
		tried++
	}
	assert.Greater(t, tried, 50)
}

// What comes later in the work moves nothing earlier: so it need not be tried.
func TestLaterMovesNothingEarlier(t *testing.T) {
	b := ferry(t)
	compile := compiler()
	a := &asked{b: b, p: compile(b), inUnits: inUnits{measure.SI}}
	for _, n := range a.nudge(compile, value{stage: inCask, money: true}) {
		for _, v := range a.table() {
			then := &n.asked
			if v.needs != nil && !v.needs(then) || n.knob.stage <= v.stage && (v.money || !n.knob.money) {
				continue
			}
			assert.Equal(t, v.amount(a), v.amount(then), "%s moves %s", n.knob.name, v.name)
		}
	}
}

// Every knob says where its input is written, in a text that is at hand.
func TestKnobsAreWritten(t *testing.T) {
	for _, b := range batches(t) {
		a := &asked{b: b, p: compiler()(b), inUnits: inUnits{measure.US}}
		seen := map[string]bool{}
		for _, k := range a.knobs() {
			assert.NotEmpty(t, k.by, k.name)
			assert.False(t, k.at.IsZero() && !strings.Contains(k.name, " of the "), "%s of %s stands nowhere", k.name, b.Name)
			key := k.name + k.by + place("", k.at).File + string(rune(place("", k.at).Line))
			assert.False(t, seen[key], "%s twice in %s", k.name, b.Name)
			seen[key] = true
		}
	}
}

// A point more of one grain takes from the others; the total stays.
func TestMoreOf(t *testing.T) {
	b := ferry(t).Clone()
	total, corn := b.Bill.TotalKg, b.Bill.Lines[0].MassKg
	moreOf(b, 0)
	sum := 0.0
	for _, l := range b.Bill.Lines {
		sum += l.MassKg
	}
	assert.InDelta(t, total, sum, 1e-9)
	assert.InDelta(t, corn+0.01*total, b.Bill.Lines[0].MassKg, 1e-9)
	alone := &recipe.Batch{Bill: recipe.Bill{TotalKg: 5, Lines: []recipe.BillLine{{MassKg: 5}}}}
	moreOf(alone, 0)
	assert.Equal(t, 5.0, alone.Bill.Lines[0].MassKg)
}
