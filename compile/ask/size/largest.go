package size

import (
	"math"

	"newmake/compile/measure"
	"newmake/lang/diag"
	"newmake/lang/edit"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// Largest is the largest size of a batch that can be made in its plant, in a weight
// of grain that can be weighed out.
type Largest struct {
	*Answer
	Limit *diag.Diagnostic // what stands in the way of a larger one; nil if it can't be computed
}

// Grain is its weight of grain in words.
func (l *Largest) Grain(u measure.Units) string { return u.Mass(l.Plan.Bill.TotalKg) }

// largestBelow is the largest below a size that can't be made; nil if the batch
// can't be made smaller either.
func (s solver) largestBelow(f float64) *Largest {
	bad := s.at(f)
	for range 12 {
		a := s.at(bad.Factor / grow)
		if goes(a) {
			return s.largestBetween(a, bad)
		}
		bad = a
	}
	return nil
}

// largestAbove is the largest from a size on that can be made; nil if nothing
// stands in the way of any.
func (s solver) largestAbove(f float64) *Largest {
	good := s.at(f)
	for goes(good) && good.Factor < largest {
		a := s.at(good.Factor * grow)
		if !goes(a) {
			return s.largestBetween(good, a)
		}
		good = a
	}
	return nil
}

// largestBetween halves the distance until it is less than what grain is weighed to,
// and rounds down to that.
func (s solver) largestBetween(good, bad *Answer) *Largest {
	unit := "lb"
	if s.batch.Units == recipe.SI {
		unit = "kg"
	}
	one, err := quantity.FromSI(s.batch.Bill.TotalKg, unit, quantity.Mass)
	if err != nil || one <= 0 {
		return nil
	}
	for (bad.Factor-good.Factor)*one > edit.Step(good.Factor*one, unit)/8 {
		if a := s.at((good.Factor + bad.Factor) / 2); goes(a) {
			good = a
		} else {
			bad = a
		}
	}
	step := edit.Step(good.Factor*one, unit)
	if whole := s.at(math.Floor(good.Factor*one/step+1e-6) * step / one); goes(whole) {
		good = whole
	}
	return &Largest{good, InTheWay(bad.Diags)}
}

// goes reports whether a size can be made.
func goes(a *Answer) bool { return a.Plan != nil && InTheWay(a.Diags) == nil }
