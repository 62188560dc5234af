package record

import (
	"fmt"

	"newmake/lang/diag"
)

// Cask is one of the house's casks, as it is declared: what happened to it between its
// fill, which its run tells, and its end, which a vat does.
type Cask struct {
	Serial string
	SizeM3 float64 // 0: not said
	Used   bool    // its wood has held something before
	Wood   string  // "" if it is not said
	Before string  // the number that the wood had before, "" if none
	Visits []Visit // in the order of the text
	At     diag.Span
}

// Vat is casks put together.
type Vat struct {
	Name   string
	On     Date
	Tank   string
	Visits []Visit // of a word `from`: From is what went in, Of the sort of it, "" for a cask
	At     diag.Span
}

// Bottling is something that was bottled.
type Bottling struct {
	Lot       string
	Of        string // a vat or a cask
	On        Date
	Standards []string  // that it is sold as; none where nobody wrote it
	SoldAs    diag.Span // the line that says so
	Bottles   []Bottles
	Visits    []Visit
	At        diag.Span
}

// Bottles are some of a bottling.
type Bottles struct {
	Word   string // bottles, broken, samples, withdrawn
	N      int
	EachM3 float64
	Size   Value
	Label  *Value // the strength on it
	To     string
	On     Date
	Note   string
	At     diag.Span
}

// Store is a place where lots are kept.
type Store struct {
	Name string
	Lots []Lot // in the order of the text
	At   diag.Span
}

// Lot is a line of a store: something that came in, was counted or thrown away.
type Lot struct {
	Word     string // "" of what came in; count, discarded
	On       Date
	What     string
	Lot      string
	From     string
	Amount   Value
	Moisture *float64 // of its certificate, a share
	Starch   *float64
	Price    *Value // a unit's, or of all of it
	By, Note string
	At       diag.Span
}

// BoughtIn says where a line about what was bought is written: in the store, or in a first one
// where a house has none (nil).
func (s *Store) BoughtIn() string {
	if s == nil {
		return `in one store for all: store "Grain loft" { … }`
	}
	return fmt.Sprintf("in store %q", s.Name)
}
