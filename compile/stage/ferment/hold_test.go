package ferment

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func at(tempsC ...float64) Result {
	var r Result
	for i, t := range tempsC {
		r.Curve = append(r.Curve, Point{TimeS: float64(i) * hourS, TempC: t})
	}
	return r
}

// Where a ferment leaves its hold, either way, and where it does not.
func TestLeaves(t *testing.T) {
	for name, c := range map[string]struct {
		temps        []float64
		above, below []float64 // hour of the first, and the farthest temperature
	}{
		"held":              {temps: []float64{26, 31, 25}},
		"within the margin": {temps: []float64{26, 31.99, 24.01}},
		"above":             {temps: []float64{26, 32.01, 33, 30}, above: []float64{1, 33}},
		"below at the end":  {temps: []float64{26, 30, 23.99, 22}, below: []float64{2, 22}},
		"both":              {temps: []float64{26, 34, 20}, above: []float64{1, 34}, below: []float64{2, 20}},
		"colder on its way": {temps: []float64{20, 22, 28}},
		"never there":       {temps: []float64{20, 22, 21}, below: []float64{0, 20}},
		"no points":         {},
	} {
		r := at(c.temps...)
		above, below := r.Leaves(25, 31)
		for _, side := range []struct {
			got  *Leaving
			want []float64
		}{{above, c.above}, {below, c.below}} {
			if side.want == nil {
				assert.Nil(t, side.got, name)
				continue
			}
			if assert.NotNil(t, side.got, name) {
				assert.Equal(t, side.want, []float64{side.got.First.TimeS / hourS, side.got.Farthest.TempC}, name)
			}
		}
	}
	r := at(50)
	above, below := r.Leaves(0, 0)
	assert.Nil(t, above, "it is not held")
	assert.Nil(t, below)
}
