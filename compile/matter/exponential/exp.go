// Package exponential is exp for the rate laws of the kinetics, which ask for it
// tens of thousands of times a batch.
package exponential

import "math"

const (
	parts = 64 // of an octave in the table
	// ln 2/parts in two pieces, the first short enough that its product with a
	// whole number is exact.
	stepHigh = 0x1.62e42fefap-07
	stepLow  = 0x1.cf79abc9e3b3ap-46
)

var octave = func() (t [parts]float64) {
	for i := range t {
		t[i] = math.Exp2(float64(i) / parts)
	}
	return t
}()

// Exp is e to the x, within 1e-15 of it (TestAgainstMath), in two thirds of the
// time of math.Exp: a table of 64 parts of an octave and five terms of the
// series. Where the result would be subnormal or not finite it is math.Exp.
func Exp(x float64) float64 {
	if !(x > -700 && x < 700) {
		return math.Exp(x)
	}
	const whole = 3 << 51 // added, it leaves no room for a fraction
	shifted := float64(x*(parts/math.Ln2)) + whole
	n := shifted - whole
	r := (x - n*stepHigh) - n*stepLow
	k := int64(n)
	// The series in pairs: no term waits for the one after the next.
	r2 := r * r
	p := 1 + (r + r2*((1.0/2+r*(1.0/6))+r2*(1.0/24+r*(1.0/120))))
	return math.Float64frombits(uint64(k>>6+1023)<<52) * (octave[k&(parts-1)] * p)
}
