// Package monotone draws a smooth curve through the rows of a table that rises
// and falls only where the table does: a published table is met at every row, and
// between rows nothing is invented.
//
// It is a piecewise cubic with a continuous slope. The slope at a row is the
// weighted harmonic mean of those on either side, 0 where they part in sign
// (Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300); at the ends it is
// that of the parabola through three rows, held to the bounds that keep a cubic
// monotone (Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238).
package monotone

import (
	"fmt"
	"math"
	"slices"
)

// Curve is a fitted curve. It may be used from several goroutines.
type Curve struct {
	x, y  []float64
	cubic [][3]float64 // of each interval, the coefficients of dx, dx² and dx³
}

// Fit draws a curve through two rows or more, in rising x.
func Fit(x, y []float64) (Curve, error) {
	if len(x) < 2 || len(x) != len(y) {
		return Curve{}, fmt.Errorf("a curve wants two points or more, each with both numbers, not %d and %d", len(x), len(y))
	}
	for i := range x[1:] {
		if !(x[i+1] > x[i]) {
			return Curve{}, fmt.Errorf("a curve's points must rise: %g stands before %g", x[i], x[i+1])
		}
	}
	c := Curve{x: slices.Clone(x), y: slices.Clone(y), cubic: make([][3]float64, len(x)-1)}
	slope := slopes(x, y)
	for i := range c.cubic {
		dx, dy := x[i+1]-x[i], y[i+1]-y[i]
		c.cubic[i] = [3]float64{
			slope[i],
			(3*dy - (2*slope[i]+slope[i+1])*dx) / dx / dx,
			(-2*dy + (slope[i]+slope[i+1])*dx) / dx / dx / dx,
		}
	}
	return c, nil
}

// Must is Fit for a table that stands in the program. It panics if that is out of
// order.
func Must(x, y []float64) Curve {
	c, err := Fit(x, y)
	if err != nil {
		panic(err)
	}
	return c
}

// At is the curve's value. Before the first row and after the last it stands
// still.
func (c *Curve) At(x float64) float64 {
	i, met := slices.BinarySearch(c.x, x)
	switch {
	case met:
		return c.y[i]
	case i == 0:
		return c.y[0]
	case i == len(c.x):
		return c.y[i-1]
	}
	a, dx := c.cubic[i-1], x-c.x[i-1]
	return ((a[2]*dx+a[1])*dx+a[0])*dx + c.y[i-1]
}

// StartSlope is the curve's slope at its first row, to go on from there in a line.
func (c *Curve) StartSlope() float64 { return c.cubic[0][0] }

// slopes are those of the curve at each row.
func slopes(x, y []float64) []float64 {
	n := len(x)
	chord := make([]float64, n-1)
	for i := range chord {
		chord[i] = (y[i+1] - y[i]) / (x[i+1] - x[i])
	}
	if n == 2 {
		return []float64{chord[0], chord[0]}
	}
	out := make([]float64, n)
	for i := 1; i < n-1; i++ {
		if chord[i]*chord[i-1] > 0 {
			out[i] = 3 * (x[i+1] - x[i-1]) / ((2*x[i+1]-x[i-1]-x[i])/chord[i-1] + (x[i+1]+x[i]-2*x[i-1])/chord[i])
		}
	}
	out[0] = endSlope(chord[0], chord[1], x[1]-x[0], x[2]-x[0])
	out[n-1] = endSlope(chord[n-2], chord[n-3], x[n-1]-x[n-2], x[n-1]-x[n-3])
	return out
}

// endSlope is the slope at an end. near and next are the chords beside it, first
// and both the lengths of the first interval and of the first two.
func endSlope(near, next, first, both float64) float64 {
	slope := ((first+both)*near - first*next) / both
	switch {
	case slope*near <= 0:
		return 0
	case near*next <= 0 && math.Abs(slope) > 3*math.Abs(near):
		return 3 * near
	}
	return slope
}
