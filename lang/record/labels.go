package record

import (
	"slices"

	"newmake/lang/quantity"
)

// label is a quantity that may be read in a stage, and the kind of its unit.
type label struct {
	what   What
	kind   quantity.Kind
	worded bool // its word is never left out: its unit names another
}

// labels are what may be read in each stage, in the order of a sheet. Where its word
// is left out the unit names the reading.
var labels = map[StageName][]label{
	Mash:    {{Temperature, quantity.Temperature, false}, {PH, quantity.PH, false}, {Gravity, quantity.Gravity, false}, {Volume, quantity.Volume, false}},
	Ferment: {{Gravity, quantity.Gravity, false}, {Temperature, quantity.Temperature, false}, {PH, quantity.PH, false}, {Volume, quantity.Volume, false}},
	Strip: {
		{Spout, quantity.Strength, false}, {Flow, quantity.Flow, false}, {Receiver, quantity.Volume, false}, {Vapour, quantity.Temperature, false},
		{Volume, quantity.Volume, true}, {Strength, quantity.Strength, true}, {Gravity, quantity.Gravity, false}, {PH, quantity.PH, false}, {Mass, quantity.Mass, false},
		{Temperature, quantity.Temperature, true},
	},
	Spirit: {
		{Spout, quantity.Strength, false}, {Flow, quantity.Flow, false}, {Receiver, quantity.Volume, false}, {Vapour, quantity.Temperature, false},
		{Volume, quantity.Volume, true}, {Strength, quantity.Strength, true}, {Mass, quantity.Mass, false},
		{Temperature, quantity.Temperature, true},
	},
	Fill: {
		{Volume, quantity.Volume, false}, {Strength, quantity.Strength, false}, {Mass, quantity.Mass, false}, {Tare, quantity.Mass, true}, {Gross, quantity.Mass, true},
		{Temperature, quantity.Temperature, false},
	},
	InCask: {
		{Gross, quantity.Mass, false}, {Tare, quantity.Mass, true}, {Dip, quantity.Volume, false}, {Sampled, quantity.Volume, true}, {Strength, quantity.Strength, false},
		{Temperature, quantity.Temperature, false},
	},
}

// Labels are the words that may name a reading in a stage.
func Labels(s StageName) []string {
	var out []string
	for _, l := range labels[s] {
		out = append(out, string(l.what))
	}
	return out
}

// lots are the lines that gauge a lot: what is read there is of the whole lot, not
// of the spout or the receiver.
var lots = []string{"charge", "low-wines", "pot-ale", "foreshots", "heads", "hearts", "tails", "feints", "lees"}

// Named is the quantity that a unit names on a line where its word is left out, ""
// if it names none there.
func Named(s StageName, word string, k quantity.Kind) What {
	lot := slices.Contains(lots, word)
	switch {
	case word == "reduce" && k == quantity.Volume:
		return Water
	case word == "leaked" && k == quantity.Volume:
		return Lost
	case lot && k == quantity.Volume:
		return Volume
	case lot && k == quantity.Strength:
		return Strength
	case lot && k == quantity.Temperature:
		return Temperature
	}
	for _, l := range labels[s] {
		if l.kind == k && !l.worded {
			return l.what
		}
	}
	return ""
}

// KindOf is the kind of quantity that a word names in a stage.
func KindOf(s StageName, w What) quantity.Kind {
	for _, l := range labels[s] {
		if l.what == w {
			return l.kind
		}
	}
	return quantity.None
}

// Kinds are those of what may be read in a stage, each once.
func Kinds(s StageName) []quantity.Kind {
	var out []quantity.Kind
	for _, l := range labels[s] {
		if !slices.Contains(out, l.kind) {
			out = append(out, l.kind)
		}
	}
	return out
}
