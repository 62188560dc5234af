package assist

import (
	"newmake/lang"
	"newmake/lang/schema"
)

// walk goes over the tokens of a text, and knows in which block the next one stands.
// A broken line does not affect the next.
type walk struct {
	text  []byte
	stack []*schema.Block // nil: one that the language does not know
	line  []lang.Token    // of the line so far
}

func newWalk(text []byte) *walk { return &walk{text: text, stack: []*schema.Block{schema.Language}} }

func (w *walk) block() *schema.Block { return w.stack[len(w.stack)-1] }

func (w *walk) take(t lang.Token) {
	switch t.Kind {
	case lang.TokComment:
	case lang.TokNewline:
		if n := len(w.line); n == 0 || w.line[n-1].Kind != lang.TokComma { // after a comma a list goes on
			w.line = nil
		}
	case lang.TokOpen:
		var below *schema.Block
		if f := fieldOf(w.block(), w.line, w.text); f != nil {
			below = f.Block
		}
		w.stack, w.line = append(w.stack, below), nil
	case lang.TokClose:
		if len(w.stack) > 1 {
			w.stack = w.stack[:len(w.stack)-1]
		}
		w.line = nil
	default:
		w.line = append(w.line, t)
	}
}
