package plan

import (
	"fmt"

	"newmake/lang/record"
)

// Blank is something to be written down as the batch is run: a weight of the bill,
// or a reading of a step. Sheet, table, page and record are views of the blanks; a
// record is held against them by ID (package blank).
type Blank struct {
	ID         string      `json:"id"`
	Stage      string      `json:"stage"` // of the plan; "used" for what is weighed and measured out
	Step       string      `json:"step"`  // Step.ID; of what is weighed out, the step that it goes into
	Vessel     string      `json:"vessel,omitempty"`
	Kind       record.What `json:"kind"`
	What       string      `json:"what"`          // in words: "in the cooker", a grain
	Instrument string      `json:"instrument"`    // that it is read with
	Due        string      `json:"due,omitempty"` // RFC 3339; "" of what is weighed out
	Should     Quantity    `json:"should"`
	// Between Low and High it lies 9 times in 10; nil in a plan without bands, and of what
	// is weighed and measured out.
	Low  *Quantity `json:"low,omitempty"`
	High *Quantity `json:"high,omitempty"`
}

// Used is the stage of the blanks for what is weighed and measured out.
const Used = "used"

// nameReadings gives the readings of a step their keys: the step, what is read, and
// of what is read again and again a number; the last of them, at the end of the step,
// has none.
func (s *Step) nameReadings() {
	left := map[record.What]int{}
	for _, r := range s.Read {
		left[r.Kind]++
	}
	seen := map[record.What]int{}
	for i := range s.Read {
		r := &s.Read[i]
		r.ID = s.ID + "." + string(r.Kind)
		seen[r.Kind]++
		if left[r.Kind]--; left[r.Kind] > 0 || r.At != "" && r.At != s.End {
			r.ID += fmt.Sprintf(".%d", seen[r.Kind])
		}
	}
}

// NameReadings gives every reading of the schedule its key.
func (s *Schedule) NameReadings() {
	for i := range s.Steps {
		s.Steps[i].nameReadings()
	}
}

// Due is when a reading of a step is due.
func (s *Step) Due(r Reading) string {
	if r.At != "" {
		return r.At
	}
	return s.End
}

// Blanks are all that there is to write down, in the order of the sheet.
func (p *Plan) Blanks() []Blank {
	var out []Blank
	for _, l := range p.Bill.Lines {
		out = append(out, Blank{ID: Used + "." + l.Name, Stage: Used, Step: l.AddedIn, Kind: record.Mass, What: l.Name, Instrument: "scale", Should: Of(l.MassKg, Kilogram)})
	}
	for _, a := range p.Bill.Additions {
		b := Blank{ID: Used + "." + a.Step + "." + a.Name, Stage: Used, Step: a.Step, Kind: record.Mass, What: a.Name, Instrument: "scale", Should: a.Amount}
		if a.Amount.Unit == Litre {
			b.Kind, b.Instrument = record.Volume, "dipstick or measure"
		}
		out = append(out, b)
	}
	for i := range p.Schedule.Steps {
		s := &p.Schedule.Steps[i]
		for _, r := range s.Read {
			b := Blank{ID: r.ID, Stage: s.Stage, Step: s.ID, Vessel: s.Vessel, Kind: r.Kind, What: r.What, Instrument: instruments[r.Kind], Due: s.Due(r), Should: r.Should, Low: r.Low, High: r.High}
			out = append(out, b)
		}
	}
	return out
}

// instruments are those that a quantity is read with.
var instruments = map[record.What]string{
	record.Temperature: "thermometer", record.Vapour: "thermometer", record.Gravity: "hydrometer", record.PH: "pH meter",
	record.Volume: "dipstick or measure", record.Receiver: "dipstick or measure", record.Flow: "measure and watch",
	record.Spout: "spirit hydrometer", record.Strength: "spirit hydrometer", record.Net: "scale", record.Gross: "scale",
}
