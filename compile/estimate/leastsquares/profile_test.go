package leastsquares

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// In a straight line the profile is the curvature. In a bent one it is the interval that is
// found by fitting the other constant anew at each place.
func TestProfile(t *testing.T) {
	x := []float64{1, 2, 3, 5, 7, 10}
	y := []float64{109, 149, 149, 191, 213, 224} // NIST StRD, BoxBOD
	const noise = 17.0
	bent := &Problem{
		Constants: []Constant{{Name: "b1", Value: 200, SD: 60}, {Name: "b2", Value: .7, SD: .5, Low: 0, High: 10}},
		Residuals: func(b []float64) ([]float64, error) {
			r := make([]float64, len(x))
			for i := range x {
				r[i] = (b[0]*(1-math.Exp(-b[1]*x[i])) - y[i]) / noise
			}
			return r, nil
		},
	}
	f, err := bent.Fit(Options{Tolerance: 1e-6})
	require.NoError(t, err)
	post, err := f.Posterior()
	require.NoError(t, err)
	// The sum at a rate, least over b1: a line in b1.
	least := func(rate float64) float64 {
		a, b := 1/(60.0*60), 200/(60.0*60)
		for i := range x {
			g := (1 - math.Exp(-rate*x[i])) / noise
			a, b = a+g*g, b+g*y[i]/noise
		}
		r, _ := bent.Residuals([]float64{b / a, rate})
		return squares(r) + math.Pow((b/a-200)/60, 2) + math.Pow((rate-.7)/.5, 2)
	}
	const rise = 2.7055
	crossing := func(in, out float64) float64 {
		for range 60 {
			if mid := (in + out) / 2; least(mid) < f.ReadingsSum+f.PriorSum+rise {
				in = mid
			} else {
				out = mid
			}
		}
		return in
	}
	low, high, err := f.Profile(post, 1, rise)
	require.NoError(t, err)
	wantLow, wantHigh := crossing(f.Values[1], .05), crossing(f.Values[1], 5)
	width := wantHigh - wantLow
	assert.InDelta(t, wantLow, low, .03*width)
	assert.InDelta(t, wantHigh, high, .03*width)
	by := post.SD[1] * math.Sqrt(rise)
	assert.Greater(t, wantHigh-f.Values[1], 1.1*by, "it reaches farther up than the curvature says")
	assert.Greater(t, math.Abs(f.Values[1]+by-wantHigh), 3*math.Abs(high-wantHigh), "and the profile knows")

	straight := &Problem{
		Constants: []Constant{{Name: "a", Value: 1, SD: 2}, {Name: "b", Value: 0, SD: 1}},
		Residuals: func(b []float64) ([]float64, error) {
			return []float64{b[0] + b[1] - 2, 2*b[0] - b[1] - 1, b[1] - .5}, nil
		},
	}
	f, err = straight.Fit(Options{Tolerance: 1e-9})
	require.NoError(t, err)
	post, err = f.Posterior()
	require.NoError(t, err)
	for j := range f.Values {
		low, high, err := f.Profile(post, j, rise)
		require.NoError(t, err)
		assert.InDelta(t, f.Values[j]-post.SD[j]*math.Sqrt(rise), low, 1e-6)
		assert.InDelta(t, f.Values[j]+post.SD[j]*math.Sqrt(rise), high, 1e-6)
	}

	// Beyond a bound nothing is looked for.
	straight.Constants[1].Low, straight.Constants[1].High = -.1, 5
	f, err = straight.Fit(Options{Tolerance: 1e-9})
	require.NoError(t, err)
	low, _, err = f.Profile(post, 1, rise)
	require.NoError(t, err)
	assert.InDelta(t, -.1, low, 1e-9)
}
