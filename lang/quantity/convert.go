package quantity

import (
	"fmt"
	"strings"
)

// ToSI brings a value in a unit to the SI unit of kind k (see Kind).
//
// A strength is not brought to one basis: `% abv` and `% abw` give their value
// as a fraction and `proof` gives a 200th, and the basis stays with the unit,
// because going from one to another takes density tables.
//
// An empty unit is a bare number. It serves where the kind has no unit that a
// person would write: Number, Gravity (as sg), PH, Money.
//
// The error is a *UnitError.
func ToSI(v float64, unit string, k Kind) (float64, error) {
	m, err := measure(unit, k)
	if err != nil {
		return 0, err
	}
	if m.Curve != nil {
		return m.Curve.ToSI(v), nil
	}
	return (v + m.Shift) * m.Factor, nil
}

// FromSI brings a value in the SI unit of kind k to a unit.
func FromSI(v float64, unit string, k Kind) (float64, error) {
	m, err := measure(unit, k)
	if err != nil {
		return 0, err
	}
	if m.Curve != nil {
		return m.Curve.FromSI(v), nil
	}
	return v/m.Factor - m.Shift, nil
}

// AllowsBare reports whether a bare number may stand for a kind.
func AllowsBare(k Kind) bool {
	switch k {
	case Number, Gravity, PH, Money:
		return true
	}
	return false
}

func measure(unit string, k Kind) (Measure, error) {
	if unit == "" && AllowsBare(k) {
		return linear(k, 1), nil
	}
	u, known := Lookup(unit)
	if known {
		if m, ok := u.Measure(k); ok {
			return m, nil
		}
	}
	if k == Money && IsCurrency(unit) {
		return linear(k, 1), nil
	}
	if k == UnitPrice {
		return priceMeasure(unit)
	}
	return Measure{}, newUnitError(unit, k)
}

// UnitError says why a unit does not serve.
type UnitError struct {
	Unit  string
	Want  Kind
	Is    Kind     // what the unit measures; None if it is unknown or absent
	Known bool     // the unit exists, and measures something else
	Near  []string // known units spelt nearly so, best first
	Serve []string // the units that would do
	Hint  string   // what a person who writes this often means, or ""
}

func newUnitError(unit string, want Kind) *UnitError {
	e := &UnitError{Unit: unit, Want: want, Serve: Units(want), Hint: hints[hintKey{unit, want}]}
	if u, ok := Lookup(unit); ok {
		e.Known, e.Is = true, u.Measures[0].Kind
		if e.Hint == "" {
			e.Hint = hints[hintKey{u.Name, want}]
		}
	} else {
		e.Near = nearFor(unit, want)
	}
	return e
}

// Error says what is wrong in one sentence.
func (e *UnitError) Error() string {
	switch {
	case e.Unit == "":
		return fmt.Sprintf("%s needs a unit: %s", e.Want, e.allowed())
	case e.Known:
		return fmt.Sprintf("`%s` is %s, and %s is wanted here", e.Unit, e.Is, e.Want)
	case len(e.Near) > 0:
		return fmt.Sprintf("there is no unit `%s`: did you mean `%s`?", e.Unit, e.Near[0])
	}
	return fmt.Sprintf("there is no unit `%s`", e.Unit)
}

// allowed lists the units that would do, for a message.
func (e *UnitError) allowed() string {
	if len(e.Serve) == 0 {
		return "a bare number"
	}
	return "`" + strings.Join(e.Serve, "`, `") + "`"
}
