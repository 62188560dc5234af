package house

import (
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// LibraryItem is one entry of the library as it is written: the built-in lines with
// the house's own over them.
type LibraryItem struct {
	Kind  string // grain, yeast, ...
	Name  string
	Doc   string // the comment above it
	From  string // the entry from which it begins, "" if it stands on its own
	Own   bool   // only the house has it
	House bool   // the house has it, or changes it
	Lines []LibraryLine
	At    diag.Span // the uppermost declaration
}

// LibraryLine is one fact of an entry.
type LibraryLine struct {
	Field  string // the word that begins the line
	Text   string // what follows it, as written
	Source string // where it is from, by the comment on the line
	House  bool   // the line is the house's
	Was    string // what stands in its place in the built-in entry, or in that of From
	Figure *Figure
	At     diag.Span
}

// Figure is the number of a line that is nothing but a number or a range, and perhaps
// the range that holds it 9 times in 10.
type Figure struct {
	Low, High float64 // the same if it is no range
	Unit      string
	Within    *Figure // nil where the line says nothing of it
}

// LibraryKinds lists the kinds of the library's entries.
func LibraryKinds() []string {
	var out []string
	for _, f := range schema.Library {
		out = append(out, f.Name)
	}
	return out
}

// LibraryItems lists what is in the library of a house, by kind and then by name.
// Figures are in the units of a system; Both leaves them as they are written. A proof
// stays one, for it is measured at 60 F and a % abv at 20 C.
func (l *Library) LibraryItems(units quantity.System) []LibraryItem {
	var out []LibraryItem
	for _, f := range schema.Library {
		for _, name := range l.EntryNames(f) {
			e := l.Entry(f, name)
			item := LibraryItem{Kind: f.Name, Name: name, Doc: e.Doc, House: l.base != nil && l.own[f].find(name) != nil}
			below := e.Under
			if below == nil && l.base != nil && !item.House {
				below = e // it is all of the library below
			}
			item.Own = below == nil
			if below == nil && e.Node.Has("parent") { // what it changes is its parent's
				below = l.Entry(f, e.Node.Text("parent"))
			}
			if l.base == nil {
				item.Own, below = false, e
			}
			item.fill(l, e.Node, below, units)
			out = append(out, item)
		}
	}
	return out
}

// fill writes down an entry's lines. below is what it changes, nil if it stands
// on its own.
func (item *LibraryItem) fill(l *Library, n *tree.Node, below *Entry, units quantity.System) {
	item.At, item.From = n.At(), n.Text("parent")
	was := map[string]string{}
	if below != nil {
		for _, line := range below.Node.Lines {
			begin, text := libraryParts(line, units)
			was[begin] = text
		}
	}
	for _, line := range n.Lines {
		if line.Bad {
			continue
		}
		s := LibraryLine{Source: line.Comment(), House: l.base != nil && l.texts.has(line.At().Src), Figure: figure(line, units), At: line.At()}
		s.Field, s.Text = libraryParts(line, units)
		if s.House && line.Single() {
			s.Was = was[s.Field]
		}
		item.Lines = append(item.Lines, s)
	}
}

// libraryParts cuts a line after the word, or the name, that begins it.
func libraryParts(n *tree.Node, units quantity.System) (begin, text string) {
	if begin = n.Field.Name; begin == "" {
		begin = n.Text("name")
	}
	return begin, strings.TrimSpace(strings.TrimPrefix(Spoken(n, units), begin))
}

// figure is the line's number, nil if the line says anything else.
func figure(n *tree.Node, units quantity.System) *Figure {
	items := n.Stmt.Items
	if len(items) == 4 && items[2].Kind == lang.Comma && items[3].Kind == lang.Range {
		f := figureAt(n, &items[1], units)
		if f != nil {
			f.Within = figureAt(n, &items[3], units)
		}
		return f
	}
	if len(items) != 2 {
		return nil
	}
	return figureAt(n, &items[1], units)
}

// figureAt is one number or range of a line, nil if the item is neither.
func figureAt(n *tree.Node, it *lang.Item, units quantity.System) *Figure {
	if f := restated(n, it, units); f != nil {
		return f
	}
	switch it.Kind {
	case lang.Number:
		return &Figure{Low: it.Value, High: it.Value, Unit: it.Unit}
	case lang.Range:
		return &Figure{Low: it.Value, High: it.High, Unit: it.Unit}
	}
	return nil
}
