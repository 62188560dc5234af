package constants

import "math"

// Shape is how a prior is spread.
type Shape uint8

const (
	Normal    Shape = iota // cut off at Low and High
	Lognormal              // of what is above nothing; cut off likewise
)

// Prior is what is known of a constant before any run.
type Prior struct {
	Shape     Shape
	Mean, SD  float64 // of the shape before it is cut off
	Low, High float64 // physical bounds: beyond them it cannot be
}

// NineInTen is how many standard deviations on either side of the mean hold 9 times
// in 10, of a normal: the language states an uncertainty so.
const NineInTen = 1.6448536269514722

// At is the figure that lies z standard deviations from the middle: a normal z gives
// the prior, before it is cut off.
func (p Prior) At(z float64) float64 {
	if p.Shape == Normal {
		return p.Mean + z*p.SD
	}
	s := p.logSD()
	return p.Mean * math.Exp(s*z-s*s/2)
}

// Z is At turned round.
func (p Prior) Z(x float64) float64 {
	if p.Shape == Normal {
		return (x - p.Mean) / p.SD
	}
	s := p.logSD()
	return (math.Log(x/p.Mean) + s*s/2) / s
}

// logSD is the standard deviation of the logarithm.
func (p Prior) logSD() float64 {
	r := p.SD / p.Mean
	return math.Sqrt(math.Log1p(r * r))
}

// Holds reports whether a figure is one that can be.
func (p Prior) Holds(x float64) bool { return x >= p.Low && x <= p.High }

// Range is the figures within which the prior lies 9 times in 10, bounds regarded.
func (p Prior) Range() (low, high float64) {
	return min(max(p.At(-NineInTen), p.Low), p.High), max(min(p.At(NineInTen), p.High), p.Low)
}
