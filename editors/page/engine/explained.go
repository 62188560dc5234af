package engine

import (
	"newmake/lang/explain"
	"newmake/lang/quantity"
)

// explained gives the page of a code, a word or a term, in Markdown.
func (e *Engine) explained(q Question) Answer {
	reader := quantity.Both
	if s, _, _ := e.snapshot(q); s != nil {
		reader = s.House.Units()
	}
	found := explain.Ask(q.Word, reader)
	if len(found.Pages) == 0 {
		return Answer{Problem: "there is no page of that name"}
	}
	return Answer{Words: harmless(found.Text())}
}
