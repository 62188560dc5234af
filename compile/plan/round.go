package plan

import "math"

// Round rounds every number of the plan to the places its field states. After
// it, printing cannot show a difference that the models do not have, and the
// last bit of a float, which one processor may compute otherwise than another,
// is gone. The methods round and noNumber are written out from the tags: a plan
// has some ten thousand numbers, and an editor wants one at each keystroke.
func (p *Plan) Round() { p.round() }

// NoNumber gives the name of a field that is NaN or infinite, "" if every number of
// the plan is one. A plan that holds any is not to be shown.
func (p *Plan) NoNumber() string { return p.noNumber() }

// isNumber reports whether a float is neither NaN nor infinite.
func isNumber(x float64) bool { return x-x == 0 }

// RoundTo rounds half away from zero to a number of decimals. The nudge of one
// part in 1e12 takes a value that lies on a half, but for its last bits, always
// the same way. What is not a number stays so: a plan
// that holds any is not made (see NoNumber).
func RoundTo(x float64, places int) float64 {
	scale := math.Pow10(places)
	r := math.Round(x*scale*(1+1e-12)) / scale
	return r + 0 // no negative zero
}

// Rounded is a quantity as a plan keeps it, so that what is said of one before
// the plan is rounded is what the plan shows.
func (q Quantity) Rounded() Quantity {
	q.round()
	return q
}

// Rounded is a strength as a plan keeps it.
func (s Strength) Rounded() Strength {
	s.round()
	return s
}
