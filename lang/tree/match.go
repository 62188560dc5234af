package tree

import (
	"sync"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/schema"
)

// Capture is one item of a line that a slot or a word of the shape took.
type Capture struct {
	Slot string // the slot's name, or the word itself
	Item *lang.Item
	Kind quantity.Kind // of a number
	name bool          // it names something
	SI   float64       // of a number; the lower end of a range
	high float64       // the upper end; si if it is no range
}

// Match is a line's items and what took them.
type Match struct {
	Items []lang.Item
	Caps  []Capture
	miss  *miss // nil if all of the line fits
}

// miss is the furthest item that did not fit, and what would have fitted there.
type miss struct {
	far  int
	want []*schema.Shape
}

// matcher holds lines against shapes. It keeps its room from line to line.
type matcher struct {
	items []lang.Item
	caps  []Capture
	miss  miss
	wrong int // lines that did not fit, and were spoken of
}

// line holds items against a shape. It fails also if items are left over.
func (m *matcher) line(s *schema.Shape, items []lang.Item) Match {
	m.items, m.caps, m.miss.far, m.miss.want = items, m.caps[:0], 0, m.miss.want[:0]
	end, ok := m.run(s, 0)
	out := Match{Items: items}
	if len(m.caps) > 0 {
		out.Caps = append(make([]Capture, 0, len(m.caps)), m.caps...)
	}
	if ok && end == len(items) {
		return out
	}
	out.miss = &miss{far: end}
	if !ok || end <= m.miss.far {
		out.miss.far, out.miss.want = m.miss.far, append([]*schema.Shape(nil), m.miss.want...)
	}
	return out
}

// Head holds the first line of a declaration, its word and its brace left out,
// against the shape of its field.
func Head(f *schema.Field, items []lang.Item) (Match, bool) {
	room := heads.Get().(*matcher)
	defer heads.Put(room)
	m := room.line(f.Pattern(), items)
	return m, m.fits()
}

// heads keeps matchers: a house has thousands of declarations, in many files at once.
var heads = sync.Pool{New: func() any { return new(matcher) }}

// fits reports whether the whole line fitted.
func (m *Match) fits() bool { return m.miss == nil }

func (m *matcher) run(s *schema.Shape, i int) (int, bool) {
	switch s.Op {
	case schema.Seq:
		for _, sub := range s.Subs {
			var ok bool
			if i, ok = m.run(sub, i); !ok {
				return i, false
			}
		}
		return i, true
	case schema.Alt:
		mark := len(m.caps)
		for _, sub := range s.Subs {
			if end, ok := m.run(sub, i); ok {
				return end, true
			}
			m.caps = m.caps[:mark]
		}
		return i, false
	case schema.Opt, schema.Star:
		for {
			mark := len(m.caps)
			end, ok := m.run(s.Subs[0], i)
			if !ok {
				m.caps = m.caps[:mark]
				return i, true
			}
			if i = end; s.Op == schema.Opt || i >= len(m.items) {
				return i, true
			}
		}
	case schema.Literal:
		if i < len(m.items) && isWord(&m.items[i], s.Word) {
			m.caps = append(m.caps, Capture{Slot: s.Word, Item: &m.items[i]})
			return i + 1, true
		}
	case schema.Slot:
		if i < len(m.items) {
			if c, ok := take(s, &m.items[i]); ok {
				m.caps = append(m.caps, c)
				return i + 1, true
			}
		}
	}
	m.missed(s, i)
	return i, false
}

// missed notes what would have fitted at the furthest place that was reached.
func (m *matcher) missed(s *schema.Shape, i int) {
	switch {
	case i > m.miss.far:
		m.miss.far, m.miss.want = i, append(m.miss.want[:0], s)
	case i == m.miss.far:
		m.miss.want = append(m.miss.want, s)
	}
}

func isWord(it *lang.Item, word string) bool {
	return it.Kind == lang.Word && it.Text == word || it.Kind == lang.Comma && word == "," || it.Kind == lang.Slash && word == "/"
}

// take fits one item into a slot.
func take(s *schema.Shape, it *lang.Item) (Capture, bool) {
	c := Capture{Slot: s.Slot, Item: it}
	t := s.Kind
	if t.Names != "" {
		c.name = true
		return c, it.Kind == lang.Word || it.Kind == lang.String
	}
	if !t.IsQuantity() {
		return c, it.Kind == t.Item
	}
	if s.Range != (it.Kind == lang.Range) || it.Kind != lang.Number && it.Kind != lang.Range {
		return c, false
	}
	c.Kind = t.Kind
	if t.Kind == quantity.None {
		c.Kind = kindOf(it.Unit)
	}
	var ok bool
	if c.SI, ok = ToSI(it.Value, it.Unit, c.Kind); !ok {
		return c, false
	}
	c.high = c.SI
	if s.Range {
		c.high, _ = ToSI(it.High, it.Unit, c.Kind)
	}
	return c, true
}

// ToSI is quantity.ToSI for the case that mostly holds, without an error's cost.
func ToSI(v float64, unit string, k quantity.Kind) (float64, bool) {
	if u, ok := quantity.Lookup(unit); ok {
		if _, ok := u.Measure(k); !ok && k != quantity.Money && k != quantity.UnitPrice {
			return 0, false
		}
	} else if k != quantity.Money && k != quantity.UnitPrice && !(unit == "" && quantity.AllowsBare(k)) {
		return 0, false
	}
	si, err := quantity.ToSI(v, unit, k)
	return si, err == nil
}

// kindOf is what a unit measures first of all.
func kindOf(unit string) quantity.Kind {
	if u, ok := quantity.Lookup(unit); ok {
		return u.Measures[0].Kind
	}
	return quantity.Number
}

// Get finds the capture of a slot, or nil.
func (m *Match) Get(slot string) *Capture {
	for i := range m.Caps {
		if m.Caps[i].Slot == slot {
			return &m.Caps[i]
		}
	}
	return nil
}

// All finds every capture of a slot.
func (m *Match) All(slot string) []*Capture {
	var out []*Capture
	for i := range m.Caps {
		if m.Caps[i].Slot == slot {
			out = append(out, &m.Caps[i])
		}
	}
	return out
}

// At is the place of a capture.
func (c *Capture) At() diag.Span { return c.Item.At }

// HighSI is the upper end of a range; of a number that is none, the number.
func (c *Capture) HighSI() float64 { return c.high }

// Text is the word, name or text.
func (c *Capture) Text() string { return c.Item.Text }
