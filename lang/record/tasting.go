package record

import (
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/words"
)

// SampleKind is what a sample is of.
type SampleKind string

// What can be tasted.
const (
	OfCask     SampleKind = "cask"
	OfHearts   SampleKind = "hearts"   // as they came off the still
	OfNewMake  SampleKind = "new-make" // as it was filled
	OfBottling SampleKind = "bottling"
)

// Sample is something that is tasted.
type Sample struct {
	Kind  SampleKind
	Name  string // a cask's serial, a run's number, a bottling's lot
	Place diag.Span
}

// String names it as it is written, its name in quotes.
func (s Sample) String() string {
	switch s.Kind {
	case OfHearts, OfNewMake:
		return string(s.Kind) + " of " + s.Name
	}
	return string(s.Kind) + " " + s.Name
}

// Tasting is what was found in a glass.
type Tasting struct {
	Of       Sample
	On       Date
	Nosed    *Value // the strength at which; nil if nobody said
	Looks    []Look // in the order of the text
	Verdicts []Verdict
	At       diag.Span
}

// Look is one thing that one taster noted.
type Look struct {
	What  string // nose, palate, finish, note, or a word of the house's own
	Score *Score // nil without one
	Words string // as they were written
	By    string // "" if nobody said
	At    diag.Span
}

// Score is a number on a scale that has ends.
type Score struct {
	Value, Low, High  float64
	LowSays, HighSays string // what the ends mean, "" if nobody said
}

// Verdict is what is to become of what was tasted.
type Verdict struct {
	Word  string // ready, wait, blend, again
	WaitS float64
	Words string
	By    string
	At    diag.Span
}

// Says is the verdict in words: ready, or wait 6 months.
func (v Verdict) Says() string {
	if v.WaitS <= 0 {
		return v.Word
	}
	const monthS = quantity.YearS / 12
	return v.Word + " " + words.Count(int(v.WaitS/monthS+.5), "month")
}

// Trial is a comparison by people who did not know which was which.
type Trial struct {
	Name      string
	On        Date
	Compare   []Sample
	Method    string
	Expecting []int // places in Compare, in the order that was expected
	Nosed     *Value
	Tasters   []string
	Sets      int
	Answers   []Answer // in the order of the text
	Notes     []Look
	At        diag.Span
}

// Answer is what one taster said, at one sitting or over several.
type Answer struct {
	By       string
	Right, N int       // of difference tests
	Ranks    []float64 // of a ranking, in the order of Compare
	Words    string
	At       diag.Span
}
