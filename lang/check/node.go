package check

import (
	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/schema"
)

// node is a line that has its shape, with the lines of its block. A batch is
// first a tree of nodes; variants and the house's changes to the stock are laid
// over one another in this form, and only then is it read for its meaning.
type node struct {
	field *schema.Field
	stmt  *lang.Stmt
	m     match
	lines []*node
	bad   bool // it was there but is not right: said already, so not missing
	gaps  bool // a line of its block could not be read, so nobody knows what is missing
}

// line gives the last line that begins with a word, or nil.
func (n *node) line(word string) *node {
	if n == nil {
		return nil
	}
	for i := len(n.lines) - 1; i >= 0; i-- {
		if n.lines[i].field.Name == word && !n.lines[i].bad {
			return n.lines[i]
		}
	}
	return nil
}

// all gives the good lines that begin with a word, in order.
func (n *node) all(word string) []*node {
	var out []*node
	if n != nil {
		for _, l := range n.lines {
			if l.field.Name == word && !l.bad {
				out = append(out, l)
			}
		}
	}
	return out
}

// present says that a line was written, right or wrong.
func (n *node) present(word string) bool {
	for _, l := range n.lines {
		if l.field.Name == word {
			return true
		}
	}
	return false
}

// at is the place of the line, its block left out.
func (n *node) at() diag.Span { return n.stmt.At }

// get finds the capture of a slot on the line, or nil.
func (n *node) get(slot string) *capture {
	if n == nil {
		return nil
	}
	return n.m.get(slot)
}

// has says that a word or slot is on the line.
func (n *node) has(slot string) bool { return n.get(slot) != nil }

// text is what stands in a slot, "" if nothing does.
func (n *node) text(slot string) string {
	if c := n.get(slot); c != nil {
		return c.text()
	}
	return ""
}

// num is the SI value in a slot, 0 if there is none.
func (n *node) num(slot string) float64 {
	if c := n.get(slot); c != nil {
		return c.si
	}
	return 0
}

// quantity is the first number on the line, or nil.
func (n *node) quantity() *capture {
	if n != nil {
		for i := range n.m.caps {
			if c := &n.m.caps[i]; c.item.Kind == lang.Number || c.item.Kind == lang.Range {
				return c
			}
		}
	}
	return nil
}

// si is the first number on the line that begins with a word, 0 if it is not
// there.
func (n *node) si(word string) float64 { return n.siOr(word, 0) }

// siOr is si with another default.
func (n *node) siOr(word string, def float64) float64 {
	if c := n.line(word).quantity(); c != nil {
		return c.si
	}
	return def
}

// span gives both ends of the range on the line that begins with a word.
func (n *node) span(word string) (low, high float64) {
	if c := n.line(word).quantity(); c != nil {
		return c.si, c.high
	}
	return 0, 0
}

// word is the first word or text that a line captured, for lines that are a
// choice between words.
func (n *node) word(word string) string {
	l := n.line(word)
	if l == nil || len(l.m.caps) == 0 {
		return ""
	}
	return l.m.caps[0].text()
}

// yes says that a yes-or-no line says yes.
func (n *node) yes(word string) bool { return n.word(word) == "yes" }

// strength is the strength on the line that begins with a word.
func (n *node) strength(word string) recipe.Strength {
	if c := n.line(word).get("strength"); c != nil {
		return c.strength()
	}
	return recipe.Strength{}
}

// comment is the text of the line's trailing comment.
func (n *node) comment() string {
	if n.stmt == nil || n.stmt.Trail == nil {
		return ""
	}
	return commentText(n.stmt.Trail.Text)
}

// key tells repeated lines of one field apart.
func (n *node) key() string {
	if n.field.Key == "" {
		return ""
	}
	key := nameKey(n.text(n.field.Key))
	if c := n.get(n.field.KeyKind); c != nil {
		key += " " + c.kind.String()
	}
	return key
}
