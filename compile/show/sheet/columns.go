package sheet

import (
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/record"
)

// column is an instrument of a part: what it reads, and room to write that.
type column struct {
	Head  string
	Unit  string // that its readings are in, where they say no other
	Kinds []record.What
	Temp  bool // with a cell for the temperature of the sample
}

// Cells is how many a column takes: what it should say, what it says, and at what
// temperature.
func (c column) Cells() int {
	if c.Temp {
		return 3
	}
	return 2
}

// columnsOf are the columns of a stage, in the reader's units. The last takes what a
// step has alone to read: it stands on the line of what to do.
func columnsOf(stage string, u measure.Units) []column {
	unit := func(q plan.Quantity) string { _, w := u.Value(q); return w }
	var (
		gravity     = column{"gravity", "SG", []record.What{record.Gravity}, true}
		acid        = column{"pH", "", []record.What{record.PH}, false}
		temperature = column{"temperature", unit(plan.Of(0, plan.Celsius)), []record.What{record.Temperature}, false}
		volume      = column{"volume", unit(plan.Of(0, plan.Litre)), []record.What{record.Volume}, false}
		strength    = column{"strength", unit(plan.Strength{AbvPct: 1, Proof: 1}.At()), []record.What{record.Strength}, true}
		spout       = column{"spout", unit(plan.Strength{AbvPct: 1, Proof: 1}.ByVolume()), []record.What{record.Spout, record.Strength}, true}
		receiver    = column{"receiver", volume.Unit, []record.What{record.Receiver, record.Volume}, false}
		vapour      = column{"vapour", temperature.Unit, []record.What{record.Vapour}, false}
		flow        = column{"flow", unit(plan.Of(0, plan.LitrePerH)), []record.What{record.Flow}, false}
		weight      = column{"weight", unit(plan.Of(0, plan.Kilogram)), []record.What{record.Mass, record.Tare, record.Gross, ""}, false}
	)
	switch stage {
	case "mash":
		return []column{gravity, acid, volume, temperature}
	case "ferment":
		return []column{gravity, acid, temperature}
	case "fill":
		return []column{strength, volume, weight}
	}
	return []column{spout, receiver, vapour, flow}
}

// holds reports whether a column's instrument reads a kind of thing.
func (c column) holds(kind record.What) bool {
	for _, k := range c.Kinds {
		if k == kind {
			return true
		}
	}
	return false
}

// place finds the column of a reading: its instrument's, or, where the part has none, one
// that has the cells that it needs.
func place(cols []column, r plan.Reading) int {
	for i, c := range cols {
		if c.holds(r.Kind) {
			return i
		}
	}
	for i, c := range cols {
		if c.Temp == needsTemp(r.Should) {
			return i
		}
	}
	return 0
}
