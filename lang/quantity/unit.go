package quantity

import "strings"

// System is the family of units to which a unit belongs.
type System uint8

const (
	Both System = iota // used alike in both: hours, % abv, pH
	US                 // US customary
	SI                 // metric
)

// Measure is what a unit means for one Kind: SI = (value + Shift) * Factor.
// A unit whose relation is not a straight line has Curve in place of these.
type Measure struct {
	Kind   Kind
	Factor float64
	Shift  float64
	Curve  *Curve
}

// Curve brings a value to SI and back where no factor can.
type Curve struct {
	ToSI, FromSI func(float64) float64
}

// Unit is one row of the table.
type Unit struct {
	Name     string   // as newmake writes it
	Aliases  []string // other spellings that are read
	System   System
	Measures []Measure // by Kind, the commonest first
	Source   string    // where the factor stands
}

// Measure gives what the unit means as kind k.
func (u *Unit) Measure(k Kind) (Measure, bool) {
	for _, m := range u.Measures {
		if m.Kind == k {
			return m, true
		}
	}
	return Measure{}, false
}

// byName holds every name and alias; names in lower case stand in folded.
var byName, folded = func() (map[string]*Unit, map[string]string) {
	names, fold := make(map[string]*Unit), make(map[string]string)
	for i := range table {
		u := &table[i]
		for _, n := range append([]string{u.Name}, u.Aliases...) {
			if names[n] != nil {
				panic("quantity: two units are called " + n)
			}
			names[n] = u
			if f := strings.ToLower(n); fold[f] == "" {
				fold[f] = n
			}
		}
	}
	return names, fold
}()

// Lookup finds a unit by its name or an alias. Case counts: mL is not ML.
func Lookup(name string) (*Unit, bool) {
	u, ok := byName[name]
	return u, ok
}

// Units lists the units that serve a kind, in the table's order.
func Units(k Kind) []string {
	var out []string
	for i := range table {
		if _, ok := table[i].Measure(k); ok {
			out = append(out, table[i].Name)
		}
	}
	return out
}

// All gives the whole table, for the reference and for completion.
func All() []Unit { return table }
