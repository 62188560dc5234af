package drift

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Montgomery, Introduction to Statistical Quality Control, Table 9.1: 20 readings of
// mean 10 and standard deviation 1, and 10 of mean 11.
var table91 = []float64{
	9.45, 7.99, 9.29, 11.66, 12.16, 10.18, 8.04, 11.46, 9.20, 10.34,
	9.03, 11.47, 10.51, 9.40, 10.08, 9.37, 10.62, 10.31, 8.52, 10.84,
	10.90, 9.33, 12.29, 11.50, 10.60, 11.08, 10.38, 11.62, 11.31, 10.52,
}

// usual is tuned to a shift of one standard deviation: a false alarm in about 465
// readings, a shift found in about 10 (Montgomery, Table 9.3).
var usual = Cusum{Slack: .5, Limit: 5}

func offs() []float64 {
	z := make([]float64, len(table91))
	for i, x := range table91 {
		z[i] = x - 10
	}
	return z
}

// Montgomery, Table 9.2: the sums, to the two decimals printed.
func TestTabularCusum(t *testing.T) {
	above := []float64{0, 0, 0, 1.16, 2.82, 2.50, .04, 1.00, 0, 0, 0, .97, .98, 0, 0, 0, .12, 0, 0, .34, .74, 0, 1.79, 2.79, 2.89, 3.47, 3.35, 4.47, 5.28, 5.30}
	below := []float64{.05, 1.56, 1.77, 0, 0, 0, 1.46, 0, .30, 0, .47, 0, 0, .10, 0, .13, 0, 0, .98, 0, 0, .17, 0, 0, 0, 0, 0, 0, 0, 0}
	sums := usual.Run(offs())
	for i, s := range sums {
		assert.InDelta(t, above[i], s.Above, 1e-9, "C+ of period %d", i+1)
		assert.InDelta(t, below[i], s.Below, 1e-9, "C- of period %d", i+1)
	}
	assert.Equal(t, 7, sums[28].AboveN, "N+ of period 29")

	shift, found := usual.First(offs())
	assert.True(t, found)
	assert.Equal(t, 29, shift.At+1)
	assert.Equal(t, 23, shift.Since+1, "after period 22")
	assert.InDelta(t, 11.25, 10+shift.By, .005, "the new mean")

	mirrored := offs()
	for i := range mirrored {
		mirrored[i] = -mirrored[i]
	}
	down, found := usual.First(mirrored)
	assert.True(t, found)
	assert.Equal(t, Shift{shift.At, shift.Since, -shift.By}, down)

	_, found = usual.First(offs()[:28])
	assert.False(t, found, "4.47 is below the limit of 5")
}

// Average run lengths by Siegmund's approximation. The exact ones of Montgomery's
// Table 9.3 for a limit of 5 are 465, 38.0 and 10.4 (from memory): the approximation
// is 1 % off them at most.
func TestRunLength(t *testing.T) {
	for _, c := range []struct{ limit, shift, want float64 }{
		{5, 0, 469.1}, {5, .5, 38.0}, {5, 1, 10.3}, {5, 2, 3.9},
		{4, 0, 169.0}, {4, .5, 26.6}, {4, 1, 8.3}, {4, 2, 3.2},
	} {
		assert.InDelta(t, c.want, Cusum{.5, c.limit}.RunLength(c.shift), .05, "%+v", c)
		assert.Equal(t, Cusum{.5, c.limit}.RunLength(c.shift), Cusum{.5, c.limit}.RunLength(-c.shift))
	}
	for shift, book := range map[float64]float64{0: 465, .5: 38.0, 1: 10.4} {
		assert.InEpsilon(t, book, usual.RunLength(shift), .01)
	}
}
