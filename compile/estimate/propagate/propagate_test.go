package propagate

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// JCGM 100:2008, H.2: resistance, reactance and impedance from five simultaneous
// readings, which are correlated. Results as in Table H.4.
func TestSimultaneousReadings(t *testing.T) {
	reads := [][]float64{
		{5.007, 4.994, 5.005, 4.990, 4.999},
		{.019663, .019639, .019640, .019685, .019678},
		{1.0456, 1.0438, 1.0468, 1.0428, 1.0433},
	}
	in := make([]float64, 3)
	covariance := make([][]float64, 3)
	for i := range in {
		in[i] = stat.Mean(reads[i], nil)
		covariance[i] = make([]float64, 3)
		for j := range in {
			covariance[i][j] = stat.Covariance(reads[i], reads[j], nil) / 5
		}
	}
	correlation := func(c [][]float64, i, j int) float64 { return c[i][j] / math.Sqrt(c[i][i]*c[j][j]) }
	assert.InDelta(t, -.36, correlation(covariance, 0, 1), .005, "Table H.2 prints two decimals")
	assert.InDelta(t, .86, correlation(covariance, 0, 2), .005)
	assert.InDelta(t, -.65, correlation(covariance, 1, 2), .005)

	out, of := Linear(func(x []float64) []float64 {
		z := x[0] / x[1]
		return []float64{z * math.Cos(x[2]), z * math.Sin(x[2]), z}
	}, in, covariance)
	for i, want := range []struct{ value, u float64 }{{127.732, .071}, {219.847, .295}, {254.260, .236}} {
		assert.InDelta(t, want.value, out[i], 5e-4)
		assert.InDelta(t, want.u, math.Sqrt(of[i][i]), 8e-4, "0.2956 is printed as 0.295")
	}
	assert.InDelta(t, -.588, correlation(of, 0, 1), 5e-4)
	assert.InDelta(t, -.485, correlation(of, 0, 2), 5e-4)
	assert.InDelta(t, .993, correlation(of, 1, 2), 5e-4)
}

// JCGM 100:2008, H.1: the length of an end gauge. Nanometres and kelvins.
func TestEndGauge(t *testing.T) {
	const length = 50.000623e6
	in := []float64{length, 215, 0, -.1, 11.5e-6, 0} // standard, difference, of expansion, temperature, expansion, of temperature
	sds := []float64{25, 9.7, .58e-6, .41, 1.2e-6, .029}
	covariance := make([][]float64, len(in))
	for i := range covariance {
		covariance[i] = make([]float64, len(in))
		covariance[i][i] = sds[i] * sds[i]
	}
	// Equation H.2, with the products of two small numbers that the slopes do not see.
	out, of := Linear(func(x []float64) []float64 {
		return []float64{x[0] + x[1] - x[0]*(x[2]*x[3]+x[4]*x[5])}
	}, in, covariance)
	assert.InDelta(t, 50.000838, out[0]/1e6, 5e-7)
	u := math.Sqrt(of[0][0])
	assert.InDelta(t, 32, u, .5)

	freedom := Freedom([]float64{25, 9.7, 2.9, 16.6}, []float64{18, 25.6, 50, 2})
	assert.InDelta(t, 16.7, freedom, .1, "H.1.6 prints 16.7; from the parts as printed it is 16.6")
	k := distuv.StudentsT{Nu: math.Floor(freedom), Sigma: 1}.Quantile(.995)
	assert.InDelta(t, 2.92, k, .005, "t of 99 % with 16 degrees of freedom")
	assert.InDelta(t, 93, k*u, .8, "H.1.6: 2.92 x 32 nm = 93 nm")
}

// draw gives sorted draws of a calculation, and their standard deviation.
func draw(n int, one func(r *rand.Rand) float64) (draws []float64, sd float64) {
	r := rand.New(rand.NewPCG(101, 2008))
	draws = make([]float64, n)
	for i := range draws {
		draws[i] = one(r)
	}
	slices.Sort(draws)
	return draws, stat.StdDev(draws, nil)
}

func rectangular(r *rand.Rand, low, high float64) float64 { return low + (high-low)*r.Float64() }

// JCGM 101:2008, 9.2: sums of four quantities.
func TestAdditive(t *testing.T) {
	const n = 1_000_000
	root3 := math.Sqrt(3)
	for _, c := range []struct {
		clause      string
		one         func(r *rand.Rand) float64
		u, end, tol float64
	}{
		{"9.2.2 normal", func(r *rand.Rand) float64 {
			return r.NormFloat64() + r.NormFloat64() + r.NormFloat64() + r.NormFloat64()
		}, 2.00, 3.92, .015},
		{"9.2.3 rectangular", func(r *rand.Rand) float64 {
			return rectangular(r, -root3, root3) + rectangular(r, -root3, root3) + rectangular(r, -root3, root3) + rectangular(r, -root3, root3)
		}, 2.00, 3.88, .015},
		{"9.2.4 one much wider", func(r *rand.Rand) float64 {
			return rectangular(r, -root3, root3) + rectangular(r, -root3, root3) + rectangular(r, -root3, root3) + rectangular(r, -10*root3, 10*root3)
		}, 10.1, 17.0, .05},
	} {
		draws, sd := draw(n, c.one)
		assert.InDelta(t, c.u, sd, .05*c.u/2+.005, c.clause)
		low, high := Central(draws, .95)
		assert.InDelta(t, -c.end, low, c.tol, c.clause)
		assert.InDelta(t, c.end, high, c.tol, c.clause)
	}
}

// JCGM 101:2008, 9.3: calibration of a weight, in mg off 100 g. By the slopes the
// uncertainty comes out far too small, which is why the supplement prints it.
func TestMassCalibration(t *testing.T) {
	off := func(reference, small, air, weight, standard float64) float64 {
		return (reference+small)*(1+(air-1.2)*(1/weight-1/standard)) - 100_000
	}
	draws, sd := draw(1_000_000, func(r *rand.Rand) float64 {
		return off(100_000+.050*r.NormFloat64(), 1.234+.020*r.NormFloat64(), rectangular(r, 1.10, 1.30), rectangular(r, 7000, 9000), rectangular(r, 7950, 8050))
	})
	assert.InDelta(t, 1.2341, stat.Mean(draws, nil), 5e-4)
	assert.InDelta(t, .0754, sd, 3e-4)
	// The distribution is symmetric, so both intervals are the one that is printed. Where
	// the shortest one lies, a million draws tell to a few thousandths, how long it
	// is, far better.
	low, high := Central(draws, .95)
	assert.InDelta(t, 1.0834, low, 1e-3)
	assert.InDelta(t, 1.3825, high, 1e-3)
	low, high = Shortest(draws, .95)
	assert.InDelta(t, 1.3825-1.0834, high-low, 5e-4)
	assert.InDelta(t, (1.3825+1.0834)/2, (high+low)/2, 5e-3)

	sds := []float64{.050, .020, .1 / math.Sqrt(3), 1000 / math.Sqrt(3), 50 / math.Sqrt(3)}
	covariance := make([][]float64, 5)
	for i := range covariance {
		covariance[i] = make([]float64, 5)
		covariance[i][i] = sds[i] * sds[i]
	}
	out, of := Linear(func(x []float64) []float64 {
		return []float64{off(x[0], x[1], x[2], x[3], x[4])}
	}, []float64{100_000, 1.234, 1.2, 8000, 8000}, covariance)
	assert.InDelta(t, 1.2340, out[0], 5e-5)
	u := math.Sqrt(of[0][0])
	assert.InDelta(t, .0539, u, 5e-5)
	assert.InDelta(t, 1.1285, out[0]-1.96*u, 2e-4)
	assert.InDelta(t, 1.3395, out[0]+1.96*u, 2e-4)
}

func TestIntervalsOfFewDraws(t *testing.T) {
	low, high := Shortest([]float64{0, 5, 6, 7, 20}, .5)
	assert.Equal(t, []float64{0, 7}, []float64{low, high}, "three of five draws apart holds four")
	low, high = Shortest(nil, .95)
	assert.True(t, math.IsNaN(low) && math.IsNaN(high))
	low, high = Central(nil, .95)
	assert.True(t, math.IsNaN(low) && math.IsNaN(high))
	low, high = Shortest([]float64{3}, .95)
	assert.Equal(t, []float64{3, 3}, []float64{low, high})
}
