package assist

import (
	"slices"

	"newmake/lang"
	"newmake/lang/quantity"
	"newmake/lang/schema"
)

// Paint is what a token of the text is, for an editor that colours it.
type Paint uint8

// What tokens are.
const (
	Plain   Paint = iota // not told: the highlighting by rules is as good
	Opener               // the word that begins a line
	Joint                // a fixed word inside a line
	Called               // a name that is used
	Calls                // a name where it is declared
	Figure               // a number, a date, a clock
	Measure              // the unit of a number
	Remark               // a comment
)

// Painted is a token with what it is.
type Painted struct {
	At Place
	Is Paint
}

// Paints says what each token of the file is, in order. A highlighter by rules sees a
// line at a time; this knows the block, so that a grain called like a word of the
// language is seen to be a grain.
func (s *Snapshot) Paints() []Painted {
	src := s.File.Source
	var out []Painted
	w := newWalk(src.Text)
	for _, t := range lang.Tokens(src.Text) {
		if is := paint(w, t); is != Plain {
			out = append(out, Painted{src.Span(int(t.Start), int(t.End)), is})
		}
		w.take(t)
	}
	return out
}

// longestHead is how many tokens at most stand before the word that says what a line is,
// with it: a day, a date, a clock. A long line is not read from its beginning for each of
// its tokens.
const longestHead = 8

func paint(w *walk, t lang.Token) Paint {
	switch t.Kind {
	case lang.TokComment:
		return Remark
	case lang.TokNumber, lang.TokDate, lang.TokClock, lang.TokRange:
		return Figure
	case lang.TokUnit:
		return Measure
	case lang.TokWord, lang.TokString:
	default:
		return Plain
	}
	block := w.block()
	if block == nil {
		return Plain
	}
	head := w.line
	if len(head) < longestHead {
		head = append(slices.Clip(head), t)
	}
	f, from := headOf(block, head[:min(len(head), longestHead)], w.text)
	switch {
	case f == nil:
		return Plain
	case from > len(w.line) && t.Kind == lang.TokWord:
		return Opener
	}
	word := string(w.text[t.Start:t.End])
	if n := len(w.line); t.Kind == lang.TokWord && n > 0 && w.line[n-1].Kind == lang.TokNumber {
		if _, ok := quantity.Lookup(word); ok {
			return Measure
		}
	}
	switch {
	case t.Kind == lang.TokWord && slices.Contains(f.Words(), word):
		return Joint
	case len(w.line) == from && declaring(w.stack, f):
		return Calls
	case slices.ContainsFunc(f.Slots(), func(slot schema.FieldSlot) bool { return namesSomething(slot.Type) }):
		return Called
	}
	return Plain
}

// declaring reports whether the name after a line's word is declared by it.
func declaring(stack []*schema.Block, f *schema.Field) bool {
	switch len(stack) {
	case 1:
		return slices.ContainsFunc(f.Slots(), func(slot schema.FieldSlot) bool { return slot.Name == "name" })
	case 2:
		return stack[1] == schema.Plant.Block && slices.Contains(vessels, f.Name)
	}
	return false
}

func namesSomething(slotType string) bool {
	for _, t := range schema.SlotTypes {
		if t.Name == slotType {
			return t.Names != ""
		}
	}
	return false
}
