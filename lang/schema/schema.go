// Package schema is the language as data: every block with its fields, each field
// with its shape, doc, example, default, and limits with their reasons. The
// checker, the reference, completion, highlighting and explain all read it.
package schema

import (
	"slices"
	"sync"

	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// Field is one line of the language as data: the word that begins it, the shape
// of what follows, and what may stand in its block. The whole language is a tree
// of these (see Language); the checker, the reference, completion and
// highlighting all read it.
type Field struct {
	Name    string // the word that begins the line; "" in Block.Any, where a name does
	Shape   string // what follows the word, see shape.go; "" for nothing
	Doc     string // one sentence
	Example string // a line that is right
	Default string // what holds when it, or the part of it that may be, is left out
	Need    bool   // must be there once variants are applied
	Repeat  bool   // may stand more than once
	Key     string // the slot by which repeated lines are told apart; "" if they need not be
	KeyKind string // a slot whose kind of quantity tells them apart too: hearts by volume, hearts by strength
	Step    bool   // a step of work: the order of such lines is their meaning
	Edit    bool   // says what a variant does to the lines of what it varies
	Past    bool   // a declaration of what happened, or of a season: no plan of a batch depends on it
	Limits  []Limit
	Block   *Block // what its block may hold; nil if it takes none

	pattern func() *Shape
}

// Pattern is the shape, compiled when it is first asked for: a text holds few of the
// language's lines.
func (f *Field) Pattern() *Shape { return f.pattern() }

// Block is what may stand between braces.
type Block struct {
	Fields []*Field
	Any    *Field // lines that begin with a name rather than a known word, or nil
	Bare   *Field // lines of readings without a word, in a block whose lines may be timed, or nil
	Timed  bool   // its lines may begin with a day or a date, and a clock

	byName map[string]*Field
}

// Limit is what a value of a line may be. Outside an Error limit it cannot work;
// outside a Warning limit the trade would frown.
type Limit struct {
	Slot      string        // of the shape; "" for every quantity on the line
	Kind      quantity.Kind // of a slot that takes several; None for all of them
	Low, High float64
	Severity  diag.Severity
	Reason    string
	AsRead    bool // of all that is read, alike: `run` says it once
}

// Language is the table of everything: each field stands for one declaration.
var Language = func() *Block {
	uncertain(Grain, Yeast, Enzyme, CaskWood, Model)
	return index(&Block{Fields: []*Field{
		EditionLine, Plant, Batch, Run, Instrument,
		Grain, Yeast, Enzyme, CaskWood, Standard, Country, Aroma, Model,
		Learned, OwnCask, Round, Tasting, Trial, Vat, Bottling, Store, Season,
	}})
}()

// Find gives the field that a word begins, or nil.
func (b *Block) Find(word string) *Field { return b.byName[word] }

// Unworded are the lines of the block that begin with no word of the language.
func (b *Block) Unworded() []*Field {
	return slices.DeleteFunc([]*Field{b.Any, b.Bare}, func(f *Field) bool { return f == nil })
}

// Lines are all lines that may stand in the block, those without a word last.
func (b *Block) Lines() []*Field { return slices.Concat(b.Fields, b.Unworded()) }

// Words lists what may begin a line, in the order of the table.
func (b *Block) Words() []string {
	words := make([]string, 0, len(b.Fields))
	for _, f := range b.Fields {
		words = append(words, f.Name)
	}
	return words
}

// Holds reports whether the limit is one of a slot and a kind of quantity.
func (l Limit) Holds(slot string, k quantity.Kind) bool {
	return (l.Slot == "" || l.Slot == slot) && (l.Kind == quantity.None || l.Kind == k)
}

// index finds the words of a block and of all below it. A word that stands twice is a
// fault of the program, so it panics; the tests load the table.
func index(b *Block) *Block {
	if b.byName != nil {
		return b
	}
	b.byName = make(map[string]*Field, len(b.Fields))
	for _, f := range b.Fields {
		if b.byName[f.Name] != nil {
			panic("schema: field " + f.Name + " stands twice in the table")
		}
		b.byName[f.Name] = f
	}
	for _, f := range b.Lines() {
		f.pattern = sync.OnceValue(func() *Shape { return MustCompile(f.Shape) })
		if f.Block != nil {
			index(f.Block)
		}
	}
	return b
}
