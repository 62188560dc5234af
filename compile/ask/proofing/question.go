package proofing

import (
	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// Question is what was asked, read but not yet worked.
type Question struct {
	Source *diag.Source
	Lot    Lot
	Steps  []Step
}

// Lot is spirit as a person describes it.
type Lot struct {
	Amount   *Value // Volume, Mass, ProofGallons or PureAlcohol; nil if none is given
	Strength *Value // Strength: true, not as read
	Reading  *Value // Strength, or a bare number for proof
	Temp     *Value // of the spirit

	Hydrometer  *Value // the instrument's correction, in marks of its scale
	Thermometer *Value // TempDifference
	Solids      *Value // Concentration

	At diag.Span
}

// Step is one thing to do with a lot: reduce, fill or blend.
type Step interface{ step() }

// reduce is water to a strength.
type reduce struct {
	To    Value
	Water *Value // temperature of the water; nil for that of the spirit
}

// fill is spirit and water to fill a cask at a strength.
type fill struct {
	Volume, To Value
}

// blend is another lot into the same vat.
type blend struct {
	With Lot
	At   diag.Span
}

func (reduce) step() {}
func (fill) step()   {}
func (blend) step()  {}

// Value is a number of the question, in SI.
type Value struct {
	Item lang.Item
	Kind quantity.Kind
	SI   float64 // strengths as package quantity gives them: the basis stays with the unit
}

// unit is the unit by the name under which the table has it, "" if it is bare.
func (v Value) unit() string {
	if u, ok := quantity.Lookup(v.Item.Unit); ok {
		return u.Name
	}
	return ""
}

// in brings the value to another unit of its kind.
func (v Value) in(unit string) float64 {
	if v.unit() == unit {
		return v.Item.Value // as it was written, to the last digit
	}
	x, err := quantity.FromSI(v.SI, unit, v.Kind)
	if err != nil {
		panic("proofing: " + err.Error()) // the reader let only the kind's own units through
	}
	return x
}

// system finds the units in which the question was asked: those of the first
// number whose unit belongs to one system alone; US if none does.
func (q Question) system() quantity.System {
	for _, v := range q.values() {
		if u, ok := quantity.Lookup(v.Item.Unit); ok && u.System != quantity.Both {
			return u.System
		}
	}
	if q.Lot.Reading == nil || q.Lot.Reading.unit() != "" {
		return quantity.SI
	}
	return quantity.US
}

// values are the numbers of the question, amounts before strengths.
func (q Question) values() []Value {
	var all []Value
	add := func(vs ...*Value) {
		for _, v := range vs {
			if v != nil {
				all = append(all, *v)
			}
		}
	}
	add(q.Lot.Amount)
	for _, s := range q.Steps {
		if f, ok := s.(fill); ok {
			add(&f.Volume)
		}
	}
	add(q.Lot.Strength, q.Lot.Reading, q.Lot.Temp)
	return all
}
