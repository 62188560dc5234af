// Package fields reads what blocks of several kinds have in common: fields by the table of
// a recipe's values, strengths, clocks, days of the week, how sure a figure is.
package fields

import (
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// Text is the text of something, as the rows of its values read it. It implements
// recipe.Text.
type Text struct {
	In *tree.Node
	At recipe.Path // of what is in: the paths of its lines begin with it
}

// line is the good line of a path, nil if there is none.
func (t Text) line(p recipe.Path) *tree.Node {
	n := t.In
	for p = p.Below(t.At); n != nil && !p.IsZero(); {
		var word string
		word, p = p.Cut()
		n = n.Line(word)
	}
	return n
}

func (t Text) slot(p recipe.Path, slot string, first func(*tree.Node) *tree.Capture) *tree.Capture {
	if slot == "" {
		return first(t.line(p))
	}
	return t.line(p).Get(slot)
}

// Number implements recipe.Text.
func (t Text) Number(p recipe.Path, slot string) (low, high float64, ok bool) {
	c := t.slot(p, slot, (*tree.Node).Quantity)
	if c == nil {
		return 0, 0, false
	}
	return c.SI, c.HighSI(), true
}

// Word implements recipe.Text.
func (t Text) Word(p recipe.Path, slot string) (string, bool) {
	c := t.slot(p, slot, (*tree.Node).First)
	if c == nil {
		return "", false
	}
	return c.Text(), true
}
