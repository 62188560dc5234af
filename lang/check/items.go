package check

import (
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/schema"
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
	Was    string // what stands in its place in the built-in entry, or in that of From
	Figure *Figure
	At     diag.Span
}

// Figure is the number of a line that is nothing but a number or a range.
type Figure struct {
	Low, High float64 // the same if it is no range
	Unit      string
}

// StockKinds lists the kinds of the stock's entries.
func StockKinds() []string {
	var out []string
	for _, f := range schema.Stock {
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
	for _, f := range schema.Stock {
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
			if below == nil && n.has("parent") { // what it changes is its parent's
				if below = house.done[f].find(n.text("parent")); below == nil {
					below = l.nodes[f].find(n.text("parent"))
				}
			}
			item.fill(l, n, below)
			out = append(out, item)
		}
	}
	return out
}

// fill writes down an entry's lines. below is what it changes, nil if it stands
// on its own.
func (item *StockItem) fill(l *Library, n, below *node) {
	item.At, item.From = n.at(), n.text("parent")
	if item.Doc = docOf(n.stmt); item.Doc == "" && below != nil && !item.Own {
		item.Doc = docOf(below.stmt)
	}
	was := map[string]string{}
	if below != nil {
		for _, line := range below.lines {
			begin, text := line.stockParts()
			was[begin] = text
		}
	}
	for _, line := range n.lines {
		if line.bad {
			continue
		}
		s := StockLine{Source: line.comment(), House: !l.has(line.at().Src), Figure: line.figure(), At: line.at()}
		s.Field, s.Text = line.stockParts()
		if s.House && line.single() {
			s.Was = was[s.Field]
		}
		item.Lines = append(item.Lines, s)
	}
}

// stockParts cuts a line after the word, or the name, that begins it.
func (n *node) stockParts() (begin, text string) {
	if begin = n.field.Name; begin == "" {
		begin = n.text("name")
	}
	return begin, strings.TrimSpace(strings.TrimPrefix(n.written(), begin))
}

// figure is the line's number, nil if the line says anything else.
func (n *node) figure() *Figure {
	items := n.stmt.Items
	if len(items) != 2 {
		return nil
	}
	switch it := items[1]; it.Kind {
	case lang.Number:
		return &Figure{it.Value, it.Value, it.Unit}
	case lang.Range:
		return &Figure{it.Value, it.High, it.Unit}
	}
	return nil
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
