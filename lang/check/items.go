package check

import (
	"slices"
	"strings"

	"newmake/lang/diag"
)

// StockItem is one entry of the stock as it is written: the built-in lines with
// the house's own over them.
type StockItem struct {
	Kind  string // grain, yeast, ...
	Name  string
	Doc   string // the comment above it
	From  string // the entry from which it begins, "" if it stands on its own
	Own   bool   // only the house has it
	House bool   // the house has it, or changes it
	Lines []StockLine
	At    diag.Span // the uppermost declaration
}

// StockLine is one fact of an entry.
type StockLine struct {
	Field  string // the word that begins the line
	Text   string // what follows it, as written
	Source string // where it is from, by the comment on the line
	House  bool   // the line is the house's
	At     diag.Span
}

// StockKinds lists the kinds of the stock's entries.
func StockKinds() []string {
	var out []string
	for _, f := range stockFields {
		out = append(out, f.Name)
	}
	return out
}

// StockItems lists what is in the stock of a house, by kind and then by name.
func (h *House) StockItems() []StockItem { return stockItems(h.library, h.stock) }

// StockItems lists what is in the library, by kind and then by name.
func (l *Library) StockItems() []StockItem { return stockItems(l, nil) }

func stockItems(l *Library, house *stockBuilder) []StockItem {
	var out []StockItem
	for _, f := range stockFields {
		names := slices.Clone(l.nodes[f].order)
		if house != nil {
			names = append(names, house.own[f].order...)
		}
		slices.Sort(names)
		for _, name := range slices.Compact(names) {
			below := l.nodes[f].find(name)
			item := StockItem{Kind: f.Name, Name: name, Own: below == nil}
			n := below
			if house != nil && house.own[f].find(name) != nil {
				item.House = true
				n = house.done[f].find(name)
			}
			item.fill(l, n, below)
			out = append(out, item)
		}
	}
	return out
}

// fill writes down an entry's lines. below is the built-in entry of the same
// name, nil if there is none.
func (item *StockItem) fill(l *Library, n, below *node) {
	item.At, item.From = n.at(), n.text("parent")
	if item.Doc = docOf(n.stmt); item.Doc == "" && below != nil {
		item.Doc = docOf(below.stmt)
	}
	for _, line := range n.lines {
		if line.bad {
			continue
		}
		begin := line.field.Name
		if begin == "" {
			begin = line.text("name")
		}
		item.Lines = append(item.Lines, StockLine{
			Field: begin, Text: strings.TrimSpace(strings.TrimPrefix(line.written(), begin)),
			Source: line.comment(), House: !l.has(line.at().Src), At: line.at(),
		})
	}
}

// has says that a text is one of the library's.
func (l *Library) has(src *diag.Source) bool {
	for _, f := range l.Files {
		if f.Source == src {
			return true
		}
	}
	return false
}
