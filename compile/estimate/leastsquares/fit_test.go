package leastsquares

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// line is a problem that can be solved with a pencil: y = a + b x, read with a
// standard deviation s.
func line(x, y []float64, s float64, constants ...Constant) *Problem {
	return &Problem{Constants: constants, Residuals: func(v []float64) ([]float64, error) {
		r := make([]float64, len(x))
		for i := range x {
			r[i] = (v[0] + v[1]*x[i] - y[i]) / s
		}
		return r, nil
	}}
}

// A prior is a reading more: mean and prior are weighed by what each is sure of.
func TestPriorIsWeighedAgainstReadings(t *testing.T) {
	p := &Problem{
		Constants: []Constant{{Name: "level", Value: 10, SD: 2}},
		Residuals: func(v []float64) ([]float64, error) { return []float64{v[0] - 13, v[0] - 15}, nil },
	}
	f, err := p.Fit(Options{Tolerance: 1e-9})
	require.NoError(t, err)
	// Weights 1/4, 1 and 1: (10/4 + 13 + 15)/(2 + 1/4).
	assert.InDelta(t, 30.5/2.25, f.Values[0], 1e-9)
	post, err := f.Posterior()
	require.NoError(t, err)
	assert.InDelta(t, 1/math.Sqrt(2.25), post.SD[0], 1e-9)
	assert.InDelta(t, post.SD[0]/2, post.Left[0], 1e-12)
	assert.InDelta(t, 8.0, post.Eigenvalues[0], 1e-9, "two readings of sd 1 against a prior of 2")
}

func TestBoundHoldsAndIsSaid(t *testing.T) {
	x, y := []float64{0, 1, 2, 3}, []float64{1, .5, 0, -.5}
	p := line(x, y, .1, Constant{Name: "a", Value: 2, SD: 5}, Constant{Name: "b", Value: 1, SD: 5, Low: 0, High: 9})
	f, err := p.Fit(Options{Tolerance: 1e-9})
	require.NoError(t, err)
	assert.Equal(t, Converged, f.Status)
	assert.Equal(t, []int{0, -1}, f.AtBound)
	assert.Zero(t, f.Values[1])
	assert.InDelta(t, .25, f.Values[0], .002, "the mean of the readings, but for the prior")

	p = line(x, y, .1, Constant{Name: "a", Value: 2, SD: 5}, Constant{Name: "b", Value: 1, SD: 5, Low: -.6, High: 9})
	f, err = p.Fit(Options{Tolerance: 1e-9})
	require.NoError(t, err)
	assert.Equal(t, []int{0, 0}, f.AtBound, "a bound beyond the best value does nothing")
	assert.InDelta(t, -.5, f.Values[1], .002)
}

// Two constants that only their sum bears on.
func TestWhatReadingsDoNotTell(t *testing.T) {
	p := &Problem{
		Constants: []Constant{{Name: "a", Value: 1, SD: 1}, {Name: "b", Value: 1, SD: 1}, {Name: "c", Value: 1, SD: 1}},
		Residuals: func(v []float64) ([]float64, error) { return []float64{(v[0] + v[1] - 3) / .01, v[2] - 1}, nil },
	}
	f, err := p.Fit(Options{})
	require.NoError(t, err)
	post, err := f.Posterior()
	require.NoError(t, err)
	assert.Equal(t, []Pair{{0, 1, post.Correlation(0, 1)}}, post.Confounded())
	assert.InDelta(t, -1, post.Correlation(0, 1), 1e-4)
	assert.Equal(t, []bool{true, true, true}, []bool{post.Untold(0), post.Untold(1), post.Untold(2)}, "1/√2 of the prior is left")
	assert.InDelta(t, 20000, post.Eigenvalues[0], 1e-6)
	assert.InDelta(t, 1, post.Eigenvalues[1], 1e-9)
	assert.InDelta(t, 0, post.Eigenvalues[2], 1e-6)

	p.Constants[0].Flat, p.Constants[1].Flat = true, true
	f, err = p.Fit(Options{})
	require.NoError(t, err)
	assert.Equal(t, Undetermined, f.Status)
	_, err = f.Posterior()
	assert.Error(t, err)
}

// The rules' levels, on both sides.
func TestLevelsOfTelling(t *testing.T) {
	p := Posterior{Left: []float64{.699, .701}}
	assert.False(t, p.Untold(0))
	assert.True(t, p.Untold(1))
	for c, want := range map[float64]int{.899: 0, .901: 1, -.899: 0, -.901: 1} {
		p := Problem{Constants: []Constant{{SD: 1, Flat: true}, {SD: 1, Flat: true}}}
		root := math.Sqrt(1 - c*c)
		p.Residuals = func(v []float64) ([]float64, error) { return []float64{v[0] - c*v[1], root * v[1]}, nil }
		f, err := p.Fit(Options{})
		require.NoError(t, err)
		post, err := f.Posterior()
		require.NoError(t, err)
		assert.InDelta(t, c, post.Correlation(0, 1), 1e-9)
		assert.Len(t, post.Confounded(), want, "%g", c)
	}
}

// Where the model cannot be computed the search goes round; where it begins it must.
func TestModelThatCannotBeComputed(t *testing.T) {
	p := &Problem{
		Constants: []Constant{{Name: "a", Value: 3, SD: 1}},
		Residuals: func(v []float64) ([]float64, error) {
			if v[0] > 3 {
				return nil, errors.New("boiled over")
			}
			return []float64{(v[0] - 2) / .1}, nil
		},
	}
	f, err := p.Fit(Options{Tolerance: 1e-6})
	require.NoError(t, err)
	assert.Equal(t, Converged, f.Status)
	assert.InDelta(t, 2+1.0/101, f.Values[0], 1e-4)

	p.Constants[0].Value = 4
	_, err = p.Fit(Options{})
	assert.ErrorIs(t, err, errNoStart)

	p.Residuals = func(v []float64) ([]float64, error) { return []float64{math.NaN()}, nil }
	_, err = p.Fit(Options{})
	assert.ErrorIs(t, err, errNoStart)
}

func TestConstantsOutOfOrder(t *testing.T) {
	for _, c := range []Constant{{Name: "a"}, {Name: "a", SD: -1}, {Name: "a", Value: math.NaN(), SD: 1}, {Name: "a", SD: 1, Low: 1, High: 2}} {
		_, err := (&Problem{Constants: []Constant{c}}).Fit(Options{})
		assert.ErrorContains(t, err, "a: ")
	}
}

// A search that begins elsewhere comes to the same end, and one that begins at the end
// is over at once.
func TestStartIsNotThePrior(t *testing.T) {
	x, y := []float64{0, 1, 2, 3}, []float64{1, .5, 0, -.5}
	p := line(x, y, .1, Constant{Name: "a", Value: 2, SD: 5}, Constant{Name: "b", Value: 1, SD: 5})
	f, err := p.Fit(Options{Tolerance: 1e-9})
	require.NoError(t, err)
	g, err := p.Fit(Options{Tolerance: 1e-9, Start: []float64{-3, 4}})
	require.NoError(t, err)
	assert.InDeltaSlice(t, f.Values, g.Values, 1e-9)
	g, err = p.Fit(Options{Tolerance: 1e-6, Start: f.Values})
	require.NoError(t, err)
	assert.Zero(t, g.Steps)
}
