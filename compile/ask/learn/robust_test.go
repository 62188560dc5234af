package learn

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/testflag"
)

// Huber's weights: the whole up to 1.345 standard deviations, from there on as the distance.
func TestWeight(t *testing.T) {
	assert.Equal(t, 1.0, weight(0))
	assert.Equal(t, 1.0, weight(1.345))
	assert.Equal(t, 1.0, weight(-1.345))
	assert.Less(t, weight(1.346), 1.0)
	assert.InDelta(t, .5, weight(2.69), 1e-12)
	assert.InDelta(t, .5, weight(-2.69), 1e-12)
}

// Where one reading in ten is read four times as badly as is thought, which no test for gross
// errors finds, the constants are nearer the truth with readings weighed; where all are read as
// well as is thought they are nearly as near: Huber's figure keeps 95 parts in 100 of what a mean
// is told (here at least 95 are asked for).
func TestRobust(t *testing.T) {
	const runs = 3
	houses := 60 / testflag.Every(3)
	for _, c := range []struct {
		name  string
		worse float64 // how badly the tenth reading is read
		holds func(plain, robust float64) bool
	}{
		{"one in ten read badly", 4, func(plain, robust float64) bool { return robust < .97*plain }},
		{"all read as is thought", 1, func(plain, robust float64) bool { return robust < plain/.95 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			plain, robust := 0.0, 0.0
			for seed := range uint64(houses) {
				r := rand.New(rand.NewPCG(64, seed))
				tr := newTrial(r, runs)
				for k := range tr.runs {
					readings := slices.Clone(tr.runs[k].Readings)
					for i := range readings {
						if more := math.Sqrt(c.worse*c.worse - 1); r.Float64() < .1 {
							readings[i].Said += more * readings[i].SD * r.NormFloat64()
						}
					}
					tr.runs[k].Readings = readings
				}
				off := func(o Options) (sum float64) {
					l, err := From(tr.runs, reducedInstruments(), o)
					require.NoError(t, err)
					assert.Equal(t, o.Robust, l.Robust)
					assert.True(t, o.Robust || len(l.Eased) == 0)
					truth := slices.Concat(tr.house, tr.off)
					for i, f := range l.Found {
						z := f.Z - f.Prior.Z(truth[i])
						sum += z * z
					}
					return sum
				}
				plain, robust = plain+off(Options{}), robust+off(Options{Robust: true})
			}
			assert.True(t, c.holds(plain, robust), "mean square of errors %.4f, weighed %.4f", plain, robust)
			t.Logf("mean square of errors %.4f, weighed %.4f", plain/float64(houses), robust/float64(houses))
		})
	}
}
