package assist

import (
	"slices"
	"strings"

	"newmake/lang/schema"
	"newmake/lang/wording"
)

// Signature is the form of the line at a place, and which of its values comes next.
type Signature struct {
	Form  string
	Doc   string
	Slots [][2]int // where each value stands in Form, in bytes
	Next  int      // of Slots, -1 if none of them comes next
}

// Signature gives the form of the line at a place; false where none was begun.
func (s *Snapshot) Signature(offset int) (Signature, bool) {
	text := s.File.Source.Text
	offset = min(max(offset, 0), len(text))
	block, line, ok := context(text, offset)
	if !ok {
		return Signature{}, false
	}
	if n := len(line); n > 0 && int(line[n-1].End) == offset && completes(line[n-1].Kind) {
		line = line[:n-1]
	}
	if len(line) == 0 {
		return Signature{}, false
	}
	f, items := s.read(block, line)
	if f == nil {
		return Signature{}, false
	}
	out := Signature{Form: f.FormFor(s.Units()), Doc: wording.Prose(f.Doc, s.Units()), Next: -1}
	next := slices.DeleteFunc(expected(f.Pattern(), items), func(want *schema.Shape) bool { return want.Op != schema.Slot })
	from := 0
	for _, slot := range f.Slots() {
		i := strings.Index(out.Form[from:], slot.Type)
		if i < 0 { // it is part of what the form has one word for
			continue
		}
		if len(next) > 0 && out.Next < 0 && next[0].Slot == slot.Name && next[0].Kind.Name == slot.Type {
			out.Next = len(out.Slots)
		}
		out.Slots = append(out.Slots, [2]int{from + i, from + i + len(slot.Type)})
		from += i + len(slot.Type)
	}
	return out, true
}
