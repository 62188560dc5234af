package engine

import (
	"newmake/lang/explain"
)

// explained gives the page of a code, a word or a term, in Markdown.
func explained(q Question) Answer {
	found := explain.Ask(q.Word)
	if len(found.Pages) == 0 {
		return Answer{Problem: "there is no page of that name"}
	}
	return Answer{Words: harmless(found.Text())}
}
