// Package season holds what a season asks of a plant, as plain data: what is to be
// made, on which days nobody works, what is out of use, and who is there. Package
// check reads it from the text; compile/book/season plans it.
package season

import (
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// Season is some weeks of work in one plant.
type Season struct {
	Name     string
	From, To record.Date // the first and the last day, both of it
	Plant    string      // in which all its batches are made; "" if it asks for none
	Casks    []Casks     // in the order of the text, orders among them
	Makes    []Make      // in the order of the text
	Closed   []Closed    // in the order of the days
	Without  []Without   // in the order of the text
	Crew     []Crew      // in the order of the text; none: the plant's crew in the plant's shift
	// Today is what waits in the tanks when it begins. Nothing said: what the last run
	// left, or else what a house at work has.
	Today recipe.Today
	At    diag.Span
}

// Days is how many days it has.
func (s *Season) Days() int { return s.From.DaysTo(s.To) + 1 }

// Has reports whether a day is of the season.
func (s *Season) Has(d record.Date) bool { return s.From.Compare(d) <= 0 && d.Compare(s.To) <= 0 }

// Batches lists what it asks for, each once, in the order of the text.
func (s *Season) Batches() []string {
	var out []string
	seen := map[string]bool{}
	add := func(name string) {
		if !seen[name] {
			seen[name] = true
			out = append(out, name)
		}
	}
	for _, c := range s.Casks {
		add(c.Batch)
	}
	for _, m := range s.Makes {
		add(m.Batch)
	}
	return out
}

// Casks is how many casks of a batch are to be full by the end of a day. Each line asks
// for its own: two casks by one day and three by another are five.
type Casks struct {
	N     int
	Batch string
	By    record.Date
	For   string // who has ordered them; "" for the house itself
	At    diag.Span
}

// Make is when a batch is mashed, whatever casks come of it. One of EveryDays, Dates and
// Times is set.
type Make struct {
	Batch string
	// EveryDays parts the season, from its first day, into spans of so many days, and
	// one mash begins in each; where Weekdays are given, one on each of them. A span
	// that the season's end cuts short asks for the weekdays that it still has.
	EveryDays int
	Weekdays  [7]bool // Sunday first, as time.Weekday; none: any day will do
	Dates     []record.Date
	Times     int // so often, on any days
	At        diag.Span
}

// OnWeekdays reports whether the days of the week are given.
func (m *Make) OnWeekdays() bool { return m.Weekdays != [7]bool{} }

// Closed is days on which nobody works and no still is lit. What ferments goes on.
type Closed struct {
	From, To record.Date // both of it
	Why      string
	At       diag.Span
}

// ClosedOn gives the closure that a day is of, nil for none.
func (s *Season) ClosedOn(d record.Date) *Closed {
	for i := range s.Closed {
		if c := &s.Closed[i]; c.From.Compare(d) <= 0 && d.Compare(c.To) <= 0 {
			return c
		}
	}
	return nil
}

// Without is a vessel that is out of use, or somebody who is not there.
type Without struct {
	Name     string // as the plant or the crew has it
	Person   bool
	From, To record.Date // both of it
	Why      string
	At       diag.Span
}

// Crew is one person, and when that person is there. Of the lines that name somebody
// the last that holds on a day says.
type Crew struct {
	Who      string
	Shift    recipe.Shift // the plant's where the line does not say
	From, To record.Date  // both of it; the whole season where the line does not say
	At       diag.Span
}

// People lists the names of the crew, each once, in the order of the text.
func (s *Season) People() []string {
	var out []string
	seen := map[string]bool{}
	for _, c := range s.Crew {
		if !seen[c.Who] {
			seen[c.Who] = true
			out = append(out, c.Who)
		}
	}
	return out
}

// There is when somebody of the crew is there on a day; false where that is not at all.
func (s *Season) There(who string, d record.Date) (recipe.Shift, bool) {
	if s.ClosedOn(d) != nil {
		return recipe.Shift{}, false
	}
	for _, w := range s.Without {
		if w.Person && w.Name == who && w.From.Compare(d) <= 0 && d.Compare(w.To) <= 0 {
			return recipe.Shift{}, false
		}
	}
	for i := len(s.Crew) - 1; i >= 0; i-- {
		if c := &s.Crew[i]; c.Who == who && c.From.Compare(d) <= 0 && d.Compare(c.To) <= 0 {
			return c.Shift, c.Shift.Days[d.Weekday()]
		}
	}
	return recipe.Shift{}, false
}
