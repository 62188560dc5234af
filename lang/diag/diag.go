// Package diag holds what newmake says about a text: one struct for every
// error, warning and note, with the place it speaks of. Rendering stands apart
// (show.go), so that a terminal, JSON and an editor show the same facts.
package diag

import (
	"sync"

	"newmake/lang/quantity"
)

// Source is one text that was read: its name as the user knows it, and its
// bytes. Spans point into it.
type Source struct {
	Name string
	Text []byte

	// Units is the system in which whoever reads the text counts, for examples; nil
	// where nothing is known of it.
	Units func() quantity.System

	once  sync.Once
	lines []int32 // byte offset of each line's start, once asked for
	whole sync.Once
	text  string // Text, once asked for
}

// Span is a half-open range of bytes in a Source. The zero Span is "no place".
type Span struct {
	Src        *Source
	Start, End int
}

// Severity says how much a diagnostic matters.
type Severity uint8

const (
	Error   Severity = iota // it cannot work; nothing is planned
	Warning                 // it can work, and the trade would frown
	Note                    // worth knowing
)

// Diagnostic is one thing that newmake has to say about a text.
type Diagnostic struct {
	Code     Code      // stable, e.g. "NM0201"
	Severity Severity  // Error, Warning or Note
	Summary  string    // one sentence: what is wrong
	At       Span      // the place marked
	Help     string    // what is allowed, and what to do
	Reason   string    // why it matters at the still, or the section of law
	Related  []Related // other places that bear on it
	Fix      *Fix      // an edit that mends it, or may, or nil
	Batches  []string  // the batches in which it was found, the varied before what varies it

	// Advise gives Help and Fix where they are dear to find: the nearest of many
	// names. Cap asks it for those that are shown. With search false it is to say
	// what can be said without looking.
	Advise func(search bool) (help string, fix *Fix)

	stands [Note + 1]int // what it stands for, by severity: see Cap
}

// Related is another place that bears on a diagnostic.
type Related struct {
	At   Span
	Text string // "the cooker is declared here"
}

// Fix is an edit that mends the text without changing what was meant, unless it
// is a guess: then the person says whether that was meant.
type Fix struct {
	At    Span
	Text  string // what to put there
	Label string // "write `corn`"
	Guess bool   // the help asks; an editor may offer it, and nobody makes it unasked
}

// List is a set of diagnostics in the order in which they were found.
type List []Diagnostic
