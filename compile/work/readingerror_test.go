package work

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/plan"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// A reading error is at least the instrument's part, and each
// other part of it has its reason.
func TestReadingErrorsHaveReasons(t *testing.T) {
	seen := map[string]bool{}
	for _, b := range ReadingErrors() {
		assert.False(t, seen[b.Of], b.Of)
		seen[b.Of] = true
		assert.Positive(t, b.Instrument(100), b.Of)
		assert.NotEmpty(t, b.InstrumentWhy(), b.Of)
		assert.GreaterOrEqual(t, b.At(100), b.Instrument(100), b.Of)
		for _, p := range b.Parts {
			assert.NotEmpty(t, p.Why, b.Of)
			assert.Positive(t, p.Abs+p.Share, b.Of)
			assert.Greater(t, b.At(100), p.Abs+100*p.Share, b.Of)
		}
	}
}

// Independent errors add as squares: 3 and 4 make 5. No instrument weighs light.
func TestReadingErrorsAddAsSquares(t *testing.T) {
	b := ReadingError{Unit: plan.Each, Parts: []Part{{Abs: 3}, {Share: 0.04}}}
	assert.InDelta(t, 5, b.At(100), 1e-9)
	assert.InDelta(t, 3, b.At(0), 1e-9)
}

// TestInstrument: by hand, from what a review allows the same readings. A thermometer
// that nobody has checked, of 0.5 C divisions: 0.5/(2 sqrt 3) and 0.3 of reading it, 0.4
// that it is always off by; a spirit hydrometer: 0.2 % and 0.1 of reading, 0.3 off.
func TestInstrument(t *testing.T) {
	half := math.Sqrt(3) * 2
	assert.InDelta(t, 1.6449*math.Sqrt(0.25/half/half+0.09+0.16), MashC.Instrument(60), 1e-4)
	assert.InDelta(t, 1.6449*math.Sqrt(0.04/half/half+0.01+0.09), HeartsStrength.Instrument(70), 1e-4)
	assert.InDelta(t, 1.6449*math.Hypot(1, 1.5), SetVolume.Instrument(100), 1e-3)
	assert.Equal(t, record.PH, PH.Kind)
}

// Feints hang on the equilibrium most, and what is measured out least.
func TestFeintsCoverTheModel(t *testing.T) {
	assert.Greater(t, FeintsVolume.At(100), 8.0)
	assert.Less(t, FeintsVolume.At(100), 10.0)
	assert.Less(t, SetVolume.At(100), 4.0)
}

// A small can of foreshots, 150 mL, is still read no better than its jug.
func TestSmallMeasure(t *testing.T) {
	assert.Greater(t, SetVolume.At(0.15), 0.01)
	assert.Less(t, SetVolume.At(0.15), 0.02)
}

// Every one that is declared here is in the list, by which its reasons are asked for.
func TestReadingErrorsAreListed(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "readingerror.go", nil, 0)
	require.NoError(t, err)
	declared := 0
	ast.Inspect(file, func(n ast.Node) bool {
		if spec, ok := n.(*ast.ValueSpec); ok && len(spec.Values) == 1 {
			if lit, ok := spec.Values[0].(*ast.CompositeLit); ok {
				if of, ok := lit.Type.(*ast.Ident); ok && of.Name == "ReadingError" {
					declared++
				}
			}
		}
		return true
	})
	assert.Len(t, ReadingErrors(), declared)
}

// What is measured out is as sure as its measure: heads end at a volume, or where the
// strength says.
func TestVolumeOfAFraction(t *testing.T) {
	volume, strength := recipe.Cut{By: recipe.ByVolume}, recipe.Cut{By: recipe.ByStrength}
	for _, c := range []struct {
		fraction string
		from, to recipe.Cut
		want     ReadingError
	}{
		{still.LowWines, volume, volume, LowWinesVolume},
		{still.Foreshots, strength, strength, SetVolume},
		{still.Heads, volume, strength, SetVolume},
		{still.Heads, strength, strength, FeintsVolume},
		{still.Heads, recipe.Cut{By: recipe.ByShare}, strength, FeintsVolume},
		{still.Hearts, volume, volume, SetVolume},
		{still.Hearts, volume, strength, HeartsVolume},
		{still.Hearts, strength, volume, HeartsVolume},
		{still.Tails, volume, volume, FeintsVolume},
	} {
		assert.Equal(t, c.want.Of, VolumeOf(c.fraction, recipe.Spirit{HeartsFrom: c.from, HeartsTo: c.to}).Of, "%s %v %v", c.fraction, c.from.By, c.to.By)
	}
}
