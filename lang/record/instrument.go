package record

import (
	"math"

	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// Instrument is one of the house's, as it is declared.
type Instrument struct {
	Name        string
	Scale       Scale   // the one that it has
	Checks      []Check // in the order of the text
	ToleranceSI float64 // most that its scale is off, by its maker or its certificate; 0: not said
	At          diag.Span
}

// Scale is what an instrument is read on.
type Scale struct {
	Low, High float64 // in Unit, as written
	Division  float64 // in Unit
	Unit      string
	Kind      quantity.Kind
	AtC       float64 // at which it reads true, where AtSaid
	AtSaid    bool
}

// Check is one comparison of an instrument with something that is known.
type Check struct {
	On      Date
	Said    Value
	Against string // another instrument; "" is water
	True    *Value // what it should have said, where that was written
	AtC     float64
	AtSaid  bool
	Place   diag.Span
}

// DivisionSI is its division at a value, in the unit of its kind.
func (i *Instrument) DivisionSI(at float64) float64 {
	return StepSI(at, i.Scale.Division, i.Scale.Unit, i.Scale.Kind)
}

// ReadingSI is the standard uncertainty of a scale that is read to the nearest
// division: half a division either way, each place as likely as another, which is
// the division over 2 sqrt 3 (JCGM 100:2008, 4.3.7 and F.2.2.1).
func ReadingSI(divisionSI float64) float64 { return divisionSI / (2 * math.Sqrt(3)) }
