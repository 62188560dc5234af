package accuracy

import (
	"math"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/estimate/leastsquares"
	"newmake/lang/testflag"
)

// The library's constants are near what least squares give of the same rows: none is
// further off than the rows tell, and no row much worse.
func TestLibraryIsNearTheFit(t *testing.T) {
	f, err := unfittedMash()
	require.NoError(t, err)
	for i, row := range f.rows {
		assert.Less(t, math.Abs(f.before[i]), 2.0, "%s: the library is off by so many standard deviations", row.what)
	}
	if testflag.Every(2) != 1 {
		return // the fit takes seconds
	}
	f, err = mashFitted()
	require.NoError(t, err)
	fit, known := f.fit, f.known
	assert.Equal(t, leastsquares.Converged, fit.Status)
	assert.Less(t, fit.ReadingsSum, sumOfSquares(f.before))
	for i, c := range f.problem.Constants {
		require.NotZero(t, c.Value, c.Name)
		assert.Less(t, math.Abs(c.Value-fit.Values[i]), 1.5*known.SD[i], c.Name)
	}
}

// The fit finds the lives of beta-amylase again from a library that is off by a third.
func TestFitFindsItsWayBack(t *testing.T) {
	names := []string{"beta-half-life", "beta-tail", "beta-tail-half-life"}
	p := mashProblem(names, targets()[:3], 10) // hardly anything known beforehand
	near, err := p.Fit(leastsquares.Options{})
	require.NoError(t, err)
	off := []float64{p.Constants[0].Value * 1.3, p.Constants[1].Value * 0.7, p.Constants[2].Value * 1.3}
	far, err := p.Fit(leastsquares.Options{Start: off})
	require.NoError(t, err)
	for i, name := range names {
		assert.InEpsilon(t, near.Values[i], far.Values[i], 0.02, name)
	}
	assert.Less(t, far.ReadingsSum, 0.5, "well within the rows' own scatter")
}

// mashFitted is the fit, made once for those who read it.
var mashFitted = sync.OnceValues(fitMash)

func TestFitMashPrints(t *testing.T) {
	if testflag.Every(2) != 1 {
		t.Skip("the fit takes seconds: -all")
	}
	var one, two strings.Builder
	f, err := mashFitted()
	require.NoError(t, err)
	f.write(&one)
	require.NoError(t, FitMash(&two))
	assert.Equal(t, one.String(), two.String(), "the same each time")
	for _, name := range fitted {
		assert.Contains(t, one.String(), name)
	}
	for _, row := range targets() {
		assert.Contains(t, one.String(), row.what)
		assert.Contains(t, one.String(), row.source)
	}
}
