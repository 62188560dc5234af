// Package lang reads the text of a .batch file into a tree that keeps every
// position and comment. It knows the shape of the language, not its meaning:
// a file is a list of statements, a statement is a line of items with an
// optional block of further statements. What words a block may hold, and what
// follows each, is package check's business; so the parser accepts a superset
// and the checker rejects in better words.
package lang

import "newmake/lang/diag"

// File is one parsed text. Parsing always returns a File; what could not be
// understood stands in it as Bad statements, each with its diagnostic.
type File struct {
	Source *diag.Source
	Stmts  []*Stmt
	Tail   []Comment // comments after the last statement
	Adrift bool      // its braces do not balance, and nothing shows how it is nested
}

// Stmt is one fact: a line of items, perhaps with a block.
//
//	hearts from 75 % abv to 62 % abv     # comment
//	mash in "Copper kettle" { ... }
type Stmt struct {
	Lead  []Comment // comment lines directly above, in order
	Items []Item
	Block *Block    // nil if there is none
	Trail *Comment  // comment on the same line (after "{" if it opens a block)
	At    diag.Span // first item to the last item; the block is not in it
	Bad   bool      // it has an error of its own: say nothing more about it
	Inner []Comment // comments inside a list that goes over several lines
}

// Block is the statements between { and }.
type Block struct {
	Stmts []*Stmt
	Tail  []Comment // comments before the closing brace
	Trail *Comment  // comment after the closing brace, on its line
	At    diag.Span // the braces and all between
}

// Comment is one "# ..." with its text as written, the # included.
type Comment struct {
	Text string
	At   diag.Span
}

// ItemKind tells what an Item is.
type ItemKind uint8

const (
	Word   ItemKind = iota // bill, distillers-malt, to
	String                 // "Copper kettle"
	Number                 // 190 F, 68 %, 63 % abv, 1.062, 3: a number with its unit if it has one
	Range                  // 78..88 F: two numbers, one unit
	Date                   // 2026-03-03
	Clock                  // 07:00
	Comma                  // ,
	Slash                  // / in 7/10
)

// Item is one thing in a statement's line.
type Item struct {
	Kind   ItemKind
	unitAt int32     // where the unit begins, which ends the item; 0 if there is none, or it stands before
	At     diag.Span // the whole item, unit included
	Text   string    // Word: the word. String: its value, unescaped. Date, Clock, Comma: as written.

	// Number and Range. Num is the text as written ("1,150"), Value what it
	// means; Unit is the unit as written, normalised only in spacing
	// ("F", "% abv", "g/L", "").
	Num   string
	Value float64
	High  float64 // Range: the upper end; Value is the lower
	Unit  string
}

// UnitAt is the place of the unit, zero if there is none behind the number.
func (i *Item) UnitAt() diag.Span {
	if i.unitAt == 0 {
		return diag.Span{}
	}
	return diag.Span{Src: i.At.Src, Start: int(i.unitAt), End: i.At.End}
}
