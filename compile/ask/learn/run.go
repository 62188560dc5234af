package learn

import (
	"newmake/compile/constants"
	"newmake/compile/numbers"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// Run is one run with what was read of it.
type Run struct {
	Number   string
	Recipe   *recipe.Batch // as it was really made
	Readings []Reading
	// Reduced stands for the recipe and its stages where only the method is tried.
	Reduced *Reduced
}

// Reduced is a model that costs nothing.
type Reduced struct {
	Of   []constants.Constant
	Says func(of []constants.Constant, x []float64) []float64 // all readings, NaN for what it does not come to
}

// Reading is one reading, corrected to what a model predicts.
type Reading struct {
	Words   string      // "gravity at 24 h"
	What    record.What // "" of a duration
	Said    float64     // in SI
	SD      float64     // of reading it, without what the instrument is always off by
	Outcome bool        // that the house lives by: it is foretold by itself
	// Instrument is the key of the instrument's constant, "" if none is known.
	Instrument string
	// Of is what the model says; not ok where it does not come to that.
	Of func(n *numbers.Batch) (value float64, ok bool)
	// AtEnd is the same, and what the model says at its end where it does not come to that: for
	// constants that make a run shorter than it was.
	AtEnd func(n *numbers.Batch) (value float64, ok bool)
	// Clocks are those that it goes by, each with its sign, by what tells them apart in a run:
	// readings that go by one clock err together. ByClock is what one standard deviation of each
	// does to it; nil where there are none.
	Clocks  map[any]float64
	ByClock func(n *numbers.Batch) float64
}

// Found is one constant as the runs tell it.
type Found struct {
	constants.Constant
	Key   string
	Value float64
	Low   float64 // holds 9 times in 10, between Low and High: by the profile of the likelihood
	High  float64
	// ByCurve are the same ends by the curvature alone, and Uneven says that the profile has
	// another interval, by more than a reader would overlook.
	ByCurve [2]float64
	Uneven  bool
	ends    [2]float64 // Low and High, in prior standard deviations
	Z, SD   float64    // in prior standard deviations, from the prior's middle; SD is what is left of it
	// AtBound says that it stands at a physical bound, and the runs would have it beyond.
	AtBound bool
	// Untold says that these readings told nothing to speak of.
	Untold bool
}

// priorPart is how much of the value is what was known beforehand, 0 to 1.
func (f Found) priorPart() float64 { return f.SD * f.SD }

// Pair is two constants that the readings cannot tell apart, by their places among those found.
type Pair struct {
	A, B        int
	Correlation float64
}

// Gross is a reading that no constants explain: it was left out.
type Gross struct {
	slopes       []float64 // of the reading, where it was left out
	Run, Reading int
	Over         float64 // by how much it is too high, in SI
	Times        float64 // that in its standard deviations
}

// Predicted is how well one run is foretold by all the others.
type Predicted struct {
	Run int
	// Before and After are the root mean square of what the readings are off, in standard
	// deviations of reading them and of what scatters from run to run: with the
	// library's constants, and with those that the other runs tell.
	Before, After float64
	// Expected is what After is where all is right: above 1, for what the other runs leave
	// open.
	Expected float64
	Outcomes []Outcome
}

// Outcome is a reading that the house lives by, foretold.
type Outcome struct {
	Reading       int
	Before, After float64 // in SI: with the library's constants, and with those of the other runs
	SD            float64 // how sure After is, reading and scatter regarded
	DF            float64 // degrees of freedom of Student's t that it is: how sure SD is
}

// Effect is what one run had of its own.
type Effect struct {
	Run int
	constants.Constant
	Value float64
	Z, SD float64 // in its prior standard deviations
}

// Drift is a constant that does not stay.
type Drift struct {
	Constant int     // among those found
	Since    int     // the run from which on
	At       int     // the run at which it shows
	By       float64 // how far it has gone, in its prior standard deviations
}

// Scatter is how much runs differ among themselves.
type Scatter struct {
	constants.Constant         // what differs; its prior is what was known of it
	Times              float64 // of the prior's standard deviation
	Runs               int     // that tell it
}

// Learned is what the runs tell.
type Learned struct {
	Found     []Found
	Together  []Pair // correlated by more than 0.9 either way
	Gross     []Gross
	Eased     []Eased // the least weight first; none unless asked for
	Unused    []Gross // readings that the model does not come to
	Predicted []Predicted
	Robust    bool // readings that are far off count for less
	Exact     bool // Predicted is by constants that were found anew without each run
	Effects   []Effect
	Scatter   []Scatter
	Drifts    []Drift
	Readings  int // that were used
	Converged bool
	// Hopeless says that of each run as many readings were left out as may be, and no end was in sight.
	Hopeless bool
	// Told is how many combinations of constants the readings tell more of than was known.
	Told, Of int
	Evals    int
}
