package constants

import (
	"slices"

	"newmake/compile/numbers"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// Owner is whose a constant is.
type Owner uint8

const (
	House      Owner = iota // the same in every run, until something is rebuilt
	Run                     // another one each run
	Instrument              // what a reading is off by; it moves no batch
)

func (o Owner) String() string {
	return [...]string{House: "house", Run: "run", Instrument: "instrument"}[o]
}

// Form is how a figure bears on the recipe.
type Form uint8

const (
	Times Form = iota // multiplies what is there
	Value             // is put in its place
	Plus              // is added to it
)

func (f Form) String() string { return [...]string{Times: "times", Value: "value", Plus: "plus"}[f] }

// Constant is one thing that is not known for certain.
type Constant struct {
	ID    string // yeast-rate: a word of the language
	Of    string // the vessel, yeast or grain whose it is; "" for the house's
	Words string // "rate of the yeast"
	Stage numbers.Stage
	Owner Owner
	Form  Form
	Kind  quantity.Kind // of the figure; Share of a factor, TempDifference of what is added to a temperature
	Prior
	AsWritten float64 // the figure that leaves the recipe as it is
	Why       string  // where the uncertainty is from
	// Unsaid says that the house states nothing of it: a plan then takes the figure that
	// does nothing, which is the end and not the middle of what it may be.
	Unsaid bool
	// As is the key of the house's constant that does the same to a batch, of what scatters from
	// run to run: the rate of the yeast, of its vigor. "" if there is none.
	As string
	// Paths are the values of the recipe that it moves; none of an instrument's.
	Paths []recipe.Path

	set func(b *recipe.Batch, x float64)
}

// Key tells the constants of a house apart: what is learned, and what is drawn, goes
// by it.
func (c Constant) Key() string {
	if c.Of == "" {
		return c.ID
	}
	return c.ID + " of " + c.Of
}

// Set is a batch with the figures of its constants put in. The batch stays as it is.
func Set(b *recipe.Batch, of []Constant, x []float64) *recipe.Batch {
	out := b.Clone()
	for i, c := range of {
		if c.set != nil && x[i] != c.AsWritten {
			c.set(out, x[i])
		}
	}
	out.Resolve()
	return out
}

// Moving are the constants that move a batch: all but the instruments'.
func Moving(all []Constant) []Constant {
	var out []Constant
	for _, c := range all {
		if c.Owner != Instrument {
			out = append(out, c)
		}
	}
	return out
}

// Drawable are the constants about which a plan lies in the middle: those that move a
// batch, but for what the house says nothing of.
func Drawable(all []Constant) []Constant {
	return slices.DeleteFunc(Moving(all), func(c Constant) bool { return c.Unsaid })
}
