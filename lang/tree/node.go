// Package tree holds a text against the schema: it makes a tree of nodes of its
// statements, and says what does not have its shape. It looks at one text alone,
// so texts can be read side by side.
package tree

import (
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/schema"
)

// Node is a line that has its shape, with the lines of its block. A batch is
// first a tree of nodes; variants and the house's changes to the library are laid
// over one another in this form, and only then is it read for its meaning.
type Node struct {
	Field *schema.Field
	Stmt  *lang.Stmt
	Match Match
	When  When // in a block whose lines may be timed
	Lines []*Node
	Bad   bool // it was there but is not right: said already, so not missing
	Gaps  bool // a line of its block could not be read, so nobody knows what is missing
}

// Line gives the last line that begins with a word, or nil.
func (n *Node) Line(word string) *Node {
	if n == nil {
		return nil
	}
	for i := len(n.Lines) - 1; i >= 0; i-- {
		if n.Lines[i].Field.Name == word && !n.Lines[i].Bad {
			return n.Lines[i]
		}
	}
	return nil
}

// All gives the good lines that begin with a word, in order.
func (n *Node) All(word string) []*Node {
	var out []*Node
	if n != nil {
		for _, l := range n.Lines {
			if l.Field.Name == word && !l.Bad {
				out = append(out, l)
			}
		}
	}
	return out
}

// Present reports whether a line was written, right or wrong.
func (n *Node) Present(word string) bool {
	for _, l := range n.Lines {
		if l.Field.Name == word {
			return true
		}
	}
	return false
}

// At is the place of the line, its block left out.
func (n *Node) At() diag.Span { return n.Stmt.At }

// Get finds the capture of a slot on the line, or nil.
func (n *Node) Get(slot string) *Capture {
	if n == nil {
		return nil
	}
	return n.Match.Get(slot)
}

// Has reports whether a word or slot is on the line.
func (n *Node) Has(slot string) bool { return n.Get(slot) != nil }

// Text is what stands in a slot, "" if nothing does.
func (n *Node) Text(slot string) string {
	if c := n.Get(slot); c != nil {
		return c.Text()
	}
	return ""
}

// Num is the SI value in a slot, 0 if there is none.
func (n *Node) Num(slot string) float64 {
	if c := n.Get(slot); c != nil {
		return c.SI
	}
	return 0
}

// Quantity is the first number on the line, or nil.
func (n *Node) Quantity() *Capture {
	if n != nil {
		for i := range n.Match.Caps {
			if c := &n.Match.Caps[i]; c.Item.Kind == lang.Number || c.Item.Kind == lang.Range {
				return c
			}
		}
	}
	return nil
}

// SI is the first number on the line that begins with a word, 0 if it is not
// there.
func (n *Node) SI(word string) float64 { return n.SIOr(word, 0) }

// SIOr is si with another default.
func (n *Node) SIOr(word string, def float64) float64 {
	if c := n.Line(word).Quantity(); c != nil {
		return c.SI
	}
	return def
}

// Word is the first word or text that a line captured, for lines that are a
// choice between words.
func (n *Node) Word(word string) string {
	if c := n.Line(word).First(); c != nil {
		return c.Text()
	}
	return ""
}

// First is what the line captured first, or nil.
func (n *Node) First() *Capture {
	if n == nil || len(n.Match.Caps) == 0 {
		return nil
	}
	return &n.Match.Caps[0]
}

// Comment is the text of the line's trailing comment.
func (n *Node) Comment() string {
	if n.Stmt == nil || n.Stmt.Trail == nil {
		return ""
	}
	return CommentText(n.Stmt.Trail.Text)
}

// KeyText tells repeated lines of one field apart.
func (n *Node) KeyText() string {
	if n.Field.Key == "" {
		return ""
	}
	key := Key(n.Text(n.Field.Key))
	if c := n.Get(n.Field.KeyKind); c != nil {
		key += " " + c.Kind.String()
	}
	return key
}

// CommentText is a comment without its mark.
func CommentText(text string) string { return strings.TrimSpace(strings.TrimLeft(text, "#")) }

// Whole is the place of a line with its block.
func (n *Node) Whole() diag.Span {
	at := n.Stmt.At
	if n.Stmt.Block != nil {
		at.End = n.Stmt.Block.At.End
	}
	return at
}

// Sound reports whether every line of a block could be read.
func (n *Node) Sound() bool {
	if n.Gaps {
		return false
	}
	for _, l := range n.Lines {
		if l.Bad {
			return false
		}
	}
	return true
}
